import {
  type Build,
  type EngineEntry,
  type Placement,
  placementOrder,
  type TireEntry,
  type WheelEntry,
} from '../build/index.ts';
import { along3, type Point3 } from '../geometry/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import { tireDimensions } from '../standards/index.ts';
import type { Layout, LayoutPlaces, TireSize } from './bike.ts';
import { enginePoint, mirrored, placePoint } from './placePoint.ts';
import { axisForward, axisUp } from './stance.ts';
import { resolveStances } from './stances.ts';

/** Share of a tire's diameter that its sidewall takes at most, for the picture of a tire without a rim size. */
const TALLEST_SIDEWALL = 0.3;

/**
 * The fixed points and sizes of a build at its design stance: tires, stances, datums, nodes and shafts as drawn.
 * @throws where {@link resolveLayout} gives issues; the reader has reported those
 * @source derived, coordinates along datums
 */
export function layOut(build: Build): Layout {
  const layout = resolveLayout(build);
  if (!layout.ok) throw new Error(`a build that was not checked: ${JSON.stringify(layout.issues)}`);
  return layout.value;
}

/**
 * {@link layOut} for a build whose names, tires and placements have not been checked.
 * @issue missing, unreadable, not-in-table — a tire without a size
 * @issue unknown-name, duplicate-name, conflict — placements (see `placementOrder`), points in one place where a
 * direction is wanted, tires that the bike cannot stand on
 * @source derived, coordinates along datums
 */
export function resolveLayout(build: Build): Outcome<Layout> {
  const tires = resolveTires(build);
  const points = tires.ok ? placePoints(build, tires.value) : undefined;
  if (!tires.ok) return tires;
  if (!points?.ok) return points!;
  const { rear, front, rearFitted, frontFitted } = tires.value;
  const stances = resolveStances(build, { rear, front }, { rear: rearFitted, front: frontFitted });
  const places = resolvePlaces(build, points.value);
  const issues = [...issuesOf(stances), ...issuesOf(places)];
  const [first, ...more] = issues;
  if (first || !stances.ok || !places.ok) return bad(first!, ...more);
  return good({
    rearTire: rear,
    frontTire: front,
    fitted: { rear: rearFitted, front: frontFitted },
    stances: stances.value,
    points: withMirrored(points.value),
    steeringAxis: axisUp(build.steering.headAngle),
    shafts: shaftCenters(build, points.value),
    places: places.value,
  });
}

/**
 * Datums, shafts and nodes of a build by name, without the mirrored ones [m].
 * @issue as `placementOrder`, and conflict where a direction is wanted between two points in one place
 * @source derived, coordinates along datums
 */
export function resolvePlacements(build: Build): Outcome<ReadonlyMap<string, Point3>> {
  const tires = resolveTires(build);
  return tires.ok ? placePoints(build, tires.value) : tires;
}

interface Tires {
  readonly rear: TireSize;
  readonly front: TireSize;
  readonly rearFitted: TireSize;
  readonly frontFitted: TireSize;
}

function resolveTires(build: Build): Outcome<Tires> {
  const { rear, front } = build.wheels;
  const sizes = {
    rear: tireSize(rear, rear.tire, 'wheels.rear.tire'),
    front: tireSize(front, front.tire, 'wheels.front.tire'),
    rearFitted: tireSize(rear, rear.fitted ?? rear.tire, 'wheels.rear.fitted'),
    frontFitted: tireSize(front, front.fitted ?? front.tire, 'wheels.front.fitted'),
  };
  const { rear: a, front: b, rearFitted: c, frontFitted: d } = sizes;
  if (a.ok && b.ok && c.ok && d.ok)
    return good({ rear: a.value, front: b.value, rearFitted: c.value, frontFitted: d.value });
  const issues = [a, b, ...(rear.fitted ? [c] : []), ...(front.fitted ? [d] : [])].flatMap(issuesOf);
  const [first, ...more] = issues;
  return bad(first!, ...more);
}

function tireSize(wheel: WheelEntry, tire: TireEntry, path: string): Outcome<TireSize> {
  const read = tireDimensions(tire);
  if (!read.ok) return bad(...(read.issues.map((issue) => pathed(issue, path)) as [Issue, ...Issue[]]));
  const { rimDiameter, ...size } = read.value;
  const sidewall = Math.min(size.width, 2 * TALLEST_SIDEWALL * size.radius);
  return good({ ...size, rimDiameter: wheel.rimDiameter ?? rimDiameter ?? 2 * (size.radius - sidewall) });
}

