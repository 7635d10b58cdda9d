import type { PlacedItem, PlacedPlane } from '../../bike/index.ts';
import type { SolvedBelt, SolvedChain, SprocketDimensions } from '../../driveline/index.ts';
import {
  add3,
  flatten,
  hullLoop,
  type Loop,
  type Point,
  type Point3,
  polar2,
  segmentLength,
  segmentPoint,
  segments,
} from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { viewCircle, viewLoop, viewPolygon } from '../view.ts';
import { circlePoints, pierced } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';
import { box } from './wheelShapes.ts';

/** Chords of a drawn run [m]. */
const CHORD = 1e-4;
/** Rollers nearer than this on paper are left out [mm]. */
const ROLLER_ROOM = 0.75;
/** Sprockets of more teeth get windows, for the picture. */
const WINDOWED_FROM = 30;
/** Thickness of a variable belt as a share of its top width. @source practice, about 0.4 */
const BELT_THICKNESS = 0.4;
/** Wall of a sheave's flange, for the picture [m]. */
const FLANGE = 4e-3;
/** Items that are drawn elsewhere or are no body. */
const NOT_TURNED: readonly PlacedItem['kind'][] = ['face', 'clearance', 'leg', 'plate', 'sheave'];
const NUT = 1.1547;

/** Chains, belts, sprockets, sheaves, shafts and what sits on them. */
export const driveLayers = (p: Projector, scene: SceneInput): readonly Layer[] => [
  ...Object.values(scene.driveline.chains).flatMap((drive) => chainLayers(p, scene, drive)),
  ...Object.values(scene.driveline.belts).flatMap((drive) => beltLayers(p, scene, drive)),
  ...shaftLayers(p, scene),
  ...itemLayers(p, scene),
];

/** Y of the plane that a drive runs in on one of its shafts; the shaft's own place where no stack says. */
function runsAt({ bike }: SceneInput, shaft: string, drive: string): number {
  const planes = Object.values(bike.stacks)
    .filter((stack) => stack.shaft === shaft)
    .flatMap((stack) => stack.items.flatMap((item): readonly PlacedPlane[] => item.planes));
  return planes.find((plane) => plane.drive === drive)?.y ?? bike.shafts[shaft]?.y ?? 0;
}

interface Run {
  readonly part: string;
  readonly centers: readonly [Point3, Point3];
  readonly radii: readonly [number, number];
  /** Across the bike, and in its own plane [m]. */
  readonly width: number;
  readonly height: number;
  readonly pitch?: number;
  readonly roller?: number;
}

function runOf(
  scene: SceneInput,
  stage: { readonly id: string; readonly from: string; readonly to: string },
): readonly [Point3, Point3] | undefined {
  const [from, to] = [scene.bike.shafts[stage.from], scene.bike.shafts[stage.to]];
  if (!from || !to) return undefined;
  return [
    { ...from, y: runsAt(scene, stage.from, stage.id) },
    { ...to, y: runsAt(scene, stage.to, stage.id) },
  ];
}

function chainLayers(p: Projector, scene: SceneInput, drive: SolvedChain): readonly Layer[] {
  const centers = runOf(scene, drive.stage);
  if (!centers) return [];
  const { chain, driver, driven } = drive;
  const part = `driveline.${drive.stage.id}`;
  const run: Run = {
    part,
    centers,
    radii: [driver.pitchDiameter / 2, driven.pitchDiameter / 2],
    width: 2 * (chain.innerWidth / 2 + 2 * chain.plateThickness),
    height: chain.plateHeight,
    pitch: chain.pitch,
    roller: chain.rollerDiameter,
  };
  const sprockets = [driver, driven].map((size, i): Layer => {
    const at = centers[i]!;
    return { near: p.near(at) - 1e-4, items: named(part, sprocketItems(p, at, size)) };
  });
  return [...sprockets, { near: topOf(p, run), items: named(part, runItems(p, run)) }];
}

