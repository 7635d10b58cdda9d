import { describe, expect, test } from 'vitest';
import {
  bouncePitch,
  dropOn,
  forkLoad,
  forkWheelRate,
  heightForFactor,
  naturalFrequency,
  STANDARD_GRAVITY,
  springEnd,
  transmissibility,
  wheelRate,
} from '../../src/core/ride/index.ts';

// Vibration formulas of textbooks (from memory), every row worked by another hand to the printed digits.

const near = (value: number | undefined, expected: number, tolerance: number): void => {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const rake = (24 * Math.PI) / 180;

describe('[SUS-1] a fork with two springs of 6 N/mm under 45 kg', () => {
  const load = 45 * STANDARD_GRAVITY;
  test('sag and frequency, with and without preload', () => {
    const free = springEnd({ load, wheelRate: 12e3, preload: 0 });
    near(load, 441.29925, 1e-9);
    near(free.sag * 1e3, 36.775, 5.1e-4);
    near(free.frequency, 2.598989, 5.1e-7);
    const loaded = springEnd({ load, wheelRate: 12e3, preload: 15e-3 });
    near(loaded.sag * 1e3, 21.775, 5.1e-4);
    expect(loaded.frequency).toBe(free.frequency);
  });
  test('raked by 24°', () => {
    near(forkLoad(load, rake), 403.147, 5.1e-4);
    near(forkWheelRate(12e3, rake), 14_378.74, 5.1e-3);
  });
});

test('[SUS-2] a rear with 70 kg, 40 N/mm, motion ratio 0.6', () => {
  const rate = wheelRate(40e3, 0.6);
  near(rate, 14_400, 1e-9);
  const load = 70 * STANDARD_GRAVITY;
  const free = springEnd({ load, wheelRate: rate, preload: 0 });
  near(free.sag * 1e3, 47.671, 5.1e-4);
  near(free.frequency, 2.282718, 5.1e-7);
  near(springEnd({ load, wheelRate: rate, preload: 8e-3 / 0.6 }).sag * 1e3, 34.338, 5.1e-4);
});

describe('[SUS-3] bounce and pitch', () => {
  const body = { mass: 110, inertia: 14, toFront: 0.55, toRear: 0.45, frontRate: 12e3, rearRate: 16e3 };
  test('the two frequencies', () => {
    const { frequencies } = bouncePitch(body);
    near(frequencies[0], 2.534313, 5.1e-7);
    near(frequencies[1], 3.529151, 5.1e-7);
  });
  test('the nodes are conjugate: their product is −I/m', () => {
    const [a, b] = bouncePitch(body).nodes;
    near(a! * b!, -14 / 110, 1e-12);
  });
  test('uncoupled where k_f·l_f = k_r·l_r', () => {
    const even = bouncePitch({ ...body, frontRate: 9e3, toFront: 0.8, rearRate: 16e3, toRear: 0.45 });
    near(Math.min(...even.frequencies), Math.sqrt(25e3 / 110) / (2 * Math.PI), 1e-12);
  });
});

describe('[SUS-4] a drop of 0.1 m on 28 N/mm, 110 kg', () => {
  test('compression, force and factor', () => {
    const drop = dropOn(110, 28e3, 0.1);
    near(drop.compression * 1e3, 134.388, 5.1e-4);
    near(drop.force, 3762.862, 5.1e-4);
    near(drop.factor, 3.488229, 5.1e-7);
  });
  test('three times the weight from 57.8 mm', () => {
    near(heightForFactor(110, 28e3, 3), 0.0578, 5.1e-5);
    near(dropOn(110, 28e3, heightForFactor(110, 28e3, 3)).factor, 3, 1e-12);
  });
});

test('[SUS-5] seat springs, two of 12 N/mm under 60 kg', () => {
  near(((60 * STANDARD_GRAVITY) / 24e3) * 1e3, 24.517, 5.1e-4);
  near(naturalFrequency(24e3, 60), 3.183099, 5.1e-7);
});

describe('[SUS-6] transmissibility', () => {
  test('ζ 0.3, r 2', () => {
    near(transmissibility(2, 0.3), 0.483442, 5.1e-7);
  });
  test.each([0, 0.1, 0.5, 1, 3])('is 1 at √2 for ζ %f', (damping) => {
    near(transmissibility(Math.SQRT2, damping), 1, 1e-12);
  });
});

test('[SUS-7] travel is used up where the spring meets the load', () => {
  const end = springEnd({ load: 500, wheelRate: 14e3, preload: 10e-3, travel: 90e-3 });
  near(end.bottomsAt, (14e3 * 0.1) / 500, 1e-12);
  near(end.sagShare, (500 / 14e3 - 0.01) / 0.09, 1e-12);
});
