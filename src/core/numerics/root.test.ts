import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bracketRoot, findRoot } from './index.ts';

const TOLERANCE = 1e-12;

function rootOf(f: (x: number) => number, lo: number, hi: number): number {
  const outcome = findRoot(f, lo, hi, { tolerance: TOLERANCE });
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
}

describe('findRoot', () => {
  // Published constants: OEIS A003957 (cos x = x), A007493 (x³ - 2x - 5, the textbook test since 1685),
  // A030178 (x·eˣ = 1), A000796 (π), A002163 (√5).
  test.each([
    { name: 'cos x = x', f: (x: number) => Math.cos(x) - x, lo: 0, hi: 1, root: 0.7390851332151607 },
    { name: 'x³ - 2x - 5', f: (x: number) => x ** 3 - 2 * x - 5, lo: 2, hi: 3, root: 2.0945514815423265 },
    { name: 'x·eˣ = 1', f: (x: number) => x * Math.exp(x) - 1, lo: 0, hi: 1, root: 0.5671432904097838 },
    { name: 'sin x', f: Math.sin, lo: 3, hi: 4, root: Math.PI },
    { name: 'x² - 5, falling bracket', f: (x: number) => 5 - x * x, lo: 0, hi: 100, root: 2.23606797749979 },
  ])('finds the root of $name', ({ f, lo, hi, root }) => {
    // The tolerance asked for, plus two spacings of doubles.
    expect(Math.abs(rootOf(f, lo, hi) - root)).toBeLessThanOrEqual(TOLERANCE + 1e-15);
  });

  test('is quick on a smooth function and survives a flat or jumping one', () => {
    const smooth = findRoot((x) => x ** 3 - 2 * x - 5, 2, 3, { tolerance: TOLERANCE });
    expect(smooth.ok && smooth.steps).toBeLessThan(12);
    expect(Math.abs(rootOf((x) => (x - 1) ** 9, 0, 3) - 1)).toBeLessThanOrEqual(2 * TOLERANCE);
    expect(Math.abs(rootOf((x) => (x < 0.3 ? -1 : 1), 0, 1) - 0.3)).toBeLessThanOrEqual(2 * TOLERANCE);
  });

  test('takes a root at either end and an interval given backward', () => {
    expect(rootOf((x) => x - 1, 1, 2)).toBe(1);
    expect(rootOf((x) => x - 2, 1, 2)).toBe(2);
    expect(rootOf((x) => x - 1.5, 2, 1)).toBeCloseTo(1.5, 12);
  });

  test('says why there is none', () => {
    const options = { tolerance: TOLERANCE };
    expect(findRoot((x) => x * x + 1, -1, 1, options)).toEqual({ ok: false, reason: 'no-sign-change' });
    expect(findRoot((x) => Math.sqrt(x), -1, 1, options)).toEqual({ ok: false, reason: 'not-finite' });
    expect(findRoot((x) => x, Number.NaN, 1, options)).toEqual({ ok: false, reason: 'not-finite' });
    // The first step of a straight line lands on its root.
    expect(findRoot((x) => (x === 0.5 ? Number.NaN : x - 0.5), 0, 1, options)).toEqual({
      ok: false,
      reason: 'not-finite',
    });
    expect(findRoot((x) => Math.cos(x) - x, 0, 1, { ...options, maxSteps: 2 })).toEqual({
      ok: false,
      reason: 'too-many-steps',
    });
    expect(() => findRoot((x) => x, -1, 2, { tolerance: 0 })).toThrow(RangeError);
  });

  test('stays in the bracket and lands on the one root of any rising cubic', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        (root, stiffness, reach) => {
          const [lo, hi] = [root - reach, root + 2 * reach];
          const asked: number[] = [];
          const value = rootOf(
            (x) => {
              asked.push(x);
              return (x - root) ** 3 + stiffness * (x - root);
            },
            lo,
            hi,
          );
          expect(asked.every((x) => x >= lo && x <= hi)).toBe(true);
          expect(Math.abs(value - root)).toBeLessThanOrEqual(TOLERANCE + 1e-14);
        },
      ),
    );
  });
});

describe('bracketRoot', () => {
  test('widens to a change of sign', () => {
    const f = (x: number) => Math.log(x) - 5;
    const bracket = bracketRoot(f, 1, 2);
    if (!bracket) throw new Error('no bracket');
    expect(f(bracket.lo)).toBeLessThan(0);
    expect(f(bracket.hi)).toBeGreaterThan(0);
    expect(rootOf(f, bracket.lo, bracket.hi)).toBeCloseTo(Math.exp(5), 9);
  });

  test('gives up on a function without a root or with a gap', () => {
    expect(bracketRoot((x) => x * x + 1, 0, 1)).toBeUndefined();
    expect(bracketRoot((x) => Math.sqrt(x) + 1, 0, 1)).toBeUndefined();
    expect(bracketRoot(() => Number.NaN, 0, 1)).toBeUndefined();
    expect(() => bracketRoot((x) => x, 1, 0)).toThrow(RangeError);
  });
});
