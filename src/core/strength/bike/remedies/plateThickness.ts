import type { FlatPattern } from '../../../plates/index.ts';
import { inches, mm } from '../../../quantity/index.ts';
import { plateRows } from '../checks/plates/plateRows.ts';
import type { UtilizationRow } from '../checks/utilizationRow.ts';
import type { StrengthCore, StrengthInput } from '../strengthCore.ts';
import type { Change } from './change.ts';

/** Stock plate [in] and [mm]. @source practice */
const INCH_STOCK = [0.125, 0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75].map((v) => Number(inches(v)));
const METRIC_STOCK = [3, 4, 5, 6, 8, 10, 12, 15, 20].map((v) => Number(mm(v)));
/** Thicknesses this near are one [m]. */
const SAME = 1e-5;

/**
 * The next stock thicknesses of a plate. The forces are taken as they are: a plate is stiff in the model whatever its
 * thickness, and what it weighs more hardly counts.
 */
export function plateChanges(
  input: StrengthInput,
  core: StrengthCore,
  row: UtilizationRow,
): readonly Change[] {
  const pattern = input.patterns.find(({ id }) => id === row.part);
  const { results, frame, settings, cases } = core;
  if (!pattern || !results) return [];
  const isInch = INCH_STOCK.some((one) => Math.abs(one - pattern.thickness) < SAME);
  const stock = (isInch ? INCH_STOCK : METRIC_STOCK).filter((one) => one > pattern.thickness + SAME);
  return stock.map((thickness) => ({
    what: `Make "${row.part}" of ${(thickness * 1000).toFixed(isInch ? 2 : 0)} mm${isInch ? ` (${(thickness / inches(1)).toFixed(4)} in)` : ''} plate`,
    rows: () => {
      const patterns = [thicker(pattern, thickness)];
      return plateRows({ ...input, patterns, frame, settings, cases, results }).rows;
    },
  }));
}

const thicker = (pattern: FlatPattern, thickness: number): FlatPattern => ({
  ...pattern,
  thickness,
  mass: (pattern.mass * thickness) / pattern.thickness,
});
