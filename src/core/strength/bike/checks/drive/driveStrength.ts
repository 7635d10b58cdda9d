import { drivePulls } from '../../loads/drivePull.ts';
import { type DriveShaftModel, driveShafts } from '../../loads/shaftModel.ts';
import { beltRows } from './beltRows.ts';
import { beltsOf } from './belts.ts';
import { chainRows } from './chainRows.ts';
import { chainOf } from './chains.ts';
import type { DriveInput, DriveStrength } from './driveTypes.ts';
import { withBearing } from './outboard.ts';
import { seatFits } from './seatFits.ts';
import { seatRows } from './seatRows.ts';
import { shaftOf } from './shaft.ts';
import { shaftRows } from './shaftRows.ts';

/** Shafts, bearings and their seats, keys, chains and belts under the largest torque of the engine. */
export function driveStrength(input: DriveInput): DriveStrength {
  const { build, bike, driveline, frame, limits, settings } = input;
  const pulls = drivePulls(build, bike, driveline, limits.torque);
  const notChecked: string[] = [];
  const shafts = driveShafts(build, bike, frame.bearings, pulls).flatMap((model) =>
    shaftOf(input, tried(input, model), notChecked),
  );
  const chains = pulls.flatMap((pull) => chainOf(input, pull, notChecked));
  const belts = beltsOf(input, pulls, notChecked);
  const seats = seatFits(input, notChecked);
  return {
    shafts,
    chains,
    belts,
    seats,
    notChecked,
    rows: [
      ...shafts.flatMap((shaft) => shaftRows(input, shaft)),
      ...chains.flatMap(chainRows),
      ...belts.flatMap(beltRows),
      ...seats.flatMap((seat) => seatRows(settings, seat)),
    ],
  };
}

const tried = ({ added }: DriveInput, model: DriveShaftModel): DriveShaftModel =>
  added?.shaft === model.id ? withBearing(model, added.at) : model;
