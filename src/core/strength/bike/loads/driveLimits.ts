import type { CasesInput, DriveLimits } from './caseTypes.ts';
import { drivePulls, largestTorque } from './drivePull.ts';
import type { Whole } from './wholeBike.ts';

/** What ends the push at the rear wheel: engine, clutch, grip or the front wheel. */
export function driveLimits({ build, bike, driveline, settings }: CasesInput, whole: Whole): DriveLimits {
  const { torque, limitedBy } = largestTorque(build);
  const pulls = drivePulls(build, bike, driveline, torque);
  const atWheel = pulls.at(-1)?.to === 'rearAxle' ? pulls.at(-1)!.torqueOut : 0;
  const engineForce = atWheel / bike.layout.fitted.rear.radius;
  const { weight, wheelbase: p, ahead: b, height: h } = whole;
  const mu = settings.drivingGrip;
  const liftForce = (weight * b) / h;
  const gripForce = mu * h < p ? (mu * weight * (p - b)) / (p - mu * h) : liftForce;
  const driveForce = Math.min(engineForce, liftForce, gripForce);
  const governedBy =
    driveForce === engineForce ? limitedBy : driveForce === liftForce ? 'front wheel lifts' : 'grip';
  return { torque, limitedBy, engineForce, gripForce, liftForce, driveForce, governedBy };
}
