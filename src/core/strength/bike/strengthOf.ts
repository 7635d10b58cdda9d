import type { Bike, MassSummary } from '../../bike/index.ts';
import type { Build } from '../../build/index.ts';
import type { DrivelineSolution } from '../../driveline/index.ts';
import type { FlatPattern } from '../../plates/index.ts';
import type { Figure, Issue } from '../../quantity/index.ts';
import { type LoadSettings, loadSettings } from './assumptions.ts';
import { type AxleStrength, axleStrengths } from './axleStrength.ts';
import { type DriveStrength, driveStrength } from './driveStrength.ts';
import { type BikeFrame, bikeFrame, type ModelFlaw } from './frameModel.ts';
import { type FrameResults, lineStrengths, solveBikeFrame, type UtilizationRow } from './frameStrength.ts';
import { jointRows } from './jointStrength.ts';
import { type DriveLimits, type LoadCase, loadCases } from './loadCases.ts';
import { type MemberBuckling, memberBuckling } from './memberBuckling.ts';
import { type Remedy, triedRemedies } from './remedies.ts';
import { type FrameStiffness, frameStiffness } from './stiffness.ts';
import { strengthFigures } from './strengthFigures.ts';
import { type WeldLife, weldLives } from './weldLife.ts';

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
  readonly welds: readonly WeldLife[];
  readonly buckling: readonly MemberBuckling[];
  readonly stiffness?: FrameStiffness;
  /** Every comparison, the highest utilization first. */
  readonly rows: readonly UtilizationRow[];
  readonly flaws: readonly ModelFlaw[];
  readonly issues: readonly Issue[];
}

/** Does it hold? Figures and comparisons; the verdicts are made of them by the findings. */
export interface Strength extends StrengthCore {
  readonly worst: readonly UtilizationRow[];
  readonly remedies: readonly Remedy[];
  readonly figures: readonly Figure[];
  /** What was left out, in words for the report. */
  readonly notChecked: readonly string[];
}

const WORST = 10;

/**
 * Strength of the placed bike under its load cases: frame, welds, shafts, bearings, keys, chains, bolts. For the worst
 * places a remedy is tried by running the same check again.
 * @source derived, see each part
 */
export function strengthOf(input: StrengthInput): Strength {
  const core = strengthCore(input);
  const worst = worstPlaces(core.rows);
  return {
    ...core,
    worst,
    remedies: triedRemedies(input, core),
    figures: strengthFigures(core),
    notChecked: [
      'the engine, its shaft and its own bolts beyond slip',
      'wheels, tires and spokes, wheel bearings',
      'the inside of a bought fork, the bars and the seat pan',
      'plates in bending and the walls of tubes under local pressure',
      ...core.drive.notChecked,
    ],
  };
}

/** The highest rows, a mirrored pair counted once. */
function worstPlaces(rows: readonly UtilizationRow[]): readonly UtilizationRow[] {
  const seen = new Set<string>();
  return rows
    .filter((row) => {
      const key = `${row.part.replace(/\.right$/, '')} ${row.quantity}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .slice(0, WORST);
}

/** The check itself; run again for each remedy that is tried. */
export function strengthCore(input: StrengthInput): StrengthCore {
  const { build, bike, driveline } = input;
  const settings = loadSettings(build);
  const frame = bikeFrame(input, settings);
  const { cases, limits } = loadCases({ ...input, frame, settings });
  const solved = solveBikeFrame(frame, cases, lineStrengths(bike, settings), settings);
  const drive = driveStrength({ build, bike, driveline, frame, settings, limits });
  const axles = axleStrengths(frame, cases, settings);
  const results = solved.ok ? solved.value : undefined;
  const stiffness = results && frameStiffness(frame, results.assembled);
  const buckling = results ? memberBuckling(frame, cases, results) : [];
  const rows = [
    ...(results?.rows ?? []),
    ...drive.rows,
    ...axles.flatMap((axle) => axle.rows),
    ...(results ? jointRows({ ...input, frame, settings, cases, results }) : []),
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
    welds: results ? weldLives(frame, cases, results, settings, build.loads?.weldDetail) : [],
    buckling,
    ...(stiffness ? { stiffness } : {}),
    rows: rows.toSorted((a, b) => b.utilization - a.utilization),
    flaws: [...frame.flaws, ...(solved.ok ? [] : solved.flaws)],
    issues: solved.ok ? [] : solved.issues,
  };
}
