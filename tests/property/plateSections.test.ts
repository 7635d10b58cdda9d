/** What must hold for every plate and every load in balance. Seeded; tolerances are rounding against the loads. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { circleLoop, hullLoop, type Loop, type Point, slotLoop } from '../../src/core/geometry/index.ts';
import {
  cutPlate,
  type FlatPlate,
  heldBy,
  loadedCut,
  type PlateLoads,
  unbalance,
  worstCut,
} from '../../src/core/strength/index.ts';

const RUNS = { numRuns: 40, seed: 20240923 };
const ROUNDING = 1e-8;
const ALLOWED = { plain: 1, welded: 1 };

interface Sample {
  readonly plate: FlatPlate;
  readonly spots: readonly Point[];
  readonly loads: PlateLoads;
}

const millimeters = (min: number, max: number) => fc.integer({ min, max }).map((v) => v / 1000);

/** A hull of three discs with a hole in each, a slot in the first; loads at two of them, held at the third. */
const sampleArbitrary: fc.Arbitrary<Sample> = fc
  .record({
    radii: fc.tuple(millimeters(15, 30), millimeters(15, 30), millimeters(15, 30)),
    b: fc.record({ x: millimeters(60, 120), y: millimeters(-20, 20) }),
    c: fc.record({ x: millimeters(-20, 50), y: millimeters(60, 110) }),
    slot: millimeters(0, 12),
    thickness: millimeters(3, 8),
    forces: fc.array(fc.integer({ min: -2000, max: 2000 }), { minLength: 8, maxLength: 8 }),
  })
  .map(({ radii, b, c, slot, thickness, forces: f }) => {
    const a = { x: 0, y: 0 };
    const spots = [a, b, c];
    const outline = hullLoop(spots.map((center, i) => ({ center, radius: radii[i]! })));
    const openings: Loop[] = [
      slot > 0 ? slotLoop(a, { x: slot, y: 0 }, 0.011) : circleLoop(a, 0.0055),
      circleLoop(b, 0.005),
      circleLoop(c, 0.006),
    ];
    const acts: PlateLoads = {
      points: [
        {
          at: a,
          force: { x: f[0]!, y: f[1]!, z: f[2]! / 10 },
          moment: { x: f[3]! / 200, y: 0, z: f[4]! / 50 },
        },
        { at: b, force: { x: f[5]!, y: f[6]!, z: f[7]! / 10 } },
      ],
      lines: [],
    };
    const held = heldBy(acts, [{ by: 'point', at: c }], 0.003);
    return {
      plate: { outline, openings, thickness },
      spots,
      loads: { points: [...acts.points, ...held.points], lines: [] },
    };
  });

const mapPoints = (
  loads: PlateLoads,
  by: (p: PlateLoads['points'][number]) => PlateLoads['points'][number],
) => ({
  points: loads.points.map(by),
  lines: [],
});

test('held loads are in balance, and both sides of every cut find the same stress', () => {
  fc.assert(
    fc.property(sampleArbitrary, ({ plate, spots, loads }) => {
      expect(unbalance(loads, { x: 0, y: 0 }, 0.1)).toBeLessThan(ROUNDING);
      const cut = cutPlate(plate, { spots });
      const scale = worstCut(cut, loads, ALLOWED)!.stress.equivalent;
      for (const section of cut.sections) {
        const { line } = section;
        // Seen from the other side: the same line with its normal turned round, the ends and places along it likewise.
        const other = {
          ...section,
          line: { angle: line.angle + Math.PI, nx: -line.nx, ny: -line.ny, offset: -line.offset },
          ligaments: section.ligaments.map((one) => ({ ...one, from: -one.to, to: -one.from })).reverse(),
          ends: [section.ends[1], section.ends[0]] as const,
          ...(section.walk ? { walk: [section.walk[1], section.walk[0]] as const } : {}),
        };
        const [here, there] = [loadedCut(cut, section, loads), loadedCut(cut, other, loads)];
        expect(Math.abs(here.stress.equivalent - there.stress.equivalent)).toBeLessThan(ROUNDING * scale);
      }
    }),
    RUNS,
  );
});

