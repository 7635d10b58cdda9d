import { inches, printInches, printMillimeters, printNumber, type UnitSystem } from '../../quantity/index.ts';
import type { DraftSheet } from '../bookPages.ts';
import { type DimensionText, dimensionText, lengthInLine } from '../dimensionText.ts';
import { fractionText } from '../fractionText.ts';
import type { PaperName } from '../paper.ts';
import type { TableColumn } from '../table.ts';
import type { SceneInput } from './scene.ts';

/** What every sheet of drawings is made from. */
export interface DrawingContext {
  readonly scene: SceneInput;
  readonly paper: PaperName;
  /** In what lengths are written; figures of dimensions are millimeters over inches when it is both. */
  readonly system: UnitSystem;
}

/** A length [m] on a dimension line. */
export const dimensionOf = (context: DrawingContext, length: number, resolution = 0.1): DimensionText =>
  dimensionText(length, { system: context.system, resolution });

/** A length [m] in a sentence or a cell. */
export const inLine = (context: DrawingContext, length: number, resolution = 0.1): string =>
  lengthInLine(length, { system: context.system, resolution });

/** A wall or a bore [m], where a fraction would be too coarse: `2.41 mm (0.095 in)`. */
export function fineInLine(context: DrawingContext, length: number): string {
  const millimeters = printMillimeters(length, 0.01);
  const decimal = `${decimalInches(length)} in`;
  if (context.system === 'mm') return millimeters;
  return context.system === 'in' ? decimal : `${millimeters} (${decimal})`;
}

/** Cells for {@link lengthColumns} in hundredths of a millimeter and thousandths of an inch. */
export function fineCells(context: DrawingContext, length: number): readonly string[] {
  const millimeters = printMillimeters(length, 0.01).replace(/ mm$/, '');
  if (context.system === 'mm') return [millimeters];
  return context.system === 'in' ? [decimalInches(length)] : [millimeters, decimalInches(length)];
}

/** One column for a length that is looked up more than made: in millimeters unless inches alone are asked for. */
export const singleColumn = ({ system }: DrawingContext, title: string): TableColumn => ({
  title: `${title} ${system === 'in' ? 'in' : 'mm'}`,
  align: 'right',
});

/** Cell for {@link singleColumn}. */
export const singleCell = ({ system }: DrawingContext, length: number): string =>
  system === 'in' ? decimalInches(length) : printNumber(length * 1000, 0.1);

const decimalInches = (length: number): string => printNumber(length / inches(1), 0.001);

/** Columns for one length: one of each system that is asked for. */
export const lengthColumns = (context: DrawingContext, title: string): readonly TableColumn[] => {
  const column = (unit: string): TableColumn => ({
    title: title === '' ? unit : `${title} ${unit}`,
    align: 'right',
  });
  return context.system === 'both' ? [column('mm'), column('in')] : [column(context.system)];
};

/** Cells for {@link lengthColumns}; blank for no length. */
export function lengthCells(
  context: DrawingContext,
  length: number | undefined,
  resolution = 0.1,
): readonly string[] {
  if (length === undefined) return context.system === 'both' ? ['', ''] : [''];
  const millimeters = printMillimeters(length, resolution).replace(/ mm$/, '');
  const fraction = fractionText(printInches(length)).replace(/ in$/, '');
  if (context.system === 'mm') return [millimeters];
  return context.system === 'in' ? [fraction] : [millimeters, fraction];
}

/** An angle [rad] as `12.5°`. */
export const degreesText = (angle: number, decimals = 1): string =>
  `${((angle * 180) / Math.PI + 0).toFixed(decimals).replace(/^-(0(\.0+)?)$/, '$1')}°`;

/** Names are written with hyphens in the file and with spaces on a drawing. */
export const words = (name: string): string =>
  name
    .replace(/\.right$/, ' right')
    .replaceAll('-', ' ')
    .replace(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`);

/** Pages of a flow as the sheets of a drawing: the first carries scale and projection. */
export const asDrawing = (
  pages: readonly DraftSheet[],
  drawing: Pick<DraftSheet, 'scale' | 'projection'>,
): readonly DraftSheet[] => pages.map((page, i) => (i === 0 ? { ...page, ...drawing } : page));
