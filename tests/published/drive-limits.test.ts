/** Wheel lift and grip when driving, worked separately [derived]: m, p, b, h of three bikes; level and slope. */
import { describe, expect, test } from 'vitest';
import { accelerationLimits, type RideStance, steepestHill } from '../../src/core/ride/index.ts';

const road = { mass: 120, dragArea: 0, airDensity: 1.2, rollingCoefficient: 0, grade: 0 };
const first: RideStance = { wheelbase: 1, centerForward: 0.42, centerHeight: 0.62 };

test.each([
  [120, 1.0, 0.42, 0.62, 6.643215, 34.114473],
  [150, 1.25, 0.55, 0.68, 7.931849, 38.966747],
  [95, 0.8, 0.34, 0.6, 5.557102, 29.538782],
])('%i kg, %f, %f, %f: lifts at %f m/s², tips back at %f degrees', (mass, p, b, h, lift, tip) => {
  const stance = { wheelbase: p, centerForward: b, centerHeight: h };
  const [limit] = accelerationLimits({ ...road, mass }, stance);
  expect(limit!.by).toBe('wheel-lift');
  expect(Math.abs(limit!.still - lift)).toBeLessThan(5.1e-7);
  // An engine that could climb anything leaves tipping back.
  const hill = steepestHill(1e6, { mass, rollingCoefficient: 0 }, stance);
  expect(hill.limitedBy).toBe('tip-back');
  expect(Math.abs((Math.atan(hill.grade) * 180) / Math.PI - tip)).toBeLessThan(5.1e-7);
  // On that slope nothing is left to accelerate with.
  const [onSlope] = accelerationLimits({ ...road, mass, grade: hill.grade }, stance);
  expect(Math.abs(onSlope!.still)).toBeLessThan(1e-12);
});

describe('first bike: which limit is the least', () => {
  const limitsAt = (grip: number) => accelerationLimits(road, { ...first, grip });
  const least = (grip: number) => limitsAt(grip).reduce((a, b) => (b.still < a.still ? b : a));
  test('μ 0.4: traction 3.025456 m/s², 17.145551 degrees', () => {
    expect(least(0.4).by).toBe('grip');
    expect(Math.abs(least(0.4).still - 3.025456)).toBeLessThan(5.1e-7);
    const hill = steepestHill(1e6, { mass: 120, rollingCoefficient: 0 }, { ...first, grip: 0.4 });
    expect(hill.limitedBy).toBe('grip');
    expect(Math.abs((Math.atan(hill.grade) * 180) / Math.PI - 17.145551)).toBeLessThan(5.1e-7);
  });
  test('μ 0.8: the traction formula gives 9.028344, so the wheel lifts first at 6.643215', () => {
    expect(Math.abs(limitsAt(0.8)[1]!.still - 9.028344)).toBeLessThan(5.1e-7);
    expect(least(0.8).by).toBe('wheel-lift');
  });
  test('past p/h grip is no limit', () => {
    expect(limitsAt(1.7).map((limit) => limit.by)).toEqual(['wheel-lift']);
  });
});

test('air pushes the front up: at 20 m/s, k 0.33, 0.9 m high, 113.14 N less on the front wheel', () => {
  const airy = { ...road, mass: 130, dragArea: 0.55 };
  const stance = { wheelbase: 1.05, centerForward: 0.47, centerHeight: 0.65, dragHeight: 0.9 };
  const [limit] = accelerationLimits(airy, stance);
  // m·a·h/p is the load that the acceleration takes off; what air takes can no longer be taken.
  const unloading = (limit!.square * 20 ** 2 * 130 * 0.65) / 1.05;
  expect(Math.abs(unloading + 113.14)).toBeLessThan(0.0051);
});
