import type { AsBuilt } from './asBuilt.ts';
import type { PackInput } from './pack/index.ts';
import type { Proof } from './prove.ts';
import type { UnitSystem } from './quantity/index.ts';
import { shopWork } from './shop/index.ts';
import type { Solution } from './solve.ts';

/** A solution with the shop's work, ready to be drawn. The date is the caller's: the core has no clock. */
export function packOf(
  solution: Solution | Proof | AsBuilt,
  printed: { readonly date: string; readonly units?: UnitSystem },
): PackInput {
  const { build } = solution;
  return {
    ...solution,
    work: shopWork(solution),
    date: printed.date,
    units: printed.units ?? build.about.units ?? 'both',
  };
}
