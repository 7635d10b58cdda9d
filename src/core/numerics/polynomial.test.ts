import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crossings, derivativeOf, polynomialAt, productOf, sumOf } from './polynomial.ts';

test('value, derivative, product and sum of 1 + 2x + 3x² and 4 + 5x', () => {
  const p = [1, 2, 3];
  expect(polynomialAt(p, 2)).toBe(17);
  expect(derivativeOf(p)).toEqual([2, 6]);
  expect(productOf(p, [4, 5])).toEqual([4, 13, 22, 15]);
  expect(sumOf(p, [4, 5])).toEqual([5, 7, 3]);
  expect(productOf([], p)).toEqual([0, 0]);
});

test('crossings of a polynomial with known roots are those roots within the interval', () => {
  const roots = fc.uniqueArray(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 7 });
  fc.assert(
    fc.property(roots, (all) => {
      const polynomial = all.reduce<readonly number[]>((p, root) => productOf(p, [-root / 10, 1]), [1]);
      const wanted = all.map((root) => root / 10).filter((root) => root > -0.95 && root < 0.95);
      const found = crossings(polynomial, -0.95, 0.95);
      expect(found).toHaveLength(wanted.length);
      wanted
        .sort((a, b) => a - b)
        .forEach((root, i) => {
          // Seven roots a tenth apart: rounding of the coefficients moves them by 1e-9 at most.
          expect(Math.abs(found[i]! - root)).toBeLessThan(1e-8);
        });
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('no crossing: a constant, a polynomial that keeps its sign', () => {
  expect(crossings([3], -1, 1)).toEqual([]);
  expect(crossings([1, 0, 1], -5, 5)).toEqual([]);
});
