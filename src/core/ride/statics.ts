import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

/** A rigid bike with rider on its two contacts, seen from the side. */
export interface LongitudinalBike {
  /** m [kg], > 0. */
  readonly mass: number;
  /** p, wheelbase [m], > 0. */
  readonly wheelbase: number;
  /** b, center of mass ahead of the rear contact [m], 0 < b < p for a bike that stands. */
  readonly ahead: number;
  /** h, center of mass above the ground [m], > 0. */
  readonly height: number;
}

export interface WheelLoads {
  /** N_f, on the front wheel [N]; below 0: it has left the ground and the number is the pull that would keep it down. */
  readonly front: number;
  /** N_r, on the rear wheel [N]. */
  readonly rear: number;
}

/** Force of the air, straight back at a height. */
export interface AirForce {
  /** [N] */
  readonly force: number;
  /** h_a, above the ground [m]. */
  readonly height: number;
}

/**
 * A limit and which of its two causes comes first. `free` tells what friction alone would give: absent where it sets
 * no limit, void (kept for the working) once the wheel has lifted.
 */
export interface Limit<Cause extends string> {
  /** [m/s²] */
  readonly value: number;
  readonly by: Cause;
}

export interface LongitudinalLimits {
  /** a = g·b/h: the front wheel lifts when accelerating [m/s²]. */
  readonly wheelie: number;
  /** a = g·(p − b)/h: the rear wheel lifts when braking [m/s²]. */
  readonly stoppie: number;
  /** Slope at which the bike tips over backward, facing up, and forward, facing down [rad]. */
  readonly tipBack: number;
  readonly tipForward: number;
  /** Most acceleration with rear drive: friction or lift of the front wheel. */
  readonly drive: Limit<'traction' | 'wheelie'>;
  /** Steepest hill at steady speed [rad]: tan α by friction or by tipping back. */
  readonly hill: { readonly angle: number; readonly by: 'traction' | 'tip-back' };
  /** Most deceleration with the front brake alone, the rear alone, and both shared ideally. */
  readonly frontBrake: Limit<'grip' | 'lift'>;
  readonly rearBrake: Limit<'grip'>;
  readonly bothBrakes: Limit<'grip' | 'lift'>;
}

/**
 * Wheel loads N_f = m·g·b/p − m·a·h/p − F_a·h_a/p, N_r = m·g − N_f; turning of the wheels left out.
 * @param acceleration a [m/s²], braking negative
 * @source derived, moments about the rear contact; memory, form of the equation
 */
export function wheelLoads(
  { mass, wheelbase, ahead, height }: LongitudinalBike,
  acceleration: number,
  air: AirForce = { force: 0, height: 0 },
): WheelLoads {
  const weight = mass * STANDARD_GRAVITY;
  const front = (weight * ahead - mass * acceleration * height - air.force * air.height) / wheelbase;
  return { front, rear: weight - front };
}

/**
 * Limits of driving, climbing and braking on a surface of friction μ. Of friction and lift the smaller one counts: a
 * friction formula past the lift is void.
 * @param friction μ, tire on road [-], > 0
 * @source derived, moments about the contacts; memory, forms of the formulas
 */
export function longitudinalLimits(bike: LongitudinalBike, friction: number): LongitudinalLimits {
  const { wheelbase: p, ahead: b, height: h } = bike;
  const g = STANDARD_GRAVITY;
  const wheelie = (g * b) / h;
  const stoppie = (g * (p - b)) / h;
  const traction = tractionShare(bike, friction);
  const front = frontGripShare(bike, friction);
  const tipBack = Math.atan2(b, h);
  const climb = traction === undefined ? Number.POSITIVE_INFINITY : Math.atan(traction);
  return {
    wheelie,
    stoppie,
    tipBack,
    tipForward: Math.atan2(p - b, h),
    drive: lesser('traction', traction === undefined ? undefined : g * traction, 'wheelie', wheelie),
    hill: climb < tipBack ? { angle: climb, by: 'traction' } : { angle: tipBack, by: 'tip-back' },
    frontBrake: lesser('grip', front === undefined ? undefined : g * front, 'lift', stoppie),
    rearBrake: { value: (g * friction * (p - b)) / (p + friction * h), by: 'grip' },
    bothBrakes: lesser('grip', g * friction, 'lift', stoppie),
  };
}

