import { centerForLinks, linksForCenter, sprocketDimensions } from '../driveline/index.ts';
import { good, type Length, type Outcome } from '../quantity/index.ts';
import { drivePath, forceAt } from './drivePath.ts';
import { type SteepestHill, steepestHill } from './hill.ts';
import type { LaunchInput } from './launchTypes.ts';
import { accelerationLimits, roadForces } from './roadLoad.ts';
import { type TopSpeed, topSpeed } from './topSpeed.ts';

/** Chain and place of the drive whose sprockets are tried. */
export interface GearingChain {
  /** Pitch, roller diameter, inner width, depth of the plates across the chain [m]. */
  readonly pitch: number;
  readonly rollerDiameter: number;
  readonly innerWidth: number;
  readonly plateHeight: number;
  /** Chain center to the end of its pins [m]. */
  readonly halfWidth: number;
}

/** Where the driven sprocket sits when it is on the rear wheel. */
export interface GearingPlace {
  /** Height of the driven sprocket's center [m]; with the wheel's radius for one on the axle. */
  readonly height: number;
  /** Sprocket plane from the center plane [m], > 0. */
  readonly offset: number;
  /** Half the tire's width with its growth [m]; left out where the chain does not pass the tire. */
  readonly halfTire?: number;
}

/** Center distances that the present slots give [m]. */
export interface CenterRange {
  readonly shortest: number;
  readonly longest: number;
  /** As it stands now. */
  readonly now: number;
}

export interface GearingInput {
  /** The bike; `drive.ratio` is that of all other fixed stages. */
  readonly launch: LaunchInput;
  readonly driverTeeth: readonly number[];
  readonly drivenTeeth: readonly number[];
  readonly chain?: GearingChain;
  readonly place?: GearingPlace;
  readonly centers?: CenterRange;
  /** Odd counts with an offset link too. */
  readonly offsetLinks?: boolean;
}

export interface GearingFit {
  /** Links that fit the slots with the least move of the shaft, and the center distance they ask. */
  readonly links: number;
  readonly center: number;
}

export interface GearingRow {
  readonly driverTeeth: number;
  readonly drivenTeeth: number;
  /** Engine turns per wheel turn; with a belt, at launch. */
  readonly ratio: number;
  /** At the tire from standstill, full throttle [N]. */
  readonly launchForce: number;
  readonly top: TopSpeed;
  readonly hill: SteepestHill;
  /** Road speeds at lock-up and at the governed speed [m/s]; lock-up absent when nothing slips or it never locks. */
  readonly lockUp?: number;
  readonly governed: number;
  /** Chain over the driven sprocket to the ground, upright [m], and the lean at which it touches [rad]. */
  readonly groundGap?: number;
  readonly leanToTouch?: number;
  /** Side of the chain to the tire [m]. */
  readonly tireGap?: number;
  /** Absent when no length fits the slots. */
  readonly fit?: GearingFit;
}

/**
 * Table of sprocket pairs: what each does to force, speed, hill and lock-up, whether its chain clears tire and ground, and
 * which chain length fits the slots as they are.
 * @issue see `drivePath`
 * @source derived
 */
export function gearingTable(input: GearingInput): Outcome<readonly GearingRow[]> {
  const rows: GearingRow[] = [];
  for (const driverTeeth of input.driverTeeth) {
    for (const drivenTeeth of input.drivenTeeth) {
      const row = gearingRow(input, { driverTeeth, drivenTeeth });
      if (!row.ok) return row;
      rows.push(row.value);
    }
  }
  return good(rows);
}

interface Pair {
  readonly driverTeeth: number;
  readonly drivenTeeth: number;
}

function gearingRow(input: GearingInput, pair: Pair): Outcome<GearingRow> {
  const { launch } = input;
  const ratio = (launch.drive.ratio * pair.drivenTeeth) / pair.driverTeeth;
  const drive = { ...launch.drive, ratio };
  const path = drivePath(drive, launch.engine);
  if (!path.ok) return path;
  const [first] = path.value.segments;
  const launchForce = first ? forceAt(first, 0) : 0;
  const limits = launch.stance ? accelerationLimits(launch.road, launch.stance) : [];
  const slip = path.value.segments.findLast(({ phase }) => phase === 'slip' || phase === 'bite');
  const endless = path.value.slips.some((band) => band.endless);
  const fit = fittingLength(input, pair);
  return good({
    ...pair,
    ratio: ratio * (drive.belt?.low ?? 1),
    launchForce,
    top: topSpeed(path.value, roadForces(launch.road), limits),
    hill: steepestHill(launchForce, launch.road, launch.stance),
    ...(slip && !endless ? { lockUp: slip.to } : {}),
    governed: (launch.engine.governed * drive.wheelRadius) / (ratio * (drive.belt?.high ?? 1)),
    ...clearances(input, pair),
    ...(fit ? { fit } : {}),
  });
}

/**
 * Chain over the driven sprocket, to the ground upright: h − (PD + plate height)/2, leaning: tan φ = gap/offset in the sprocket's plane, with
 * the tire taken as thin; and its side to the tire.
 */
function clearances(
  { chain, place }: GearingInput,
  pair: Pair,
): Pick<GearingRow, 'groundGap' | 'leanToTouch' | 'tireGap'> {
  if (!chain || !place) return {};
  const sprocket = sprocketDimensions(
    {
      pitch: chain.pitch as Length,
      rollerDiameter: chain.rollerDiameter as Length,
      innerWidth: chain.innerWidth as Length,
    },
    pair.drivenTeeth,
  );
  const { pitchDiameter, outsideDiameter } = sprocket;
  const reach = Math.max(pitchDiameter + chain.plateHeight, outsideDiameter) / 2;
  const groundGap = place.height - reach;
  return {
    groundGap,
    leanToTouch: Math.atan2(Math.max(0, groundGap), place.offset),
    ...(place.halfTire === undefined ? {} : { tireGap: place.offset - chain.halfWidth - place.halfTire }),
  };
}

/** The whole count within the slots whose center lies nearest the present one. */
function fittingLength({ chain, centers, offsetLinks }: GearingInput, pair: Pair): GearingFit | undefined {
  if (!chain || !centers) return undefined;
  const sprockets = { pitch: chain.pitch as Length, ...pair };
  const least = linksForCenter(sprockets, centers.shortest as Length);
  const most = linksForCenter(sprockets, centers.longest as Length);
  const now = linksForCenter(sprockets, centers.now as Length);
  if (!least.ok || !most.ok || !now.ok) return undefined;
  const step = offsetLinks ? 1 : 2;
  const below = step * Math.floor(now.value / step);
  const inside = [below, below + step].filter((n) => n >= least.value - SAME && n <= most.value + SAME);
  // A slot that lies wholly on one side of the present place holds other counts than the two neighbors.
  const first = step * Math.ceil((least.value - SAME) / step);
  const last = step * Math.floor((most.value + SAME) / step);
  const counts = inside.length > 0 ? inside : first <= last ? [first, last] : [];
  const nearest = counts.sort((a, b) => Math.abs(a - now.value) - Math.abs(b - now.value))[0];
  if (nearest === undefined) return undefined;
  const center = centerForLinks(sprockets, nearest);
  return center.ok ? { links: nearest, center: center.value } : undefined;
}

/** Links: below the rounding of the length equation nothing is a difference. */
const SAME = 1e-9;
