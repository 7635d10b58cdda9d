import { type Stance, type StanceChange, type SteeringGeometry, standOn } from '../bike/index.ts';
import type { Outcome } from '../quantity/index.ts';

/** Front end as the exact head drop sees it. */
export interface HeadDropInput {
  /** R, front tire [m], > 0. */
  readonly radius: number;
  /** d, fork offset, square to the axis [m], any sign. */
  readonly forkOffset: number;
  /** ε, rake from vertical [rad], 0 ≤ ε < π/2. */
  readonly rake: number;
  /** δ, steering angle [rad]. */
  readonly steer: number;
}

/**
 * How far the head comes down when the bars are turned, head held upright on a knife-edge wheel:
 * h = R − d·sin ε·(1 − cos δ) − R·√(1 − sin²δ·sin²ε); for small angles f·δ²/2, f the wheel flop factor.
 * @returns h [m], positive down
 * @source derived, lowest point of a turned wheel
 */
export function headDrop({ radius, forkOffset, rake, steer }: HeadDropInput): number {
  const tilt = Math.sin(steer) * Math.sin(rake);
  // 1 − √(1 − t²) and 1 − cos δ without the loss of digits of small angles.
  const rise = (tilt * tilt) / (1 + Math.sqrt(1 - tilt * tilt));
  return radius * rise - forkOffset * Math.sin(rake) * 2 * Math.sin(steer / 2) ** 2;
}

/**
 * Angle of the front wheel's track on the ground, bike upright: tan Δ = cos ε·tan δ.
 * @source derived, ground line of a turned wheel
 */
export const groundSteer = (rake: number, steer: number): number =>
  Math.atan2(Math.cos(rake) * Math.sin(steer), Math.cos(steer));

/** Circles of the tightest turn, walked upright. */
export interface TurningCircle {
  /** Δ, at the ground [rad]. */
  readonly groundSteer: number;
  /** Of the rear track, w/tan Δ [m]. */
  readonly rearRadius: number;
  /** Of the front track, w/sin Δ [m]. */
  readonly frontRadius: number;
  /** Between two walls, front tire width included [m]. */
  readonly betweenWalls: number;
}

/**
 * Turning circle at full lock with the bike upright; undefined for a lock of 0 (it goes straight).
 * @param lock δ [rad], 0 ≤ δ < π/2
 * @param tireWidth of the front tire [m]
 * @source derived, both wheels roll about one center
 */
export function turningCircle(
  wheelbase: number,
  rake: number,
  lock: number,
  tireWidth: number,
): TurningCircle | undefined {
  if (!(lock > 0)) return undefined;
  const angle = groundSteer(rake, lock);
  const frontRadius = wheelbase / Math.sin(angle);
  return {
    groundSteer: angle,
    rearRadius: wheelbase / Math.tan(angle),
    frontRadius,
    betweenWalls: 2 * frontRadius + tireWidth,
  };
}

/** A stop on the front brake with a telescopic fork. */
export interface DiveInput {
  readonly design: SteeringGeometry;
  /** Tires and sag before the brake bites. */
  readonly change: StanceChange;
  /** k, of both legs along the axis [N/m], > 0. */
  readonly axialRate: number;
  /** Travel that is left before the fork bottoms [m], ≥ 0. */
  readonly travelLeft: number;
  /** m [kg] and h, center of mass above the ground [m]. */
  readonly mass: number;
  readonly height: number;
  /** a, deceleration by the front brake alone [m/s²], ≥ 0. */
  readonly deceleration: number;
}

export interface Dive {
  /** Compression that the brake adds along the axis [m]. */
  readonly dive: number;
  readonly bottoms: boolean;
  /** How the bike stands then, with its trail. */
  readonly stance: Stance;
}

/**
 * Fork dive: the load that shifts, m·a·h/p, and the brake force itself, which pushes up along the raked axis:
 * ΔF = m·a·(h/p·cos ε + sin ε), dive = ΔF/k, no more than the travel left. Rake and wheelbase as before the dive.
 * @issue conflict — a dive with which the bike cannot stand on both wheels
 * @source derived, forces at the front contact along a frictionless fork
 */
export function brakeDive(input: DiveInput): Outcome<Dive> {
  const { design, change } = input;
  const before = standOn('sag', design, change);
  if (!before.ok) return before;
  const { rake, wheelbase } = before.value;
  const inertia = input.mass * input.deceleration;
  const axial = inertia * ((input.height / wheelbase) * Math.cos(rake) + Math.sin(rake));
  const wanted = axial / input.axialRate;
  const dive = Math.min(wanted, input.travelLeft);
  const stance = standOn('sag', design, { ...change, sag: change.sag + dive });
  if (!stance.ok) return stance;
  return { ok: true, value: { dive, bottoms: wanted > input.travelLeft, stance: stance.value } };
}
