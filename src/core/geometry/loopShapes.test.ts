import { describe, expect, test } from 'vitest';
import type { Outcome } from '../quantity/index.ts';
import { isSimpleLoop } from './loopPoint.ts';
import { loopProperties, signedArea } from './loopProperties.ts';
import { segmentHeading, segments } from './loopSegment.ts';
import {
  circleLoop,
  hullLoop,
  polygonLoop,
  rectangleLoop,
  roundedPolygonLoop,
  roundedRectangleLoop,
  slotLoop,
} from './loopShapes.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

describe('rounded corners', () => {
  test('rectangle with corners: wh − (4 − π)r²', () => {
    const loop = must(roundedRectangleLoop({ x: 1, y: 1 }, 0.1, 0.06, 0.01));
    expect(loop).toHaveLength(8);
    expect(signedArea(loop)).toBeCloseTo(0.006 - (4 - Math.PI) * 1e-4, 15);
  });

  test('corners that use up a side leave no straight piece of no length', () => {
    const stadium = must(roundedRectangleLoop({ x: 0, y: 0 }, 0.1, 0.06, 0.03));
    expect(stadium).toHaveLength(6);
    expect(signedArea(stadium)).toBeCloseTo(
      signedArea(slotLoop({ x: -0.02, y: 0 }, { x: 0.02, y: 0 }, 0.06)),
      15,
    );
    expect(isSimpleLoop(stadium)).toBe(true);
  });

  test('every arc leaves and arrives along its sides, at convex and hollow corners', () => {
    const loop = must(
      roundedPolygonLoop([
        { x: 0, y: 0, radius: 0.01 },
        { x: 0.1, y: 0.02, radius: 0.005 },
        { x: 0.05, y: 0.03, radius: 0.004 },
        { x: 0.02, y: 0.1, radius: 0.003 },
      ]),
    );
    const pieces = segments(loop);
    expect(
      pieces.filter((p) => p.kind === 'arc').map((p) => p.kind === 'arc' && Math.round(p.radius * 1e9)),
    ).toEqual([1e7, 5e6, 4e6, 3e6]);
    pieces.forEach((piece, i) => {
      const turn = segmentHeading(pieces[(i + 1) % pieces.length]!, 0) - segmentHeading(piece, 1);
      expect(Math.abs(Math.sin(turn / 2))).toBeLessThan(1e-12);
    });
    expect(signedArea(loop)).toBeGreaterThan(0);
  });

  test('a clockwise list comes out counterclockwise', () => {
    const loop = must(
      roundedPolygonLoop([
        { x: 0, y: 0 },
        { x: 0, y: 1 },
        { x: 1, y: 0, radius: 0.1 },
      ]),
    );
    expect(signedArea(loop)).toBeGreaterThan(0);
  });

  test('radii that need more than the side, a fold and doubled corners are refused with their corner', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 0.1, y: 0 },
      { x: 0.1, y: 0.1 },
      { x: 0, y: 0.1 },
    ];
    const paths = (outcome: Outcome<unknown>): string[] =>
      outcome.ok ? [] : outcome.issues.map((issue) => issue.path);
    expect(paths(roundedPolygonLoop(square.map((p) => ({ ...p, radius: 0.051 }))))).toHaveLength(4);
    expect(
      paths(
        roundedPolygonLoop([
          { x: 0, y: 0 },
          { x: 1, y: 0, radius: 0.1 },
          { x: 0.5, y: 0 },
        ]),
      ),
    ).toContain('corners[1]');
    expect(paths(roundedPolygonLoop([...square, { x: 0, y: 0.1 }]))).toContain('corners[3]');
    expect(paths(roundedPolygonLoop(square.slice(0, 2)))).toEqual(['corners']);
    expect(paths(roundedPolygonLoop(square.map((p) => ({ ...p, radius: -1 }))))).toHaveLength(4);
    expect(paths(roundedRectangleLoop({ x: 0, y: 0 }, 1, 0.5, 0.3))).toEqual(['radius']);
  });
});

describe('hull of circles', () => {
  test('two equal circles make a slot', () => {
    const hull = hullLoop([
      { center: { x: 0, y: 0 }, radius: 0.01 },
      { center: { x: 0.03, y: 0.04 }, radius: 0.01 },
    ]);
    expect(signedArea(hull)).toBeCloseTo(0.05 * 0.02 + Math.PI * 1e-4, 15);
  });

  test('two unlike circles: open belt around two pulleys', () => {
    const [R, r, d] = [0.05, 0.02, 0.1];
    const p = loopProperties(
      hullLoop([
        { center: { x: 0, y: 0 }, radius: R },
        { center: { x: d, y: 0 }, radius: r },
      ]),
    );
    const a = Math.asin((R - r) / d);
    const belt = 2 * d * Math.cos(a) + R * (Math.PI + 2 * a) + r * (Math.PI - 2 * a);
    expect(p.perimeter).toBeCloseTo(belt, 14);
    expect(p.bounds.maxX).toBeCloseTo(0.12, 15);
  });

  test('points make a polygon; what lies inside does not count', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 0.4, y: 0.3 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
    ];
    const hull = hullLoop(corners.map((center) => ({ center, radius: 0 })));
    expect(hull).toHaveLength(4);
    expect(signedArea(hull)).toBeCloseTo(1, 14);
  });

  test('a circle that holds the others is the hull; a touching one inside too', () => {
    const big = { center: { x: 0, y: 0 }, radius: 1 };
    for (const radius of [0.3, 0.5]) {
      const hull = hullLoop([{ center: { x: 0.5, y: 0 }, radius }, big]);
      expect(signedArea(hull)).toBeCloseTo(Math.PI, 13);
    }
  });

  test('circles in a row: only the ends and what sticks out', () => {
    const row = [0, 1, 2, 3].map((x) => ({ center: { x, y: 0 }, radius: 0.5 }));
    expect(signedArea(hullLoop(row))).toBeCloseTo(3 + Math.PI / 4, 13);
    expect(isSimpleLoop(hullLoop(row))).toBe(true);
  });
});

test('shapes that can not be throw', () => {
  expect(() => circleLoop({ x: 0, y: 0 }, 0)).toThrow(RangeError);
  expect(() => rectangleLoop({ x: 0, y: 0 }, 1, Number.NaN)).toThrow(RangeError);
  expect(() => slotLoop({ x: 0, y: 0 }, { x: 1, y: 0 }, -1)).toThrow(RangeError);
  expect(() => polygonLoop([{ x: 0, y: 0 }])).toThrow(RangeError);
  expect(() => hullLoop([])).toThrow(RangeError);
});

test('a slot of no length is a circle', () => {
  expect(slotLoop({ x: 1, y: 2 }, { x: 1, y: 2 }, 0.4)).toEqual(circleLoop({ x: 1, y: 2 }, 0.2));
});
