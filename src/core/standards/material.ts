import table from '../../../data/standards/materials.json' with { type: 'json' };
import type { Density, SourceRef } from '../quantity/index.ts';

/** What a material weighs. */
export interface Material {
  readonly name: string;
  /** ρ, density [kg/m³]. */
  readonly density: Density;
  readonly source: SourceRef;
}

const byName: ReadonlyMap<string, Material> = new Map(
  table.rows.map(({ name, densityKgPerM3, source }) => [
    name,
    { name, density: densityKgPerM3 as Density, source },
  ]),
);

/** A material of the table; throws for a name that the build file's schema does not take. */
export function materialNamed(name: string): Material {
  const found = byName.get(name);
  if (!found) throw new RangeError(`no material "${name}" in the table`);
  return found;
}