const pathed = (issue: Issue, path: string): Issue => ({
  ...issue,
  path: issue.path === '' ? path : `${path}.${issue.path}`,
});

function placePoints(build: Build, tires: Tires): Outcome<ReadonlyMap<string, Point3>> {
  const order = placementOrder(build);
  if (!order.ok) return order;
  const points = new Map<string, Point3>(steeringPoints(build, tires));
  const issues: Issue[] = [];
  for (const { name, path, placement } of order.value) {
    const point = placePoint(points, placement);
    if (!point.ok) {
      issues.push(...point.issues.map((issue) => pathed(issue, path)));
      // One point in the wrong place would make more issues of its own.
      break;
    }
    points.set(name, point.value);
    if (name === 'engineBase') {
      const shaft = engineShaft(build.engine, point.value);
      points.set('engineShaft', shaft).set('engine', shaft);
    }
  }
  const [first, ...more] = issues;
  return first ? bad(first, ...more) : good(points);
}

function steeringPoints(build: Build, tires: Tires): [string, Point3][] {
  const { wheelbase, headAngle, forkOffset, forkLength, neck } = build.steering;
  const frontAxle = { x: wheelbase, y: 0, z: tires.front.radius };
  const foot = along3(frontAxle, axisForward(headAngle), -forkOffset);
  const neckBottom = along3(foot, axisUp(headAngle), forkLength);
  return [
    ['origin', { x: 0, y: 0, z: 0 }],
    ['rearAxle', { x: 0, y: 0, z: tires.rear.radius }],
    ['frontAxle', frontAxle],
    ['neckBottom', neckBottom],
    ['neckTop', along3(neckBottom, axisUp(headAngle), neck.length)],
  ];
}

const engineShaft = (engine: EngineEntry, base: Point3): Point3 =>
  enginePoint(base, engine.tilt ?? 0, { forward: engine.shaft.forward, left: 0, up: engine.shaft.height });

/** Points off the center plane also have a mirror image on the other side, as `name.right`. */
function withMirrored(points: ReadonlyMap<string, Point3>): Readonly<Record<string, Point3>> {
  const all = [...points].flatMap(([name, point]): [string, Point3][] =>
    point.y === 0
      ? [[name, point]]
      : [
          [name, point],
          [`${name}.right`, mirrored(point)],
        ],
  );
  return Object.fromEntries(all);
}

function shaftCenters(build: Build, points: ReadonlyMap<string, Point3>): Readonly<Record<string, Point3>> {
  const own = Object.keys(build.driveline.shafts).flatMap((name) => {
    const center = points.get(name);
    return center ? [[name, center] as const] : [];
  });
  return Object.fromEntries([
    ...own,
    ['engine', points.get('engineShaft')!] as const,
    ['rearAxle', points.get('rearAxle')!] as const,
    ['frontAxle', points.get('frontAxle')!] as const,
  ]);
}

function resolvePlaces(build: Build, points: ReadonlyMap<string, Point3>): Outcome<LayoutPlaces> {
  const issues: Issue[] = [];
  const at = (path: string, placement: Placement): Point3 => {
    const point = placePoint(points, placement);
    if (point.ok) return point.value;
    issues.push(...point.issues.map((issue) => pathed(issue, path)));
    return { x: 0, y: 0, z: 0 };
  };
  const { seat, pegs, stand } = build.seating;
  const places: LayoutPlaces = {
    seat: at('seating.seat.place', seat.place),
    peg: at('seating.pegs.place', pegs.place),
    grip: at('steering.bars.grip', build.steering.bars.grip),
    ...(stand ? { stand: at('seating.stand.pivot', stand.pivot) } : {}),
    bodies: Object.fromEntries(
      Object.entries(build.bodies ?? {}).map(([name, body]) => [
        name,
        at(`bodies.${name}.place`, body.place),
      ]),
    ),
  };
  const [first, ...more] = issues;
  return first ? bad(first, ...more) : good(places);
}

const issuesOf = <T>(outcome: Outcome<T>): readonly Issue[] => (outcome.ok ? [] : outcome.issues);
