import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { complexRoots } from './complexRoots.ts';

/** Coefficients by rising power of (x − r₁)(x − r₂)… */
function fromRoots(roots: readonly number[]): number[] {
  let product = [1];
  for (const root of roots) {
    const factor = product;
    product = [...factor, 0].map((_, k) => (factor[k - 1] ?? 0) - root * (factor[k] ?? 0));
  }
  return product;
}

describe('complexRoots', () => {
  test('closed forms: roots of one, a golden pair, a pure imaginary pair', () => {
    const sixth = complexRoots([-1, 0, 0, 0, 0, 0, 1]);
    for (const { re, im } of sixth) expect(Math.hypot(re, im)).toBeCloseTo(1, 14);
    expect(sixth[0]).toEqual({ re: expect.closeTo(1, 14), im: 0 });
    const [big, small] = complexRoots([-1, -1, 1]);
    expect(big!.re).toBeCloseTo((1 + Math.sqrt(5)) / 2, 15);
    expect(small!.re).toBeCloseTo((1 - Math.sqrt(5)) / 2, 15);
    expect(complexRoots([9, 0, 1]).map(({ im }) => im)).toEqual([3, -3]);
  });

  test('roots at zero are exact, a constant has none', () => {
    expect(complexRoots([0, 0, -6, 2])).toEqual([
      { re: 3, im: 0 },
      { re: 0, im: 0 },
      { re: 0, im: 0 },
    ]);
    expect(complexRoots([7])).toEqual([]);
  });

  test('separate real roots come back', () => {
    const integers = fc.uniqueArray(fc.integer({ min: -8, max: 8 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(integers, (roots) => {
        const found = complexRoots(fromRoots(roots));
        [...roots]
          .sort((a, b) => b - a)
          .forEach((root, k) => {
            // Conditioning of the closest five of these: three of sixteen digits.
            expect(Math.abs(found[k]!.re - root)).toBeLessThan(1e-10);
            expect(Math.abs(found[k]!.im)).toBe(0);
          });
      }),
    );
  });

  test('a fourfold root keeps a quarter of its digits, in any case finite', () => {
    for (const { re, im } of complexRoots(fromRoots([2, 2, 2, 2])))
      expect(Math.hypot(re - 2, im)).toBeLessThan(1e-3);
  });

  test('what is no polynomial is a fault of the program', () => {
    for (const wrong of [[], [1, 0], [Number.NaN, 1], [1, Number.POSITIVE_INFINITY]])
      expect(() => complexRoots(wrong)).toThrow(RangeError);
  });
});
