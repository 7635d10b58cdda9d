/** What must hold for every launch, whatever the bike. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Outcome } from '../../src/core/quantity/index.ts';
import {
  clutchOf,
  type EngineCurve,
  engineCurve,
  type Launch,
  type LaunchInput,
  simulateLaunch,
} from '../../src/core/ride/index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const RPM = (2 * Math.PI) / 60;

/** A torque curve of up to six points around a peak, with or without droop and inertia. */
const engines: fc.Arbitrary<EngineCurve> = fc
  .record({
    torques: fc.array(between(4, 20), { minLength: 2, maxLength: 6 }),
    governed: between(3000, 6000),
    droop: fc.constantFrom(0, 0.03, 0.08),
    inertia: fc.constantFrom(0, 0.004),
  })
  .map(({ torques, governed, droop, inertia }) =>
    must(
      engineCurve({
        points: torques.map((torque, k) => ({
          speed: (1200 + (k * governed) / torques.length) * RPM,
          torque,
        })),
        governed: governed * RPM,
        droop,
        inertia,
      }),
    ),
  );

const takeUps = fc.constantFrom('clutch', 'belt', 'fixed');

const launches: fc.Arbitrary<LaunchInput> = fc
  .record({
    engine: engines,
    takeUp: takeUps,
    mass: between(70, 250),
    ratio: between(3, 14),
    efficiency: between(0.6, 1),
    wheelRadius: between(0.12, 0.3),
    dragArea: between(0.2, 0.8),
    rolling: between(0.005, 0.08),
    grade: between(-0.05, 0.25),
    grip: between(0.3, 1.3),
    rotatingInertia: between(0, 0.4),
    capacity: between(6, 30),
    isStood: fc.boolean(),
  })
  .map((one): LaunchInput => {
    const { engine } = one;
    const clutch = must(clutchOf({ engages: 1900 * RPM, locks: 2600 * RPM, capacity: one.capacity }));
    return {
      road: {
        mass: one.mass,
        dragArea: one.dragArea,
        airDensity: 1.2,
        rollingCoefficient: one.rolling,
        grade: one.grade,
      },
      drive: {
        ratio: one.ratio,
        efficiency: one.efficiency,
        wheelRadius: one.wheelRadius,
        ...(one.takeUp === 'clutch' ? { clutch } : {}),
        ...(one.takeUp === 'belt'
          ? { belt: { low: 2.7, high: 0.9, engages: 2200 * RPM, shiftsAt: 0.94 * engine.governed } }
          : {}),
      },
      engine,
      rotatingInertia: one.rotatingInertia,
      ...(one.isStood
        ? { stance: { wheelbase: 1.05, centerForward: 0.42, centerHeight: 0.6, grip: one.grip } }
        : {}),
      speeds: [2, 5, 8, 11],
    };
  });

const runOf = (input: LaunchInput): Launch => must(simulateLaunch(input));
const timeTo = (launch: Launch, speed: number): number =>
  launch.times.find((mark) => mark.speed === speed)?.time ?? Number.POSITIVE_INFINITY;

test('[RIDE-6] the energy balance closes to 1e-6 of the engine work', () => {
  fc.assert(
    fc.property(launches, (input) => {
      const { energy } = runOf(input);
      const scale = energy.engineWork + Math.abs(energy.climb) + 1;
      expect(Math.abs(energy.residual) / scale).toBeLessThan(1e-6);
      expect(energy.clutchHeat).toBeGreaterThanOrEqual(0);
      expect(energy.driveLoss).toBeGreaterThanOrEqual(-1e-9 * scale);
    }),
    { numRuns: 300 },
  );
});

test('[RIDE-7] speed rises all the way, nothing is NaN, and the top is not passed', () => {
  fc.assert(
    fc.property(launches, (input) => {
      const launch = runOf(input);
      let last = -1;
      for (const point of launch.trace) {
        expect(Object.values(point).every(Number.isFinite)).toBe(true);
        expect(point.speed).toBeGreaterThanOrEqual(last - 1e-9);
        expect(point.speed).toBeLessThanOrEqual(launch.top.speed * (1 + 1e-9));
        last = point.speed;
      }
    }),
    { numRuns: 200 },
  );
});

test('[RIDE-8] times, switches and top speed do not depend on the tolerance of the steps', () => {
  fc.assert(
    fc.property(launches, (input) => {
      const fine = runOf({ ...input, tolerance: 1e-12 });
      const coarse = runOf({ ...input, tolerance: 1e-7 });
      expect(coarse.times.length).toBe(fine.times.length);
      fine.times.forEach((mark, k) => {
        // Near a top speed a step error grows into a larger one of time; 1e-4 of it is far below any stopwatch.
        expect(Math.abs(coarse.times[k]!.time - mark.time)).toBeLessThan(1e-4 * (1 + mark.time));
      });
      expect(coarse.switches.map((one) => `${one.phase} ${one.throttle}`)).toEqual(
        fine.switches.map((one) => `${one.phase} ${one.throttle}`),
      );
      expect(coarse.top).toEqual(fine.top);
    }),
    { numRuns: 100 },
  );
});

test('[RIDE-9] lighter is never slower', () => {
  fc.assert(
    fc.property(launches, between(0.6, 0.99), (input, share) => {
      // Wheel lift and grip go with acceleration, not force: compared at full throttle, uphill or level.
      const { stance: _, ...free } = input;
      const road = { ...input.road, grade: Math.max(0, input.road.grade) };
      const heavy = runOf({ ...free, road });
      const light = runOf({ ...free, road: { ...road, mass: road.mass * share } });
      expect(light.top.speed).toBeGreaterThanOrEqual(heavy.top.speed * (1 - 1e-12));
      for (const speed of [2, 5, 8, 11]) {
        expect(timeTo(light, speed)).toBeLessThanOrEqual(timeTo(heavy, speed) * (1 + 1e-7));
      }
    }),
    { numRuns: 150 },
  );
});

test('[RIDE-10] more grade is never faster', () => {
  fc.assert(
    fc.property(launches, between(0.001, 0.1), (input, more) => {
      const { stance: _, ...free } = input;
      const steep = runOf({ ...free, road: { ...input.road, grade: input.road.grade + more } });
      const gentle = runOf(free);
      expect(steep.top.speed).toBeLessThanOrEqual(gentle.top.speed * (1 + 1e-12));
      for (const speed of [2, 5, 8, 11]) {
        expect(timeTo(steep, speed)).toBeGreaterThanOrEqual(timeTo(gentle, speed) * (1 - 1e-7));
      }
    }),
    { numRuns: 150 },
  );
});

test('[RIDE-11] a taller ratio never lowers the road speed at the governor', () => {
  fc.assert(
    fc.property(launches, between(0.5, 1), (input, share) => {
      const taller = { ...input, drive: { ...input.drive, ratio: input.drive.ratio * share } };
      expect(runOf(taller).path.highest).toBeGreaterThanOrEqual(runOf(input).path.highest);
    }),
    { numRuns: 50 },
  );
});
