import { type StoppingFigure, stoppingFigures, type UsualRange } from '../standards/index.ts';
import { frontGripShare, idealFrontShare, type LongitudinalBike } from './statics.ts';
import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

/** What one brake makes of the rider's force. */
export interface BrakeSide {
  /** Force at the ground over force at the lever or pedal [-], for the lowest, usual and highest friction. */
  readonly gain: UsualRange;
  /** Force on the lever or pedal in a hard stop [N]. */
  readonly control: number;
}

export interface BrakingInput {
  readonly bike: LongitudinalBike;
  /** μ, tire on road [-], > 0. */
  readonly friction: number;
  /** v, at the start [m/s]. */
  readonly speed: number;
  /** Before the brake bites [s]. */
  readonly reaction: number;
  readonly front?: BrakeSide;
  readonly rear?: BrakeSide;
}

/** A stop with one or both brakes. */
export interface Stop {
  readonly with: 'front' | 'rear' | 'both';
  /** [m/s²] */
  readonly deceleration: number;
  readonly limitedBy: BrakeLimit;
  /** Reaction and braking [m]; absent when nothing brakes. */
  readonly distance?: number;
}

/** `hand`: the rider's force, no wheel locks; `lift`: the rear wheel leaves the ground and the bike goes over. */
export type BrakeLimit = 'hand' | 'front-locks' | 'rear-locks' | 'both-lock' | 'lift';

export interface Braking {
  readonly stops: readonly Stop[];
  /** Force on the lever at which each wheel alone locks, or the front one lifts the rear [N], at the usual friction. */
  readonly frontLock?: { readonly control: number; readonly by: 'locks' | 'lift' };
  readonly rearLock?: { readonly control: number };
  /** Share of the front of both brakes' force at their control forces [-]. */
  readonly frontShare?: number;
  /** Published figures beside what each brake alone gives here; for reference only. */
  readonly reference: readonly ReferenceRow[];
}

export interface ReferenceRow {
  readonly figure: StoppingFigure;
  readonly with: 'front' | 'rear';
  readonly deceleration: number;
  /** Distance with the figure's own delay at its test speed [m], against the one it allows. */
  readonly distance: number;
  readonly allowed: number;
  readonly reaches: boolean;
}

/** A point of the brake distribution picture, both as shares of the weight. */
export interface DistributionPoint {
  readonly front: number;
  readonly rear: number;
}

/**
 * Stops with the front, the rear and both brakes at their control forces, by the usual friction of their pads.
 * @source derived, moments about the contacts, see `brakedBy`
 */
export function brakingOf(input: BrakingInput): Braking {
  const { bike, friction, front, rear } = input;
  const weight = bike.mass * STANDARD_GRAVITY;
  const force = (side: BrakeSide | undefined): number =>
    side ? (side.gain.usual * side.control) / weight : 0;
  const [f, r] = [force(front), force(rear)];
  const stop = (of: Stop['with'], shares: DistributionPoint): Stop => {
    const { share, limitedBy } = brakedBy(bike, friction, shares);
    const deceleration = share * STANDARD_GRAVITY;
    const distance =
      deceleration > 0 ? { distance: stoppingDistance(input.speed, deceleration, input.reaction) } : {};
    return { with: of, deceleration, limitedBy, ...distance };
  };
  const stops = [
    ...(front ? [stop('front', { front: f, rear: 0 })] : []),
    ...(rear ? [stop('rear', { front: 0, rear: r })] : []),
    ...(front && rear ? [stop('both', { front: f, rear: r })] : []),
  ];
  return {
    stops,
    ...(front ? { frontLock: frontLockOf(bike, friction, front) } : {}),
    ...(rear ? { rearLock: { control: (rearLockShare(bike, friction) * weight) / rear.gain.usual } } : {}),
    ...(front && rear && f + r > 0 ? { frontShare: f / (f + r) } : {}),
    reference: referenceRows(stops),
  };
}

/**
 * Deceleration that two brake forces give, each no more than its tire carries: the loads shift with the deceleration,
 * N_f/(m·g) = (b + x·h)/p. A locked tire is taken to keep its friction. The rear wheel lifts at x = (p − b)/h.
 * @param wanted forces of the brakes as shares of the weight [-]
 * @returns x = a/g [-] and what limits it
 * @source derived, moments about the contacts
 */
