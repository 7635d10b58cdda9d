import type { PlacedBrake, TireSize } from '../../bike/index.ts';
import { type Loop, type Point, type Point3, polar2, roundedRectangleLoop } from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { viewCircle, viewLine, viewLoop, viewPolygon } from '../view.ts';
import { circlePoints, pierced } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';

/** Tread as a share of the tire's section height, blocks round it and rim band: for the picture alone. */
const TREAD = 0.17;
const BLOCKS = 52;
const RIM_BAND = 0.86;
const WINDOWS = 5;
/** A tire's corner seen from above, as a share of its width. */
const SHOULDER = 0.42;

const ENDS = [
  ['rear', 'rearAxle'],
  ['front', 'frontAxle'],
] as const;

/** Wheels as they stand: seen along the axle as circles, from above as rounded boxes; with brakes. */
export function wheelLayers(p: Projector, scene: SceneInput): readonly Layer[] {
  const { bike, build } = scene;
  const wheels = ENDS.map(([end, shaft]): Layer => {
    const center = bike.shafts[shaft]!;
    const tire = bike.layout.fitted[end];
    const flange = build.wheels[end].hub.flange ?? 2 * build.wheels[end].hub.bore;
    const draw = p.sight === 'top' ? wheelFromAbove : wheelFromSide;
    // From above the tread hides hub and axle.
    const near = p.near(center) + (p.sight === 'top' ? 1e-3 : 0);
    return { near, items: named(`wheels.${end}`, draw(p, tire, center, flange / 2)) };
  });
  return [...wheels, ...bike.brakes.map((brake) => brakeLayer(p, scene, brake))];
}

function wheelFromSide(p: Projector, tire: TireSize, center: Point3, hub: number): readonly SheetItem[] {
  const at = p.flat(center);
  const rim = tire.rimDiameter / 2;
  const tread = tire.radius - TREAD * (tire.radius - rim);
  const ring = (outside: number, inside: number, fill: 'dark' | 'medium' | 'light') =>
    pierced(p, circlePoints(at, outside, 96), [circlePoints(at, inside, 72)], {
      edge: 'none',
      holes: 'none',
      fill,
    });
  const blocks = Array.from({ length: BLOCKS }, (_, k) => {
    const turn = (2 * Math.PI * k) / BLOCKS;
    return viewLine(p.view, [polar2(at, tread, turn), polar2(at, tire.radius, turn + 0.03)], 'thin');
  });
  return [
    ...ring(tire.radius, tread, 'dark'),
    ...ring(tread, rim, 'medium'),
    ...blocks,
    viewCircle(p.view, at, tire.radius, 'outline'),
    viewCircle(p.view, at, tread, 'thin'),
    ...rimItems(p, at, rim, hub),
    viewCircle(p.view, at, rim * 1.06, 'thin'),
    viewCircle(p.view, at, rim, 'outline'),
    viewCircle(p.view, at, rim * RIM_BAND, 'thin'),
  ];
}

/** A dished plate with round windows, or a plain plate where there is no room for them. */
function rimItems(p: Projector, at: Point, rim: number, hub: number): readonly SheetItem[] {
  const room = rim * RIM_BAND - hub;
  const middle = hub + room / 2;
  const radius = Math.min(room * 0.36, (middle * Math.PI) / WINDOWS / 1.6);
  const windows =
    room > 0.012
      ? Array.from({ length: WINDOWS }, (_, k) =>
          circlePoints(polar2(at, middle, Math.PI / 2 + (2 * Math.PI * k) / WINDOWS), radius, 28),
        )
      : [];
  return pierced(p, circlePoints(at, rim, 72), windows, { edge: 'thin', holes: 'thin', fill: 'light' });
}

function wheelFromAbove(p: Projector, tire: TireSize, center: Point3): readonly SheetItem[] {
  const at = p.flat(center);
  const grooves = [-0.3, 0, 0.3].map((share) => {
    const y = at.y + share * tire.width;
    const reach = tire.radius * Math.sqrt(1 - (0.8 * share) ** 2) - 0.25 * tire.width * Math.abs(share);
    return viewLine(
      p.view,
      [
        { x: at.x - reach, y },
        { x: at.x + reach, y },
      ],
      'thin',
    );
  });
  return [
    viewLoop(p.view, box(at, 2 * tire.radius, tire.width, SHOULDER * tire.width), 'outline', 'medium'),
    ...grooves,
  ];
}

function brakeLayer(p: Projector, { build }: SceneInput, placed: PlacedBrake): Layer {
  const at = p.flat(placed.center);
  const part = `brakes.${placed.wheel}`;
  const entry = build.brakes[placed.wheel];
  if (p.sight === 'top') {
    const rect = box(at, 2 * placed.radius, placed.thickness, 0);
    return { near: p.near(placed.center), items: named(part, [viewLoop(p.view, rect, 'thin', 'light')]) };
  }
  const inside = entry?.kind === 'disc' ? (entry.disc.inside ?? 0.6 * entry.disc.diameter) / 2 : 0;
  const items =
    inside > 0
      ? pierced(p, circlePoints(at, placed.radius, 72), [circlePoints(at, inside, 60)], {
          edge: 'thin',
          holes: 'thin',
          fill: 'light',
        })
      : [
          viewCircle(p.view, at, placed.radius, 'thin', 'light'),
          viewCircle(p.view, at, placed.radius * 0.86, 'thin'),
        ];
  return { near: p.near(placed.center), items: named(part, [...items, ...caliper(p, entry, at)]) };
}

/** A box at the caliper's place, as wide as its mounting. */
function caliper(
  p: Projector,
  entry: SceneInput['build']['brakes']['rear'],
  at: Point,
): readonly SheetItem[] {
  if (entry?.kind !== 'disc') return [];
  const { clock, lugRadius, mountSpacing } = entry.caliper;
  const corner = (along: number, out: number): Point => {
    const foot = polar2(at, lugRadius + out, clock);
    return polar2(foot, along, clock + Math.PI / 2);
  };
  const half = mountSpacing / 2 + 8e-3;
  const outline = [
    corner(-half, 10e-3),
    corner(half, 10e-3),
    corner(half * 0.8, -34e-3),
    corner(-half * 0.8, -34e-3),
  ];
  return [
    viewPolygon(p.view, outline, 'thin', 'paper'),
    ...[-1, 1].map((side) => viewCircle(p.view, corner((side * mountSpacing) / 2, 0), 4e-3, 'thin')),
  ];
}

/** A box around a point, its corners rounded as far as it is large enough; a size of 0 gives the line it is. */
export function box(at: Point, width: number, height: number, radius: number): Loop {
  const most = 0.499 * Math.min(width, height);
  const loop = most > 0 ? roundedRectangleLoop(at, width, height, Math.min(radius, most)) : undefined;
  if (loop?.ok) return loop.value;
  const corner = (x: number, y: number) => ({ x: at.x + x * width, y: at.y + y * height, bulge: 0 });
  return [corner(-0.5, -0.5), corner(0.5, -0.5), corner(0.5, 0.5), corner(-0.5, 0.5)];
}
