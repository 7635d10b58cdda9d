import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { centerlinePlaces, cross3, dot3, type Point3, subtract3 } from '../geometry/index.ts';

/** Where the steering meets the frame. */
export interface LockContact {
  /** δ of first contact [rad]. */
  readonly angle: number;
  readonly by: 'tire' | 'fork leg';
  readonly against: string;
  readonly toward: 'left' | 'right';
}

/** Steering angles looked at, and the step between them [rad]; between two steps a contact is closed in on. */
const MOST = (80 * Math.PI) / 180;
const STEP = Math.PI / 90;
const HALVINGS = 30;
/** Tubes are looked at in steps of this [m] and bends of this [rad]. */
const TUBE_STEP = 4e-3;
const BEND_STEP = 0.05;

/**
 * The steering angle to each side at which the front tire (with growth) or a fork leg first touches a frame tube, at the
 * design stance; undefined to a side where nothing is met up to 80°. Bars, tank and cables are not looked at.
 * @source derived, distance of tube points to a tire and to legs turned about the steering axis
 */
export function lockContacts(build: Build, bike: Bike): readonly LockContact[] {
  const front = frontEnd(build, bike);
  const points = tubePoints(bike, front);
  return ([1, -1] as const).flatMap((way): LockContact[] => {
    const found = firstContact(front, points, way);
    return found ? [{ ...found, toward: way > 0 ? 'left' : 'right' }] : [];
  });
}

/** A tube's point along the axis (s from the axle's foot), forward of it (u) and to the left (v). */
interface TubePoint {
  readonly tube: string;
  readonly radius: number;
  readonly u: number;
  readonly v: number;
  readonly s: number;
}

interface FrontEnd {
  readonly foot: Point3;
  readonly up: Point3;
  readonly forward: Point3;
  readonly offset: number;
  readonly tireRadius: number;
  readonly tireHalf: number;
  readonly legHalfSpacing: number;
  readonly legRadius: number;
  readonly legTop: number;
}

function frontEnd(build: Build, { layout }: Bike): FrontEnd {
  const { forkOffset, forkLength, neck, fork } = build.steering;
  const up = layout.steeringAxis;
  const forward = cross3({ x: 0, y: 1, z: 0 }, up);
  const axle = layout.shafts.frontAxle!;
  return {
    foot: subtract3(axle, { x: forward.x * forkOffset, y: 0, z: forward.z * forkOffset }),
    up,
    forward,
    offset: forkOffset,
    tireRadius: layout.frontTire.radius,
    tireHalf: layout.frontTire.width / 2 + (build.wheels.front.growth ?? 0),
    legHalfSpacing: fork.legSpacing / 2,
    legRadius: fork.legDiameter / 2,
    legTop: forkLength + neck.length,
  };
}

/** Points of tubes that the front end can meet at some angle; far fewer than there are. */
function tubePoints(bike: Bike, front: FrontEnd): TubePoint[] {
  return bike.tubes.flatMap((tube) => {
    const radius = tube.outside / 2;
    const places = centerlinePlaces(tube.centerline, BEND_STEP).map(({ point }) => local(front, point));
    return filled(places)
      .filter((point) => canMeet(front, point, radius))
      .map((point) => ({ ...point, tube: tube.id, radius }));
  });
}

/** Whether the circle of a point about the axis comes to where a leg or the tire passes. */
function canMeet(front: FrontEnd, { u, v, s }: Local, radius: number): boolean {
  const out = Math.hypot(u, v);
  const { offset, tireRadius, tireHalf, legHalfSpacing, legRadius, legTop } = front;
  const legReach = legRadius + radius;
  const byLeg =
    s > -legReach && s < legTop + legReach && Math.abs(out - Math.hypot(offset, legHalfSpacing)) < legReach;
  const tall = tireRadius + radius - Math.abs(s);
  const chord = Math.sqrt(Math.max(0, (tireRadius + radius) ** 2 - s ** 2));
  return byLeg || (tall > 0 && out < Math.hypot(Math.abs(offset) + chord, tireHalf + radius));
}

