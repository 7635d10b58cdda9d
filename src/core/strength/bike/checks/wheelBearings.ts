import type { Bike } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { DrivelineSolution } from '../../../driveline/index.ts';
import type { AngularSpeed, Force } from '../../../quantity/index.ts';
import { type Bearing, findBearing } from '../../../standards/index.ts';
import { equivalentLoad, lifeHours, meanDuty, ratingLife, staticLoad } from '../../bearing/bearingLife.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import { shaftSpeed } from './drive/shaftSpeed.ts';
import { type HubForces, hubForces } from './hubForces.ts';
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

/** How far a wheel rolls under one load of the spectrum [m]; 0 is one turn of it. @source practice */
const LASTS: Readonly<Record<string, number>> = {
  cornering: 20,
  'braking-front': 15,
  'braking-rear': 15,
  'bump-front': 0,
  'bump-rear': 0,
  pothole: 0,
};
const KILOMETER = 1000;
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
    return [wheelBearing(input, wheel, found.value)];
  });
  return { bearings, notChecked };
}

function wheelBearing(input: WheelBearingInput, wheel: 'front' | 'rear', bearing: Bearing): WheelBearing {
  const { frame, cases } = input;
  const forces = new Map(cases.map((one) => [one.id, hubForces(frame, wheel, one, bearing.width / 2)]));
  const speed = meanSpeed(input, wheel);
  const [a, b] = SIDES.map((side, k) => {
    const load = {
      low: meanLoad(input, wheel, forces, k, bearing, 'low'),
      high: meanLoad(input, wheel, forces, k, bearing, 'high'),
    };
    const hours = (end: 'low' | 'high'): number =>
      lifeHours(ratingLife(bearing.dynamicRating[end], load[end] as Force), speed as AngularSpeed);
    const worst = [...forces].reduce(
      (most, [id, one]) => {
        const load = staticLoad(loadOn(one, k));
        return load > most.load ? { id, load } : most;
      },
      { id: '', load: 0 },
    );
    return {
      wheel,
      side,
      designation: bearing.designation,
      meanLoad: load.low,
      speed,
      hours: { low: hours('low'), high: hours('high') },
      staticFactor: bearing.staticRating.low / worst.load,
      staticCase: worst.id,
    };
  }) as [WheelBearing, WheelBearing];
  const worse = a.hours.low <= b.hours.low ? a : b;
  const weaker = a.staticFactor <= b.staticFactor ? a : b;
  return { ...worse, staticFactor: weaker.staticFactor, staticCase: weaker.staticCase };
}

const loadOn = ({ radial, axial }: HubForces, side: number) => ({
  radial: Math.hypot(...radial[side]!) as Force,
  axial: Math.abs(axial) as Force,
});

/** `share` of the way from the bike at rest to a case. */
function between(from: HubForces, to: HubForces, share: number): HubForces {
  const mix = (a: number, b: number): number => a + share * (b - a);
  const side = (k: 0 | 1): readonly [number, number] => [
    mix(from.radial[k][0], to.radial[k][0]),
    mix(from.radial[k][1], to.radial[k][1]),
  ];
  return { radial: [side(0), side(1)], axial: mix(from.axial, to.axial) };
}

/** Mean equivalent load by distance: what the spectrum lists, and the duty of the drive for the rest of each kilometer. */
function meanLoad(
  { bike, settings: { duty, spectrum } }: WheelBearingInput,
  wheel: 'front' | 'rear',
  forces: ReadonlyMap<string, HubForces>,
  side: number,
  bearing: Bearing,
  end: 'low' | 'high',
): number {
  const rest = forces.get('seated')!;
  const turn = 2 * Math.PI * bike.layout.fitted[wheel].radius;
  const rating = {
    dynamicRating: bearing.dynamicRating[end],
    staticRating: bearing.staticRating[end],
    f0: bearing.f0[end],
  };
  const part = (one: HubForces, share: number) => ({
    load: equivalentLoad(loadOn(one, side), rating).load,
    speed: 1 as AngularSpeed,
    share,
  });
  const events = spectrum.flatMap(({ case: id, scale, perKilometer }) => {
    const [lasts, one] = [LASTS[id], forces.get(id)];
    if (lasts === undefined || !one) return [];
    return [part(between(rest, one, scale), ((lasts || turn) * perKilometer) / KILOMETER)];
  });
  // A spectrum so dense that its events fill more than the way leaves nothing over for plain riding.
  const left = Math.max(0, 1 - events.reduce((sum, { share }) => sum + share, 0));
  const way = duty.reduce((sum, { time, speed }) => sum + time * speed, 0);
  const driving = forces.get('driving') ?? rest;
  const rides = duty.map(({ time, torque, speed }) =>
    part(between(rest, driving, torque), (left * time * speed) / way),
  );
  return meanDuty([...events, ...rides]).load;
}

/** Mean speed of a wheel over the duty [rad/s]: the drive's fastest, times the mean share. */
function meanSpeed(
  { build, bike, driveline, settings: { duty } }: WheelBearingInput,
  wheel: 'front' | 'rear',
) {
  const time = duty.reduce((sum, part) => sum + part.time, 0);
  const share = time > 0 ? duty.reduce((sum, part) => sum + part.time * part.speed, 0) / time : 0;
  const { fitted } = bike.layout;
  return shaftSpeed({ build, driveline }, 'rearAxle') * share * (fitted.rear.radius / fitted[wheel].radius);
}

/** Life and static factor of each hub. */
export const wheelBearingRows = (settings: LoadSettings, one: WheelBearing): UtilizationRow[] => [
  ...(Number.isFinite(one.hours.low) ? [lifeRow(settings, one)] : []),
  staticRow(one),
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
