import type { Bike, MassSummary } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { Figure, Issue } from '../quantity/index.ts';
import { brakingFigures } from './brakingFigures.ts';
import { type BrakingOfBuild, brakingOfBuild } from './brakingOfBuild.ts';
import { type Ride, rideOf } from './fromBuild.ts';
import { type CenterRange, type GearingRow, gearingTable } from './gearing.ts';
import { type EigenvaluesAtSpeed, eigenvaluesOver, type Handling, handlingOf } from './handling.ts';
import { handlingFigures } from './handlingFigures.ts';
import { type LeanContact, leanContacts } from './leanContact.ts';
import { type LockContact, lockContacts } from './lockContact.ts';
import { type RideAnswers, rideAnswers } from './rideAnswers.ts';
import { launchFigures } from './rideFigures.ts';
import { riderFitFigures } from './riderFitFigures.ts';
import { type RiderFitOfBuild, riderFitOfBuild } from './riderFitOfBuild.ts';
import { type TurningCircle, turningCircle } from './steering.ts';
import { steeringLimitFigures } from './steeringLimitFigures.ts';
import { suspensionFigures } from './suspensionFigures.ts';
import { type SuspensionOfBuild, suspensionOfBuild } from './suspensionOfBuild.ts';
import { type Asymmetry, whippleFromBuild } from './whippleFromBuild.ts';

/** A chain whose teeth could be changed, and what each pair would do. */
export interface GearingChoice {
  readonly drive: string;
  readonly rows: readonly GearingRow[];
}

/** Everything about how the bike rides. What could not be worked out is absent, and `issues` says why. */
export interface Riding {
  readonly going?: { readonly ride: Ride; readonly answers: RideAnswers };
  readonly gearing?: GearingChoice;
  readonly braking: BrakingOfBuild;
  readonly handling?: {
    readonly handling: Handling;
    readonly asymmetry: Asymmetry;
    /** For the picture, over the speeds the bike reaches. */
    readonly curve: readonly EigenvaluesAtSpeed[];
  };
  readonly fit: RiderFitOfBuild;
  readonly suspension: SuspensionOfBuild;
  readonly turning?: TurningCircle;
  /** First contacts in a lean, lowest first, and at the lock. */
  readonly leans: readonly LeanContact[];
  readonly locks: readonly LockContact[];
  readonly issues: readonly Issue[];
  readonly figures: readonly Figure[];
}

/** A placed bike as the ride sees it. */
export interface RidingInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly masses: MassSummary;
}

/** Speeds of the eigenvalue picture where the top speed is not known [m/s], and their count. */
const USUAL_TOP = 15;
const CURVE_POINTS = 120;
/** Teeth tried around those that are there. */
const DRIVER_AROUND = 3;
const DRIVEN_AROUND = 12;
const DRIVEN_STEP = 3;
const LEAST_TEETH = 9;

/** How a placed bike goes, stops, steers and fits. @source derived, see each part */
export function ridingOf(input: RidingInput): Riding {
  const { build, bike, driveline, masses } = input;
  const issues: Issue[] = [];
  const ride = rideOf(build, bike, driveline, masses);
  if (!ride.ok) issues.push(...ride.issues);
  const answers = ride.ok ? rideAnswers(ride.value) : undefined;
  if (answers && !answers.ok) issues.push(...answers.issues);
  const going = ride.ok && answers?.ok ? { ride: ride.value, answers: answers.value } : undefined;
  const handling = handlingPart(input, going?.answers.launch.top.speed, issues);
  const braking = brakingOfBuild(build, bike, masses);
  const fit = riderFitOfBuild(build, bike);
  const suspension = suspensionOfBuild(build, bike, masses);
  const locks = lockContacts(build, bike);
  const leans = leanContacts(build, bike, driveline);
  const gearing = going ? gearingPart(input, going.ride, issues) : undefined;
  const turning = turningPart(input);
  return {
    ...(going ? { going } : {}),
    ...(gearing ? { gearing } : {}),
    ...(handling ? { handling } : {}),
    ...(turning ? { turning } : {}),
    braking,
    fit,
    suspension,
    leans,
    locks,
    issues,
    figures: [
      ...(going ? launchFigures(going.ride, going.answers) : []),
      ...brakingFigures(braking.input, braking.braking, { front: braking.frontHeat, rear: braking.rearHeat }),
      ...(handling ? handlingFigures(handling.handling, handling.asymmetry) : []),
      ...steeringLimitFigures(build, bike, locks, leans),
      ...riderFitFigures(fit.triangle, [fit.own]),
      ...suspensionFigures(suspension),
    ],
  };
}

