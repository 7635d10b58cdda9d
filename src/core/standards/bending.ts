import table from '../../../data/standards/bending.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

/** How a plate material takes a cold bend. */
export interface BendingFacts {
  readonly material: string;
  /** K, unstretched layer from the inside face over thickness. */
  readonly kFactor: number;
  /** Least inside radius over thickness, across the grain. */
  readonly leastRadiusPerThickness: number;
  readonly sources: { readonly kFactor: SourceRef; readonly leastRadius: SourceRef };
}

/** Bending facts of a material of the build file; throws for a name that the table does not hold. */
export function bendingOf(material: string): BendingFacts {
  const row = table.rows.find((one) => one.material === material);
  if (!row) throw new RangeError(`no bending facts of "${material}"`);
  return row;
}