type Local = Pick<TubePoint, 'u' | 'v' | 's'>;

function local(front: FrontEnd, point: Point3): Local {
  const from = subtract3(point, front.foot);
  return { u: dot3(from, front.forward), v: from.y, s: dot3(from, front.up) };
}

function filled(places: readonly Local[]): Local[] {
  return places.flatMap((to, i) => {
    const from = places[i - 1];
    if (!from) return [to];
    const length = Math.hypot(to.u - from.u, to.v - from.v, to.s - from.s);
    const count = Math.max(1, Math.ceil(length / TUBE_STEP));
    return Array.from({ length: count }, (_, k) => {
      const t = (k + 1) / count;
      return {
        u: from.u + (to.u - from.u) * t,
        v: from.v + (to.v - from.v) * t,
        s: from.s + (to.s - from.s) * t,
      };
    });
  });
}

interface Near {
  readonly gap: number;
  readonly by: LockContact['by'];
  readonly against: string;
}

function firstContact(
  front: FrontEnd,
  points: readonly TubePoint[],
  way: 1 | -1,
): Omit<LockContact, 'toward'> | undefined {
  let clear = 0;
  for (let angle = 0; angle <= MOST; angle += STEP) {
    const near = nearest(front, points, way * angle);
    if (!near || near.gap > 0) {
      clear = angle;
      continue;
    }
    if (angle === 0) return { angle: 0, by: near.by, against: near.against };
    return closeIn(front, points, way, [clear, angle]);
  }
  return undefined;
}

function closeIn(
  front: FrontEnd,
  points: readonly TubePoint[],
  way: 1 | -1,
  [clear, met]: readonly [number, number],
): Omit<LockContact, 'toward'> {
  let [low, high] = [clear, met];
  let near = nearest(front, points, way * high)!;
  for (let k = 0; k < HALVINGS; k += 1) {
    const middle = (low + high) / 2;
    const here = nearest(front, points, way * middle)!;
    if (here.gap > 0) low = middle;
    else [high, near] = [middle, here];
  }
  return { angle: high, by: near.by, against: near.against };
}

/** The smallest gap with the front end turned by `angle`, left positive; undefined without points. */
function nearest(front: FrontEnd, points: readonly TubePoint[], angle: number): Near | undefined {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let best: Near | undefined;
  for (const point of points) {
    // The frame turned back instead of the front end turned.
    const u = point.u * c + point.v * s;
    const v = point.v * c - point.u * s;
    const tire = tireGap(front, u, v, point.s) - point.radius;
    const leg = legGap(front, u, v, point.s) - point.radius;
    const gap = Math.min(tire, leg);
    if (!best || gap < best.gap) best = { gap, by: tire < leg ? 'tire' : 'fork leg', against: point.tube };
  }
  return best;
}

/** To a tire whose section is a half round of the tread on straight sidewalls; below 0 inside it. */
function tireGap({ offset, tireRadius, tireHalf }: FrontEnd, u: number, v: number, s: number): number {
  const crown = Math.min(tireHalf, tireRadius);
  const out = Math.sqrt((u - offset) ** 2 + s ** 2) - (tireRadius - crown);
  const side = Math.abs(v);
  return out > 0 ? Math.sqrt(out * out + side * side) - crown : side - tireHalf;
}

/** To the nearer leg, a rod along the axis from the axle to the top of the neck. */
function legGap(
  { offset, legHalfSpacing, legRadius, legTop }: FrontEnd,
  u: number,
  v: number,
  s: number,
): number {
  const along = s < 0 ? -s : Math.max(0, s - legTop);
  const across = Math.sqrt((u - offset) ** 2 + (Math.abs(v) - legHalfSpacing) ** 2);
  return Math.sqrt(along * along + across * across) - legRadius;
}