function beltLayers(p: Projector, scene: SceneInput, drive: SolvedBelt): readonly Layer[] {
  const { stage, low } = drive;
  const centers = runOf(scene, stage);
  if (!centers) return [];
  const part = `driveline.${stage.id}`;
  const run: Run = {
    part,
    centers,
    radii: [low.driverDiameter / 2, low.drivenDiameter / 2],
    width: stage.beltTopWidth,
    height: BELT_THICKNESS * stage.beltTopWidth,
  };
  const edge = run.height / 2;
  const outside = [stage.driver.largest / 2 + edge, stage.driven.largest / 2 + edge];
  const flanges = [-1, 1].flatMap((side) =>
    centers.map((center, i): Layer => {
      const at = add3(center, { x: 0, y: side * (run.width / 2 + FLANGE / 2), z: 0 });
      return { near: p.near(at), items: named(part, flangeItems(p, at, outside[i]!)) };
    }),
  );
  return [...flanges, { near: topOf(p, run), items: named(part, runItems(p, run)) }];
}

/** From above a run hides its sprockets; from the side it lies in their plane. */
const topOf = (p: Projector, run: Run): number => Math.max(...run.centers.map(p.near));

function runItems(p: Projector, run: Run): readonly SheetItem[] {
  if (p.sight === 'top') return runFromAbove(p, run);
  const outline = (by: number): Loop =>
    hullLoop(run.centers.map((c, i) => ({ center: p.flat(c), radius: Math.max(run.radii[i]! + by, 0) })));
  const [outside, inside] = [outline(run.height / 2), outline(-run.height / 2)];
  const isChain = run.pitch !== undefined;
  return [
    ...pierced(p, flatten(outside, CHORD), [flatten(inside, CHORD)], {
      edge: 'none',
      holes: 'none',
      fill: isChain ? 'light' : 'dark',
    }),
    ...(isChain ? rollers(p, run, outline(0)) : []),
    viewLoop(p.view, outside, 'thin'),
    viewLoop(p.view, inside, 'thin'),
  ];
}

function rollers(p: Projector, run: Run, line: Loop): readonly SheetItem[] {
  if (!run.pitch || !run.roller || p.length(run.pitch) < ROLLER_ROOM) return [];
  const pieces = segments(line);
  const total = pieces.reduce((sum, piece) => sum + segmentLength(piece), 0);
  const count = Math.round(total / run.pitch);
  const pointAt = (along: number): Point => {
    let left = along;
    for (const piece of pieces) {
      const length = segmentLength(piece);
      if (left <= length) return segmentPoint(piece, left / length);
      left -= length;
    }
    return line[0]!;
  };
  return Array.from({ length: count }, (_, k) =>
    viewCircle(p.view, pointAt((k * total) / count), run.roller! * 0.36, 'dimension', 'dark'),
  );
}

/** Parallel to the center plane, or askew where its two planes are apart. */
function runFromAbove(p: Projector, run: Run): readonly SheetItem[] {
  const [a, b] = run.centers;
  const [first, last] =
    a.x <= b.x
      ? [
          { at: a, radius: run.radii[0] },
          { at: b, radius: run.radii[1] },
        ]
      : [
          { at: b, radius: run.radii[1] },
          { at: a, radius: run.radii[0] },
        ];
  const edge = run.height / 2;
  const corner = (end: typeof first, way: number, side: number): Point =>
    p.flat({ ...end.at, x: end.at.x + way * (end.radius + edge), y: end.at.y + (side * run.width) / 2 });
  const outline = [corner(first, -1, -1), corner(last, 1, -1), corner(last, 1, 1), corner(first, -1, 1)];
  return [viewPolygon(p.view, outline, 'thin', run.pitch === undefined ? 'dark' : 'medium')];
}

function sprocketItems(p: Projector, at: Point3, size: SprocketDimensions): readonly SheetItem[] {
  const center = p.flat(at);
  if (p.sight === 'top') {
    const rect = box(center, size.outsideDiameter, size.flangeThickness, 0);
    return [viewLoop(p.view, rect, 'thin', 'paper')];
  }
  const [root, tip] = [size.rootDiameter / 2, size.outsideDiameter / 2];
  const outline = Array.from({ length: size.teeth }, (_, k) => k).flatMap((k): Point[] =>
    (
      [
        [root, -0.2],
        [root, 0.2],
        [tip, 0.42],
        [tip, 0.58],
      ] as const
    ).map(([radius, share]) => polar2(center, radius, (2 * Math.PI * (k + share)) / size.teeth)),
  );
  const windows =
    size.teeth < WINDOWED_FROM
      ? []
      : Array.from({ length: 6 }, (_, k) =>
          circlePoints(polar2(center, 0.66 * root, (Math.PI * k) / 3), 0.19 * root, 24),
        );
  return [
    ...pierced(p, outline, windows, { edge: 'thin', holes: 'thin', fill: 'paper' }),
    viewCircle(p.view, center, size.pitchDiameter / 2, 'center'),
  ];
}

