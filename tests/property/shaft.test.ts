/** What must hold for every shaft, whatever its steps, bearings and loads. Seeded; tolerances are rounding against the loads. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Force, Length, Pressure, Stiffness, Torque } from '../../src/core/quantity/index.ts';
import {
  type Shaft,
  type ShaftLoad,
  type ShaftSolution,
  type ShaftSupport,
  shaftStateAt,
  solveShaft,
} from '../../src/core/strength/index.ts';

const RUNS = { numRuns: 60, seed: 20240611 };
/** Rounding against the largest number of an answer. */
const ROUNDING = 1e-9;

const loadArbitrary: fc.Arbitrary<ShaftLoad> = fc
  .record({
    at: fc.integer({ min: 0, max: 400 }),
    force: fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 })),
    moment: fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })),
    torque: fc.integer({ min: -60, max: 60 }),
  })
  .map(({ at, force, moment, torque }) => ({
    at: (at / 1000) as Length,
    force: force as unknown as readonly [Force, Force],
    moment: moment as unknown as readonly [Torque, Torque],
    torque: torque as Torque,
  }));

const supportArbitrary = fc
  .uniqueArray(fc.integer({ min: 0, max: 10 }), { minLength: 2, maxLength: 5 })
  .chain((places) =>
    fc.tuple(
      ...places.map((place) =>
        fc
          .record({
            stiffness: fc.option(fc.integer({ min: 1e6, max: 1e9 }), { nil: undefined }),
            offset: fc.integer({ min: -50, max: 50 }),
          })
          .map(
            ({ stiffness, offset }): ShaftSupport => ({
              at: (place * 0.04) as Length,
              offset: [(offset / 1e6) as Length, (-offset / 2e6) as Length],
              ...(stiffness === undefined ? {} : { stiffness: stiffness as Stiffness }),
            }),
          ),
      ),
    ),
  );

const shaftArbitrary: fc.Arbitrary<Shaft> = fc
  .record({
    diameters: fc.array(fc.integer({ min: 12, max: 40 }), { minLength: 1, maxLength: 4 }),
    bore: fc.integer({ min: 0, max: 8 }),
    supports: supportArbitrary,
    loads: fc.array(loadArbitrary, { minLength: 1, maxLength: 4 }),
    q: fc.tuple(fc.integer({ min: -4000, max: 4000 }), fc.integer({ min: -4000, max: 4000 })),
    shear: fc.boolean(),
  })
  .map(({ diameters, bore, supports, loads, q, shear }) => ({
    segments: diameters.map((d, i) => ({
      from: ((0.4 * i) / diameters.length) as Length,
      to: ((0.4 * (i + 1)) / diameters.length) as Length,
      diameter: (d / 1000) as Length,
      bore: (bore / 1000) as Length,
    })),
    supports,
    loads,
    distributed: [
      { from: 0.05 as Length, to: 0.33 as Length, q: q as unknown as readonly [Stiffness, Stiffness] },
    ],
    elasticModulus: 207e9 as Pressure,
    shearModulus: 79.3e9 as Pressure,
    shearDeflection: shear,
  }));

