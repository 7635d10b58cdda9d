import table from '../../../data/standards/sheet-gauges.json' with { type: 'json' };
import type { Length } from './brand.ts';
import type { Issue } from './issue.ts';
import { bad, good, type Outcome } from './outcome.ts';
import { inches } from './units.ts';

/** A gauge number means another thickness for each of these. */
export type GaugeStock = 'steel-sheet' | 'tube-wall' | 'aluminum-sheet';

export const gaugeStockNames: Readonly<Record<GaugeStock, string>> = {
  'steel-sheet': 'steel sheet',
  'tube-wall': 'tube wall',
  'aluminum-sheet': 'aluminum sheet',
};

/**
 * Thickness of a gauge number: Manufacturers' Standard Gage for uncoated steel sheet, Birmingham wire gage
 * for tube walls, Brown & Sharpe for aluminum sheet. Coated and stainless sheet are not covered.
 * @param gauge whole gauge number [-]
 * @returns thickness [m]
 * @issue not-in-table — a number the table does not have
 * @source msg-weights, bwg-table, astm-b258: each row names its own
 */
export function readGauge(gauge: number, stock: GaugeStock): Outcome<Length> {
  const rows = table.rows.filter((row) => row.stock === stock);
  const row = rows.find((one) => one.gauge === gauge);
  if (row) return good(inches(row.thicknessInch));
  const nearest = [...rows].sort((a, b) => Math.abs(a.gauge - gauge) - Math.abs(b.gauge - gauge)).slice(0, 2);
  return bad(notInTable(`${gauge} ga ${gaugeStockNames[stock]}`, nearest));
}

type Row = (typeof table.rows)[number];

function notInTable(given: string, nearest: readonly Row[]): Issue {
  const [first] = nearest;
  return {
    code: 'not-in-table',
    path: '',
    given,
    nearest: nearest.map((row) => `${row.gauge} ga (${row.thicknessInch} in)`),
    ...(first ? { source: first.source } : {}),
  };
}
