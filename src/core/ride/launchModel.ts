import { slipSpeed } from './clutch.ts';
import type { Drive, DriveSegment } from './drivePath.ts';
import type { AccelerationLimit, RoadForces } from './roadLoad.ts';

/** Places of the state of a launch. */
export const SPEED = 0;
export const DISTANCE = 1;
export const ENGINE_WORK = 2;
export const CLUTCH_HEAT = 3;
export const DRIVE_LOSS = 4;
export const AIR_WORK = 5;
export const STATE_SIZE = 6;

/** Everything about one stretch of a launch that does not change while it lasts. */
export interface Stretch {
  readonly segment: DriveSegment;
  readonly drive: Drive;
  readonly forces: RoadForces;
  /** m + I/R²: what the tire accelerates [kg]. */
  readonly inertialMass: number;
  /** J·G²/R² of the engine where it turns with the wheel [kg]; 0 while slipping or shifting. */
  readonly engineMass: number;
  /** The limit that rules, or undefined at full throttle. */
  readonly cap: AccelerationLimit | undefined;
}

/**
 * Acceleration at full throttle: a = (F − resistance)/(m + I/R² + η·J·G²/R²).
 * @source derived, the engine's own J·dω/dt is taken before the losses, hence η
 */
export function fullAcceleration(stretch: Omit<Stretch, 'cap'>, speed: number): number {
  const { segment, forces } = stretch;
  const force = segment.force0 + segment.force1 * speed + (segment.power === 0 ? 0 : segment.power / speed);
  const net = force - forces.rolling - forces.climb - forces.air * speed * speed;
  return net / (stretch.inertialMass + stretch.drive.efficiency * stretch.engineMass);
}

/** @source derived */
export const cappedAcceleration = ({ still, square }: AccelerationLimit, speed: number): number =>
  still + square * speed * speed;

/**
 * Rates of a launch: dv/dt, dx/dt and the powers. At full throttle the engine's power is that of its curve, whatever the
 * acceleration; where grip or wheel lift rules, the rider closes the throttle to what the limit takes.
 * @source derived, power balance
 */
export function launchRates(stretch: Stretch, state: Float64Array, rate: Float64Array): void {
  const { segment, drive, forces, cap } = stretch;
  const speed = state[SPEED]!;
  const air = forces.air * speed * speed;
  const acceleration = cap ? cappedAcceleration(cap, speed) : fullAcceleration(stretch, speed);
  const atTire = stretch.inertialMass * acceleration + forces.rolling + forces.climb + air;
  const intoDrive = (atTire * speed) / drive.efficiency;
  const slip = slipPower(stretch, speed, atTire);
  rate[SPEED] = acceleration;
  rate[DISTANCE] = speed;
  rate[ENGINE_WORK] = cap
    ? intoDrive + slip + stretch.engineMass * acceleration * speed
    : enginePower(segment, drive, speed);
  rate[CLUTCH_HEAT] = slip;
  rate[DRIVE_LOSS] = intoDrive - atTire * speed;
  rate[AIR_WORK] = air * speed;
}

/** Full-throttle power of the engine: T·ω, from its curve. */
function enginePower(segment: DriveSegment, drive: Drive, speed: number): number {
  if (segment.power !== 0) return segment.power / drive.efficiency;
  const torque =
    ((segment.force0 + segment.force1 * speed) * drive.wheelRadius) / (segment.ratio * drive.efficiency);
  return torque * (segment.engine0 + segment.engine1 * speed);
}

/** Heat of a slipping clutch or belt: T·(ω engine − ω driven) [W]. */
function slipPower(stretch: Stretch, speed: number, atTire: number): number {
  const { segment, drive, cap } = stretch;
  if (segment.phase !== 'slip' && segment.phase !== 'bite') return 0;
  const torque = (atTire * drive.wheelRadius) / (segment.ratio * drive.efficiency);
  const driven = (speed * segment.ratio) / drive.wheelRadius;
  return (
    Math.max(0, torque) *
    (slippingEngineSpeed(segment, drive, { driven, torque, capped: cap !== undefined }) - driven)
  );
}

/** With the throttle closed to a limit a centrifugal clutch settles at the lower speed that this torque asks for. */
function slippingEngineSpeed(
  segment: DriveSegment,
  drive: Drive,
  at: { driven: number; torque: number; capped: boolean },
): number {
  if (!at.capped || !drive.clutch || segment.phase === 'bite') return segment.engine0;
  return Math.max(at.driven, Math.min(segment.engine0, slipSpeed(drive.clutch, at.torque)));
}
