import { good, type Outcome } from '../quantity/index.ts';
import { type ClutchDuty, type ClutchSpeeds, clutchDuty, clutchSpeeds, drumRise } from './clutchUse.ts';
import type { Ride } from './fromBuild.ts';
import { type HillLaunch, hillLaunch, torqueForGrade } from './hill.ts';
import { simulateLaunch } from './launch.ts';
import type { Launch } from './launchTypes.ts';

/** What a clutch or belt lives through. */
export interface ClutchAnswers {
  readonly speeds: ClutchSpeeds;
  /** Full throttle is more than it holds, up to the governor. */
  readonly neverLocks: boolean;
  /** At the riding speed on the level, and on the hill of the use. */
  readonly level: ClutchDuty;
  readonly hill: ClutchDuty;
  /** Heat of one full-throttle launch on the level, and on the hill of the use [J]; the latter absent where it does not start. */
  readonly launchHeat: number;
  readonly hillHeat?: number;
  /** Rise of the drum by one launch on the level, and on the hill [K]; absent where its mass is not known. */
  readonly launchRise?: number;
  readonly hillRise?: number;
  /** Use that keeps it slipping: the riding speed lies below the speed at which it can lock. */
  readonly keptSlipping: boolean;
}

export interface RideAnswers {
  /** On the level. */
  readonly launch: Launch;
  /** On the hill of the use; absent where it does not start there. */
  readonly onHill?: Launch;
  readonly hill: HillLaunch;
  /** Torque at the engine shaft that the hill of the use asks [N·m]. */
  readonly torqueForHill: number;
  /** Road speed per 1000 rpm in the lowest and highest ratio [m/s]. */
  readonly perThousand: { readonly low: number; readonly high: number };
  /** Only with a centrifugal clutch. */
  readonly clutch?: ClutchAnswers;
}

/** Speeds timed where none are asked for, every 5 km/h [m/s]. */
const TIMED = Array.from({ length: 30 }, (_, k) => (5 * (k + 1)) / 3.6);
const THOUSAND_RPM = (1000 * 2 * Math.PI) / 60;

/**
 * Everything the ride room says about going: launch, top speed, hills, clutch.
 * @issue see `simulateLaunch`
 * @source derived
 */
export function rideAnswers(ride: Ride): Outcome<RideAnswers> {
  const { launch: input, use } = ride;
  const launch = simulateLaunch({ speeds: TIMED, ...input });
  if (!launch.ok) return launch;
  const hill = hillLaunch(input);
  if (!hill.ok) return hill;
  const steep = { ...input.road, grade: use.grade };
  const onHill = simulateLaunch({ ...input, road: steep });
  if (!onHill.ok) return onHill;
  const starts = onHill.value.top.limitedBy !== 'no-launch';
  const { drive } = input;
  const lowest = drive.ratio * (drive.belt?.low ?? 1);
  const perThousand = (ratio: number): number => (THOUSAND_RPM * drive.wheelRadius) / ratio;
  const clutch = clutchAnswers(ride, launch.value, starts ? onHill.value : undefined);
  return good({
    launch: launch.value,
    ...(starts ? { onHill: onHill.value } : {}),
    hill: hill.value,
    torqueForHill: torqueForGrade(steep, { ...drive, ratio: lowest }),
    perThousand: { low: perThousand(lowest), high: perThousand(drive.ratio * (drive.belt?.high ?? 1)) },
    ...(clutch ? { clutch } : {}),
  });
}

function clutchAnswers(ride: Ride, launch: Launch, onHill: Launch | undefined): ClutchAnswers | undefined {
  const { drive, road } = ride.launch;
  const { engages, locks, governed } = ride.speeds;
  if (!drive.clutch || engages === undefined || locks === undefined) return undefined;
  const low = { ...drive, ratio: drive.ratio * (drive.belt?.low ?? 1) };
  const level = clutchDuty(drive.clutch, low, road, ride.use.speed);
  const hill = clutchDuty(drive.clutch, low, { ...road, grade: ride.use.grade }, ride.use.speed);
  const rise = (heat: number): number | undefined =>
    ride.drumMass === undefined ? undefined : drumRise(heat, ride.drumMass);
  const launchHeat = launch.energy.clutchHeat;
  const hillHeat = onHill?.energy.clutchHeat;
  const launchRise = rise(launchHeat);
  const hillRise = hillHeat === undefined ? undefined : rise(hillHeat);
  return {
    speeds: clutchSpeeds({ engages, locks, governed }, low),
    neverLocks: launch.path.slips.some((band) => band.endless),
    level,
    hill,
    launchHeat,
    ...(hillHeat === undefined ? {} : { hillHeat }),
    ...(launchRise === undefined ? {} : { launchRise }),
    ...(hillRise === undefined ? {} : { hillRise }),
    keptSlipping: level.slipping || hill.slipping,
  };
}
