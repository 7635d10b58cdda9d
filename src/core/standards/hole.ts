import table from '../../../data/standards/clearanceHoles.json' with { type: 'json' };
import { bad, good, inches, type Length, mm, type Outcome, type SourceRef } from '../quantity/index.ts';

/** How much room a bolt has in its hole. */
export type HoleFit = 'close' | 'normal' | 'loose';

/** A clearance hole for one bolt. */
export interface ClearanceHole {
  /** Bolt as in the table, e.g. `M8` or `5/16`. */
  readonly bolt: string;
  readonly system: 'metric' | 'inch';
  /** Nominal bolt diameter [m]. */
  readonly boltDiameter: Length;
  /** Hole diameter [m]. */
  readonly diameter: Length;
  readonly source: SourceRef;
}

type Row = (typeof table.rows)[number];

/** Bolts of the table, metric then inch. */
export const boltNames: readonly string[] = table.rows.map((row) => row.bolt);

/**
 * Clearance hole of a bolt: `M8`, `M8 x 1.25`, `5/16 in`, `5/16-18`, `#10`.
 * @issue not-in-table — a bolt that has no row
 * @source iso-273, metric; asme-b18-2-8, inch
 */
export function clearanceHole(bolt: string, fit: HoleFit = 'normal'): Outcome<ClearanceHole> {
  const name = plainBolt(bolt);
  const row = table.rows.find((one) => one.bolt === name);
  if (!row) return bad({ code: 'not-in-table', path: '', given: bolt, nearest: nearestBolts(name) });
  return good({
    bolt: row.bolt,
    system: row.system === 'metric' ? 'metric' : 'inch',
    boltDiameter: lengthOf(row, 'bolt'),
    diameter: lengthOf(row, fit),
    source: row.source,
  });
}

/** Bolt size alone, as the tables write it: pitch, threads an inch and unit words left out. */
export function plainBolt(text: string): string {
  const compact = text
    .trim()
    .replace(/["”]|\s*(inch|in)\b\.?/gi, '')
    .replace(/\s+/g, '')
    .replace(/^no\.?/i, '#');
  const metric = /^m(\d+(?:\.\d+)?)/i.exec(compact) ?? /^(\d+(?:\.\d+)?)mm$/i.exec(compact);
  if (metric) return `M${metric[1]}`;
  return compact.replace(/-\d+(UNC|UNF)?$/i, '').replace(/(UNC|UNF)$/i, '');
}

function lengthOf(row: Row, column: 'bolt' | HoleFit): Length {
  const inMillimeters = row[`${column}Mm`];
  if (inMillimeters !== undefined) return mm(inMillimeters);
  return inches(row[`${column}In`]!);
}

const nearestBolts = (name: string): readonly string[] =>
  boltNames.filter((bolt) => bolt.startsWith('M') === name.startsWith('M'));
