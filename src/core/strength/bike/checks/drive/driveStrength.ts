import { drivePulls } from '../../loads/drivePull.ts';
import { driveShafts } from '../../loads/shaftModel.ts';
import { beltsOf } from './belts.ts';
import { chainOf, chainRows } from './chains.ts';
import type { DriveInput, DriveStrength } from './driveTypes.ts';
import { shaftOf } from './shaft.ts';
import { shaftRows } from './shaftRows.ts';

/** Shafts, bearings, keys, chains and belts under the largest torque of the engine. */
export function driveStrength(input: DriveInput): DriveStrength {
  const { build, bike, driveline, frame, limits } = input;
  const pulls = drivePulls(build, bike, driveline, limits.torque);
  const notChecked: string[] = [];
  const shafts = driveShafts(build, bike, frame.bearings, pulls).flatMap((model) =>
    shaftOf(input, model, notChecked),
  );
  const chains = pulls.flatMap((pull) => chainOf(input, pull));
  return {
    shafts,
    chains,
    belts: beltsOf(pulls),
    notChecked,
    rows: [...shafts.flatMap((shaft) => shaftRows(input, shaft)), ...chains.flatMap(chainRows)],
  };
}
