import {
  combineSkylines,
  type EigenOutcome,
  factorLdlt,
  largestOfPencil,
  type SkylineMatrix,
} from '../../numerics/index.ts';
import type { AssembledFrame } from './assemble.ts';

/** Vectors of a block for the first try: enough where no more than this many values are equal. */
const QUICK_BLOCK = 3;
/** Just over the last value found, as a share: much more than rounding, much less than what parts neighbors. */
const OVER = 1e-6;

/**
 * Largest θ of B·x = θ·K·x by small blocks, and the proof that none was missed: as many pivots of K − B/θ below zero,
 * θ just under the last one found, as there are pairs. What is not proved so is searched again by full blocks.
 * @source bathe-1996, section 11.4.3, Sturm sequence check
 */
export function provenLargest(frame: AssembledFrame, b: SkylineMatrix, count: number): EigenOutcome {
  const quick = largestOfPencil(frame.factor, b, count, QUICK_BLOCK);
  const last = quick.ok ? quick.pairs.at(-1) : undefined;
  if (quick.ok && last && quick.pairs.length === count) {
    const shifted = combineSkylines(frame.stiffness, -(1 + OVER) / last.value, b);
    if (factorLdlt(shifted, { indefinite: true }).negativePivots === count) return quick;
  }
  return largestOfPencil(frame.factor, b, count);
}
