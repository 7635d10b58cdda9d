/** What must hold for every shaft with one bearing out of line, and for hubs and chains. Seeded; tolerances are rounding. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AngularSpeed, type Force, inches, mm, newtons, rpm } from '../../src/core/quantity/index.ts';
import { jointPressureLimit } from '../../src/core/standards/index.ts';
import { misalignmentOf } from '../../src/core/strength/bike/checks/drive/misalignment.ts';
import { type HubForces, hubForces } from '../../src/core/strength/bike/checks/hubForces.ts';
import { rideLoad } from '../../src/core/strength/bike/checks/rideLoad.ts';
import type { LoadCase } from '../../src/core/strength/bike/loads/caseTypes.ts';
import type { DriveShaftModel } from '../../src/core/strength/bike/loads/shaftModel.ts';
import type { BikeFrame } from '../../src/core/strength/bike/model/frameTypes.ts';
import { clampForce } from '../../src/core/strength/chain/beltTension.ts';
import { gallingSpeed } from '../../src/core/strength/chain/chainRating.ts';

const RUNS = { numRuns: 80, seed: 20250211 };

const model = (places: readonly number[], diameter: number, stiffness?: number): DriveShaftModel =>
  ({
    id: 'countershaft',
    diameter,
    bearings: places.map((y) => ({ item: `bearing-${y}`, y, node: '' })),
    shaft: {
      segments: [{ from: Math.min(...places) - 0.05, to: Math.max(...places) + 0.05, diameter }],
      supports: places.map((at) => ({ at, ...(stiffness === undefined ? {} : { stiffness }) })),
      loads: [],
      elasticModulus: 205e9,
      shearModulus: 80e9,
    },
  }) as unknown as DriveShaftModel;

const placesArbitrary = fc
  .uniqueArray(fc.integer({ min: 0, max: 12 }), { minLength: 3, maxLength: 5 })
  .map((places) => places.map((place) => place * 0.03));

describe('one bearing out of line', () => {
  test('twice the diameter is sixteen times the reaction and twice the stress', () => {
    fc.assert(
      fc.property(placesArbitrary, fc.integer({ min: 12, max: 30 }), (places, diameter) => {
        const [thin, thick] = [1, 2].map((k) => misalignmentOf(model(places, (k * diameter) / 1000))!);
        expect(thick!.reaction / thin!.reaction / 16).toBeCloseTo(1, 8);
        expect(thick!.stress / thin!.stress / 2).toBeCloseTo(1, 8);
      }),
      RUNS,
    );
  });

  test('the same shaft seen from its other end feels the same', () => {
    fc.assert(
      fc.property(placesArbitrary, (places) => {
        const mirrored = misalignmentOf(
          model(
            places.map((y) => -y),
            0.02,
          ),
        )!;
        expect(mirrored.reaction / misalignmentOf(model(places, 0.02))!.reaction).toBeCloseTo(1, 8);
      }),
      RUNS,
    );
  });

  test('softer seats never take more', () => {
    fc.assert(
      fc.property(placesArbitrary, fc.integer({ min: 5, max: 9 }), (places, power) => {
        const [stiff, soft] = [10 ** power * 3, 10 ** power].map(
          (k) => misalignmentOf(model(places, 0.02, k))!.reaction,
        );
        expect(soft!).toBeLessThanOrEqual(stiff! * (1 + 1e-9));
      }),
      RUNS,
    );
  });
});

describe('bearings inside a hub', () => {
  const force = fc.record({
    x: fc.integer({ min: -5000, max: 5000 }),
    y: fc.integer({ min: -3000, max: 3000 }),
    z: fc.integer({ min: -5000, max: 5000 }),
  });

  test('carry the same force and moment as the faces, and no less where the faces push against each other', () => {
    fc.assert(
      fc.property(
        force,
        force,
        fc.integer({ min: 40, max: 160 }),
        fc.integer({ min: 0, max: 9 }),
        (l, r, width, inset) => {
          const half = width / 2000;
          const frame = {
            wheels: { front: { hub: ['l', 'r'], hubY: [half, -half] } },
          } as unknown as BikeFrame;
          const one = {
            balanced: { loads: { nodes: [{ node: 'l', force: l }, { node: 'r', force: r }, { node: 'r' }] } },
          } as unknown as LoadCase;
          const { radial, axial } = hubForces({ frame, wheel: 'front', one, inset: inset / 1000 });
          const arm = half - inset / 1000;
          for (const [k, axis] of (['x', 'z'] as const).entries()) {
            expect(radial[0][k]! + radial[1][k]!).toBeCloseTo(l[axis] + r[axis], 6);
            expect((radial[0][k]! - radial[1][k]!) * arm).toBeCloseTo((l[axis] - r[axis]) * half, 6);
          }
          expect(axial).toBe(l.y + r.y);
        },
      ),
      RUNS,
    );
  });
});

describe('chains and belts', () => {
  test('a joint is never allowed more at a higher speed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 2700 }),
        fc.integer({ min: 1, max: 100 }),
        fc.constantFrom(12.7, 15.875, 19.05),
        (speed, more, pitch) => {
          const at = (n: number) => jointPressureLimit(mm(pitch), rpm(n), 15)?.pressure ?? 0;
          expect(at(speed + more)).toBeLessThanOrEqual(at(speed));
        },
      ),
      RUNS,
    );
  });

  test('galling is a speed above zero that falls with pull', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 9, max: 30 }),
        fc.integer({ min: 0, max: 8000 }),
        fc.constantFrom(0.25, 0.375, 0.5, 0.625, 0.75),
        (teeth, pull, pitch) => {
          const at = (tension: number): AngularSpeed => gallingSpeed(inches(pitch), teeth, newtons(tension));
          expect(at(pull)).toBeGreaterThan(0);
          expect(at(pull + 100)).toBeLessThan(at(pull));
        },
      ),
      RUNS,
    );
  });

  test('a clamp grows with the pull and falls with friction', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 10, max: 60 }), (pull, hundredths) => {
        const at = (force: number, friction: number) => clampForce(force as Force, friction, 0.45 as never);
        expect(at(2 * pull, hundredths / 100) / at(pull, hundredths / 100)).toBeCloseTo(2, 9);
        expect(at(pull, hundredths / 100 + 0.01)).toBeLessThan(at(pull, hundredths / 100));
      }),
      RUNS,
    );
  });
});

describe('mean load of a ride', () => {
  const at = (x: number, z: number, axial: number): HubForces => ({
    radial: [
      [x, z],
      [x, z],
    ],
    axial,
  });
  const rating = { dynamicRating: newtons(10_000), staticRating: newtons(5000), f0: 13 };
  const share = fc.integer({ min: 1, max: 10 }).map((tenths) => tenths / 10);

  test('lies between the least and the largest load of it, whatever spectrum and duty', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 3000 }),
        fc.integer({ min: 100, max: 9000 }),
        fc.integer({ min: 0, max: 400 }),
        fc.array(fc.record({ time: share, torque: share, speed: share }), { minLength: 1, maxLength: 4 }),
        (rest, bump, perKilometer, duty) => {
          const forces = new Map([
            ['seated', at(0, rest, 0)],
            ['bump-rear', at(0, rest + bump, 0)],
          ]);
          const spectrum = [{ case: 'bump-rear' as const, scale: 1, perKilometer }];
          const load = rideLoad({ settings: { duty, spectrum }, turn: 1.2, forces, side: 0, rating });
          expect(load).toBeGreaterThanOrEqual(rest * (1 - 1e-9));
          expect(load).toBeLessThanOrEqual((rest + bump) * (1 + 1e-9));
        },
      ),
      RUNS,
    );
  });

  test('by hand: 100 bumps a kilometer of a turn of 1 m, three times the load: ∛(0.9 + 0.1·27)', () => {
    const forces = new Map([
      ['seated', at(0, 500, 0)],
      ['bump-rear', at(0, 1500, 0)],
    ]);
    const settings = {
      duty: [{ time: 1, torque: 0.5, speed: 1 }],
      spectrum: [{ case: 'bump-rear' as const, scale: 1, perKilometer: 100 }],
    };
    expect(rideLoad({ settings, turn: 1, forces, side: 1, rating }) / 500).toBeCloseTo(
      Math.cbrt(0.9 + 2.7),
      9,
    );
  });

  test('a duty that never moves leaves plain riding, not a division by nothing', () => {
    const settings = { duty: [{ time: 1, torque: 1, speed: 0 }], spectrum: [] };
    const forces = new Map([['seated', at(300, 400, 0)]]);
    expect(rideLoad({ settings, turn: 1, forces, side: 0, rating })).toBeCloseTo(500, 9);
  });
});
