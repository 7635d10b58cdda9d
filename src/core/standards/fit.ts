import table from '../../../data/standards/fits.json' with { type: 'json' };
import { bad, good, type Length, type Outcome, type SourceRef } from '../quantity/index.ts';

/** The two limits of a tolerance class at one size. */
export interface FitLimits {
  /** As asked for, e.g. `N7`. */
  readonly designation: string;
  /** A capital letter names a hole, a small one a shaft. */
  readonly of: 'hole' | 'shaft';
  /** Nominal size [m]. */
  readonly size: Length;
  /** ES or es, upper deviation from nominal [m]. */
  readonly upper: Length;
  /** EI or ei, lower deviation from nominal [m]. */
  readonly lower: Length;
  readonly source: SourceRef;
}

/** Interference of a shaft in a hole [m]; positive is tight. */
export interface Interference {
  readonly least: Length;
  readonly most: Length;
}

type Row = (typeof table.rows)[number];
type ShaftLetter = keyof Row['shaftDeviationUm'];
type Listed = keyof Row['listedUm'];
interface Limits {
  readonly upper: number;
  readonly lower: number;
}

const LARGEST_MM = 120;
const GRADES = [4, 5, 6, 7, 8, 9, 10, 11] as const;
const KNOWN = [
  'F7',
  'F8',
  'G7',
  'H7',
  'H8',
  'J7',
  'K7',
  'M7',
  'N7',
  'P7',
  'g6',
  'h6',
  'j6',
  'k6',
  'm6',
  'n6',
  'p6',
];
/** Above this grade the Δ of the hole rule is dropped: 8 for K, M, N; 7 for P. */
const DELTA_UP_TO: Readonly<Record<string, number>> = { K: 8, M: 8, N: 8, P: 7 };

/**
 * Limits of a tolerance class up to 120 mm. Shafts: ei or es is the tabled fundamental deviation, the other limit lies
 * one grade away. Holes F, G, H: EI = −es of the shaft letter; K, M, N (to IT8) and P (to IT7): ES = −ei + Δ,
 * Δ = ITn − IT(n−1), 0 up to 3 mm; J6, J7, j5 and j6 are listed.
 * @issue out-of-range — size not above 0 or over 120 mm
 * @issue not-in-table — a class that the tables do not give
 * @source iso-286, parts 1 and 2
 */
export function fitLimits(size: number, designation: string): Outcome<FitLimits> {
  const sizeMm = size * 1000;
  if (!(sizeMm > 0 && sizeMm <= LARGEST_MM + 1e-9)) {
    return bad({ code: 'out-of-range', path: '', given: sizeMm, min: 0, max: LARGEST_MM, unit: 'mm' });
  }
  const row = table.rows.find((step) => sizeMm <= step.toMm + 1e-9)!;
  const limits = deviationsUm(row, designation);
  if (!limits) return bad({ code: 'not-in-table', path: '', given: designation, nearest: KNOWN });
  return good({
    designation,
    of: isHole(designation) ? 'hole' : 'shaft',
    size: size as Length,
    upper: (limits.upper / 1e6) as Length,
    lower: (limits.lower / 1e6) as Length,
    source: row.sources.shaftDeviation,
  });
}

/** IT grade 4 to 11 at a size up to 120 mm [m]; undefined outside. */
export function toleranceGrade(size: number, grade: number): Length | undefined {
  const row = table.rows.find((step) => size * 1000 <= step.toMm + 1e-9);
  const value = row && size > 0 ? gradeUm(row, grade) : undefined;
  return value === undefined ? undefined : ((value / 1e6) as Length);
}

/** Tightest and loosest interference of a shaft in a hole: least = ei − ES, most = es − EI. */
export const interferenceOf = (hole: Limits, shaft: Limits): Interference => ({
  least: (shaft.lower - hole.upper) as Length,
  most: (shaft.upper - hole.lower) as Length,
});

/**
 * Deviations of the bore or the outside of a class Normal ball bearing [m]; upper is 0. Undefined outside the table.
 * @source memory, ISO 492 tolerance class Normal
 */
export function bearingRingLimits(size: number, which: 'bore' | 'outside'): Limits | undefined {
  const sizeMm = size * 1000;
  const rows = table.bearingRings[which];
  const row = rows.find((step) => sizeMm > step.overMm - 1e-9 && sizeMm <= step.toMm + 1e-9);
  return row && { upper: 0, lower: row.lowerUm / 1e6 };
}

/**
 * Radial internal clearance of a deep groove ball bearing before it is fitted [m]. Undefined outside the table.
 * @source memory, ISO 5753-1
 */
export function internalClearance(
  bore: number,
  group: 'N' | 'C3',
): { readonly least: Length; readonly most: Length } | undefined {
  const boreMm = bore * 1000;
  const { rows } = table.internalClearance;
  const row = rows.find((step) => boreMm > step.overMm - 1e-9 && boreMm <= step.toMm + 1e-9);
  const um = row && (group === 'N' ? row.nUm : row.c3Um);
  return um && { least: (um.least / 1e6) as Length, most: (um.most / 1e6) as Length };
}

const isHole = (designation: string): boolean => /^[A-Z]/.test(designation);

function gradeUm(row: Row, grade: number): number | undefined {
  const known = GRADES.find((g) => g === grade);
  return known && row.gradesUm[`IT${known}`];
}

function deviationsUm(row: Row, designation: string): Limits | undefined {
  if (designation in row.listedUm) return row.listedUm[designation as Listed];
  const match = /^([A-Za-z])(\d{1,2})$/.exec(designation);
  if (!match) return undefined;
  const letter = match[1]!;
  const grade = Number(match[2]);
  const width = gradeUm(row, grade);
  const deviation = shaftDeviationUm(row, letter.toLowerCase(), grade);
  if (width === undefined || deviation === undefined) return undefined;
  return isHole(letter) ? holeUm(row, letter, grade, width, deviation) : shaftUm(letter, width, deviation);
}

/** Fundamental deviation of a shaft; k has one only for grades 4 to 7. */
function shaftDeviationUm(row: Row, letter: string, grade: number): number | undefined {
  if (!(letter in row.shaftDeviationUm)) return undefined;
  return letter === 'k' && grade > 7 ? 0 : row.shaftDeviationUm[letter as ShaftLetter];
}

const shaftUm = (letter: string, width: number, deviation: number): Limits =>
  'fgh'.includes(letter)
    ? { upper: deviation, lower: deviation - width }
    : { upper: deviation + width, lower: deviation };

// K, M and N holes above IT8 follow other rules (N is 0 there), so they are refused rather than guessed.
function holeUm(row: Row, letter: string, grade: number, width: number, shaft: number): Limits | undefined {
  if ('FGH'.includes(letter)) return { lower: -shaft, upper: width - shaft };
  const upTo = DELTA_UP_TO[letter];
  if (upTo === undefined || (grade > upTo && letter !== 'P')) return undefined;
  const below = gradeUm(row, grade - 1);
  if (below === undefined) return undefined;
  // The rule takes k of grades 4 to 7 also for K8.
  const base = letter === 'K' ? row.shaftDeviationUm.k : shaft;
  const delta = row.toMm <= 3 || grade > upTo ? 0 : width - below;
  const upper = -base + delta;
  return { upper, lower: upper - width };
}
