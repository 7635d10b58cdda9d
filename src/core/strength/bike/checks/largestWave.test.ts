import fc from 'fast-check';
import { expect, test } from 'vitest';
import { largestWave } from './largestWave.ts';
import { stressSection, tubeStress } from './tubeStress.ts';

/** So that large and small parts meet. */
const part = fc
  .tuple(fc.integer({ min: -100, max: 100 }), fc.integer({ min: 0, max: 3 }))
  .map(([step, small]) => (step / 100) * 0.1 ** small);

test('closed forms: one period alone, two periods alone, none', () => {
  // Largest of a·cos φ + b·sin φ is √(a² + b²), of any period.
  expect(largestWave(1, 3, 4, 0, 0)).toBeCloseTo(6, 12);
  expect(largestWave(-1, 0, 0, -5, 12)).toBeCloseTo(12, 12);
  expect(largestWave(7, 0, 0, 0, 0)).toBe(7);
  // a·cos φ + c·cos 2φ with c < −a/4 is largest where cos φ = −a/(4c), off the axes: −c − a²/(8c).
  expect(largestWave(0, 1, 0, -1, 0)).toBeCloseTo(1 + 1 / 8, 12);
});

test('nothing around is larger, and the largest occurs', () => {
  fc.assert(
    fc.property(part, part, part, part, part, (mean, a, b, c, d) => {
      const found = largestWave(mean, a, b, c, d);
      const wave = (f: number) =>
        mean + a * Math.cos(f) + b * Math.sin(f) + c * Math.cos(2 * f) + d * Math.sin(2 * f);
      const size = Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);
      let most = Number.NEGATIVE_INFINITY;
      for (let k = 0; k < 2000; k++) most = Math.max(most, wave((k * Math.PI) / 1000));
      expect(found).toBeGreaterThanOrEqual(most - 1e-5 * size - 1e-12);
      // Looking every 0.18° misses a top by at most 4·size·(0.0016)²/2.
      expect(found).toBeLessThanOrEqual(most + 6e-6 * size + 1e-12);
    }),
    { numRuns: 300, seed: 20261 },
  );
});

test('stress of a tube under all six forces at once is the largest of a dense look around', () => {
  const section = stressSection(0.03, 0.002);
  const { radius, area, secondMoment, shearFactor } = section;
  const force = fc.integer({ min: -2000, max: 2000 });
  const moment = fc.integer({ min: -100, max: 100 });
  fc.assert(
    fc.property(force, force, force, moment, moment, moment, (n, vy, vz, t, my, mz) => {
      let most = 0;
      for (let k = 0; k < 2000; k++) {
        const [y, z] = [Math.cos((k * Math.PI) / 1000), Math.sin((k * Math.PI) / 1000)];
        // σ = N/A + (My·z − Mz·y)·R/I; τ along the surface by twist and by both shear forces.
        const sigma = n / area + ((my * z - mz * y) * radius) / secondMoment;
        const tau = (t * radius) / (2 * secondMoment) + (shearFactor / area) * (vz * y - vy * z);
        most = Math.max(most, Math.hypot(sigma, Math.sqrt(3) * tau));
      }
      const found = tubeStress(section, n, vy, vz, t, my, mz);
      expect(Math.abs(found - most)).toBeLessThanOrEqual(1e-5 * most);
    }),
    { numRuns: 300, seed: 20262 },
  );
});