test('twice the load is twice the stress, none is none', () => {
  fc.assert(
    fc.property(sampleArbitrary, ({ plate, spots, loads }) => {
      const cut = cutPlate(plate, { spots });
      const twice = { points: [...loads.points, ...loads.points], lines: [] };
      const [one, two] = [loads, twice].map((of) => worstCut(cut, of, ALLOWED)!.stress.equivalent);
      expect(two! / one!).toBeCloseTo(2, 8);
      expect(worstCut(cut, { points: [], lines: [] }, ALLOWED)!.stress.equivalent).toBe(0);
    }),
    RUNS,
  );
});

test('a plate seen in a mirror, its loads with it, shows the same worst stress', () => {
  fc.assert(
    fc.property(sampleArbitrary, ({ plate, spots, loads }) => {
      const flip = ({ x, y }: Point): Point => ({ x: -x, y });
      const mirrored = (loop: Loop): Loop => loop.map((v, i) => ({ ...flip(v), bulge: -loop[i]!.bulge }));
      // Moments are axial: in a mirror across x those about y and z turn round.
      const other = mapPoints(loads, ({ at, force, moment }) => ({
        at: flip(at),
        force: { ...force, x: -force.x },
        ...(moment ? { moment: { x: moment.x, y: -moment.y, z: -moment.z } } : {}),
      }));
      const a = worstCut(cutPlate(plate, { spots }), loads, ALLOWED)!;
      const b = worstCut(
        cutPlate(
          { ...plate, outline: mirrored(plate.outline), openings: plate.openings.map(mirrored) },
          { spots: spots.map(flip) },
        ),
        other,
        ALLOWED,
      )!;
      expect(b.stress.equivalent / a.stress.equivalent).toBeCloseTo(1, 7);
    }),
    RUNS,
  );
});

test('a plate turned by a step of the sweep shows the same; by any angle nearly the same', () => {
  fc.assert(
    fc.property(sampleArbitrary, fc.integer({ min: 0, max: 23 }), ({ plate, spots, loads }, steps) => {
      const turnedBy = (angle: number): number => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const turn = <P extends Point>(p: P): P => ({ ...p, x: c * p.x - s * p.y, y: s * p.x + c * p.y });
        const of = mapPoints(loads, ({ at, force, moment }) => ({
          at: turn(at),
          force: turn(force),
          ...(moment ? { moment: turn(moment) } : {}),
        }));
        const turned = {
          ...plate,
          outline: plate.outline.map(turn),
          openings: plate.openings.map((loop) => loop.map(turn)),
        };
        return worstCut(cutPlate(turned, { spots: spots.map(turn) }), of, ALLOWED)!.stress.equivalent;
      };
      const still = turnedBy(0);
      // Rounding may tip which of two equal cuts is turned further: some thousandths then.
      expect(Math.abs(turnedBy((steps * Math.PI) / 12) / still - 1)).toBeLessThan(5e-3);
      // Between two directions of the sweep a maximum is found by turning on; a second one elsewhere may be missed.
      const between = turnedBy((steps * Math.PI) / 12 + Math.PI / 24) / still;
      expect(between).toBeGreaterThan(0.93);
      expect(between).toBeLessThan(1.07);
    }),
    RUNS,
  );
});

test('a thicker plate is never stressed more', () => {
  fc.assert(
    fc.property(sampleArbitrary, ({ plate, spots, loads }) => {
      const [thin, thick] = [1, 1.25].map(
        (by) =>
          worstCut(cutPlate({ ...plate, thickness: plate.thickness * by }, { spots }), loads, ALLOWED)!.stress
            .equivalent,
      );
      expect(thick!).toBeLessThanOrEqual(thin! * (1 + ROUNDING));
    }),
    RUNS,
  );
});
