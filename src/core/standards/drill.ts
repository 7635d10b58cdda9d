import table from '../../../data/standards/drills.json' with { type: 'json' };
import { inches, type Length, mm, type SourceRef } from '../quantity/index.ts';

/** Fraction, number and letter drills are one shop's inch drills. */
type DrillSystem = 'metric' | 'inch';

export type DrillSet = 'metric' | 'fraction' | 'number' | 'letter';

/** One twist drill. */
export interface Drill {
  /** `8.5 mm`, `21/64`, `#7`, `F`. */
  readonly name: string;
  readonly set: DrillSet;
  /** [m] */
  readonly diameter: Length;
  readonly source: SourceRef;
}

type Row = (typeof table.rows)[number];

/** Drills are made to hundredths of a millimeter; a tenth of a micrometer is rounding [m]. */
const NEARLY = 1e-7;

/** All drills, by rising diameter. */
export const drills: readonly Drill[] = table.rows.map(drillOfRow).sort((a, b) => a.diameter - b.diameter);

const bySystem: Readonly<Record<DrillSystem, readonly Drill[]>> = {
  metric: drills.filter((drill) => drill.set === 'metric'),
  inch: drills.filter((drill) => drill.set !== 'metric'),
};

/** Web thickness at the point over drill diameter, and where the figure is from. */
export const drillWeb: { readonly ratio: number; readonly source: SourceRef } = table.web;

/** A drill by its name in the set. */
export const findDrill = (name: string): Drill | undefined => drills.find((drill) => drill.name === name);

/** Largest drill of a shop's system that is not over `diameter` [m]; undefined below the smallest. */
export function drillAtMost(diameter: number, system: DrillSystem): Drill | undefined {
  return bySystem[system].findLast((drill) => drill.diameter <= diameter + NEARLY);
}

/** Smallest drill of a shop's system that is not under `diameter` [m]; undefined above the largest. */
export function drillAtLeast(diameter: number, system: DrillSystem): Drill | undefined {
  return bySystem[system].find((drill) => drill.diameter >= diameter - NEARLY);
}

function drillOfRow(row: Row): Drill {
  const set = row.set as DrillSet;
  const diameter = row.diameterMm === undefined ? inches(row.diameterIn!) : mm(row.diameterMm);
  return { name: row.name, set, diameter, source: table.sources[set] };
}
