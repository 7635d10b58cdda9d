import { fastestEngine } from '../../loads/engineSpeed.ts';
import type { DriveInput } from './driveTypes.ts';

/** Highest speed of a shaft [rad/s]: engine at its governed speed, belts in their highest gear. */
export function shaftSpeed(
  { build, driveline }: Pick<DriveInput, 'build' | 'driveline'>,
  shaft: string,
): number {
  let speed = fastestEngine(build);
  for (const stage of build.driveline.stages) {
    if (stage.kind === 'clutch') continue;
    if (stage.from === shaft) return speed;
    if (stage.kind === 'chain') speed = (speed * stage.driverTeeth) / stage.drivenTeeth;
    else speed /= driveline.belts[stage.id]?.high.ratio ?? 1;
    if (stage.to === shaft) return speed;
  }
  return speed;
}
