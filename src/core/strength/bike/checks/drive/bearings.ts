import type { AngularSpeed, Force } from '../../../../quantity/index.ts';
import { type Bearing, findBearing } from '../../../../standards/index.ts';
import {
  equivalentLoad,
  lifeHours,
  meanDuty,
  ratingLife,
  speedLimit,
  staticLoad,
} from '../../../bearing/bearingLife.ts';
import type { ShaftSolution } from '../../../shaft/solveShaft.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { BearingStrength, DriveInput } from './driveTypes.ts';

/** Largest tilt of a shaft in its bearing [rad]. @source shigley-9, table 7-2 */
const SLOPE = { bore: 0.003, flange: 0.052 };

/** What each bearing of a shaft carries, and how long where its number is known. */
export function bearingsOf(
  input: DriveInput,
  model: DriveShaftModel,
  solution: ShaftSolution,
  speed: number,
  notChecked: string[],
): BearingStrength[] {
  return model.bearings.map((placed, i) => {
    const support = solution.supports[i]!;
    const radial = Math.hypot(...support.force);
    const entry = placed.plate === undefined ? undefined : input.build.plates[placed.plate];
    const seat =
      entry && 'seat' in entry && entry.seat !== 'saddle' && entry.seat !== 'flat' ? entry.seat : undefined;
    const base = {
      item: placed.item,
      at: placed.y,
      radial,
      slope: support.slope,
      slopeLimit: seat?.kind === 'bore' ? SLOPE.bore : SLOPE.flange,
    };
    const bearing = seat?.bearing === undefined ? undefined : ballBearing(seat.bearing);
    if (!bearing) {
      notChecked.push(`bearing ${placed.item}: no bearing of the table is named for it`);
      return base;
    }
    return { ...base, ...lifeOf(input.settings, bearing, radial, speed) };
  });
}

/** A deep groove bearing by its number; an insert bearing UC204 has the balls of a 6204. @source practice */
function ballBearing(text: string): Bearing | undefined {
  const direct = findBearing(text);
  if (direct.ok) return direct.value;
  const insert = /[A-Z](2\d\d)\b/i.exec(text)?.[1];
  const found = insert ? findBearing(`6${insert}`) : undefined;
  return found?.ok ? found.value : undefined;
}

/** Radial load only: a countershaft without helical gears has next to no push along it. */
function lifeOf(settings: LoadSettings, bearing: Bearing, radial: number, speed: number) {
  const hours = (end: 'low' | 'high'): number => {
    const rating = {
      dynamicRating: bearing.dynamicRating[end],
      staticRating: bearing.staticRating[end],
      f0: bearing.f0[end],
    };
    const duty = meanDuty(
      settings.duty.map(({ time, torque, speed: share }) => ({
        load: equivalentLoad({ radial: (radial * torque) as Force, axial: 0 as Force }, rating).load,
        speed: (speed * share) as AngularSpeed,
        share: time,
      })),
    );
    return lifeHours(ratingLife(rating.dynamicRating, duty.load), duty.speed);
  };
  return {
    designation: bearing.designation,
    hours: { low: hours('low'), high: hours('high') },
    staticFactor: bearing.staticRating.low / staticLoad({ radial: radial as Force, axial: 0 as Force }),
    speedShare: speed / speedLimit(bearing.bore, bearing.outside, 'sealed'),
  };
}
