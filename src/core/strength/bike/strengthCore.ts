import type { Bike, MassSummary } from '../../bike/index.ts';
import type { Build } from '../../build/index.ts';
import type { DrivelineSolution } from '../../driveline/index.ts';
import type { FlatPattern } from '../../plates/index.ts';
import type { Issue } from '../../quantity/index.ts';
import { type AxleStrength, axleStrengths } from './checks/axleStrength.ts';
import { driveStrength } from './checks/drive/driveStrength.ts';
import type { DriveStrength } from './checks/drive/driveTypes.ts';
import { type FrameResults, solveBikeFrame } from './checks/frameStrength.ts';
import { jointRows } from './checks/joints/jointRows.ts';
import { lineStrengths } from './checks/lineStrength.ts';
import { type MemberBuckling, memberBuckling } from './checks/memberBuckling.ts';
import { type PlateRows, plateRows } from './checks/plates/plateRows.ts';
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
  const results = solved.ok ? solved.value : undefined;
  const stiffness = results && frameStiffness(frame, results.assembled);
  const buckling = results ? memberBuckling(frame, cases, results) : [];
  const plates: PlateRows = results
    ? plateRows({ ...input, frame, settings, cases, results })
    : { rows: [], notChecked: [] };
  const walls = results
    ? wallRows({ ...input, frame, settings, cases, results })
    : { rows: [], notChecked: [] };
  const rows = [
    ...(results?.rows ?? []),
    ...drive.rows,
    ...axles.flatMap((axle) => axle.rows),
    ...hubs.bearings.flatMap((one) => wheelBearingRows(settings, one)),
    ...(results ? jointRows({ ...input, frame, settings, cases, results }) : []),
    ...plates.rows,
    ...walls.rows,
    ...buckling.map((one) => one.row),
  ].filter((row) => Number.isFinite(row.utilization));
  return {
    settings,
    frame,
    cases,
    limits,
    ...(results ? { results } : {}),
    drive,
    axles,
    wheelBearings: hubs.bearings,
    hubsLeft: hubs.notChecked,
    welds: results ? weldLives(frame, cases, results, settings, build.loads?.weldDetail) : [],
    buckling,
    platesLeft: plates.notChecked,
    wallsLeft: walls.notChecked,
    ...(stiffness ? { stiffness } : {}),
    rows: rows.toSorted((a, b) => b.utilization - a.utilization),
    flaws: [...frame.flaws, ...(solved.ok ? [] : solved.flaws)],
    issues: solved.ok ? [] : solved.issues,
  };
}