function solved(shaft: Shaft): ShaftSolution {
  const outcome = solveShaft(shaft);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

/** All numbers that a person reads off. */
const numbers = (solution: ShaftSolution): number[] =>
  solution.supports.flatMap(({ force, slopes }) => [...force, ...slopes.map((slope) => slope * 1e6)]);

function expectClose(found: readonly number[], wanted: readonly number[]): void {
  const scale = Math.max(1, ...wanted.map(Math.abs));
  expect(found).toHaveLength(wanted.length);
  found.forEach((value, i) => {
    expect(Math.abs(value - wanted[i]!) / scale).toBeLessThan(ROUNDING);
  });
}

const scaled = (shaft: Shaft, by: number, withOffsets = true): Shaft => ({
  ...shaft,
  supports: shaft.supports.map(({ offset, ...rest }) => ({
    ...rest,
    ...(withOffsets && offset
      ? { offset: offset.map((o) => o * by) as unknown as readonly [Length, Length] }
      : {}),
  })),
  loads: shaft.loads.map((load) => ({
    at: load.at,
    force: load.force!.map((f) => f * by) as unknown as readonly [Force, Force],
    moment: load.moment!.map((m) => m * by) as unknown as readonly [Torque, Torque],
  })),
  distributed: shaft.distributed!.map((load) => ({
    ...load,
    q: load.q.map((q) => q * by) as unknown as readonly [Stiffness, Stiffness],
  })),
});

describe('every shaft', () => {
  test('reactions and loads balance in force and moment, in both planes', () => {
    fc.assert(
      fc.property(shaftArbitrary, (shaft) => {
        const { supports } = solved(shaft);
        for (const plane of [0, 1] as const) {
          const forces = [
            ...supports.map(({ at, force }) => [at, force[plane]] as const),
            ...shaft.loads.map(({ at, force }) => [at, force![plane]] as const),
            ...shaft.distributed!.map(
              ({ from, to, q }) => [(from + to) / 2, q[plane] * (to - from)] as const,
            ),
          ];
          const couples = shaft.loads.reduce(
            (sum, { moment }) => sum + (plane === 0 ? moment![1] : -moment![0]),
            0,
          );
          const scale = forces.reduce((sum, [, f]) => sum + Math.abs(f), 1);
          const force = forces.reduce((sum, [, f]) => sum + f, 0);
          const moment = forces.reduce((sum, [x, f]) => sum + x * f, couples);
          expect(Math.abs(force) / scale).toBeLessThan(ROUNDING);
          expect(Math.abs(moment) / scale).toBeLessThan(ROUNDING);
        }
      }),
      RUNS,
    );
  });

  test('loads and offsets add up, and doubling all doubles all', () => {
    fc.assert(
      fc.property(shaftArbitrary, (shaft) => {
        const whole = numbers(solved(scaled(shaft, 1)));
        expectClose(
          numbers(solved(scaled(shaft, 2))),
          whole.map((v) => 2 * v),
        );
        const loads = numbers(solved(scaled(shaft, 1, false)));
        const offsets = numbers(solved({ ...shaft, loads: [], distributed: [] }));
        expectClose(
          loads.map((v, i) => v + offsets[i]!),
          whole,
        );
      }),
      RUNS,
    );
  });

  test('turned about its axis it answers turned', () => {
    fc.assert(
      fc.property(shaftArbitrary, fc.double({ min: -3, max: 3, noNaN: true }), (shaft, angle) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const turn = <T extends number>([y, z]: readonly [T, T]) =>
          [c * y - s * z, s * y + c * z] as unknown as readonly [T, T];
        const turned: Shaft = {
          ...shaft,
          supports: shaft.supports.map((one) => ({ ...one, offset: turn(one.offset!) })),
          loads: shaft.loads.map((load) => ({
            ...load,
            force: turn(load.force!),
            moment: turn(load.moment!),
          })),
          distributed: shaft.distributed!.map((load) => ({ ...load, q: turn(load.q) })),
        };
        const [a, b] = [solved(shaft), solved(turned)];
        expectClose(
          b.supports.flatMap(({ force }) => [...force]),
          a.supports.flatMap(({ force }) => [...turn(force)]),
        );
        expectClose([b.maxMoment.value], [a.maxMoment.value]);
        expectClose([b.maxDeflection.value * 1000000.0], [a.maxDeflection.value * 1000000.0]);
      }),
      RUNS,
    );
  });

  test('reversed end for end it answers mirrored', () => {
    fc.assert(
      fc.property(shaftArbitrary, (shaft) => {
        const back = (x: number): Length => (0.4 - x) as Length;
        const mirrored: Shaft = {
          ...shaft,
          segments: shaft.segments.map((one) => ({ ...one, from: back(one.to), to: back(one.from) })),
          supports: shaft.supports.map((one) => ({ ...one, at: back(one.at) })),
          loads: shaft.loads.map((load) => ({
            ...load,
            at: back(load.at),
            moment: load.moment!.map((m) => -m) as unknown as readonly [Torque, Torque],
          })),
          distributed: shaft.distributed!.map((load) => ({
            ...load,
            from: back(load.to),
            to: back(load.from),
          })),
        };
        const [a, b] = [solved(shaft), solved(mirrored)];
        const forward = a.supports.flatMap(({ force, slope }) => [...force, slope * 1e6]);
        expectClose(
          b.supports.flatMap(({ force, slope }) => [...force, slope * 1e6]),
          forward,
        );
        expectClose([b.maxMoment.value], [a.maxMoment.value]);
      }),
      RUNS,
    );
  });

  test('more stations change nothing, and no place has more than the largest', () => {
    fc.assert(
      fc.property(shaftArbitrary, (shaft) => {
        const finer: Shaft = {
          ...shaft,
          loads: [
            ...shaft.loads,
            ...Array.from({ length: 24 }, (_, i) => ({ at: (0.0161 * (i + 1)) as Length })),
          ],
        };
        const [a, b] = [solved(shaft), solved(finer)];
        expectClose(numbers(b), numbers(a));
        expectClose([b.maxMoment.value], [a.maxMoment.value]);
        for (let x = 0; x <= 0.4; x += 0.0037) {
          const { moment, deflection } = shaftStateAt(shaft, a, x);
          expect(Math.hypot(...moment)).toBeLessThanOrEqual(a.maxMoment.value * (1 + 1e-9) + 1e-12);
          expect(Math.hypot(...deflection)).toBeLessThanOrEqual(a.maxDeflection.value * (1 + 1e-9) + 1e-15);
        }
      }),
      RUNS,
    );
  });

  test('one more bearing on the line makes it stiffer: the loads do less work', () => {
    fc.assert(
      fc.property(shaftArbitrary, fc.integer({ min: 0, max: 9 }), (shaft, place) => {
        const plain: Shaft = {
          ...shaft,
          supports: shaft.supports.map(({ offset: _, ...rest }) => rest),
          loads: shaft.loads.map(({ at, force }) => ({ at, force: force! })),
          distributed: [],
        };
        const more: Shaft = {
          ...plain,
          supports: [...plain.supports, { at: (0.04 * place + 0.021) as Length }],
        };
        const work = (one: Shaft): number => {
          const solution = solved(one);
          return one.loads.reduce((sum, { at, force }) => {
            const { deflection } = shaftStateAt(one, solution, at);
            return sum + force![0] * deflection[0] + force![1] * deflection[1];
          }, 0);
        };
        const before = work(plain);
        expect(before).toBeGreaterThanOrEqual(0);
        expect(work(more)).toBeLessThanOrEqual(before * (1 + 1e-9) + 1e-15);
      }),
      RUNS,
    );
  });
});
