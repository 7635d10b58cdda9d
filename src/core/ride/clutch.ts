import { crossings } from '../numerics/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';
import type { EngineCurve } from './engine.ts';

/** Centrifugal clutch: T_cap = K·(ω² − ω0²) above first bite. */
export interface ClutchModel {
  /** ω0, speed of first bite [rad/s]. */
  readonly engages: number;
  /** K [N·m·s²]. */
  readonly constant: number;
}

/** The shoes, where they are known. */
export interface ClutchShoes {
  /** n, number of shoes, ≥ 1. */
  readonly shoes: number;
  /** μ, lining on drum. */
  readonly friction: number;
  /** m, of one shoe [kg]. */
  readonly mass: number;
  /** r, center of mass of a shoe from the shaft [m]. */
  readonly shoeRadius: number;
  /** R, inside of the drum [m]. */
  readonly drumRadius: number;
}

/** Speeds between which full throttle is more than the clutch can hold, and what the engine then does. */
export interface SlipBand {
  /** Clutch output speeds over which it slips, from ≤ speed < to [rad/s]. */
  readonly from: number;
  readonly to: number;
  /** Speed at which the engine stays meanwhile [rad/s], and the torque that it passes on [N·m]. */
  readonly held: number;
  readonly torque: number;
  /** The clutch holds less than the engine gives up to the governor: it never locks at full throttle. */
  readonly endless: boolean;
}

/**
 * K of a clutch that carries a torque at a speed: K = T/(ω1² − ω0²).
 * @issue out-of-range — it locks no faster than it bites, or carries nothing
 * @source derived, shoe force grows with the square of speed less that of the spring
 */
export function clutchOf(given: { engages: number; locks: number; capacity: number }): Outcome<ClutchModel> {
  const { engages, locks, capacity } = given;
  if (!(locks > engages)) {
    const rpm = (speed: number) => (speed * 60) / (2 * Math.PI);
    return bad({ code: 'out-of-range', path: 'locks', given: rpm(locks), above: rpm(engages), unit: 'rpm' });
  }
  if (!(capacity > 0)) {
    return bad({ code: 'out-of-range', path: 'capacity', given: capacity, above: 0, unit: 'N·m' });
  }
  return good({ engages, constant: capacity / (locks ** 2 - engages ** 2) });
}

/**
 * K of a clutch from its shoes: K = n·μ·m·r·R.
 * @returns [N·m·s²]
 * @source machine-design-problems, centrifugal clutch, T = n·μ·(m·ω²·r − S)·R
 */
export const shoeConstant = ({ shoes, friction, mass, shoeRadius, drumRadius }: ClutchShoes): number =>
  shoes * friction * mass * shoeRadius * drumRadius;

/**
 * Mass of one shoe for a torque at a speed: m = T/(n·μ·r·R·(ω² − ω0²)).
 * @returns [kg]
 * @source machine-design-problems, centrifugal clutch
 */
export const shoeMass = (
  shoes: Omit<ClutchShoes, 'mass'>,
  at: { readonly torque: number; readonly speed: number; readonly engages: number },
): number => at.torque / (shoeConstant({ ...shoes, mass: 1 }) * (at.speed ** 2 - at.engages ** 2));

/**
 * Torque that the clutch can carry: K·(ω² − ω0²), nothing below the bite.
 * @returns [N·m]
 * @source derived
 */
export const clutchCapacity = ({ engages, constant }: ClutchModel, speed: number): number =>
  speed <= engages ? 0 : constant * (speed ** 2 - engages ** 2);

/**
 * Engine speed at which the clutch just carries a torque: ω = √(ω0² + T/K).
 * @returns [rad/s]
 * @source derived
 */
export const slipSpeed = ({ engages, constant }: ClutchModel, torque: number): number =>
  Math.sqrt(engages ** 2 + Math.max(0, torque) / constant);

/**
 * Where a clutch slips at full throttle. The engine runs up until the clutch holds what it gives, and stays there while
 * the driven side catches up: its speed is the least at or above that of the driven side with T(ω) ≤ K·(ω² − ω0²).
 * @source derived, torque balance of the engine without its own inertia
 */
export function slipBands(clutch: ClutchModel, engine: EngineCurve): readonly SlipBand[] {
  const bands: SlipBand[] = [];
  let from: number | undefined = 0;
  for (const { at, slips } of balancePoints(clutch, engine)) {
    if (slips) from ??= at;
    else if (from !== undefined) {
      bands.push({ from, to: at, held: at, torque: clutchCapacity(clutch, at), endless: false });
      from = undefined;
    }
  }
  if (from !== undefined) {
    const held = engine.highest;
    bands.push({ from, to: held, held, torque: clutchCapacity(clutch, held), endless: true });
  }
  return bands.filter((band) => band.to > band.from);
}

/** Engine speeds at which full torque and capacity change places, rising, and which is more from there on. */
function balancePoints(clutch: ClutchModel, engine: EngineCurve): { at: number; slips: boolean }[] {
  const points: { at: number; slips: boolean }[] = [];
  for (let k = 1; k < engine.corners.length; k++) {
    const [low, high] = [engine.corners[k - 1]!, engine.corners[k]!];
    const slope = (high.torque - low.torque) / (high.speed - low.speed);
    const base = low.torque - slope * low.speed;
    const { engages, constant } = clutch;
    // Excess of the engine over the clutch above its bite; below, the clutch holds nothing.
    const excess = [base + constant * engages ** 2, slope, -constant];
    const start = Math.max(low.speed, engages);
    if (start >= high.speed) continue;
    for (const at of crossings(excess, start, high.speed)) {
      points.push({ at, slips: slope - 2 * constant * at > 0 });
    }
  }
  return points;
}
