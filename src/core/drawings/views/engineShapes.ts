import {
  add3,
  circleLoop,
  directionToWorld,
  type Frame3,
  type Point,
  type Point3,
  rotateFrameAbout,
  toLocal,
  toWorld,
} from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { viewCircle, viewLine, viewLoop, viewPolygon } from '../view.ts';
import { band, convexHull } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';
import { box } from './wheelShapes.ts';

const ACROSS: Point3 = { x: 0, y: 1, z: 0 };
const FINS = 6;
/** The cylinder of a small engine leans forward [rad]. */
const LEAN = (25 * Math.PI) / 180;

/**
 * A small single-cylinder engine inside its envelope: base, crankcase, finned cylinder with its head, fan cover, tank,
 * filter. Base, shaft and envelope are of the build, the rest is shaped for the eye within them.
 */
export function engineLayers(p: Projector, { build, bike }: SceneInput): readonly Layer[] {
  const { engine } = bike;
  const center = p.near(engine.box.frame.origin);
  const shaftOut = { ...engine.shaft, y: engine.shaftEndY };
  const radius = build.engine.shaft.diameter / 2;
  const shaft = band(p, [{ ...engine.shaft, y: engine.faceY }, shaftOut], radius, {
    pen: 'thin',
    fill: 'light',
  });
  const boss = band(
    p,
    [
      { ...engine.shaft, y: engine.faceY - engine.side * 0.025 },
      { ...engine.shaft, y: engine.faceY },
    ],
    radius * 2.4,
    { pen: 'thin', fill: 'medium' },
  );
  const faceNear = p.near({ ...engine.shaft, y: engine.faceY });
  const body = p.sight === 'top' ? fromAbove(p, bike.engine) : fromSide(p, bike.engine);
  const shows = p.sight === 'top' || (p.sight === 'left') === engine.side > 0;
  return [
    { near: center, items: named('engine', [...body, ...(shows ? [...boss, ...shaft] : [])]) },
    ...(shows && p.sight !== 'top' ? [{ near: faceNear, items: named('engine', [...boss, ...shaft]) }] : []),
  ];
}

type Engine = SceneInput['bike']['engine'];

function fromSide(p: Projector, { box: envelope, shaft: at, side }: Engine): readonly SheetItem[] {
  const { frame, half } = envelope;
  const shaft = toLocal(frame, at);
  const solid = (local: Point3, size: Point3, around: Frame3 = frame): readonly Point[] =>
    boxOutline(p, { ...around, origin: toWorld(around, local) }, size);
  const flange = 0.05 * half.z;
  const low = -half.z + 2 * flange;
  const high = Math.min(shaft.z + 0.4 * half.z, 0.25 * half.z);
  const cylinder = cylinderItems(p, frame, half);
  const fanSide = (p.sight === 'left') !== side > 0;
  const fan = Math.min(0.66 * half.z, 0.66 * half.x, half.z + shaft.z - flange);
  return [
    viewPolygon(
      p.view,
      solid(
        { x: 0, y: 0, z: -half.z + flange },
        {
          x: 0.8 * half.x,
          y: half.y,
          z: flange,
        },
      ),
      'outline',
      'medium',
    ),
    ...cylinder,
    ...topItems(p, frame, half),
    viewPolygon(
      p.view,
      crankcase(p, frame, { low, high, x: 0.62 * half.x, chamfer: 0.16 * half.x }),
      'outline',
      'light',
    ),
    ...(fanSide
      ? fanItems(p, at, fan)
      : [viewLoop(p.view, circleLoop(p.flat(at), 0.42 * half.x), 'thin', 'light')]),
  ];
}

/** A case with its upper corners cut. */
function crankcase(
  p: Projector,
  frame: Frame3,
  { low, high, x, chamfer }: { low: number; high: number; x: number; chamfer: number },
): readonly Point[] {
  const at = (lx: number, lz: number): Point => p.flat(toWorld(frame, { x: lx, y: 0, z: lz }));
  return [
    at(-x, low),
    at(x, low),
    at(x, high - chamfer),
    at(x - chamfer, high),
    at(-x + chamfer, high),
    at(-x, high - chamfer),
  ];
}

