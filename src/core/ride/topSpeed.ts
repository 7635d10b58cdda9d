import { crossings } from '../numerics/index.ts';
import type { DrivePath, DriveSegment } from './drivePath.ts';
import type { AccelerationLimit, RoadForces } from './roadLoad.ts';

/** What keeps the bike from going faster. */
export type SpeedLimit =
  /** Resistance equals the force at the tire. */
  | 'resistance'
  /** The engine's governor, or the end of its curve, in the highest ratio. */
  | 'engine-speed'
  /** Force at a switch falls below resistance: the next ratio or the locked clutch pulls less. */
  | 'force-drop'
  | 'wheel-lift'
  | 'grip'
  /** It does not move off at all. */
  | 'no-launch';

export interface TopSpeed {
  /** [m/s] */
  readonly speed: number;
  readonly limitedBy: SpeedLimit;
}

/**
 * Speed that full throttle reaches from a given one: the first at which the force left over falls to nothing. Force and
 * resistance are polynomials in speed on every segment (times v while a belt shifts), so none is missed.
 * @param start speed from which it accelerates [m/s]
 * @source derived, roots of force less resistance
 */
export function topSpeed(
  path: DrivePath,
  forces: RoadForces,
  limits: readonly AccelerationLimit[],
  start: number = 0,
): TopSpeed {
  const held = limitedTo(limits, path.highest, start);
  let speed = start;
  for (const segment of path.segments) {
    if (segment.to <= start) continue;
    const from = Math.max(segment.from, start);
    if (netAt(segment, forces, from) <= 0) {
      if (speed === 0) return { speed: 0, limitedBy: 'no-launch' };
      return least({ speed: from, limitedBy: from === start ? 'resistance' : 'force-drop' }, held);
    }
    const root = crossings(netPolynomial(segment, forces), from, segment.to).find((v) => v > from);
    if (root !== undefined) return least({ speed: root, limitedBy: 'resistance' }, held);
    speed = segment.to;
  }
  return least({ speed: Math.max(speed, start), limitedBy: 'engine-speed' }, held);
}

/** Force less resistance, at full throttle [N]. @source derived */
export function netAt(segment: DriveSegment, forces: RoadForces, speed: number): number {
  const force = segment.force0 + segment.force1 * speed + (segment.power === 0 ? 0 : segment.power / speed);
  return force - forces.rolling - forces.climb - forces.air * speed * speed;
}

/** Net force over speed, or net power while a belt shifts: both change sign at the same speeds. */
function netPolynomial(segment: DriveSegment, { rolling, climb, air }: RoadForces): readonly number[] {
  return segment.power === 0
    ? [segment.force0 - rolling - climb, segment.force1, -air]
    : [segment.power, segment.force0 - rolling - climb, segment.force1, -air];
}

const least = (a: TopSpeed, b: TopSpeed | undefined): TopSpeed => (b && b.speed < a.speed ? b : a);

/** Where wheel lift or grip leave nothing to accelerate with. */
function limitedTo(
  limits: readonly AccelerationLimit[],
  highest: number,
  start: number,
): TopSpeed | undefined {
  let best: TopSpeed | undefined;
  for (const { by, still, square } of limits) {
    if (still + square * start * start <= 0)
      return { speed: start, limitedBy: start === 0 ? 'no-launch' : by };
    const speed = square < 0 ? Math.sqrt(-still / square) : Number.POSITIVE_INFINITY;
    if (speed < highest && speed < (best?.speed ?? Number.POSITIVE_INFINITY)) best = { speed, limitedBy: by };
  }
  return best;
}
