import type { Bike } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { DrivelineSolution } from '../../../driveline/index.ts';
import type { AngularSpeed } from '../../../quantity/index.ts';
import { type Bearing, findBearing } from '../../../standards/index.ts';
import { type BearingRating, lifeHours, ratingLife, staticLoad } from '../../bearing/bearingLife.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import { shaftSpeed } from './drive/shaftSpeed.ts';
import { bearingLoad, type HubForces, hubForces } from './hubForces.ts';
import { rideLoad } from './rideLoad.ts';
import type { UtilizationRow } from './utilizationRow.ts';

export interface WheelBearingInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly frame: BikeFrame;
  readonly cases: readonly LoadCase[];
  readonly settings: LoadSettings;
}

/** The worse of the two bearings of a hub. */
export interface WheelBearing {
  readonly wheel: 'front' | 'rear';
  readonly side: 'left' | 'right';
  readonly designation: string;
  /** Mean equivalent load of the ride [N] and mean speed of the wheel [rad/s]. */
  readonly meanLoad: number;
  readonly speed: number;
  /** With the low and the high rating that makers print [h]; Infinity where the wheel's speed is not known. */
  readonly hours: { readonly low: number; readonly high: number };
  /** C0/P0 in the worst case. */
  readonly staticFactor: number;
  readonly staticCase: string;
}

const SIDES = ['left', 'right'] as const;

/**
 * Life and static factor of the bearings of both hubs: duty of the drive and the spectrum's bumps, braking and corners
 * as a mean load by the cube over the distance each lasts; all of a side force on either bearing.
 * @source iso-281, mean load and basic rating life; iso-76; practice for how long a load lasts
 */
export function wheelBearings(input: WheelBearingInput): {
  readonly bearings: readonly WheelBearing[];
  readonly notChecked: readonly string[];
} {
  const notChecked: string[] = [];
  const bearings = (['front', 'rear'] as const).flatMap((wheel): WheelBearing[] => {
    const named = input.build.wheels[wheel].hub.bearing;
    const found = named === undefined ? undefined : findBearing(named);
    if (!found?.ok) {
      notChecked.push(`bearings of the ${wheel} wheel: no bearing of the table is named for its hub`);
      return [];
    }
    const [left, right] = input.frame.wheels[wheel].hubY;
    if (left - right < 2 * found.value.width) {
      notChecked.push(
        `bearings of the ${wheel} wheel: two of ${found.value.designation} are wider than its hub`,
      );
      return [];
    }
    return [wheelBearing(input, wheel, found.value)];
  });
  return { bearings, notChecked };
}

function wheelBearing(input: WheelBearingInput, wheel: 'front' | 'rear', bearing: Bearing): WheelBearing {
  const { frame, cases } = input;
  const inset = bearing.width / 2;
  const forces = new Map(cases.map((one) => [one.id, hubForces({ frame, wheel, one, inset })]));
  const speed = meanSpeed(input, wheel);
  const [a, b] = [0, 1].map((side) =>
    oneSide(input, { wheel, bearing, forces, speed, side: side as 0 | 1 }),
  ) as [WheelBearing, WheelBearing];
  const worse = a.hours.low <= b.hours.low ? a : b;
  const weaker = a.staticFactor <= b.staticFactor ? a : b;
  return { ...worse, staticFactor: weaker.staticFactor, staticCase: weaker.staticCase };
}

interface OneSide {
  readonly wheel: 'front' | 'rear';
  readonly bearing: Bearing;
  readonly forces: ReadonlyMap<string, HubForces>;
  readonly speed: AngularSpeed;
  readonly side: 0 | 1;
}

function oneSide(
  { bike, settings }: WheelBearingInput,
  { wheel, bearing, forces, speed, side }: OneSide,
): WheelBearing {
  const turn = 2 * Math.PI * bike.layout.fitted[wheel].radius;
  const load = (end: 'low' | 'high') =>
    rideLoad({ settings, turn, forces, side, rating: ratingOf(bearing, end) });
  const hours = (end: 'low' | 'high'): number =>
    lifeHours(ratingLife(bearing.dynamicRating[end], load(end)), speed);
  const worst = [...forces].reduce(
    (most, [id, one]) => {
      const still = staticLoad(bearingLoad(one, side));
      return still > most.load ? { id, load: still } : most;
    },
    { id: '', load: 0 },
  );
  return {
    wheel,
    side: SIDES[side],
    designation: bearing.designation,
    meanLoad: load('low'),
    speed,
    hours: { low: hours('low'), high: hours('high') },
    staticFactor: bearing.staticRating.low / worst.load,
    staticCase: worst.id,
  };
}

const ratingOf = (bearing: Bearing, end: 'low' | 'high'): BearingRating => ({
  dynamicRating: bearing.dynamicRating[end],
  staticRating: bearing.staticRating[end],
  f0: bearing.f0[end],
});

/** Mean speed of a wheel over the duty [rad/s]: the drive's fastest, times the mean share. */
function meanSpeed(
  { build, bike, driveline, settings: { duty } }: WheelBearingInput,
  wheel: 'front' | 'rear',
) {
  const time = duty.reduce((sum, part) => sum + part.time, 0);
  const share = time > 0 ? duty.reduce((sum, part) => sum + part.time * part.speed, 0) / time : 0;
  const { fitted } = bike.layout;
  const rear = shaftSpeed({ build, driveline }, 'rearAxle') * share;
  return ((rear * fitted.rear.radius) / fitted[wheel].radius) as AngularSpeed;
}

/** Life and static factor of each hub. */
export const wheelBearingRows = (settings: LoadSettings, one: WheelBearing): UtilizationRow[] => [
  ...(Number.isFinite(one.hours.low) ? [lifeRow(settings, one)] : []),
  ...(Number.isFinite(one.staticFactor) ? [staticRow(one)] : []),
];

const lifeRow = (
  settings: LoadSettings,
  { wheel, side, designation, hours }: WheelBearing,
): UtilizationRow => ({
  part: `${wheel}Axle`,
  case: 'seated',
  where: `${side} bearing of the hub, mean of spectrum and duty`,
  check: 'wheelBearingLife',
  quantity: `life of wheel bearing ${designation}, hours`,
  value: hours.low,
  limit: settings.bearingLife,
  kind: 'ratio',
  utilization: settings.bearingLife / hours.low,
  source: { key: 'iso-281', where: 'basic rating life with X and Y, lowest printed rating' },
});

const staticRow = ({ wheel, designation, staticFactor, staticCase }: WheelBearing): UtilizationRow => ({
  part: `${wheel}Axle`,
  case: staticCase,
  where: 'more loaded bearing of the hub',
  check: 'wheelBearingStatic',
  quantity: `static factor C0/P0 of wheel bearing ${designation}`,
  value: staticFactor,
  limit: 1,
  kind: 'ratio',
  utilization: 1 / staticFactor,
  source: { key: 'iso-76', where: 'static factor of ball bearings; the load is the peak itself' },
});
