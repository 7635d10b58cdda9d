import { describe, expect, test } from 'vitest';
import type { Outcome } from '../quantity/index.ts';
import { type ElectricMotor, engineCurve, motorPoint, motorPoints, rideEnergy } from './index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

/** An invented 48 V motor. */
const motor: ElectricMotor = {
  constant: 0.12,
  resistance: 0.05,
  motorCurrent: 150,
  batteryCurrent: 80,
  battery: { voltage: 48, resistance: 0.04, energy: 500 * 3600 },
};

describe('the three limits, each by its own law', () => {
  test('at standstill the motor current rules: T = K·I', () => {
    const still = motorPoint(motor, 0);
    expect(still.limit).toBe('motor-current');
    expect(still.torque).toBeCloseTo(0.12 * 150, 12);
    // R·I² out of the battery: (48 − 0.04·Ib)·Ib = 0.05·150².
    expect((48 - 0.04 * still.batteryCurrent) * still.batteryCurrent).toBeCloseTo(0.05 * 150 ** 2, 9);
  });
  test('then the battery current: electrical power of the motor is (V − Rb·Ib)·Ib', () => {
    const middle = motorPoint(motor, 300);
    expect(middle.limit).toBe('battery-current');
    const { motorCurrent: i } = middle;
    expect((0.12 * 300 + 0.05 * i) * i).toBeCloseTo((48 - 0.04 * 80) * 80, 9);
    expect(middle.batteryCurrent).toBeCloseTo(80, 9);
  });
  test('then the voltage: I = (V − K·ω)/(R + Rb), nothing at V/K', () => {
    const late = motorPoint(motor, 370);
    expect(late.limit).toBe('voltage');
    expect(late.motorCurrent).toBeCloseTo((48 - 0.12 * 370) / 0.09, 9);
    expect(late.batteryCurrent).toBeCloseTo(late.motorCurrent, 9);
    expect(motorPoint(motor, 400).torque).toBe(0);
    expect(motorPoint(motor, 500).torque).toBe(0);
  });
});

test('the points make a torque curve that meets the exact one at its switches', () => {
  const points = must(motorPoints(motor));
  expect(points.at(-1)!.speed).toBeCloseTo(400, 9);
  expect(engineCurve({ points }).ok).toBe(true);
  expect(new Set(points.map((point) => point.limit))).toEqual(
    new Set(['motor-current', 'battery-current', 'voltage']),
  );
});

test('what cannot be is said', () => {
  expect(motorPoints({ ...motor, constant: 0 }).ok).toBe(false);
  expect(motorPoints({ ...motor, batteryCurrent: 2000 }).ok).toBe(false);
});

describe('energy and range of a steady ride', () => {
  const road = { mass: 120, dragArea: 0.55, airDensity: 1.2, rollingCoefficient: 0.015, grade: 0 };
  const drive = { ratio: 7, efficiency: 0.9, wheelRadius: 0.2 };
  const lossless = {
    ...motor,
    resistance: 1e-12,
    battery: { voltage: 48, energy: 500 * 3600 },
    batteryCurrent: 1000,
    motorCurrent: 1000,
  };

  test('without electrical losses it is F·x/η', () => {
    const force = 0.015 * 120 * 9.80665 + 0.33 * 8 ** 2;
    const ride = must(rideEnergy(lossless, drive, road, [{ speed: 8, distance: 5000 }]));
    expect(ride.energy / ((force * 5000) / 0.9)).toBeCloseTo(1, 9);
    expect(ride.range! / ((500 * 3600 * 0.9) / force)).toBeCloseTo(1, 9);
  });

  test('losses and hills cost, and a stretch beyond the motor is said', () => {
    const flat = must(rideEnergy(motor, drive, road, [{ speed: 8, distance: 5000 }]));
    const hilly = must(
      rideEnergy(motor, drive, road, [
        { speed: 8, distance: 2500, grade: 0.05 },
        { speed: 8, distance: 2500, grade: -0.05 },
      ]),
    );
    expect(flat.energy).toBeGreaterThan(
      must(rideEnergy(lossless, drive, road, [{ speed: 8, distance: 5000 }])).energy,
    );
    expect(hilly.energy).toBeGreaterThan(flat.energy);
    expect(rideEnergy(motor, drive, road, [{ speed: 8, distance: 100, grade: 0.5 }]).ok).toBe(false);
  });
});
