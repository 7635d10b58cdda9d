import { describe, expect, test } from 'vitest';
import {
  centerByWeighing,
  frontGripShare,
  idealFrontShare,
  type LongitudinalBike,
  lockPoints,
  longitudinalLimits,
  STANDARD_GRAVITY,
  tractionShare,
  wheelLoads,
} from '../../src/core/ride/index.ts';

// Statics of a rigid bike; every row worked by another hand to the printed digits, forms of the formulas from textbooks.

const near = (value: number | undefined, expected: number, tolerance: number): void => {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const bike = (mass: number, wheelbase: number, ahead: number, height: number): LongitudinalBike => ({
  mass,
  wheelbase,
  ahead,
  height,
});
const first = bike(120, 1, 0.42, 0.62);
const degrees = (angle: number): number => (angle * 180) / Math.PI;
/** Half a unit of the sixth printed decimal. */
const SIX = 5.1e-7;

describe('[STA-1] wheel loads and lift limits', () => {
  test.each([
    { of: first, front: 494.25516, rear: 682.54284, wheelie: 6.643215, stoppie: 9.173963, tip: 34.114473 },
    {
      of: bike(150, 1.25, 0.55, 0.68),
      front: 647.2389,
      rear: 823.7586,
      wheelie: 7.931849,
      stoppie: 10.095081,
      tip: 38.966747,
    },
    {
      of: bike(95, 0.8, 0.34, 0.6),
      front: 395.94349,
      rear: 535.68826,
      wheelie: 5.557102,
      stoppie: 7.518432,
      tip: 29.538782,
    },
  ])('$of.mass kg', ({ of, front, rear, wheelie, stoppie, tip }) => {
    const loads = wheelLoads(of, 0);
    near(loads.front, front, 5.1e-6);
    near(loads.rear, rear, 5.1e-6);
    const limits = longitudinalLimits(of, 0.8);
    near(limits.wheelie, wheelie, SIX);
    near(limits.stoppie, stoppie, SIX);
    near(degrees(limits.tipBack), tip, SIX);
  });

  test('a wheel carries nothing at its own limit', () => {
    const limits = longitudinalLimits(first, 0.8);
    near(wheelLoads(first, limits.wheelie).front, 0, 1e-9);
    near(wheelLoads(first, -limits.stoppie).rear, 0, 1e-9);
  });

  test('braking at 0.8 g and at the lift of a load case', () => {
    // Load case of a published set of test loads worked by another hand: m 130 kg, p 1.05, b 0.47, h 0.65.
    const load = bike(130, 1.05, 0.47, 0.65);
    near(wheelLoads(load, 0).front, 570.6536, 5.1e-5);
    near(wheelLoads(load, 0).rear, 704.2109, 5.1e-5);
    near(wheelLoads(load, -0.8 * STANDARD_GRAVITY).front, 1202.0151, 5.1e-5);
    const { stoppie } = longitudinalLimits(load, 1);
    near(stoppie / STANDARD_GRAVITY, 0.892308, SIX);
    near(wheelLoads(load, -stoppie).front, 1274.8645, 5.1e-5);
  });

  test('air unloads the front wheel by F·h/p', () => {
    // 20 m/s, ½·ρ·CdA 0.33 kg/m, center of pressure at 0.9 m, wheelbase 1.05 m: 113.14 N.
    const load = bike(130, 1.05, 0.47, 0.65);
    const air = { force: 0.33 * 400, height: 0.9 };
    near(wheelLoads(load, 0).front - wheelLoads(load, 0, air).front, 113.14, 5.1e-3);
  });
});

describe('[STA-2] friction or lift, whichever comes first', () => {
  const g = STANDARD_GRAVITY;
  test('μ 0.4: friction governs everything', () => {
    const limits = longitudinalLimits(first, 0.4);
    near(limits.drive.value, 3.025456, SIX);
    expect(limits.drive.by).toBe('traction');
    near(degrees(limits.hill.angle), 17.145551, SIX);
    expect(limits.hill.by).toBe('traction');
    near(limits.frontBrake.value / g, 0.223404, SIX);
    near(limits.rearBrake.value / g, 0.185897, SIX);
    expect(limits.bothBrakes).toEqual({ value: 0.4 * g, by: 'grip' });
  });
  test('μ 0.8: the front wheel lifts before the rear one slips', () => {
    const limits = longitudinalLimits(first, 0.8);
    near(g * tractionShare(first, 0.8)!, 9.028344, SIX);
    expect(limits.drive.by).toBe('wheelie');
    near(limits.drive.value, 6.643215, SIX);
    near(limits.frontBrake.value / g, 0.666667, SIX);
    expect(limits.frontBrake.by).toBe('grip');
    near(limits.rearBrake.value / g, 0.31016, SIX);
  });
  test('μ 1.0: the formula of friction is void past the lift', () => {
    const limits = longitudinalLimits(first, 1);
    near(frontGripShare(first, 1), 1.105263, SIX);
    expect(limits.frontBrake.by).toBe('lift');
    near(limits.frontBrake.value / g, 0.935484, SIX);
    expect(limits.bothBrakes.by).toBe('lift');
  });
  test('μ past p/h sets no limit of traction', () => {
    expect(tractionShare(first, 1.7)).toBeUndefined();
    expect(frontGripShare(first, 1.7)).toBeUndefined();
    const limits = longitudinalLimits(first, 1.7);
    expect(limits.drive).toEqual({ value: limits.wheelie, by: 'wheelie' });
    expect(limits.hill).toEqual({ angle: limits.tipBack, by: 'tip-back' });
  });
});

describe('[STA-3] sharing the brakes', () => {
  test.each([
    [0.2, 0.544],
    [0.4, 0.668],
    [0.6, 0.792],
    [0.8, 0.916],
  ])('ideal front share at %f g', (x, share) => {
    near(idealFrontShare(first, x), share, 1e-12);
  });
  test.each([
    { share: 0.6, crossover: 0.290323, rear: 0.517857 },
    { share: 0.7, crossover: 0.451613, rear: 0.582915 },
  ])('fixed front share $share', ({ share, crossover, rear }) => {
    const locks = lockPoints(first, share, 0.8);
    near(locks.crossover, crossover, SIX);
    near(locks.rear, rear, SIX);
    expect(locks.first).toBe('rear');
  });
});

test('[STA-4] center of mass by weighing', () => {
  const center = centerByWeighing({
    mass: 60,
    wheelbase: 1,
    wheelRadius: 0.2,
    rearLevel: 33,
    rearRaised: 37.36764281,
    angle: Math.PI / 9,
  });
  near(center.ahead, 0.45, 1e-12);
  // The second reading is printed to 1e-8 kg, and p/(m·tan θ) is 0.046 m/kg.
  near(center.height, 0.4, 1e-9);
});
