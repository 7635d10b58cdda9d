import { originalName } from '../../../build/index.ts';
import {
  inches,
  mm,
  newtons,
  printQuantity,
  type QuantityKind,
  type SourceRef,
} from '../../../quantity/index.ts';
import { isWear, type LoadCase, type UtilizationRow } from '../../../strength/index.ts';
import type { TableCell } from '../../table.ts';
import { type DrawingContext, inLine, words } from '../context.ts';
import { printed } from '../rideWords.ts';

const SOURCE_WORDS: Readonly<Record<string, string>> = {
  practice: 'common practice',
  memory: 'from memory, not re-read',
  derived: 'follows from statics',
};

/** Columns of percentages, and of values with their unit, so that neither breaks [mm]. */
export const USED_WIDTH = 13;
export const valueWidth = ({ system }: DrawingContext): number => (system === 'both' ? 28 : 17);

/** A deflection [m], where hundredths of a millimeter say nothing. */
export function smallText({ system }: DrawingContext, length: number): string {
  const metric = `${(length / mm(1)).toFixed(3)} mm`;
  const customary = `${(length / inches(1)).toFixed(4)} in`;
  return system === 'mm' ? metric : system === 'in' ? customary : `${metric} (${customary})`;
}

/** A share as `145 %`. */
export const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

/** A share as a cell; over 100 % it is what the reader should see first. */
export const percentCell = (share: number): TableCell =>
  share > 1 ? { text: percent(share), weight: 'bold', tone: 'accent' } : percent(share);

/** What is over a rating of wear is told as that, and not in the color of what breaks. */
export const useCell = (row: UtilizationRow): TableCell =>
  isWear(row) && row.utilization > 1 ? `${percent(row.utilization)} wears` : percentCell(row.utilization);

/** `common practice: height of a curb`. */
export const sourceText = ({ key, where }: SourceRef): string => `${SOURCE_WORDS[key] ?? key}: ${where}`;

/** Parts of the file by their words; a mirrored one says its side. */
export const partText = (part: string): string => words(part.replaceAll(/\.(?!right$)/g, ' '));

export const caseText = (cases: readonly LoadCase[], id: string): string =>
  cases.find((one) => one.id === id)?.name ?? words(id);

/** Leaves out the mirrored twin of what was there already: the first of each pair and quantity is kept. */
export function firstOfPairs<Row extends { readonly part: string }>(
  rows: readonly Row[],
  keyOf: (row: Row) => string,
): readonly Row[] {
  const seen = new Set<string>();
  return rows.filter((row) => {
    const key = `${originalName(row.part)} ${keyOf(row)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Value or limit of a comparison in the reader's system. */
export const comparedText = (
  context: DrawingContext,
  value: number,
  { kind, quantity }: UtilizationRow,
): string => plainText(context, value, kind, quantity.startsWith('life of') ? ' h' : '');

/** Below these an angle is a tilt, a length a fit [rad, m]. */
const SMALL_ANGLE = 0.1;
const SMALL_LENGTH = 5e-4;

/** A value of any kind; numbers without unit to three figures, small angles in milliradians. */
export function plainText(context: DrawingContext, value: number, kind: QuantityKind, unit = ''): string {
  if (kind === 'ratio') return `${Number(value.toPrecision(3))}${unit}`;
  if (kind === 'angle')
    return value < SMALL_ANGLE ? `${(value * 1000).toFixed(1)} mrad` : printed(context, value, 'angle', 1);
  if (kind === 'length') return value < SMALL_LENGTH ? smallText(context, value) : inLine(context, value);
  return printed(context, value, kind, kind === 'pressure' || kind === 'force' ? 1 : undefined);
}

/** Kilometers of a life, as coarse as an estimate is. */
export function lifeText({ system }: DrawingContext, kilometers: number): string {
  if (!Number.isFinite(kilometers)) return 'no limit';
  if (kilometers > LONG_LIFE) return system === 'in' ? 'over 600000 mi' : 'over 1000000 km';
  const round = (value: number): string => `${Number(value.toPrecision(2))}`;
  const miles = round((kilometers * 1000) / MILE);
  const metric = `${round(kilometers)} km`;
  return system === 'mm' ? metric : system === 'in' ? `${miles} mi` : `${metric} (${miles} mi)`;
}

/** Nothing more is told by a longer life than that it is long [km]. */
const LONG_LIFE = 1e6;
const MILE = Number(inches(63360));

/** Sentences of the check are metric: lengths and forces in them are put into inches and pounds where only those are asked for. */
export function recast({ system }: DrawingContext, sentence: string): string {
  if (system === 'both') return sentence;
  const single = sentence.replaceAll(/(\d[\d.]* mm) \(([\d.]+ in)\)/g, system === 'mm' ? '$1' : '$2');
  if (system === 'mm') return single;
  return single
    .replaceAll(/(-?\d[\d.]*) N·m\b/g, (_, n) => printQuantity(Number(n), 'torque', 'in'))
    .replaceAll(/(-?\d[\d.]*) N\/mm/g, (_, n) => printQuantity(Number(n) * 1000, 'stiffness', 'in'))
    .replaceAll(/(-?\d[\d.]*) mm\b/g, (_, n) => `${(mm(Number(n)) / inches(1)).toFixed(2)} in`)
    .replaceAll(/(-?\d[\d.]*) N\b/g, (_, n) => printQuantity(newtons(Number(n)), 'force', 'in'));
}
