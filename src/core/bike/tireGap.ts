import type { BeltStage, Build, ChainStage } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import { findChain } from '../standards/index.ts';
import type { ChainLine, LadderStep, Layout, PlacedStack, TireGap } from './bike.ts';
import { namedPoint } from './placePoint.ts';
import { pitchDiameter } from './stackSizes.ts';

/** Room between the grown tire and what runs or stands beside it [m]. Practice: 3/16 in at least, 5 mm plus growth. */
export const TIRE_ROOM = 5e-3;

export interface TireGapContext {
  readonly build: Build;
  readonly layout: Layout;
  readonly stacks: Readonly<Record<string, PlacedStack>>;
  readonly shafts: Readonly<Record<string, Point3>>;
  readonly lines: readonly Omit<ChainLine, 'options'>[];
}

/** A wheel as the ladder sees it. */
interface Beside {
  readonly name: 'rear' | 'front';
  readonly axle: Point3;
  /** Tire radius [m]. */
  readonly radius: number;
  /** Y of the rim center [m]. */
  readonly rim: number;
  /** Half the tire's width, and its growth a side [m]. */
  readonly halfWidth: number;
  readonly growth: number;
}

/**
 * Room on each side between the tire with its growth and chains, belts, axle plates, fork legs and frame tubes that
 * pass beside it: gap = distance of the thing's near side from the rim center − half tire − growth.
 * @source practice, 5 mm plus growth
 */
export function tireGaps(context: TireGapContext): readonly TireGap[] {
  const rear = wheelBeside(context, 'rear');
  const front = wheelBeside(context, 'front');
  return [
    ...context.lines.flatMap((line) => lineGap(context, rear, line)),
    ...plateGaps(context, rear, 'rearAxle'),
    ...plateGaps(context, front, 'frontAxle'),
    ...forkGaps(context, front),
    ...tubeGaps(context, rear),
  ];
}

function wheelBeside({ build, layout, stacks }: TireGapContext, name: 'rear' | 'front'): Beside {
  const shaft = name === 'rear' ? 'rearAxle' : 'frontAxle';
  const tire = name === 'rear' ? layout.rearTire : layout.frontTire;
  const planes = Object.values(stacks)
    .filter((stack) => stack.shaft === shaft)
    .flatMap((stack) => stack.items.flatMap((item) => item.planes));
  return {
    name,
    axle: layout.shafts[shaft] ?? { x: 0, y: 0, z: tire.radius },
    radius: tire.radius,
    rim: planes.find((plane) => plane.runs === 'rim')?.y ?? 0,
    halfWidth: tire.width / 2,
    growth: build.wheels[name].growth ?? 0,
  };
}

/** What stands beside a tire: its near side, the side of the rim it is on, and its middle plane where it has one. */
interface Neighbor {
  readonly against: string;
  /** Y of its side toward the tire [m]. */
  readonly nearSide: number;
  /** 1 left of the rim, -1 right of it. */
  readonly side: 1 | -1;
  readonly plane?: { readonly y: number; readonly half: string };
}

/** One side of the ladder: rim center, tire edge, growth, gap, the neighbor's near side, its plane where it has one. */
function gapOf(wheel: Beside, { against, nearSide, side, plane }: Neighbor): TireGap {
  const edge = wheel.rim + side * wheel.halfWidth;
  const grown = edge + side * wheel.growth;
  const gap = (nearSide - grown) * side;
  const step = (label: string, from: number, to: number): LadderStep => ({
    label,
    length: (to - from) * side,
    from,
    to,
  });
  const steps = [
    step(`rim center to ${wheel.name} tire edge`, wheel.rim, edge),
    step('growth', edge, grown),
    step(`gap to ${against}`, grown, nearSide),
    ...(plane === undefined ? [] : [step(plane.half, nearSide, plane.y)]),
  ];
  return { against, gap, limit: TIRE_ROOM, within: gap >= TIRE_ROOM, steps };
}

const sideOf = (y: number, wheel: Beside): 1 | -1 => (y < wheel.rim ? -1 : 1);

function lineGap(
  context: TireGapContext,
  wheel: Beside,
  line: Omit<ChainLine, 'options'>,
): readonly TireGap[] {
  const stage = context.build.driveline.stages.find((one) => one.id === line.drive);
  if (stage === undefined || stage.kind === 'clutch' || !passesBeside(context, wheel, stage)) return [];
  const half = halfWidthOf(stage);
  if (half === undefined) return [];
  const [a, b] = [line.driverY, line.drivenY];
  const y = Math.abs(a - wheel.rim) < Math.abs(b - wheel.rim) ? a : b;
  const side = sideOf(y, wheel);
  const name = stage.kind === 'chain' ? 'chain' : 'belt';
  const plane = { y, half: `half ${name}` };
  return [gapOf(wheel, { against: `${name} ${line.drive}`, nearSide: y - side * half, side, plane })];
}

/** Half of what must pass: to the far end of a chain's joining pin, or half the belt's top width [m]. */
function halfWidthOf(stage: ChainStage | BeltStage): number | undefined {
  if (stage.kind === 'variable-belt') return stage.beltTopWidth / 2;
  const chain = findChain(stage.chain);
  return chain.ok ? chain.value.halfWidth : undefined;
}