export function brakedBy(
  bike: LongitudinalBike,
  friction: number,
  wanted: DistributionPoint,
): { readonly share: number; readonly limitedBy: BrakeLimit } {
  const { wheelbase: p, ahead: b, height: h } = bike;
  const lift = (p - b) / h;
  if (wanted.front >= lift && friction >= lift) return { share: lift, limitedBy: 'lift' };
  const carries = (x: number): DistributionPoint => ({
    front: (friction * (b + x * h)) / p,
    rear: (friction * (p - b - x * h)) / p,
  });
  const free = wanted.front + wanted.rear;
  const grip = carries(free);
  if (wanted.front <= grip.front && wanted.rear <= grip.rear) return { share: free, limitedBy: 'hand' };
  const frontLocked = ((friction * b) / p + wanted.rear) / (1 - (friction * h) / p);
  if (
    friction * h < p &&
    wanted.front > carries(frontLocked).front &&
    wanted.rear <= carries(frontLocked).rear
  )
    return { share: frontLocked, limitedBy: 'front-locks' };
  const rearLocked = (wanted.front + (friction * (p - b)) / p) / (1 + (friction * h) / p);
  if (wanted.rear > carries(rearLocked).rear && wanted.front <= carries(rearLocked).front)
    return { share: rearLocked, limitedBy: 'rear-locks' };
  return friction < lift ? { share: friction, limitedBy: 'both-lock' } : { share: lift, limitedBy: 'lift' };
}

/**
 * S = v·t_r + v²/(2·a) [m].
 * @source derived, constant deceleration after the reaction
 */
export const stoppingDistance = (speed: number, deceleration: number, reaction: number): number =>
  speed * reaction + speed ** 2 / (2 * deceleration);

/**
 * Mean fully developed deceleration between two speeds: d = (v_b² − v_e²)/(2·(S_e − S_b)); measured from 0.8 to 0.1 of
 * the speed at the start.
 * @returns d [m/s²]
 * @source memory, definition of the mean fully developed deceleration
 */
export const meanDeveloped = (fromSpeed: number, toSpeed: number, distance: number): number =>
  (fromSpeed ** 2 - toSpeed ** 2) / (2 * distance);

/**
 * Ideal distribution: both tires at the same share of their load, from rest to the lift of the rear wheel.
 * @param count points, ≥ 2
 * @source derived, moments about the contacts
 */
export function idealDistribution(bike: LongitudinalBike, count = 41): DistributionPoint[] {
  const lift = (bike.wheelbase - bike.ahead) / bike.height;
  return Array.from({ length: count }, (_, k) => {
    const x = (lift * k) / (count - 1);
    const front = x * idealFrontShare(bike, x);
    return { front, rear: Math.max(0, x - front) };
  });
}

/**
 * The bike's own line: both controls pulled in proportion, up to their control forces.
 * @source derived, force over weight
 */
export function realDistribution(input: Pick<BrakingInput, 'bike' | 'front' | 'rear'>): DistributionPoint[] {
  const weight = input.bike.mass * STANDARD_GRAVITY;
  const full = (side: BrakeSide | undefined): number =>
    side ? (side.gain.usual * side.control) / weight : 0;
  return [
    { front: 0, rear: 0 },
    { front: full(input.front), rear: full(input.rear) },
  ];
}

function frontLockOf(
  bike: LongitudinalBike,
  friction: number,
  front: BrakeSide,
): NonNullable<Braking['frontLock']> {
  const lift = (bike.wheelbase - bike.ahead) / bike.height;
  const grip = frontGripShare(bike, friction);
  const share = grip !== undefined && grip <= lift ? grip : lift;
  const control = (share * bike.mass * STANDARD_GRAVITY) / front.gain.usual;
  return { control, by: share === grip ? 'locks' : 'lift' };
}

const rearLockShare = ({ wheelbase: p, ahead: b, height: h }: LongitudinalBike, friction: number): number =>
  (friction * (p - b)) / (p + friction * h);

function referenceRows(stops: readonly Stop[]): ReferenceRow[] {
  return stops.flatMap(({ with: brake, deceleration }) => {
    if (brake === 'both' || !(deceleration > 0)) return [];
    return stoppingFigures
      .filter((figure) => figure.brake === 'each' || figure.brake === brake)
      .map((figure): ReferenceRow => {
        // The figure's own delay: what it allows before the part that grows with the square of the speed.
        const delay = figure.distance - (figure.testSpeed * 3.6) ** 2 / figure.divisor;
        return {
          figure,
          with: brake,
          deceleration,
          distance: delay + figure.testSpeed ** 2 / (2 * deceleration),
          allowed: figure.distance,
          reaches: deceleration >= figure.deceleration,
        };
      });
  });
}