function handlingPart(input: RidingInput, top: number | undefined, issues: Issue[]): Riding['handling'] {
  const { layout } = input.bike;
  const whipple = whippleFromBuild({ layout, masses: input.masses });
  if (!whipple.ok) {
    issues.push(...whipple.issues);
    return undefined;
  }
  const handling = handlingOf(whipple.value.parameters);
  const fastest = Math.max(top ?? USUAL_TOP, USUAL_TOP / 2);
  const speeds = Array.from({ length: CURVE_POINTS }, (_, k) => (fastest * (k + 1)) / CURVE_POINTS);
  return {
    handling,
    asymmetry: whipple.value.asymmetry,
    curve: eigenvaluesOver(handling.matrices, speeds),
  };
}

/** The last chain is the one that is changed: its sprockets are the cheapest, and its slot is there. */
function gearingPart(input: RidingInput, ride: Ride, issues: Issue[]): GearingChoice | undefined {
  const chain = Object.values(input.driveline.chains).at(-1);
  if (!chain) return undefined;
  const { stage } = chain;
  const other = ride.launch.drive.ratio / (stage.drivenTeeth / stage.driverTeeth);
  const line = input.bike.ladder.lines.find((one) => one.drive === stage.id);
  const slot = input.driveline.slots.find((one) => one.shaft === chain.tension.slides);
  const wheel = input.bike.shafts[stage.to];
  const { rear } = input.build.wheels;
  const tire = input.bike.layout.fitted.rear;
  const table = gearingTable({
    launch: { ...ride.launch, drive: { ...ride.launch.drive, ratio: other } },
    driverTeeth: around(stage.driverTeeth, DRIVER_AROUND, 1),
    drivenTeeth: around(stage.drivenTeeth, DRIVEN_AROUND, DRIVEN_STEP),
    chain: chain.chain,
    ...(line && wheel
      ? {
          place: {
            height: wheel.z,
            offset: Math.abs(line.drivenY),
            halfTire: tire.width / 2 + (rear.growth ?? 0),
          },
        }
      : {}),
    ...(slot ? { centers: centersOf(chain.center, slot) } : {}),
    ...(stage.offsetLink === undefined ? {} : { offsetLinks: stage.offsetLink }),
  });
  if (!table.ok) {
    issues.push(...table.issues);
    return undefined;
  }
  return { drive: stage.id, rows: table.value };
}

const around = (teeth: number, reach: number, step: number): readonly number[] =>
  Array.from(
    { length: 2 * Math.floor(reach / step) + 1 },
    (_, k) => teeth + (k - Math.floor(reach / step)) * step,
  ).filter((count) => count >= LEAST_TEETH);

/** Center distances that the slot as drawn reaches, taken along the line of centers. */
function centersOf(
  center: number,
  slot: { readonly from: number; readonly to: number; readonly fresh: number },
): CenterRange {
  return { shortest: center + slot.from - slot.fresh, longest: center + slot.to - slot.fresh, now: center };
}

function turningPart({ build, bike }: RidingInput): TurningCircle | undefined {
  const { lock } = build.steering;
  const stance = bike.layout.stances.sag;
  if (lock === undefined) return undefined;
  return turningCircle(stance.wheelbase, stance.rake, lock, bike.layout.fitted.front.width);
}
