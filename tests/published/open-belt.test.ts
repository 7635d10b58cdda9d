/** Open belts and variable sheaves against worked answers; rows marked [derived] were worked separately. */
import { describe, expect, test } from 'vitest';
import {
  beltCenter,
  beltLength,
  beltWraps,
  coupledDiameters,
  coupledDrivenDiameter,
  pitchRadiusPerTravel,
  type SheavePair,
} from '../../src/core/driveline/index.ts';
import { degrees, inches, type Length, mm, type Outcome } from '../../src/core/quantity/index.ts';

const INCH = 0.0254;

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error('refused');
  return outcome.value;
}

const pairOf = (driver: Length, driven: Length): SheavePair => ({
  driverDiameter: driver,
  drivenDiameter: driven,
});

test('Shigley solutions ch. 17: D 18, d 6, C 96 in: wraps 3.016511 and 3.266674 rad, L 230.074 in', () => {
  const pair = pairOf(inches(6), inches(18));
  expect(must(beltLength(pair, inches(96))) / INCH).toBeCloseTo(230.0742341, 7);
  expect(must(beltWraps(pair, inches(96))).driver).toBeCloseTo(3.01651113, 9);
  expect(must(beltWraps(pair, inches(96))).driven).toBeCloseTo(3.266674177, 9);
});

test('Shigley example 17-4 (from memory): L 113.8, D 11, d 7.4 in: C 42.4 in', () => {
  // The book's closed form gives 42.4105; the difference to the exact length is below its last digit.
  expect(
    Math.abs(must(beltCenter(pairOf(inches(7.4), inches(11)), inches(113.8))) / INCH - 42.4105),
  ).toBeLessThan(0.001);
});

/** d, D, C, L, small wrap degrees, unit [derived]. */
test.each([
  [70, 190, 245, 913.17572, 151.6484, 0.001],
  [64, 150, 210, 764.98633, 156.3689, 0.001],
  [2.5, 7.25, 8.625, 33.22348, 148.0328, INCH],
])('open belt d %f, D %f, C %f', (d, big, c, length, wrap, unit) => {
  const pair = pairOf((d * unit) as Length, (big * unit) as Length);
  expect(Math.abs(must(beltLength(pair, (c * unit) as Length)) / unit - length)).toBeLessThan(0.0000051);
  expect(Math.abs((must(beltWraps(pair, (c * unit) as Length)).driver * 180) / Math.PI - wrap)).toBeLessThan(
    0.000051,
  );
  // L is printed to 5e-6, so C comes back to half of that and a little.
  expect(Math.abs(must(beltCenter(pair, (length * unit) as Length)) / unit - c)).toBeLessThan(0.000005);
});

describe('variable sheaves at C 245, L 913.17572 mm [derived]', () => {
  const belt = { length: mm(913.17572), center: mm(245) };
  test.each([
    [70, 190.0, 2.7143],
    [90, 174.727, 1.9414],
    [110, 157.91, 1.4355],
    [130, 139.345, 1.0719],
    [150, 118.768, 0.7918],
  ])('driver %i mm wants %f mm', (driver, driven, ratio) => {
    const found = must(coupledDrivenDiameter(belt, mm(driver))) * 1000;
    expect(Math.abs(found - driven)).toBeLessThan(0.00051);
    expect(Math.abs(found / driver - ratio)).toBeLessThan(0.000051);
    const pair = must(coupledDiameters(belt, found / driver));
    expect(pair.driverDiameter * 1000).toBeCloseTo(driver, 8);
    expect(pair.drivenDiameter * 1000).toBeCloseTo(found, 8);
  });

  test('the sum of the diameters is not constant', () => {
    const sum = 150 + must(coupledDrivenDiameter(belt, mm(150))) * 1000;
    expect(sum).toBeCloseTo(268.768, 3);
  });
});

test.each([
  [26, 2.16574],
  [28, 2.00539],
  [30, 1.86603],
])('groove of %i degrees climbs %f mm per mm [derived]', (angle, climb) => {
  expect(Math.abs(pitchRadiusPerTravel(degrees(angle)) - climb)).toBeLessThan(0.0000051);
});