function flangeItems(p: Projector, at: Point3, radius: number): readonly SheetItem[] {
  const center = p.flat(at);
  if (p.sight === 'top') return [viewLoop(p.view, box(center, 2 * radius, FLANGE, 0), 'thin', 'light')];
  return [
    viewCircle(p.view, center, radius, 'outline', 'light'),
    viewCircle(p.view, center, radius * 0.93, 'thin'),
    viewCircle(p.view, center, radius * 0.5, 'thin', 'medium'),
  ];
}

/** Shafts and axles from end to end. */
function shaftLayers(p: Projector, { build, bike }: SceneInput): readonly Layer[] {
  return Object.entries(bike.shafts).flatMap(([name, center]): readonly Layer[] => {
    if (name === 'engine') return [];
    const axle = Object.values(bike.stacks).find((stack) => stack.shaft === name)?.axle;
    const entry = build.driveline.shafts[name];
    const diameter = axle?.diameter ?? entry?.diameter;
    const length = axle?.length ?? entry?.length;
    if (diameter === undefined || length === undefined) return [];
    const [left, right] = axle ? [axle.left, axle.right] : [center.y + length / 2, center.y - length / 2];
    const ends = [left, right].map((y) => ({ ...center, y }));
    const near = p.sight === 'top' ? p.near(center) - 1e-4 : Math.max(...ends.map(p.near));
    const items =
      p.sight === 'top'
        ? [
            viewLoop(
              p.view,
              box(p.flat({ ...center, y: (left + right) / 2 }), diameter, left - right, 0),
              'thin',
              'light',
            ),
          ]
        : [viewCircle(p.view, p.flat(center), diameter / 2, 'thin', 'paper')];
    return [{ near, items: named(`driveline.shafts.${name}`, items) }];
  });
}

/** Turned parts on the shafts. */
function itemLayers(p: Projector, { bike }: SceneInput): readonly Layer[] {
  return Object.values(bike.stacks).flatMap((stack) => {
    const center = bike.shafts[stack.shaft];
    if (!center) return [];
    return stack.items.flatMap((item): readonly Layer[] => {
      if (NOT_TURNED.includes(item.kind) || !(item.length > 0 && item.outside > 0)) return [];
      const part = `stacks.${stack.id}.${item.id}`;
      return [{ near: itemNear(p, item, center), items: named(part, itemItems(p, item, center)) }];
    });
  });
}

/** A body shows its near face; from above its axis counts. */
function itemNear(p: Projector, item: PlacedItem, center: Point3): number {
  if (p.sight === 'top') return p.near(center) + 1e-4;
  return p.near({ ...center, y: p.sight === 'left' ? item.left : item.right }) - 1e-3;
}

function itemItems(p: Projector, item: PlacedItem, center: Point3): readonly SheetItem[] {
  const at = p.flat({ ...center, y: (item.left + item.right) / 2 });
  const fill = item.kind === 'clutch' ? 'medium' : item.solved ? 'paper' : 'light';
  if (p.sight === 'top') return [viewLoop(p.view, box(at, item.outside, item.length, 0), 'thin', fill)];
  if (item.kind === 'nut') {
    const corners = circlePoints(at, (item.outside / 2) * NUT, 6);
    return [viewPolygon(p.view, corners, 'thin', 'light')];
  }
  // A sprocket's body is its hub; its teeth are drawn in their own plane.
  const ring = item.kind === 'clutch' ? [viewCircle(p.view, at, item.outside * 0.4, 'thin')] : [];
  return [viewCircle(p.view, at, item.outside / 2, 'thin', fill), ...ring];
}
