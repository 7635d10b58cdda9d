import { printInches, printMillimeters, type UnitSystem } from '../quantity/index.ts';
import { fractionText } from './fractionText.ts';

/** Lines of a dimension, top first; one or two. */
export type DimensionText = readonly [string] | readonly [string, string];

export interface DimensionTextOptions {
  readonly system?: UnitSystem;
  /** What the millimeter figure is rounded to [mm]; default 0.1. */
  readonly resolution?: number;
  /** Before the first figure: `Ø`, `R`, `4 × Ø`. */
  readonly prefix?: string;
}

/** A length [m] as a dimension: millimeters over inches with no unit (the title block names them). */
export function dimensionText(length: number, options: DimensionTextOptions = {}): DimensionText {
  const { system = 'both', resolution = 0.1, prefix = '' } = options;
  const millimeters = prefix + printMillimeters(length, resolution).replace(/ mm$/, '');
  const inches = fractionText(printInches(length)).replace(/ in$/, '');
  if (system === 'mm') return [millimeters];
  if (system === 'in') return [prefix + inches];
  return [millimeters, inches];
}

/** A length [m] on one line, for notes and tables: `214.3 mm (8 ⁷⁄₁₆ in)`. */
export function lengthInLine(length: number, options: Omit<DimensionTextOptions, 'prefix'> = {}): string {
  const { system = 'both', resolution = 0.1 } = options;
  const millimeters = printMillimeters(length, resolution);
  const inches = fractionText(printInches(length));
  if (system === 'mm') return millimeters;
  return system === 'in' ? inches : `${millimeters} (${inches})`;
}
