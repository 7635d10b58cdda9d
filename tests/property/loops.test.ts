import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  distanceToLoop,
  flatten,
  hullLoop,
  isSimpleLoop,
  type Loop,
  locatePoint,
  loopProperties,
  loopsOverlap,
  mirrorLoop,
  nearestOfLoops,
  offsetLoop,
  type Point,
  polygonLoop,
  reverseLoop,
  rotateLoop,
  segmentPoint,
  segments,
  signedArea,
  translateLoop,
} from '../../src/core/geometry/index.ts';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const point = fc.record({ x: number(-0.2, 0.2), y: number(-0.2, 0.2) });
const circles = fc.array(fc.record({ center: point, radius: number(0.002, 0.05) }), {
  minLength: 1,
  maxLength: 6,
});

/** A star-shaped outline whose edges bulge a little in or out: simple by construction. */
const star: fc.Arbitrary<Loop> = fc
  .array(fc.tuple(number(0.04, 0.1), number(-0.12, 0.12)), { minLength: 5, maxLength: 12 })
  .map((corners) =>
    corners.map(([r, bulge], k) => {
      const angle = (2 * Math.PI * k) / corners.length;
      return { x: r * Math.cos(angle), y: r * Math.sin(angle), bulge: bulge + 0 }; // no negative zero
    }),
  )
  .filter(isSimpleLoop);

/** Rounding of moments of outlines that reach 0.3 m from the axes: areas of 0.1 m² times 1e-15, with room. */
const ROUNDING = 1e-15;

describe('moving an outline', () => {
  test('turning keeps area, length and Ixx + Iyy, and turns the centroid', () => {
    fc.assert(
      fc.property(star, number(-7, 7), point, (loop, angle, center) => {
        const [p, q] = [loopProperties(loop), loopProperties(rotateLoop(loop, angle, center))];
        expect(Math.abs(p.area - q.area)).toBeLessThan(ROUNDING);
        expect(Math.abs(p.perimeter - q.perimeter)).toBeLessThan(10 * ROUNDING);
        expect(Math.abs(p.ixx + p.iyy - q.ixx - q.iyy)).toBeLessThan(ROUNDING);
        const c = Math.cos(angle);
        const s = Math.sin(angle);
        const turned = { x: center.x + c * (p.centroid.x - center.x) - s * (p.centroid.y - center.y) };
        expect(Math.abs(turned.x - q.centroid.x)).toBeLessThan(1e-13);
        // Turned axes: Ixx' = Ixx·c² + Iyy·s² − 2·Ixy·s·c, for a region turned by the angle.
        expect(Math.abs(q.ixx - (p.ixx * c * c + p.iyy * s * s + 2 * p.ixy * s * c))).toBeLessThan(ROUNDING);
      }),
      { seed: 1 },
    );
  });

  test('a mirror keeps area and turning sense, and flips Ixy', () => {
    fc.assert(
      fc.property(star, (loop) => {
        const mirrored = mirrorLoop(loop, { x: 0.01, y: 0 }, { x: 0, y: 1 });
        const [p, q] = [loopProperties(loop), loopProperties(mirrored)];
        expect(signedArea(mirrored)).toBeGreaterThan(0);
        expect(Math.abs(p.area - q.area)).toBeLessThan(ROUNDING);
        expect(Math.abs(p.ixy + q.ixy)).toBeLessThan(ROUNDING);
        expect(Math.abs(p.centroid.x + q.centroid.x - 0.02)).toBeLessThan(1e-13);
      }),
      { seed: 2 },
    );
  });

  test('walked the other way the area changes sign; twice is the same outline', () => {
    fc.assert(
      fc.property(star, (loop) => {
        expect(Math.abs(signedArea(reverseLoop(loop)) + signedArea(loop))).toBeLessThan(ROUNDING);
        expect(reverseLoop(reverseLoop(loop))).toEqual(loop);
      }),
      { seed: 3 },
    );
  });
});

test('cut in two along a chord, the areas and first moments add up', () => {
  fc.assert(
    fc.property(star, fc.nat(), (loop, pick) => {
      const n = loop.length;
      const k = 2 + (pick % (n - 3));
      const first = [...loop.slice(0, k), { ...loop[k]!, bulge: 0 }];
      const second = [{ ...loop[0]!, bulge: 0 }, ...loop.slice(k)];
      expect(Math.abs(signedArea(first) + signedArea(second) - signedArea(loop))).toBeLessThan(ROUNDING);
    }),
    { seed: 4 },
  );
});

