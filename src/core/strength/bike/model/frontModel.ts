import type { Bike, MassSummary } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import { add3, type Point3, scale3 } from '../../../geometry/index.ts';
import { materialStrength } from '../../../standards/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { FrameDraft, LineStock } from './draft.ts';

/** Nodes of a wheel's axle that carry it. */
export interface AxleNodes {
  /** Center of the axle [m]. */
  readonly center: Point3;
  /** Stations at the hub's two faces, left and right. */
  readonly hub: readonly [string, string];
  /** Stations where leg or plate holds it, left and right. */
  readonly held: readonly [string, string];
  /** Y of the hub stations [m]. */
  readonly hubY: readonly [number, number];
  /** The stack leaves the hub no width between its holders; it is taken as wide as the wheel's entry says. */
  readonly isHubLost: boolean;
}

const STEEL = materialStrength('mild-steel');

/** Stock of a steel line. */
export const steelLine = (outside: number, wall: number, mass: number): LineStock => ({
  outside,
  wall,
  elasticModulus: STEEL.elasticModulus,
  shearModulus: STEEL.shearModulus,
  mass,
});

/** Half of the bearings' stack where it is not given [m]. @source practice */
const HALF_STACK = 0.015;
/** A bearing as a short stout bar [m]. */
const BEARING_BAR = 0.05;

/**
 * Neck, stem on its two bearings, legs between two stiff clamps, and the front axle. The steering is held by the rider:
 * the lower bearing passes push along the axis and twist, the upper one only forces across it, neither bends.
 */
export function addFront(
  draft: FrameDraft,
  build: Build,
  bike: Bike,
  masses: MassSummary,
  settings: LoadSettings,
): { readonly front: AxleNodes; readonly upperClamp: string; readonly legs: readonly [string, string] } {
  const { steering } = build;
  const massOf = (id: string): number => masses.parts.find((part) => part.id === id)?.mass ?? 0;
  const stem = addStem(draft, build, bike, settings);
  const legs = addLegs(draft, build, bike, settings, { ...stem, mass: massOf('steering.fork') });
  const legY = steering.fork.legSpacing / 2;
  const front = addAxle(draft, bike, {
    shaft: 'frontAxle',
    diameter: axleDiameter(build, bike, 'front'),
    hubWidth: build.wheels.front.hub.width,
    mass: massOf('shafts.frontAxle'),
    ends: heldY(bike, 'frontAxle', 'leg') ?? [legY, -legY],
  });
  draft.tie(legs[0], front.held[0]);
  draft.tie(legs[1], front.held[1]);
  return { front, upperClamp: stem.high, legs };
}

/** Nodes of the lower and the upper clamp, and half of a bearing's stack [m]. */
interface Stem {
  readonly low: string;
  readonly high: string;
  readonly half: number;
}

/** The stem in the neck, on a bearing at each end. */
function addStem(draft: FrameDraft, build: Build, bike: Bike, settings: LoadSettings): Stem {
  const { neck: tube } = build.steering;
  const { points, steeringAxis: axis } = bike.layout;
  const half = tube.bearingStack === undefined ? HALF_STACK : tube.bearingStack / 2;
  const neck = draft.lines.get('neck')!;
  const stem = draft.addStraight(
    'stem',
    steelLine(settings.stemOutside, Math.min(settings.stemWall, settings.stemOutside / 2), 0),
    add3(points.neckBottom!, scale3(axis, -half)),
    add3(points.neckTop!, scale3(axis, half)),
  );
  const [low, high] = [draft.station(stem, 0), draft.station(stem, stem.length)];
  const bar = bearingBar();
  draft.extra.push({
    ...bar,
    id: 'bearing-low',
    from: draft.station(neck, 0),
    to: low,
    releases: { to: ['ry', 'rz'] },
  });
  draft.extra.push({
    ...bar,
    id: 'bearing-high',
    from: draft.station(neck, neck.length),
    to: high,
    releases: { to: ['ux', 'rx', 'ry', 'rz'] },
  });
  return { low, high, half };
}

