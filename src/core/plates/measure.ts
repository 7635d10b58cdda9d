import { type RegionProperties, regionProperties, type Shape } from '../geometry/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';

/**
 * Region of a plate or of a part of one; holes are taken off in full, so where they overlap or leave the plate the
 * flaws say so.
 * @issue conflict — nothing is left
 */
export function measureRegion(outline: Shape, holes: readonly Shape[]): Outcome<RegionProperties> {
  try {
    return good(regionProperties(outline, holes));
  } catch {
    return bad({ code: 'conflict', path: 'outline', reason: 'the openings take away the whole plate' });
  }
}