test('flattened finely, the area comes near from either side', () => {
  fc.assert(
    fc.property(star, (loop) => {
      const exact = loopProperties(loop);
      const chords = loopProperties(polygonLoop(flatten(loop, 1e-7)));
      // At most tolerance × length.
      expect(Math.abs(exact.area - chords.area)).toBeLessThan(1e-7 * exact.perimeter);
    }),
    { seed: 5 },
  );
});

describe('hull of circles', () => {
  test('is simple and convex, holds every circle and touches it or not at all', () => {
    fc.assert(
      fc.property(circles, (given) => {
        const hull = hullLoop(given);
        expect(isSimpleLoop(hull)).toBe(true);
        for (const v of hull) expect(v.bulge).toBeGreaterThanOrEqual(0);
        for (const circle of given) {
          expect(distanceToLoop(hull, circle.center)).toBeGreaterThan(circle.radius - 1e-9);
          expect(locatePoint(hull, circle.center)).toBe('inside');
        }
        // No larger than needed: the box is the box of the circles.
        const { bounds } = loopProperties(hull);
        const wanted = Math.max(...given.map((c) => c.center.x + c.radius));
        expect(Math.abs(bounds.maxX - wanted)).toBeLessThan(1e-12);
      }),
      { seed: 6 },
    );
  });
});

describe('distances', () => {
  test('no sampled pair of points is nearer than the nearest points, and some come close', () => {
    fc.assert(
      fc.property(star, star, point, (a, b, by) => {
        const other = translateLoop(b, { x: by.x + 0.25, y: by.y });
        const nearest = nearestOfLoops(a, other);
        const sample = (loop: Loop): Point[] =>
          segments(loop).flatMap((piece) =>
            Array.from({ length: 40 }, (_, k) => segmentPoint(piece, k / 40)),
          );
        let least = Infinity;
        for (const p of sample(a)) least = Math.min(least, distanceToLoop(other, p));
        expect(nearest.distance).toBeLessThanOrEqual(least + 1e-12);
        // Samples lie at most 2 mm from the nearest point along the outline.
        expect(least - nearest.distance).toBeLessThan(2.5e-3);
        expect(
          Math.abs(
            Math.hypot(nearest.to.x - nearest.from.x, nearest.to.y - nearest.from.y) - nearest.distance,
          ),
        ).toBeLessThan(1e-12);
        if (nearest.distance > 1e-8)
          expect(loopsOverlap(a, other)).toBe(
            locatePoint(a, other[0]!) === 'inside' || locatePoint(other, a[0]!) === 'inside',
          );
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('offsets', () => {
  test('every point of an offset lies at the offset distance, on its side; refusals give a reason', () => {
    let taken = 0;
    fc.assert(
      fc.property(star, fc.oneof(number(1e-6, 0.02), number(-0.01, -1e-6)), (loop, distance) => {
        const outcome = offsetLoop(loop, distance);
        if (!outcome.ok) {
          expect(outcome.issues[0].code).toBe('conflict');
          return;
        }
        taken++;
        expect(isSimpleLoop(outcome.value)).toBe(true);
        for (const piece of segments(outcome.value)) {
          for (const t of [0.1, 0.5, 0.9]) {
            const off = distanceToLoop(loop, segmentPoint(piece, t)) - Math.abs(distance);
            expect(Math.abs(off)).toBeLessThan(2e-8); // slivers of 1e-8 m may be dropped
          }
        }
        expect(Math.sign(signedArea(outcome.value) - signedArea(loop))).toBe(Math.sign(distance));
      }),
      { seed: 8, numRuns: 300 },
    );
    // Outward offsets of these outlines are all taken unless a bay closes; most must be.
    expect(taken).toBeGreaterThan(200);
  });

  test('growing a convex outline: A + P·d + π·d², P + 2π·d (Steiner)', () => {
    fc.assert(
      fc.property(circles, number(1e-4, 0.05), (given, d) => {
        const hull = hullLoop(given);
        const p = loopProperties(hull);
        const outcome = offsetLoop(hull, d);
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
        const q = loopProperties(outcome.value);
        expect(Math.abs(q.area - (p.area + p.perimeter * d + Math.PI * d * d))).toBeLessThan(1e-9);
        expect(Math.abs(q.perimeter - (p.perimeter + 2 * Math.PI * d))).toBeLessThan(1e-7);
      }),
      { seed: 9 },
    );
  });
});