/** Cylinder with fins, and the head with its cover, leaning forward. */
function cylinderItems(p: Projector, frame: Frame3, half: Point3): readonly SheetItem[] {
  const foot = toWorld(frame, { x: 0.5 * half.x, y: 0, z: 0.1 * half.z });
  const axes = rotateFrameAbout(frame, foot, directionToWorld(frame, ACROSS), LEAN);
  const leaning: Frame3 = { ...axes, origin: foot };
  const solid = (z: number, x: number, height: number): readonly Point[] =>
    boxOutline(
      p,
      { ...leaning, origin: toWorld(leaning, { x: 0, y: 0, z }) },
      { x, y: 0.4 * half.y, z: height / 2 },
    );
  const tall = 0.5 * half.z;
  const fins = Array.from({ length: FINS }, (_, k) =>
    viewPolygon(
      p.view,
      solid(-0.5 * tall + (k * tall) / (FINS - 1), 0.36 * half.x, tall * 0.09),
      'thin',
      'medium',
    ),
  );
  return [
    viewPolygon(p.view, solid(0, 0.28 * half.x, 1.5 * tall), 'thin', 'light'),
    ...fins,
    viewPolygon(p.view, solid(0.5 * tall + 0.13 * half.z, 0.33 * half.x, 0.16 * half.z), 'outline', 'light'),
  ];
}

/** Tank over the rear half, filter over the front. */
function topItems(p: Projector, frame: Frame3, half: Point3): readonly SheetItem[] {
  const at = (x: number, z: number): Point => p.flat(toWorld(frame, { x: x * half.x, y: 0, z: z * half.z }));
  const cap = at(-0.45, 0.95);
  return [
    viewLoop(p.view, box(cap, 0.3 * half.x, 0.1 * half.z, 0.02 * half.z), 'thin', 'dark'),
    viewLoop(p.view, box(at(-0.38, 0.64), 1.2 * half.x, 0.54 * half.z, 0.16 * half.z), 'outline', 'paper'),
    viewLoop(p.view, box(at(0.66, 0.8), 0.62 * half.x, 0.36 * half.z, 0.1 * half.z), 'thin', 'medium'),
  ];
}

/** Fan cover with its slots and the hand starter in the middle. */
function fanItems(p: Projector, at: Point3, radius: number): readonly SheetItem[] {
  const center = p.flat(at);
  const spokes = Array.from({ length: 16 }, (_, k) => {
    const turn = (Math.PI * k) / 8;
    const reach = (r: number): Point => ({
      x: center.x + r * radius * Math.cos(turn),
      y: center.y + r * radius * Math.sin(turn),
    });
    return viewLine(p.view, [reach(0.52), reach(0.82)], 'thin');
  });
  return [
    viewCircle(p.view, center, radius, 'outline', 'paper'),
    viewCircle(p.view, center, radius * 0.9, 'thin'),
    ...spokes,
    viewCircle(p.view, center, radius * 0.44, 'thin', 'medium'),
    viewCircle(p.view, center, radius * 0.14, 'thin', 'paper'),
  ];
}

function fromAbove(p: Projector, { box: envelope, shaft: at, side }: Engine): readonly SheetItem[] {
  const { frame, half } = envelope;
  const shaft = toLocal(frame, at);
  const rect = (
    x: number,
    y: number,
    sx: number,
    sy: number,
    pen: 'outline' | 'thin',
    fill: 'light' | 'medium' | 'paper',
  ) => {
    const local = { x: x * half.x, y: y * half.y, z: 0 };
    const corners = boxOutline(
      p,
      { ...frame, origin: toWorld(frame, local) },
      { x: sx * half.x, y: sy * half.y, z: 0 },
    );
    return viewPolygon(p.view, corners, pen, fill);
  };
  const fins = Array.from({ length: FINS }, (_, k) =>
    rect(0.55 + (0.42 * k) / (FINS - 1), 0, 0.02, 0.48, 'thin', 'medium'),
  );
  return [
    rect(0, 0, 0.8, 0.6, 'thin', 'medium'),
    rect(shaft.x / half.x, -0.72 * side, 0.62, 0.28, 'outline', 'paper'),
    rect(0, 0, 0.62, 0.58, 'outline', 'light'),
    rect(0.76, 0, 0.24, 0.42, 'thin', 'light'),
    ...fins,
    rect(-0.36, 0, 0.6, 0.74, 'thin', 'paper'),
    viewCircle(
      p.view,
      p.flat(toWorld(frame, { x: -0.4 * half.x, y: 0, z: 0 })),
      0.14 * half.x,
      'thin',
      'medium',
    ),
  ];
}

/** Silhouette of a box in its own axes. */
function boxOutline(p: Projector, frame: Frame3, half: Point3): readonly Point[] {
  const corners = [-1, 1].flatMap((x) =>
    [-1, 1].flatMap((y) =>
      [-1, 1].map((z) =>
        p.flat(add3(frame.origin, directionToWorld(frame, { x: x * half.x, y: y * half.y, z: z * half.z }))),
      ),
    ),
  );
  return convexHull(corners);
}
