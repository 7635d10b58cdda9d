import {
  type BeltWraps,
  beltCenter,
  beltWraps,
  coupledDiameters,
  coupledDrivenDiameter,
  type SheavePair,
} from '../driveline/index.ts';
import { bad, good, type Length, type Outcome } from '../quantity/index.ts';

/** Smallest and largest pitch diameter that a sheave can be set to [m]. */
export interface SheaveLimits {
  readonly smallest: number;
  readonly largest: number;
}

export interface VariableBeltInput {
  /** L, pitch length [m]. */
  readonly length: number;
  /** C [m]; left out: that of the belt at launch, driver smallest and driven largest. */
  readonly center?: number;
  readonly driver: SheaveLimits;
  readonly driven: SheaveLimits;
  /** Plus or minus on the belt's length [m]; left out: 0. */
  readonly lengthTolerance?: number;
}

/** Both sheaves at one ratio. */
export interface BeltPosition extends SheavePair {
  /** i = d2/d1. */
  readonly ratio: number;
  readonly wraps: BeltWraps;
}

export interface VariableBeltDrive {
  /** [m] */
  readonly center: number;
  /** Launch and top, as far as belt and both sheaves allow. */
  readonly low: BeltPosition;
  readonly high: BeltPosition;
  /** Which sheave is at its limit there. */
  readonly lowEndsAt: 'driver' | 'driven';
  readonly highEndsAt: 'driver' | 'driven';
  /** The other sheave's limit that is not reached, and by how much in diameter [m]. */
  readonly lowUnused: number;
  readonly highUnused: number;
  /** Centers at which the shortest and longest belt of the tolerance sit at launch [m]. */
  readonly centerRange: { readonly shortest: number; readonly longest: number };
}

/** What the belt does on the road. */
export interface BeltRoadSpeeds {
  /** At first bite, in the launch ratio; absent when it is always taut [m/s]. */
  readonly bite?: number;
  /** Ends of the shift at constant engine speed [m/s]. */
  readonly shiftFrom: number;
  readonly shiftTo: number;
  /** At the governed speed in the top ratio [m/s]. */
  readonly governed: number;
  /** Belt speed at the governed speed in the top ratio [m/s]. */
  readonly beltSpeed: number;
}

/**
 * Ends of a variable belt drive at fixed belt length and center distance, by the exact open-belt equation: at launch the
 * driver is as small, at the top as large as both sheaves' limits and the belt allow.
 * @issue conflict — no position of the sheaves keeps the belt taut
 * @source derived, open-belt equation; see `coupledDrivenDiameter`
 */
export function variableBeltDrive(input: VariableBeltInput): Outcome<VariableBeltDrive> {
  const launch = pairOf(input.driver.smallest, input.driven.largest);
  const nominal = beltCenter(launch, input.length as Length);
  if (!nominal.ok) return nominal;
  const center = input.center ?? nominal.value;
  const low = endOf(input, center, 'low');
  if (!low.ok) return low;
  const high = endOf(input, center, 'high');
  if (!high.ok) return high;
  if (low.value.position.driverDiameter > high.value.position.driverDiameter) return bad(noRange);
  const tolerance = input.lengthTolerance ?? 0;
  const shortest = beltCenter(launch, (input.length - tolerance) as Length);
  const longest = beltCenter(launch, (input.length + tolerance) as Length);
  if (!shortest.ok) return shortest;
  if (!longest.ok) return longest;
  return good({
    center,
    low: low.value.position,
    high: high.value.position,
    lowEndsAt: low.value.endsAt,
    highEndsAt: high.value.endsAt,
    lowUnused: low.value.unused,
    highUnused: high.value.unused,
    centerRange: { shortest: shortest.value, longest: longest.value },
  });
}

/**
 * Both sheaves over the whole range, evenly in ratio, from launch to top.
 * @param count positions, ≥ 2
 * @issue see `coupledDiameters`
 * @source derived, open-belt equation
 */
