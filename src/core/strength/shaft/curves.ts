import {
  crossings,
  derivativeOf,
  type Polynomial,
  polynomialAt,
  productOf,
  sumOf,
} from '../../numerics/index.ts';

/** The largest resultant √(a² + b²) of two curves over a length and its place. */
export function largestResultant(
  a: Polynomial,
  b: Polynomial,
  length: number,
): { readonly value: number; readonly s: number } {
  const square = sumOf(productOf(a, a), productOf(b, b));
  let best = { value: -1, s: 0 };
  for (const s of [0, ...crossings(derivativeOf(square), 0, length), length]) {
    const value = Math.hypot(polynomialAt(a, s), polynomialAt(b, s));
    if (value > best.value) best = { value, s };
  }
  return best;
}
