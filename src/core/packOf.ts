import type { AsBuilt } from './asBuilt.ts';
import type { PackInput } from './pack/index.ts';
import type { Proof } from './prove.ts';
import type { UnitSystem } from './quantity/index.ts';
import { shopWork } from './shop/index.ts';
import type { Solution } from './solve.ts';
import { type SlowStrength, shakingFigures, slowStrength } from './strength/index.ts';

/**
 * A solution with the shop's work and, where its strength is known, what shakes it, ready to be drawn. The date is the
 * caller's: the core has no clock.
 * @param printed `shaking` spares working it out again
 */
export function packOf(
  solution: Solution | Proof | AsBuilt,
  printed: { readonly date: string; readonly units?: UnitSystem; readonly shaking?: SlowStrength },
): PackInput {
  const { build } = solution;
  const shaking =
    'strength' in solution ? (printed.shaking ?? slowStrength(solution.strength, build)) : undefined;
  return {
    ...solution,
    ...(shaking ? { shaking, figures: [...solution.figures, ...shakingFigures(shaking)] } : {}),
    work: shopWork(solution),
    date: printed.date,
    units: printed.units ?? build.about.units ?? 'both',
  };
}
