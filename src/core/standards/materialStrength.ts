import table from '../../../data/standards/materialStrength.json' with { type: 'json' };
import { megapascals, type Pressure, type SourceRef } from '../quantity/index.ts';

/** How stiff and how strong a material is. */
export interface MaterialStrength {
  readonly name: string;
  /** E [Pa]. */
  readonly elasticModulus: Pressure;
  /** G [Pa]. */
  readonly shearModulus: Pressure;
  /** Sy as supplied [Pa]. */
  readonly yield: Pressure;
  /** Sut as supplied [Pa]. */
  readonly tensile: Pressure;
  /** Sy beside a weld [Pa]. */
  readonly weldedYield: Pressure;
  readonly source: SourceRef;
}

const byName: ReadonlyMap<string, MaterialStrength> = new Map(
  table.rows.map((row) => [
    row.name,
    {
      name: row.name,
      elasticModulus: megapascals(row.elasticGpa * 1000),
      shearModulus: megapascals(row.shearGpa * 1000),
      yield: megapascals(row.yieldMpa),
      tensile: megapascals(row.tensileMpa),
      weldedYield: megapascals(row.weldedYieldMpa),
      source: row.source,
    },
  ]),
);

/** Strength of a material of the table; throws for a name that the build file's schema does not take. */
export function materialStrength(name: string): MaterialStrength {
  const found = byName.get(name);
  if (!found) throw new RangeError(`no material "${name}" in the table of strengths`);
  return found;
}
