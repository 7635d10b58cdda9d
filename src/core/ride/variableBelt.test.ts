import { describe, expect, test } from 'vitest';
import { beltCenter } from '../driveline/index.ts';
import { type Length, type Outcome, rpm } from '../quantity/index.ts';
import { beltPositions, beltRoadSpeeds, type VariableBeltInput, variableBeltDrive } from './index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

/** Worked separately: C 245 mm, L 913.17572 mm; driver 70/150 mm wants 190.000/118.768 mm. */
const base: VariableBeltInput = {
  length: 0.91317572,
  center: 0.245,
  driver: { smallest: 0.07, largest: 0.15 },
  driven: { smallest: 0.11, largest: 0.1901 },
};

describe('ends of the range', () => {
  test('the driver ends it where the driven sheave can follow', () => {
    const drive = must(variableBeltDrive(base));
    expect([drive.lowEndsAt, drive.highEndsAt]).toEqual(['driver', 'driver']);
    expect(drive.low.ratio).toBeCloseTo(2.7143, 4);
    expect(drive.high.ratio).toBeCloseTo(0.7918, 4);
    expect(drive.highUnused * 1000).toBeCloseTo(8.768, 3);
  });

  test('a driven sheave that closes no further ends it, and the driver keeps room', () => {
    const drive = must(variableBeltDrive({ ...base, driven: { smallest: 0.139345, largest: 0.174727 } }));
    expect([drive.lowEndsAt, drive.highEndsAt]).toEqual(['driven', 'driven']);
    expect(drive.low.driverDiameter * 1000).toBeCloseTo(90, 2);
    expect(drive.high.driverDiameter * 1000).toBeCloseTo(130, 2);
    expect(drive.highUnused * 1000).toBeCloseTo(20, 2);
  });

  test('too long a center costs ratio: the driven sheave ends the top early', () => {
    const drive = must(variableBeltDrive({ ...base, center: 0.3 }));
    expect(drive.highEndsAt).toBe('driven');
    expect(drive.low.ratio).toBeLessThan(2);
  });

  test('a center that no position reaches is said', () => {
    expect(variableBeltDrive({ ...base, center: 0.35 }).ok).toBe(false);
    expect(variableBeltDrive({ ...base, length: 0.3 }).ok).toBe(false);
  });

  test('without a center the belt sets it at launch; the tolerance of its length is that of the center', () => {
    const { center: _, ...free } = base;
    const drive = must(variableBeltDrive({ ...free, lengthTolerance: 0.005 }));
    expect(drive.low.driverDiameter).toBeCloseTo(0.07, 9);
    expect(drive.low.drivenDiameter).toBeCloseTo(0.1901, 9);
    const pair = { driverDiameter: 0.07 as Length, drivenDiameter: 0.1901 as Length };
    expect(drive.centerRange.longest).toBeCloseTo(must(beltCenter(pair, 0.91817572 as Length)), 12);
    expect(drive.centerRange.shortest).toBeLessThan(drive.center);
  });
});

test('every position keeps the length of the belt', () => {
  const drive = must(variableBeltDrive(base));
  const positions = must(beltPositions(base, drive, 17));
  expect(positions.length).toBe(17);
  for (const one of positions) expect(must(beltCenter(one, base.length as Length))).toBeCloseTo(0.245, 10);
});

test('S2 of the trade: 2.7 to 0.9, 8:1 after it, rollout 1470 mm: bite at 9, top 44 km/h', () => {
  const position = (ratio: number) => ({ ratio, driverDiameter: 0.1 as Length });
  const speeds = beltRoadSpeeds({ low: position(2.7), high: position(0.9) } as never, {
    ratio: 8,
    wheelRadius: 1.47 / (2 * Math.PI),
    engages: rpm(2200),
    shiftsAt: rpm(3400),
    governed: rpm(3600),
  });
  expect(Math.abs(speeds.bite! * 3.6 - 9)).toBeLessThan(0.5);
  expect(Math.abs(speeds.governed * 3.6 - 44)).toBeLessThan(0.5);
});
