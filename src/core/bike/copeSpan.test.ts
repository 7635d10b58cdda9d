import fc from 'fast-check';
import { expect, test } from 'vitest';
import { copeProfile } from '../geometry/index.ts';
import { copeSpan } from './copeSpan.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

test('agrees with the full profile, whose extremes are found by bisecting its slope', () => {
  fc.assert(
    fc.property(
      between(0.01, 0.03),
      between(0, 1),
      between(0.35, Math.PI / 2),
      between(-1, 1),
      (R, share, angle, side) => {
        const branchRadius = R * (0.3 + 0.7 * share);
        const joint = { branchRadius, trunkRadius: R, angle, offset: side * (R - branchRadius) };
        const [span, profile] = [copeSpan(joint), copeProfile(joint)];
        if (!span.ok || !profile.ok) throw new Error('a joint with both');
        // Two searches of one curve: a micrometer is far under what anyone cuts; both are far better.
        expect(Math.abs(span.value.least - profile.value.lowest.position)).toBeLessThan(1e-9);
        expect(Math.abs(span.value.greatest - profile.value.highest.position)).toBeLessThan(1e-9);
      },
    ),
    { numRuns: 100 },
  );
});

test('of equal tubes at right angles: from the axis plane to the surface, on the mean at 2R/π', () => {
  const span = copeSpan({ branchRadius: 0.02, trunkRadius: 0.02, angle: Math.PI / 2, offset: 0 });
  if (!span.ok) throw new Error('a joint');
  expect(span.value.least).toBeCloseTo(0, 8);
  expect(span.value.greatest).toBeCloseTo(0.02, 12);
  // 72 ordinates of a curve with two kinks: 1e-3 of its mean.
  expect(Math.abs(span.value.mean / ((2 * 0.02) / Math.PI) - 1)).toBeLessThan(1e-3);
});

test('a branch wider than its trunk has none', () => {
  expect(copeSpan({ branchRadius: 0.03, trunkRadius: 0.02, angle: 1, offset: 0 }).ok).toBe(false);
});