export function beltPositions(
  input: Pick<VariableBeltInput, 'length'>,
  drive: VariableBeltDrive,
  count: number,
): Outcome<readonly BeltPosition[]> {
  const belt = { length: input.length as Length, center: drive.center as Length };
  const positions: BeltPosition[] = [];
  for (let k = 0; k < count; k++) {
    const ratio = drive.low.ratio + ((drive.high.ratio - drive.low.ratio) * k) / (count - 1);
    const pair = coupledDiameters(belt, ratio);
    if (!pair.ok) return pair;
    positions.push(pair.value);
  }
  return good(positions);
}

/**
 * Road speeds of bite, shift and governor: v = ω·R/(i·G); belt speed ω·d1/2.
 * @source derived
 */
export function beltRoadSpeeds(
  drive: Pick<VariableBeltDrive, 'low' | 'high'>,
  run: {
    /** Fixed ratio of the other stages, and the wheel's rolling radius [m]. */
    readonly ratio: number;
    readonly wheelRadius: number;
    /** [rad/s] */
    readonly engages?: number;
    readonly shiftsAt: number;
    readonly governed: number;
  },
): BeltRoadSpeeds {
  const road = (speed: number, belt: number): number => (speed * run.wheelRadius) / (belt * run.ratio);
  return {
    ...(run.engages === undefined ? {} : { bite: road(run.engages, drive.low.ratio) }),
    shiftFrom: road(run.shiftsAt, drive.low.ratio),
    shiftTo: road(run.shiftsAt, drive.high.ratio),
    governed: road(run.governed, drive.high.ratio),
    beltSpeed: (run.governed * drive.high.driverDiameter) / 2,
  };
}

const noRange = {
  code: 'conflict',
  path: 'centerDistance',
  reason: 'at this center distance no position within the limits of both sheaves keeps the belt taut',
} as const;

const pairOf = (driver: number, driven: number): SheavePair => ({
  driverDiameter: driver as Length,
  drivenDiameter: driven as Length,
});

interface End {
  readonly position: BeltPosition;
  readonly endsAt: 'driver' | 'driven';
  readonly unused: number;
}

/** The driver goes to its limit if the driven sheave can follow; else the driven one stops at its own. */
function endOf(input: VariableBeltInput, center: number, end: 'low' | 'high'): Outcome<End> {
  const belt = { length: input.length as Length, center: center as Length };
  const [driver, driven] =
    end === 'low'
      ? [input.driver.smallest, input.driven.largest]
      : [input.driver.largest, input.driven.smallest];
  const follows = coupledDrivenDiameter(belt, driver as Length);
  const isPast = (value: number): boolean =>
    end === 'low' ? value > driven + SAME_DIAMETER : value < driven - SAME_DIAMETER;
  if (follows.ok && !isPast(follows.value)) {
    if (!lies(follows.value, input.driven)) return bad(noRange);
    return positionOf(pairOf(driver, follows.value), center, {
      endsAt: 'driver',
      unused: Math.abs(follows.value - driven),
    });
  }
  // The same equation read from the driven side gives the driver.
  const leads = coupledDrivenDiameter(belt, driven as Length);
  if (!leads.ok || !lies(leads.value, input.driver)) return bad(noRange);
  return positionOf(pairOf(leads.value, driven), center, {
    endsAt: 'driven',
    unused: Math.abs(leads.value - driver),
  });
}

/** Diameters are the same within the solution of the length equation [m]. */
const SAME_DIAMETER = 1e-9;

const lies = (value: number, { smallest, largest }: SheaveLimits): boolean =>
  value >= smallest - SAME_DIAMETER && value <= largest + SAME_DIAMETER;

function positionOf(pair: SheavePair, center: number, end: Omit<End, 'position'>): Outcome<End> {
  const wraps = beltWraps(pair, center as Length);
  if (!wraps.ok) return wraps;
  const ratio = pair.drivenDiameter / pair.driverDiameter;
  return good({ position: { ...pair, ratio, wraps: wraps.value }, ...end });
}