/** Both legs in their clamps; their feet, left first. */
function addLegs(
  draft: FrameDraft,
  { steering }: Build,
  bike: Bike,
  settings: LoadSettings,
  { low, high, half, mass }: Stem & { readonly mass: number },
): readonly [string, string] {
  const axis = bike.layout.steeringAxis;
  const axleCenter = bike.shafts.frontAxle ?? bike.layout.points.frontAxle!;
  const lower = steering.forkLength - half;
  const upper = steering.forkLength + steering.neck.length + half;
  const wall = Math.min(settings.legWall, steering.fork.legDiameter / 2);
  const leg = (name: 'left' | 'right', y: number): string => {
    const foot = { ...axleCenter, y };
    const stock = steelLine(steering.fork.legDiameter, wall, mass / 2);
    const line = draft.addStraight(`leg.${name}`, stock, foot, add3(foot, scale3(axis, upper)));
    draft.tie(low, draft.station(line, lower));
    draft.tie(high, draft.station(line, line.length));
    return draft.station(line, 0);
  };
  const legY = steering.fork.legSpacing / 2;
  return [leg('left', legY), leg('right', -legY)];
}

function bearingBar() {
  const area = (Math.PI / 4) * BEARING_BAR ** 2;
  const second = (Math.PI / 64) * BEARING_BAR ** 4;
  return {
    youngsModulus: STEEL.elasticModulus,
    shearModulus: STEEL.shearModulus,
    area,
    secondMomentY: second,
    secondMomentZ: second,
    torsionConstant: 2 * second,
  };
}

/** Diameter of an axle from its stack, or the bore of the hub [m]. */
export function axleDiameter(build: Build, bike: Bike, wheel: 'front' | 'rear'): number {
  const stack = Object.values(bike.stacks).find((one) => one.shaft === `${wheel}Axle`);
  return stack?.axle?.diameter ?? build.wheels[wheel].hub.bore;
}

/** Y of the middles of the outermost two items of a kind on an axle, left first. */
export function heldY(
  bike: Bike,
  shaft: string,
  kind: 'leg' | 'plate',
): readonly [number, number] | undefined {
  const stack = Object.values(bike.stacks).find((one) => one.shaft === shaft);
  const middles = (stack?.items ?? [])
    .filter((item) => item.kind === kind)
    .map((item) => (item.left + item.right) / 2)
    .filter((y) => Number.isFinite(y));
  const [most, least] = [Math.max(...middles), Math.min(...middles)];
  return middles.length >= 2 && most > 0 && least < 0 ? [most, least] : undefined;
}

/** A hub face nearer to a plate than this is taken to stand off from it [m]. */
const LEAST_OVERHANG = 4e-3;

/** Two bearings do not stand closer than this [m]. */
const LEAST_HUB = 5e-3;

/** An axle with nodes where it is held and where its hub begins and ends. */
export function addAxle(
  draft: FrameDraft,
  bike: Bike,
  of: {
    readonly shaft: 'frontAxle' | 'rearAxle';
    readonly diameter: number;
    readonly hubWidth: number;
    readonly mass: number;
    readonly ends: readonly [number, number];
  },
): AxleNodes {
  const center = bike.shafts[of.shaft] ?? bike.layout.points[of.shaft]!;
  const [left, right] = of.ends;
  const line = draft.addStraight(
    of.shaft,
    steelLine(of.diameter, of.diameter / 2, of.mass),
    { ...center, y: left },
    { ...center, y: right },
  );
  const hub = Object.values(bike.stacks)
    .find((one) => one.shaft === of.shaft)
    ?.items.find((item) => item.kind === 'hub');
  const inside = (y: number): number => Math.min(Math.max(y, right + LEAST_OVERHANG), left - LEAST_OVERHANG);
  const between = (a: number, b: number) => [inside(a), inside(b)] as const;
  const drawn = hub && between(hub.left, hub.right);
  const isHubLost = drawn !== undefined && !(drawn[0] - drawn[1] > LEAST_HUB);
  const hubY = drawn && !isHubLost ? drawn : between(of.hubWidth / 2, -of.hubWidth / 2);
  const nodeAt = (y: number): string => draft.station(line, left - y);
  return {
    center,
    hub: [nodeAt(hubY[0]), nodeAt(hubY[1])],
    held: [nodeAt(left), nodeAt(right)],
    hubY,
    isHubLost,
  };
}
