/** Centrifugal clutches: textbook problems as printed in public course notes, and a launch worked separately. */
import { describe, expect, test } from 'vitest';
import { type Outcome, rpm } from '../../src/core/quantity/index.ts';
import {
  clutchCapacity,
  clutchOf,
  engineCurve,
  shoeConstant,
  shoeMass,
  simulateLaunch,
  slipSpeed,
} from '../../src/core/ride/index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

describe('mass of a shoe', () => {
  /** kW, rpm, ω0/ω, drum radius m, shoe radius m, μ, torque N·m, mass kg, digits of the print; four shoes each. */
  test.each([
    ['published', 25, 1200, 0.5, 0.1, 0.075, 0.3, 198.9437, 1.866408, 5e-7],
    ['published', 22.5, 1250, 0.5, 0.175, 0.12, 0.3, 171.8873, 0.530768, 5e-7],
    ['published data, derived', 20, 750, 0.7, 0.2, 0.16, 0.25, 254.6479, 2.529532, 5e-7],
    ['memory', 15, 900, 0.75, 0.15, 0.12, 0.25, undefined, 2.275241, 5e-7],
  ] as const)(
    '%s: %f kW at %i rpm',
    (_tag, kilowatts, speed, share, drumRadius, shoeRadius, friction, torque, mass, digit) => {
      const omega = rpm(speed);
      const needed = (kilowatts * 1000) / omega;
      if (torque !== undefined) expect(Math.abs(needed - torque)).toBeLessThan(5.1e-5);
      const shoes = { shoes: 4, friction, shoeRadius, drumRadius };
      const found = shoeMass(shoes, { torque: needed, speed: omega, engages: share * omega });
      expect(Math.abs(found - mass)).toBeLessThan(digit * 1.02);
      // And back: a clutch of these shoes carries the torque at that speed.
      const model = { engages: share * omega, constant: shoeConstant({ ...shoes, mass: found }) };
      expect(clutchCapacity(model, omega)).toBeCloseTo(needed, 9);
      expect(clutchCapacity(model, share * omega)).toBe(0);
    },
  );

  test('printed answers: 1.866 kg and 0.53 kg', () => {
    const of = (kilowatts: number, speed: number, radii: readonly [number, number]) =>
      shoeMass(
        { shoes: 4, friction: 0.3, drumRadius: radii[0], shoeRadius: radii[1] },
        { torque: (kilowatts * 1000) / rpm(speed), speed: rpm(speed), engages: rpm(speed) / 2 },
      );
    expect(of(25, 1200, [0.1, 0.075])).toBeCloseTo(1.866, 3);
    expect(of(22.5, 1250, [0.175, 0.12])).toBeCloseTo(0.53, 2);
  });
});

describe('small engine: bite 2000 rpm, 10 N·m at 2600 rpm [derived]', () => {
  const model = must(clutchOf({ engages: rpm(2000), locks: rpm(2600), capacity: 10 }));
  test('K = 3.303951641e-4 N·m·s²', () => {
    expect(Math.abs(model.constant - 3.303951641e-4)).toBeLessThan(5e-14);
  });
  test.each([
    [5, 2319.48],
    [12, 2704.07],
  ])('%i N·m slips at %f rpm', (torque, speed) => {
    expect(Math.abs((slipSpeed(model, torque) * 60) / (2 * Math.PI) - speed)).toBeLessThan(0.0051);
  });
  test('launch of 130 kg at 10 N·m, G 9, η 0.9: locks at 6.050474740 m/s after 1.942127694 s, 2643.928775 J of heat', () => {
    const engine = must(engineCurve({ points: [{ speed: rpm(1000), torque: 10 }], governed: rpm(3600) }));
    const launch = must(
      simulateLaunch({
        road: { mass: 130, dragArea: 0, airDensity: 1.2, rollingCoefficient: 0, grade: 0 },
        drive: { ratio: 9, efficiency: 0.9, wheelRadius: 0.2, clutch: model },
        engine,
        rotatingInertia: 0,
      }),
    );
    expect(launch.path.segments[0]!.force0).toBeCloseTo(405, 9);
    expect(Math.abs(launch.lockUp!.speed - 6.05047474)).toBeLessThan(1e-8);
    expect(Math.abs(launch.lockUp!.time - 1.942127694)).toBeLessThan(1e-8);
    expect(Math.abs(launch.lockUp!.distance - 5.875397279)).toBeLessThan(1e-8);
    expect(Math.abs(launch.energy.clutchHeat - 2643.928775)).toBeLessThan(1e-6);
    // Half the energy is heat: as much as is passed on before the losses.
    const passedOn = (0.5 * 130 * launch.lockUp!.speed ** 2) / 0.9;
    expect(launch.energy.clutchHeat).toBeCloseTo(passedOn, 6);
  });
});

test('a clutch that holds less than the engine gives never locks, and the run says so', () => {
  const engine = must(engineCurve({ points: [{ speed: rpm(2000), torque: 12 }], governed: rpm(3600) }));
  const weak = must(clutchOf({ engages: rpm(2000), locks: rpm(3600), capacity: 8 }));
  const launch = must(
    simulateLaunch({
      road: { mass: 130, dragArea: 0.5, airDensity: 1.2, rollingCoefficient: 0.02, grade: 0 },
      drive: { ratio: 8, efficiency: 0.9, wheelRadius: 0.17, clutch: weak },
      engine,
      rotatingInertia: 0,
    }),
  );
  expect(launch.path.slips.map((band) => band.endless)).toEqual([true]);
  expect(launch.lockUp).toBeUndefined();
  expect(launch.path.segments.map((segment) => segment.phase)).toEqual(['slip']);
});
