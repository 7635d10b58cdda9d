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
/** Loosest first. */
const LETTERS = ['d', 'e', 'f', 'g', 'h', 'js', 'j', 'k', 'm', 'n', 'p', 'r', 's'] as const;
/** Most classes that a refusal offers. */
const OFFERED = 6;
/** Above this grade the Δ of the hole rule is dropped: 8 for K, M, N; 7 for P, R, S. */
const DELTA_UP_TO: Readonly<Record<string, number>> = { K: 8, M: 8, N: 8, P: 7, R: 7, S: 7 };

/**
 * Limits of a tolerance class up to 120 mm. Shafts: ei or es is the tabled fundamental deviation, the other limit lies
 * one grade away. Holes D to H: EI = −es of the shaft letter; K, M, N (to IT8) and P, R, S (to IT7): ES = −ei + Δ,
 * Δ = ITn − IT(n−1), 0 up to 3 mm; P, R, S above: ES = −ei; N above IT8: ES = 0, −4 µm up to 3 mm. js, JS: ±ITn/2.
 * J6, J7, j5 and j6 are listed. d, e, f, r, s and N above IT8 are from memory.
 * @param wanted which kind a refusal offers; left out: by the size of the letter
 * @issue out-of-range — size not above 0 or over 120 mm
 * @issue not-in-table — a class that the tables do not give
 * @source iso-286, parts 1 and 2
 */
export function fitLimits(
  size: number,
  designation: string,
  wanted: 'hole' | 'shaft' = isHole(designation) ? 'hole' : 'shaft',
): Outcome<FitLimits> {
  const sizeMm = size * 1000;
  if (!(sizeMm > 0 && sizeMm <= LARGEST_MM + 1e-9)) {
    return bad({ code: 'out-of-range', path: '', given: sizeMm, min: 0, max: LARGEST_MM, unit: 'mm' });
  }
  const row = table.rows.find((step) => sizeMm <= step.toMm + 1e-9)!;
  const limits = deviationsUm(row, designation, sizeMm);
  if (!limits) {
    const nearest = nearestClasses(row, sizeMm, designation, wanted);
    return bad({ code: 'not-in-table', path: '', given: designation, nearest });
  }
  return good({
    designation,
    of: isHole(designation) ? 'hole' : 'shaft',
    size: size as Length,
    upper: (limits.upper / 1e6) as Length,
    lower: (limits.lower / 1e6) as Length,
    source: /^[rs]\d/i.test(designation) ? row.sources.tightDeviations : row.sources.shaftDeviation,
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

function deviationsUm(row: Row, designation: string, sizeMm: number): Limits | undefined {
  if (designation in row.listedUm) return row.listedUm[designation as Listed];
  const match = /^(JS|js|[A-Za-z])(\d{1,2})$/.exec(designation);
  if (!match) return undefined;
  const letter = match[1]!;
  const grade = Number(match[2]);
  const width = gradeUm(row, grade);
  if (width === undefined) return undefined;
  if (letter.toLowerCase() === 'js') return { upper: width / 2, lower: -width / 2 };
  const deviation = shaftDeviationUm(row, letter.toLowerCase(), grade, sizeMm);
  if (deviation === undefined) return undefined;
  return isHole(letter) ? holeUm(row, letter, grade, width, deviation) : shaftUm(letter, width, deviation);
}

/** Fundamental deviation of a shaft; k has one only for grades 4 to 7, r and s finer steps of size. */
function shaftDeviationUm(row: Row, letter: string, grade: number, sizeMm: number): number | undefined {
  if (letter === 'r' || letter === 's')
    return row.tightDeviationsUm.find((step) => sizeMm <= step.toMm + 1e-9)?.[letter];
  if (!(letter in row.shaftDeviationUm)) return undefined;
  return letter === 'k' && grade > 7 ? 0 : row.shaftDeviationUm[letter as ShaftLetter];
}

const shaftUm = (letter: string, width: number, deviation: number): Limits =>
  'defgh'.includes(letter)
    ? { upper: deviation, lower: deviation - width }
    : { upper: deviation + width, lower: deviation };

// K and M holes above IT8 follow other rules, so they are refused rather than guessed.
function holeUm(row: Row, letter: string, grade: number, width: number, shaft: number): Limits | undefined {
  if ('DEFGH'.includes(letter)) return { lower: -shaft, upper: width - shaft };
  const upTo = DELTA_UP_TO[letter];
  if (upTo === undefined) return undefined;
  if (grade > upTo) {
    if (letter === 'K' || letter === 'M') return undefined;
    const upper = letter === 'N' && row.toMm > 3 ? 0 : -shaft;
    return { upper, lower: upper - width };
  }
  const below = gradeUm(row, grade - 1);
  if (below === undefined) return undefined;
  // The rule takes k of grades 4 to 7 also for K8.
  const base = letter === 'K' ? row.shaftDeviationUm.k : shaft;
  const upper = -base + (row.toMm <= 3 ? 0 : width - below);
  return { upper, lower: upper - width };
}

/** Classes that are taken at this size, those of the nearest letter and grade first. */
function nearestClasses(row: Row, sizeMm: number, given: string, of: 'hole' | 'shaft'): readonly string[] {
  const match = /^([a-z]+)(\d*)$/i.exec(given.trim());
  // Nothing to go by: the middle of both, h7.
  const place = placeOf(match?.[1]?.toLowerCase() ?? 'h');
  const grade = Number(match?.[2] || 7);
  return LETTERS.flatMap((letter) =>
    GRADES.map((one) => ({
      name: `${of === 'hole' ? letter.toUpperCase() : letter}${one}`,
      away: Math.abs(placeOf(letter) - place) + Math.abs(one - grade),
    })),
  )
    .filter(({ name }) => deviationsUm(row, name, sizeMm) !== undefined)
    .sort((a, b) => a.away - b.away)
    .slice(0, OFFERED)
    .map(({ name }) => name);
}

/** Place in the alphabet; js lies before j. */
const placeOf = (letter: string): number => letter.charCodeAt(0) - (letter === 'js' ? 0.5 : 0);
