import type { Outcome } from '../quantity/index.ts';
import { good } from '../quantity/index.ts';
import { drivePath, forceAt } from './drivePath.ts';
import { simulateLaunch } from './launch.ts';
import type { Launch, LaunchInput } from './launchTypes.ts';
import { GRAVITY, type RideStance, type RoadLoad } from './roadLoad.ts';

export interface SteepestHill {
  /** Rise over run. */
  readonly grade: number;
  readonly limitedBy: 'engine' | 'grip' | 'tip-back';
}

/** Moving off on a hill, and what it does to the clutch. */
export interface HillLaunch {
  readonly steepest: SteepestHill;
  /** Heat in the clutch or belt while it stands on that hill at full throttle and does not move [W]. */
  readonly standingHeat: number;
  /** A hill that it does start on: this share of the steepest grade. */
  readonly startGrade: number;
  readonly start: Launch;
}

/** Beyond this rise over run nothing is a hill to ride [-]. */
const STEEPEST = 10;
/** On the steepest hill itself a launch takes for ever; figures are given a little below. */
const START_SHARE = 0.9;

/**
 * Steepest hill that a force at the tire just holds: F = m·g·(sin α + C·cos α), so sin(α + atan C) = F/(m·g·√(1 + C²)).
 * @param force at the tire from standstill [N]
 * @returns rise over run; undefined where the force would lift the bike
 * @source derived, balance along the slope
 */
export function gradeOfForce(
  force: number,
  road: Pick<RoadLoad, 'mass' | 'rollingCoefficient'>,
): number | undefined {
  const { mass, rollingCoefficient } = road;
  const sine = force / (mass * GRAVITY * Math.hypot(1, rollingCoefficient));
  if (sine >= 1) return undefined;
  const angle = Math.asin(sine) - Math.atan(rollingCoefficient);
  return angle < Math.PI / 2 ? Math.tan(angle) : undefined;
}

/**
 * Torque at the engine shaft that holds the bike on a grade: T = m·g·(sin α + C·cos α)·R/(G·η).
 * @returns [N·m]
 * @source derived, balance along the slope
 */
export function torqueForGrade(
  road: Pick<RoadLoad, 'mass' | 'rollingCoefficient' | 'grade'>,
  drive: { readonly ratio: number; readonly efficiency: number; readonly wheelRadius: number },
): number {
  const force = (road.mass * GRAVITY * (road.grade + road.rollingCoefficient)) / Math.hypot(1, road.grade);
  return (force * drive.wheelRadius) / (drive.ratio * drive.efficiency);
}

/**
 * Steepest hill to move off on from standstill: by the engine's force, by grip, tan α = (μ·(p − b)/p − C)/(1 − μ·h/p), or by
 * tipping back, tan α = b/h; the least of them.
 * @source derived, moments about the rear contact
 */
export function steepestHill(
  force: number,
  road: Pick<RoadLoad, 'mass' | 'rollingCoefficient'>,
  stance?: RideStance,
): SteepestHill {
  const limits: SteepestHill[] = [{ grade: gradeOfForce(force, road) ?? STEEPEST, limitedBy: 'engine' }];
  if (stance) {
    const { wheelbase: p, centerForward: b, centerHeight: h, grip } = stance;
    limits.push({ grade: b / h, limitedBy: 'tip-back' });
    if (grip !== undefined && p > grip * h) {
      const grade = ((grip * (p - b)) / p - road.rollingCoefficient) / (1 - (grip * h) / p);
      limits.push({ grade, limitedBy: 'grip' });
    }
  }
  return limits.reduce((least, one) => (one.grade < least.grade ? one : least));
}

/**
 * The steepest hill from standstill, the heat while standing on it, and a launch on a hill a little less steep.
 * @issue see `simulateLaunch`
 * @source derived
 */
export function hillLaunch(input: LaunchInput): Outcome<HillLaunch> {
  const path = drivePath(input.drive, input.engine);
  if (!path.ok) return path;
  const first = path.value.segments[0];
  const force = first ? forceAt(first, 0) : 0;
  const steepest = steepestHill(force, input.road, input.stance);
  const slips = first?.phase === 'slip' || first?.phase === 'bite';
  const startGrade = steepest.grade > 0 ? START_SHARE * steepest.grade : steepest.grade;
  const start = simulateLaunch({ ...input, road: { ...input.road, grade: startGrade } });
  if (!start.ok) return start;
  const { efficiency, wheelRadius } = input.drive;
  const torque = first ? (force * wheelRadius) / (first.ratio * efficiency) : 0;
  return good({
    steepest,
    standingHeat: slips ? torque * first.engine0 : 0,
    startGrade,
    start: start.value,
  });
}
