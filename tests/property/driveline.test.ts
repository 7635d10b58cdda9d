/** Laws that chain, belt and sprocket geometry must keep for any drive. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beltCenter,
  beltLength,
  centerForLinks,
  coupledDiameters,
  linksForCenter,
  pitchDiameter,
  planChainDrive,
  rollerSeats,
  type SprocketPair,
  solveTension,
  sprocketOutline,
  type TensionInput,
  toothForm,
  touchingCenter,
} from '../../src/core/driveline/index.ts';
import {
  containsPoint,
  distance2,
  isSimpleLoop,
  type LoopVertex,
  type Point,
  segments,
  signedArea,
} from '../../src/core/geometry/index.ts';
import { type Length, mm, type Outcome } from '../../src/core/quantity/index.ts';
import { chains } from '../../src/core/standards/index.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const pairs = fc.record({
  pitch: fc.constantFrom(6.35, 9.525, 12.7, 15.875, 19.05).map(mm),
  driverTeeth: fc.integer({ min: 6, max: 120 }),
  drivenTeeth: fc.integer({ min: 6, max: 120 }),
});
const gap = fc.double({ min: 0.001, max: 3, noNaN: true });
const swapped = (pair: SprocketPair): SprocketPair => ({
  ...pair,
  driverTeeth: pair.drivenTeeth,
  drivenTeeth: pair.driverTeeth,
});

describe('chain length', () => {
  test('center and links are inverse to 1e-12 m', () => {
    fc.assert(
      fc.property(pairs, gap, (pair, off) => {
        const center = (touchingCenter(pair) + off) as Length;
        const links = must(linksForCenter(pair, center));
        expect(Math.abs(must(centerForLinks(pair, links)) - center)).toBeLessThan(1e-12);
      }),
    );
  });

  test('more links want a larger center, by about half a pitch each', () => {
    fc.assert(
      fc.property(pairs, gap, fc.double({ min: 0.01, max: 20, noNaN: true }), (pair, off, more) => {
        const links = must(linksForCenter(pair, (touchingCenter(pair) + off) as Length));
        const growth = must(centerForLinks(pair, links + more)) - must(centerForLinks(pair, links));
        // A run slopes at most 65 degrees when the pitch circles touch, so the gain is below p/2/cos 65°.
        expect(growth).toBeGreaterThan(0.49 * more * pair.pitch);
        expect(growth).toBeLessThan(1.3 * more * pair.pitch);
      }),
    );
  });

  test('[DRV-8] swapped sprockets want the same center', () => {
    fc.assert(
      fc.property(pairs, gap, (pair, off) => {
        const center = (touchingCenter(pair) + off) as Length;
        expect(must(linksForCenter(swapped(pair), center))).toBeCloseTo(
          must(linksForCenter(pair, center)),
          9,
        );
      }),
    );
  });

  test('everything scales with the pitch', () => {
    fc.assert(
      fc.property(pairs, gap, (pair, off) => {
        const links = must(linksForCenter(pair, (touchingCenter(pair) + off) as Length));
        const doubled = must(centerForLinks({ ...pair, pitch: (2 * pair.pitch) as Length }, links));
        expect(Math.abs(doubled - 2 * must(centerForLinks(pair, links)))).toBeLessThan(1e-11);
      }),
    );
  });

  test('the chosen chain of a plan is a neighbor of the wanted length and even', () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0.1, max: 1, noNaN: true }), (pair, off) => {
        const plan = must(planChainDrive({ ...pair, wantedCenter: (touchingCenter(pair) + off) as Length }));
        expect(plan.chosen.links % 2).toBe(0);
        expect(Math.abs(plan.chosen.links - plan.exactLinks)).toBeLessThanOrEqual(1.01);
        expect(plan.chosen.wornCenter).toBeGreaterThan(plan.chosen.center);
      }),
    );
  });
});

test('belt length and center are inverse, and sheaves of a ratio keep the belt taut', () => {
  const sheave = fc.double({ min: 0.02, max: 0.4, noNaN: true });
  fc.assert(
    fc.property(sheave, sheave, gap, (d1, d2, off) => {
      const pair = { driverDiameter: d1 as Length, drivenDiameter: d2 as Length };
      const center = ((d1 + d2) / 2 + off) as Length;
      const length = must(beltLength(pair, center));
      expect(Math.abs(must(beltCenter(pair, length)) - center)).toBeLessThan(1e-12);
      const same = must(coupledDiameters({ length, center }, d2 / d1));
      expect(Math.abs(same.driverDiameter - d1)).toBeLessThan(1e-11);
    }),
  );
});

const sprockets = chains.flatMap((chain) =>
  [6, 7, 9, 12, 17, 60].map((teeth) => [chain.name, teeth, chain] as const),
);

describe.each(sprockets)('outline of %s, %i teeth', (_name, teeth, chain) => {
  const outline = sprocketOutline(chain, teeth);
  const nearTo = (a: Point, b: Point) => distance2(a, b) < 1e-12;

  test('is one simple counterclockwise loop', () => {
    expect(isSimpleLoop(outline)).toBe(true);
    expect(signedArea(outline)).toBeGreaterThan(0);
  });

  test('is the same after a turn by one tooth', () => {
    const angle = (2 * Math.PI) / teeth;
    const per = outline.length / teeth;
    for (const [index, vertex] of outline.entries()) {
      const next = outline[(index + per) % outline.length] as LoopVertex;
      const turned = {
        x: vertex.x * Math.cos(angle) - vertex.y * Math.sin(angle),
        y: vertex.x * Math.sin(angle) + vertex.y * Math.cos(angle),
      };
      expect(nearTo(turned, next)).toBe(true);
      expect(next.bulge).toBe(vertex.bulge);
    }
  });

  test('is its own mirror image', () => {
    for (const vertex of outline) {
      expect(outline.some((other) => nearTo(other, { x: vertex.x, y: -vertex.y }))).toBe(true);
    }
  });

  test('neighboring rollers sit exactly one pitch apart, in their seats and outside the metal', () => {
    const seats = rollerSeats(chain.pitch, teeth);
    for (const [index, seat] of seats.entries()) {
      const next = seats[(index + 1) % teeth] as Point;
      expect(Math.abs(distance2(seat, next) - chain.pitch)).toBeLessThan(1e-15);
      expect(containsPoint(outline, seat)).toBe(false);
    }
    // Rollers are smaller than the seat by the standard's clearance, 0.005 Dr + 0.003 in on the diameter.
    const clearance = (0.005 * chain.rollerDiameter + 0.003 * 0.0254) / 2;
    const bottom = Math.min(...outline.map((vertex) => Math.hypot(vertex.x, vertex.y)));
    const root = pitchDiameter(chain.pitch, teeth) / 2 - chain.rollerDiameter / 2 - clearance;
    // Seats end in vertices beside the bottom, so no vertex is nearer to the center than the bottom itself.
    expect(bottom).toBeGreaterThan(root);
  });

  test('curves meet without a corner, but for the trimmed tip', () => {
    const pieces = segments(outline);
    const form = toothForm(chain, teeth);
    const per = outline.length / teeth;
    // Headings by hand, from the bulges: chord direction ± half the sweep.
    const headings = pieces.map((_, index) => {
      const from = outline[index] as LoopVertex;
      const to = outline[(index + 1) % outline.length] as LoopVertex;
      const chord = Math.atan2(to.y - from.y, to.x - from.x);
      const half = 2 * Math.atan(from.bulge);
      return {
        start: chord - half,
        end: chord + half,
        sweep: 2 * half,
        chord: Math.hypot(to.x - from.x, to.y - from.y),
      };
    });
    for (let index = 0; index < per - 1; index += 1) {
      const [before, after] = [headings[index], headings[index + 1]];
      if (!before || !after) throw new Error('short outline');
      const corner = Math.abs(Math.sin((after.start - before.end) / 2));
      if (index + 1 === per - 1) expect(corner).toBeGreaterThan(0.1);
      else expect(corner).toBeLessThan(1e-9);
    }
    const radii = headings.map(({ chord, sweep }) => Math.abs(chord / 2 / Math.sin(sweep / 2)));
    expect(radii[0]).toBeCloseTo(form.toppingRadius, 12);
    expect(radii[2]).toBeCloseTo(form.workingRadius, 12);
    expect(radii[3]).toBeCloseTo(form.seatingRadius, 12);
    expect(headings[1]?.chord).toBeCloseTo(form.flat, 12);
  });
});

describe('coupled drives', () => {
  const trains = fc.record({
    height: fc.double({ min: -0.15, max: 0.15, noNaN: true }),
    reach: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
    tilt: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
    teeth: fc.tuple(fc.integer({ min: 9, max: 17 }), fc.integer({ min: 25, max: 72 })),
    second: fc.tuple(fc.integer({ min: 9, max: 17 }), fc.integer({ min: 9, max: 30 })),
  });
  const trainOf = (
    given: typeof trains extends fc.Arbitrary<infer T> ? T : never,
    mirror: 1 | -1,
  ): TensionInput => ({
    shafts: [
      {
        id: 'axle',
        position: { x: 0, z: 0.3 },
        slide: { direction: { x: -mirror * Math.cos(given.tilt), z: Math.sin(given.tilt) } },
      },
      { id: 'counter', position: { x: mirror * given.reach, z: 0.3 + given.height } },
      {
        id: 'engine',
        position: { x: mirror * (given.reach + 0.25), z: 0.35 + given.height },
        slide: { direction: { x: mirror, z: 0 } },
      },
    ],
    drives: [
      {
        kind: 'chain',
        id: 'primary',
        from: 'engine',
        to: 'counter',
        pitch: mm(9.525),
        fromTeeth: given.second[0],
        toTeeth: given.second[1],
      },
      {
        kind: 'chain',
        id: 'final',
        from: 'counter',
        to: 'axle',
        pitch: mm(12.7),
        fromTeeth: given.teeth[0],
        toTeeth: given.teeth[1],
      },
    ],
  });

  test('[DRV-1] every drive that is set stands at exactly the center its links want', () => {
    fc.assert(
      fc.property(trains, (given) => {
        const input = trainOf(given, 1);
        const solution = must(solveTension(input));
        expect(solution.problems).toEqual([]);
        const at = new Map(solution.shafts.map((shaft) => [shaft.id, shaft.fresh]));
        for (const run of input.drives) {
          const [a, b] = [at.get(run.from), at.get(run.to)];
          const set = solution.drives.find((drive) => drive.id === run.id);
          if (!a || !b || !set?.chosen || run.kind !== 'chain') throw new Error('not set');
          const apart = Math.hypot(a.x - b.x, a.z - b.z) as Length;
          const pair = { pitch: run.pitch, driverTeeth: run.fromTeeth, drivenTeeth: run.toTeeth };
          expect(Math.abs(must(linksForCenter(pair, apart)) - (set.chosen.links ?? 0))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('[DRV-8] a mirrored bike takes the same links and slides', () => {
    fc.assert(
      fc.property(trains, (given) => {
        const [one, other] = ([1, -1] as const).map((mirror) => must(solveTension(trainOf(given, mirror))));
        for (const [index, drive] of (one?.drives ?? []).entries()) {
          const twin = other?.drives[index];
          expect(twin?.chosen?.links).toBe(drive.chosen?.links);
          expect(twin?.chosen?.slide?.worn).toBeCloseTo(drive.chosen?.slide?.worn ?? Number.NaN, 11);
          expect(twin?.slotNeeded?.total).toBeCloseTo(drive.slotNeeded?.total ?? Number.NaN, 11);
        }
      }),
    );
  });
});
