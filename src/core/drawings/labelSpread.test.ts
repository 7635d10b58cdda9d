import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadLabels } from './labelSpread.ts';

const label = fc.record({
  wanted: fc.double({ min: 0, max: 200, noNaN: true }),
  size: fc.double({ min: 0.5, max: 12, noNaN: true }),
});
const GAP = 0.6;

test('spread labels never come closer than the gap and keep their order', () => {
  fc.assert(
    fc.property(fc.array(label, { maxLength: 25 }), (labels) => {
      const middles = spreadLabels(labels, GAP);
      const order = labels.map((_, i) => i).sort((a, b) => labels[a]!.wanted - labels[b]!.wanted || a - b);
      for (let k = 0; k + 1 < order.length; k += 1) {
        const [i, j] = [order[k]!, order[k + 1]!];
        // Rounding of a sum of 25 sizes.
        expect(middles[j]! - middles[i]!).toBeGreaterThanOrEqual(
          (labels[i]!.size + labels[j]!.size) / 2 + GAP - 1e-9,
        );
      }
    }),
  );
});

test('the spread moves labels least: any other allowed places cost more', () => {
  fc.assert(
    fc.property(
      fc.array(label, { minLength: 2, maxLength: 8 }),
      fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 8, maxLength: 8 }),
      (labels, shifts) => {
        const cost = (at: readonly number[]): number =>
          at.reduce((sum, m, i) => sum + (m - labels[i]!.wanted) ** 2, 0);
        const middles = spreadLabels(labels, GAP);
        const order = labels.map((_, i) => i).sort((a, b) => labels[a]!.wanted - labels[b]!.wanted || a - b);
        // Another allowed solution: shift each, then push apart from the left.
        const other = [...middles];
        let floor = Number.NEGATIVE_INFINITY;
        order.forEach((i, k) => {
          const least = k === 0 ? floor : floor + labels[i]!.size / 2 + GAP;
          other[i] = Math.max(middles[i]! + shifts[k]!, least);
          floor = other[i]! + labels[i]!.size / 2;
        });
        expect(cost(middles)).toBeLessThanOrEqual(cost(other) + 1e-6);
      },
    ),
  );
});

test('labels with room stay where they want to be; two that collide share the move', () => {
  expect(
    spreadLabels(
      [
        { wanted: 10, size: 2 },
        { wanted: 20, size: 2 },
      ],
      1,
    ),
  ).toEqual([10, 20]);
  expect(
    spreadLabels(
      [
        { wanted: 10, size: 4 },
        { wanted: 10, size: 4 },
      ],
      1,
    ),
  ).toEqual([7.5, 12.5]);
});

test('a range is kept when there is room', () => {
  const labels = [1, 2, 3].map((wanted) => ({ wanted, size: 4 }));
  const middles = spreadLabels(labels, 1, { min: 0, max: 20 });
  expect(middles[0]).toBeCloseTo(2, 9);
  expect(middles[2]).toBeCloseTo(12, 9);
});
