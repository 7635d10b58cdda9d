import type { Bike, MassSummary } from '../../bike/index.ts';
import type { Build } from '../../build/index.ts';
import type { DrivelineSolution } from '../../driveline/index.ts';
import type { FlatPattern } from '../../plates/index.ts';
import type { Issue } from '../../quantity/index.ts';
import { type AxleStrength, axleStrengths } from './checks/axleStrength.ts';
import { driveStrength } from './checks/drive/driveStrength.ts';
import type { DriveStrength } from './checks/drive/driveTypes.ts';
import { type FrameResults, solveBikeFrame } from './checks/frameStrength.ts';
import type { JointInput } from './checks/joints/jointInput.ts';
import { jointRows } from './checks/joints/jointRows.ts';
import { lineStrengths } from './checks/lineStrength.ts';
import { type MemberBuckling, memberBuckling } from './checks/memberBuckling.ts';
import { plateRows } from './checks/plates/plateRows.ts';
import type { UtilizationRow } from './checks/utilizationRow.ts';
import { wallRows } from './checks/walls/wallRows.ts';
import { type WeldLife, weldLives } from './checks/weldLife.ts';
import { type WheelBearing, wheelBearingRows, wheelBearings } from './checks/wheelBearings.ts';
import { type LoadSettings, loadSettings } from './loads/assumptions.ts';
import type { DriveLimits, LoadCase } from './loads/caseTypes.ts';
import { loadCases } from './loads/loadCases.ts';
import { bikeFrame } from './model/bikeFrame.ts';
import type { BikeFrame, ModelFlaw } from './model/frameTypes.ts';
import { type FrameStiffness, frameStiffness } from './stiffness.ts';

/** A solved and weighed bike. */
export interface StrengthInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
}

/** What was worked out of how the bike holds, without remedies and figures. */
export interface StrengthCore {
  readonly settings: LoadSettings;
  readonly frame: BikeFrame;
  readonly cases: readonly LoadCase[];
  readonly limits: DriveLimits;
  /** Absent where the frame is a mechanism; `flaws` say what moves. */
  readonly results?: FrameResults;
  readonly drive: DriveStrength;
  readonly axles: readonly AxleStrength[];
  readonly wheelBearings: readonly WheelBearing[];
  /** Hubs whose bearings could not be checked, and why. */
  readonly hubsLeft: readonly string[];
  readonly welds: readonly WeldLife[];
  readonly buckling: readonly MemberBuckling[];
  /** Plates that could not be looked at, and why. */
  readonly platesLeft: readonly string[];
  /** Walls of tubes that could not be looked at, and why. */
  readonly wallsLeft: readonly string[];
  readonly stiffness?: FrameStiffness;
  /** Every comparison, the highest utilization first. */
  readonly rows: readonly UtilizationRow[];
  /** Comparisons that came out as no number, and why. */
  readonly rowsLeft: readonly string[];
  readonly flaws: readonly ModelFlaw[];
  readonly issues: readonly Issue[];
}

/** The check itself; run again for each remedy that is tried. */
export function strengthCore(input: StrengthInput): StrengthCore {
  const { build, bike, driveline, patterns } = input;
  const settings = loadSettings(build);
  const frame = bikeFrame(input, settings);
  const { cases, limits } = loadCases({ ...input, frame, settings });
  const solved = solveBikeFrame(frame, cases, lineStrengths(bike, settings), settings);
  const drive = driveStrength({ build, bike, driveline, frame, settings, limits, patterns });
  const axles = axleStrengths({ build, bike, frame, cases, settings });
  const hubs = wheelBearings({ build, bike, driveline, frame, cases, settings });
  const held = solved.ok ? heldFrame({ ...input, frame, settings, cases, results: solved.value }) : LOOSE;
  return {
    settings,
    frame,
    cases,
    limits,
    drive,
    axles,
    wheelBearings: hubs.bearings,
    hubsLeft: hubs.notChecked,
    ...held.core,
    ...sortedRows([
      ...held.rows,
      ...drive.rows,
      ...axles.flatMap((axle) => axle.rows),
      ...hubs.bearings.flatMap((one) => wheelBearingRows(settings, one)),
    ]),
    flaws: [...frame.flaws, ...(solved.ok ? [] : solved.flaws)],
    issues: solved.ok ? [] : solved.issues,
  };
}

/** What only a frame that is no mechanism has. */
interface HeldFrame {
  readonly core: Pick<
    StrengthCore,
    'results' | 'welds' | 'buckling' | 'platesLeft' | 'wallsLeft' | 'stiffness'
  >;
  readonly rows: readonly UtilizationRow[];
}

const LOOSE: HeldFrame = { core: { welds: [], buckling: [], platesLeft: [], wallsLeft: [] }, rows: [] };

function heldFrame(input: JointInput): HeldFrame {
  const { build, frame, settings, cases, results } = input;
  const stiffness = frameStiffness(frame, results.assembled);
  const buckling = memberBuckling(frame, cases, results);
  const plates = plateRows(input);
  const walls = wallRows(input);
  return {
    core: {
      results,
      welds: weldLives(frame, cases, results, settings, build.loads?.weldDetail),
      buckling,
      platesLeft: plates.notChecked,
      wallsLeft: walls.notChecked,
      ...(stiffness ? { stiffness } : {}),
    },
    rows: [
      ...results.rows,
      ...jointRows(input),
      ...plates.rows,
      ...walls.rows,
      ...buckling.map((one) => one.row),
    ],
  };
}

/** The highest first; what came out as no number is told, not dropped. */
function sortedRows(all: readonly UtilizationRow[]): Pick<StrengthCore, 'rows' | 'rowsLeft'> {
  const isNumber = ({ utilization }: UtilizationRow): boolean => Number.isFinite(utilization);
  return {
    rows: all.filter(isNumber).sort((a, b) => b.utilization - a.utilization),
    rowsLeft: all
      .filter((row) => !isNumber(row))
      .map(({ quantity, part, where }) => `${quantity}, ${part}, ${where}: its limit is nothing`),
  };
}
