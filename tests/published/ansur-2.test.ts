import { describe, expect, test } from 'vitest';
import { type BodyMeasure, bodySize, bodySpread, percentileLinks } from '../../src/core/standards/index.ts';

// ANSUR II, NATICK/TR-15/007: percentiles computed from the public rows of 4082 men and 1986 women, mm and kg.
const rows: readonly (readonly [BodyMeasure, readonly number[], readonly number[]])[] = [
  ['stature', [1648, 1755, 1870, 1756.2, 68.6], [1525, 1626, 1740, 1628.5, 64.2]],
  ['crotchHeight', [771, 845, 925, 845.9, 46.5], [712, 780, 857, 782.3, 44.6]],
  ['trochanterionHeight', [824, 899, 985, 900.9, 49.2], [774, 844, 919, 845.4, 44.7]],
  ['femoralEpicondyleHeight', [449, 491, 537, 491.7, 26.6], [422, 465, 511, 465.9, 27.1]],
  ['malleolusHeight', [64, 73, 83, 72.9, 5.7], [54, 63, 71, 62.8, 5.1]],
  ['sittingHeight', [860, 918, 977, 918.3, 35.7], [803, 857, 912, 856.6, 33.1]],
  ['upperArm', [307, 335, 365, 335.2, 17.5], [283, 311, 340, 311.2, 17.2]],
  ['weight', [64.4, 84.6, 110.7, 85.5, 14.2], [51.3, 66.8, 87.1, 67.8, 11]],
  ['linkHipKnee', [364, 408, 458, 409.3, 28.4], [340, 379, 418, 379.4, 24]],
  ['linkKneeAnkle', [379, 418, 460, 418.8, 24.6], [361, 402, 446, 403.2, 25.9]],
  ['linkShoulderGrip', [631, 684, 740, 684.3, 33.1], [577, 627, 684, 628.9, 32.7]],
];

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('[FIT-1] the table against the report', () => {
  test.each(rows)('%s', (measure, men, women) => {
    const unit = measure === 'weight' ? 1 : 1000;
    for (const [group, [p5, p50, p95, mean, deviation]] of [
      ['men', men],
      ['women', women],
    ] as const) {
      near(bodySize(measure, group, 5) * unit, p5!, 1e-9);
      near(bodySize(measure, group, 50) * unit, p50!, 1e-9);
      near(bodySize(measure, group, 95) * unit, p95!, 1e-9);
      near(bodySpread(measure, group).mean * unit, mean!, 1e-9);
      near(bodySpread(measure, group).deviation * unit, deviation!, 1e-9);
    }
  });
});

describe('[FIT-2] a link is a difference person by person', () => {
  test('the 95th percentile of hip to knee is not the difference of two 95th percentiles', () => {
    const difference =
      bodySize('trochanterionHeight', 'men', 95) - bodySize('femoralEpicondyleHeight', 'men', 95);
    near(difference * 1000, 448, 1e-9);
    near(percentileLinks('men', 95).thigh * 1000, 458, 1e-9);
  });
  test('but the mean of a difference is the difference of the means', () => {
    for (const group of ['men', 'women'] as const) {
      const mean = (measure: BodyMeasure) => bodySpread(measure, group).mean;
      // Means printed to 0.1 mm.
      near(mean('trochanterionHeight') - mean('femoralEpicondyleHeight'), mean('linkHipKnee'), 2e-4);
      near(mean('femoralEpicondyleHeight') - mean('malleolusHeight'), mean('linkKneeAnkle'), 2e-4);
      near(mean('upperArm') + mean('forearmToGrip'), mean('linkShoulderGrip'), 2e-4);
    }
  });
  test('arm of a percentile is the link of that percentile', () => {
    for (const percentile of [5, 50, 95] as const) {
      const { upperArm, forearm } = percentileLinks('women', percentile);
      near(upperArm + forearm, bodySize('linkShoulderGrip', 'women', percentile), 1e-12);
    }
  });
  test('crotch over stature', () => {
    near(bodySpread('crotchHeight', 'men').mean / bodySpread('stature', 'men').mean, 0.4815, 3e-4);
    near(bodySpread('crotchHeight', 'women').mean / bodySpread('stature', 'women').mean, 0.4802, 3e-4);
  });
});
