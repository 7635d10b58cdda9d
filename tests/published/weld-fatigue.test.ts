/**
 * Nominal-stress fatigue. ΔσD = 0.737·ΔσC and ΔσL = 0.404·ΔσC as a public reprint of EN 1993-1-9 prints them; the ratios of
 * IIW and of shear, and the categories themselves, are from memory of the standards.
 */
import { describe, expect, test } from 'vitest';
import { megapascals } from '../../src/core/quantity/index.ts';
import { categorySteps, detailCategories } from '../../src/core/standards/index.ts';
import {
  cyclesToFailure,
  fatigueEstimate,
  minerDamage,
  neighbor,
  stressLife,
} from '../../src/core/strength/index.ts';

const LINE = stressLife(megapascals(71), 3, 'en-1993-1-9');

describe('S-N line', () => {
  test('knee and cut-off of EN 1993-1-9', () => {
    expect(LINE.constantAmplitudeLimit / LINE.category).toBeCloseTo(0.737, 3);
    // 0.737·0.549 = 0.4046; the reprint cuts to 0.404.
    expect(Math.abs(LINE.cutOff / LINE.category - 0.404)).toBeLessThan(1e-3);
    expect(LINE.cutOff / LINE.constantAmplitudeLimit).toBeCloseTo(0.549, 3);
  });

  test('shear, slope 5: cut-off at 0.457, no knee', () => {
    const shear = stressLife(megapascals(80), 5, 'en-1993-1-9');
    expect(shear.cutOff / shear.category).toBeCloseTo(0.457, 3);
    expect(shear.constantAmplitudeLimit).toBeCloseTo(shear.cutOff, 6);
  });

  test('IIW: knee at ten million, 0.585', () => {
    const iiw = stressLife(megapascals(63), 3, 'iiw');
    expect(iiw.constantAmplitudeLimit / iiw.category).toBeCloseTo(0.585, 3);
    expect(iiw.cutOff).toBe(0);
  });

  test.each([
    [71, 2e6],
    [142, 2.5e5],
    [35.5, 5e6 * ((0.7368063 * 71) / 35.5) ** 5],
  ])('N at %d MPa', (range, cycles) => {
    expect(cyclesToFailure(LINE, megapascals(range)) / cycles).toBeCloseTo(1, 5);
  });

  test('one line at the knee, nothing at the cut-off, 1e8 just above it', () => {
    const knee = LINE.constantAmplitudeLimit;
    expect(cyclesToFailure(LINE, knee)).toBeCloseTo(5e6, 3);
    expect(cyclesToFailure(LINE, (knee * (1 - 1e-12)) as typeof knee) / 5e6).toBeCloseTo(1, 9);
    expect(cyclesToFailure(LINE, LINE.cutOff)).toBe(Number.POSITIVE_INFINITY);
    expect(cyclesToFailure(LINE, (LINE.cutOff * (1 + 1e-9)) as typeof knee) / 1e8).toBeCloseTo(1, 6);
  });
});

describe('spectrum', () => {
  test('damages add; half the cycles of each of two blocks make one', () => {
    const spectrum = [
      { range: megapascals(71), cycles: 1e6 },
      { range: megapascals(142), cycles: 1.25e5 },
    ];
    expect(minerDamage(LINE, spectrum)).toBeCloseTo(1, 12);
  });

  test('life is a range: a category either way, the partial factor on the low side', () => {
    const estimate = fatigueEstimate({
      category: megapascals(71),
      slope: 3,
      rule: 'en-1993-1-9',
      partialFactor: 1.35,
      spectrum: [{ range: megapascals(100), cycles: 1 }],
    });
    expect(estimate.low.category).toBe(megapascals(63));
    expect(estimate.high.category).toBe(megapascals(80));
    expect(estimate.repeats).toBeCloseTo(2e6 * 0.71 ** 3, 3);
    expect(estimate.high.repeats).toBeCloseTo(2e6 * 0.8 ** 3, 3);
    // Steep branch at 46.7 MPa: 100 lies above its knee.
    expect(estimate.low.repeats).toBeCloseTo(2e6 * (0.63 / 1.35) ** 3, 3);
  });

  test('under the cut-off nothing counts', () => {
    const estimate = fatigueEstimate({
      category: megapascals(160),
      slope: 3,
      rule: 'en-1993-1-9',
      partialFactor: 1,
      spectrum: [{ range: megapascals(40), cycles: 1e9 }],
    });
    expect(estimate.damage).toBe(0);
    expect(estimate.repeats).toBe(Number.POSITIVE_INFINITY);
    expect(estimate.limitShare).toBeLessThan(1);
  });
});

describe('categories', () => {
  test('the ladder rises by about an eighth a step; details stand on it', () => {
    categorySteps.slice(1).forEach((step, i) => {
      expect(step / categorySteps[i]!).toBeGreaterThan(1.09);
      expect(step / categorySteps[i]!).toBeLessThan(1.15);
      expect(neighbor(step, -1)).toBe(categorySteps[i]);
    });
    for (const { category, detail } of detailCategories) expect(categorySteps, detail).toContain(category);
    expect(neighbor(megapascals(36), -1)).toBeLessThan(megapascals(36));
    expect(neighbor(megapascals(160), 1)).toBeGreaterThan(megapascals(160));
  });
});