/**
 * a/g = tan α = μ·(p − b)/(p − μ·h) of a driven rear wheel; undefined where μ ≥ p/h, and friction sets no limit.
 * @source derived, moments about the front contact
 */
export function tractionShare(
  { wheelbase: p, ahead: b, height: h }: LongitudinalBike,
  friction: number,
): number | undefined {
  return friction * h < p ? (friction * (p - b)) / (p - friction * h) : undefined;
}

/**
 * a/g = μ·b/(p − μ·h) of the front brake alone; undefined where μ ≥ p/h, and friction sets no limit.
 * @source derived, moments about the rear contact
 */
export function frontGripShare(
  { wheelbase: p, ahead: b, height: h }: LongitudinalBike,
  friction: number,
): number | undefined {
  return friction * h < p ? (friction * b) / (p - friction * h) : undefined;
}

/**
 * Share of the braking force at the front that loads both tires alike: Φ = b/p + x·h/p.
 * @param deceleration x = a/g [-]
 * @source derived, both tires at the same share of their load
 */
export const idealFrontShare = (
  { wheelbase, ahead, height }: LongitudinalBike,
  deceleration: number,
): number => (ahead + deceleration * height) / wheelbase;

/** Where a fixed share of front braking locks each wheel. */
export interface LockPoints {
  /** a/g at which the front wheel locks; absent: never, by friction. */
  readonly front?: number;
  /** a/g at which the rear wheel locks. */
  readonly rear: number;
  /** x₀, a/g below which the front and above which the rear is braked too little: the share is ideal there. */
  readonly crossover: number;
  readonly first: 'front' | 'rear';
}

/**
 * Fixed front share Φ: the front locks at μ·b/(Φ·p − μ·h), the rear at μ·(p − b)/((1 − Φ)·p + μ·h); x₀ = (Φ·p − b)/h.
 * @param frontShare Φ [-], 0 to 1
 * @param friction μ [-]
 * @source derived, moments about the contacts
 */
export function lockPoints(bike: LongitudinalBike, frontShare: number, friction: number): LockPoints {
  const { wheelbase: p, ahead: b, height: h } = bike;
  const below = frontShare * p - friction * h;
  const front = below > 0 ? (friction * b) / below : undefined;
  const rear = (friction * (p - b)) / ((1 - frontShare) * p + friction * h);
  return {
    ...(front === undefined ? {} : { front }),
    rear,
    crossover: (frontShare * p - b) / h,
    first: front !== undefined && front < rear ? 'front' : 'rear',
  };
}

/** Weighing with the front axle raised: what a second reading of the rear scale tells. */
export interface Weighing {
  /** m [kg], > 0. */
  readonly mass: number;
  /** p, wheelbase [m], > 0. */
  readonly wheelbase: number;
  /** R, radius of both wheels [m]. */
  readonly wheelRadius: number;
  /** Reading of the rear scale, level and raised [kg]. */
  readonly rearLevel: number;
  readonly rearRaised: number;
  /** θ, slope of the line of the axles [rad], 0 < θ < π/2; sin θ = lift/p. */
  readonly angle: number;
}

/**
 * Center of mass by weighing: b = p·(1 − m_r/m), h = R + (Δm_r/m)·p/tan θ; brakes off, equal wheels, no springs.
 * @source derived, moments of the raised bike
 */
export function centerByWeighing(w: Weighing): Pick<LongitudinalBike, 'ahead' | 'height'> {
  return {
    ahead: w.wheelbase * (1 - w.rearLevel / w.mass),
    height: w.wheelRadius + (((w.rearRaised - w.rearLevel) / w.mass) * w.wheelbase) / Math.tan(w.angle),
  };
}

function lesser<A extends string, B extends string>(
  a: A,
  first: number | undefined,
  b: B,
  second: number,
): Limit<A | B> {
  return first !== undefined && first <= second ? { value: first, by: a } : { value: second, by: b };
}