/** True when the runs of a drive come within the tire's radius of the axle, seen from the side. */
function passesBeside(
  { build, shafts }: TireGapContext,
  wheel: Beside,
  stage: ChainStage | BeltStage,
): boolean {
  const [from, to] = [shafts[stage.from], shafts[stage.to]];
  if (from === undefined || to === undefined) return false;
  const diameters =
    stage.kind === 'chain'
      ? [pitchDiameter(build, stage.from, stage.id) ?? 0, pitchDiameter(build, stage.to, stage.id) ?? 0]
      : [stage.driver.largest, stage.driven.largest];
  return distanceToSegment(wheel.axle, from, to) - Math.max(...diameters) / 2 < wheel.radius;
}

/** Distance of a point from a segment, both seen from the side [m]. */
function distanceToSegment(point: Point3, from: Point3, to: Point3): number {
  const [dx, dz] = [to.x - from.x, to.z - from.z];
  const square = dx * dx + dz * dz;
  const along = square === 0 ? 0 : ((point.x - from.x) * dx + (point.z - from.z) * dz) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - t * dx, point.z - from.z - t * dz);
}

/** Plates and legs on the axle: the nearest one on each side of the rim. */
function plateGaps({ stacks }: TireGapContext, wheel: Beside, shaft: string): readonly TireGap[] {
  const items = Object.values(stacks)
    .filter((stack) => stack.shaft === shaft)
    .flatMap((stack) => stack.items.filter((item) => item.kind === 'plate' || item.kind === 'leg'));
  const left = items.filter((item) => item.right >= wheel.rim).sort((a, b) => a.right - b.right)[0];
  const right = items.filter((item) => item.left <= wheel.rim).sort((a, b) => b.left - a.left)[0];
  const name = (id: string) => `${wheel.name} ${id.replaceAll('-', ' ')}`;
  return [
    ...(left === undefined ? [] : [gapOf(wheel, { against: name(left.id), nearSide: left.right, side: 1 })]),
    ...(right === undefined
      ? []
      : [gapOf(wheel, { against: name(right.id), nearSide: right.left, side: -1 })]),
  ];
}

function forkGaps({ build }: TireGapContext, wheel: Beside): readonly TireGap[] {
  const { legSpacing, legDiameter } = build.steering.fork;
  const inside = (legSpacing - legDiameter) / 2;
  return [
    gapOf(wheel, { against: 'fork leg left', nearSide: inside, side: 1 }),
    gapOf(wheel, { against: 'fork leg right', nearSide: -inside, side: -1 }),
  ];
}

/** Frame tubes that pass beside the rear tire, by the straight lines between their nodes. */
function tubeGaps({ build, layout }: TireGapContext, wheel: Beside): readonly TireGap[] {
  return Object.entries(build.frame.tubes).flatMap(([name, tube]) => {
    const outside = build.frame.tubing[tube.tubing]?.outside;
    if (outside === undefined) return [];
    const points = tube.through.flatMap((node) => namedPoint(layout.points, node) ?? []);
    return (tube.mirror ? [1, -1] : [1]).flatMap((hand) => {
      const own = points.map((point) => ({ ...point, y: hand * point.y }));
      const near = own.slice(1).flatMap((to, i) => besideTire(wheel, own[i]!, to, outside / 2) ?? []);
      if (near.length === 0) return [];
      const side = sideOf(own.reduce((sum, point) => sum + point.y, 0) / own.length, wheel);
      const against = `tube ${name}${tube.mirror ? (side > 0 ? ' left' : ' right') : ''}`;
      return [gapOf(wheel, { against, side, nearSide: wheel.rim + side * Math.min(...near) })];
    });
  });
}

/** Least distance from the rim center plane of a straight tube's surface where it is within the tire's circle [m]. */
function besideTire(wheel: Beside, from: Point3, to: Point3, radius: number): number | undefined {
  const span = clipToCircle(wheel, from, to, radius);
  if (span === undefined) return undefined;
  const y = (t: number) => from.y + t * (to.y - from.y) - wheel.rim;
  const [a, b] = [y(span[0]), y(span[1])];
  const axis = a * b <= 0 ? 0 : Math.min(Math.abs(a), Math.abs(b));
  const flat = Math.hypot(to.x - from.x, to.z - from.z);
  // Across the bike a slanting tube is wider than its diameter by the secant of its slant.
  const secant = flat === 0 ? 1 : Math.hypot(flat, to.y - from.y) / flat;
  return axis - radius * secant;
}

/** The part of a segment, as shares 0 to 1, whose tube comes within the tire's circle, seen from the side. */
function clipToCircle(
  wheel: Beside,
  from: Point3,
  to: Point3,
  radius: number,
): readonly [number, number] | undefined {
  const [dx, dz] = [to.x - from.x, to.z - from.z];
  const [px, pz] = [from.x - wheel.axle.x, from.z - wheel.axle.z];
  const reach = wheel.radius + radius;
  const a = dx * dx + dz * dz;
  const c = px * px + pz * pz - reach * reach;
  if (a === 0) return c < 0 ? [0, 1] : undefined;
  const half = px * dx + pz * dz;
  const root = half * half - a * c;
  if (root <= 0) return undefined;
  const start = Math.max(0, (-half - Math.sqrt(root)) / a);
  const end = Math.min(1, (-half + Math.sqrt(root)) / a);
  return start < end ? [start, end] : undefined;
}
