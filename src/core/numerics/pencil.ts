import { type EigenOutcome, largestEigenpairs } from './lanczos.ts';
import { type LdltFactor, solveLowerHalf, solveUpperHalf } from './ldlt.ts';
import { multiplySkyline, type SkylineMatrix } from './skyline.ts';

/**
 * The largest positive θ of B·x = θ·K·x with their vectors, K symmetric positive definite and B symmetric of
 * any sign. Vibration takes B = M and ω² = 1/θ; buckling B = -Kg and λ = 1/θ.
 * The problem is brought to C⁻¹·B·C⁻ᵀ·y = θ·y with K = C·Cᵀ, so that rounding of K does not spoil right angles.
 * @param factor of K, without null modes
 * @param count pairs wanted [-], ≥ 1; fewer come back where B has no more positive directions
 * @param block see `largestEigenpairs`
 * @returns largest θ first; vectors with xᵀ·K·x = 1
 * @source parlett-1998, chapters 13 and 15
 */
export function largestOfPencil(
  factor: LdltFactor,
  b: SkylineMatrix,
  count: number,
  block?: number,
): EigenOutcome {
  if (factor.nullModes.length > 0) throw new RangeError('K must be positive definite');
  const apply = (y: Float64Array) => solveLowerHalf(factor, multiplySkyline(b, solveUpperHalf(factor, y)));
  const outcome = largestEigenpairs({ size: factor.size, apply }, count, block);
  if (!outcome.ok) return outcome;
  const pairs = outcome.pairs.map(({ value, vector }) => ({
    value,
    vector: solveUpperHalf(factor, vector),
  }));
  return { ok: true, pairs };
}
