import { describe, expect, test } from 'vitest';
import type { Loop } from './loop.ts';
import { flatten } from './loopFlatten.ts';
import {
  containsPoint,
  distanceToLoop,
  isSimpleLoop,
  locatePoint,
  loopInside,
  loopsMeet,
  loopsOverlap,
  nearestOfLoops,
} from './loopPoint.ts';
import { circleLoop, polygonLoop, rectangleLoop, slotLoop } from './loopShapes.ts';
import { translateLoop } from './loopTransform.ts';
import { distance2 } from './vec2.ts';

const O = { x: 0, y: 0 };

describe('sides of points', () => {
  test('a circle, level with its ends and its extremes', () => {
    const circle = circleLoop(O, 1);
    for (const p of [O, { x: 0.999, y: 0 }, { x: -0.999, y: 0 }, { x: 0, y: 0.999 }])
      expect(locatePoint(circle, p)).toBe('inside');
    for (const p of [
      { x: -1.001, y: 0 },
      { x: 1.001, y: 0 },
      { x: -0.5, y: 1 },
      { x: -0.5, y: -1 },
    ]) {
      expect(locatePoint(circle, p)).toBe('outside');
    }
    for (const p of [
      { x: 1, y: 0 },
      { x: 0, y: -1 },
      { x: Math.SQRT1_2, y: Math.SQRT1_2 },
    ])
      expect(locatePoint(circle, p)).toBe('edge');
  });

  test('a ray through a corner is counted once', () => {
    const kite = polygonLoop([
      { x: 0, y: -1 },
      { x: 1, y: 0 },
      { x: 0, y: 1 },
      { x: -1, y: 0 },
    ]);
    expect(containsPoint(kite, { x: -0.5, y: 0 })).toBe(true);
    expect(containsPoint(kite, { x: -1.5, y: 0 })).toBe(false);
    expect(containsPoint(kite, { x: -1.5, y: 1 })).toBe(false);
  });
});

describe('distances', () => {
  test('from a point: beside, at a corner, inside an arc, at its center', () => {
    const rectangle = rectangleLoop(O, 2, 1);
    expect(distanceToLoop(rectangle, { x: 0, y: 2 })).toBe(1.5);
    expect(distanceToLoop(rectangle, { x: 4, y: 4.5 })).toBe(5);
    expect(distanceToLoop(circleLoop(O, 3), O)).toBe(3);
    expect(distanceToLoop(circleLoop(O, 3), { x: 1, y: 0 })).toBeCloseTo(2, 15);
  });

  test('between outlines: circles, a hole in a plate, a line and an arc', () => {
    expect(nearestOfLoops(circleLoop(O, 1), circleLoop({ x: 3, y: 4 }, 2)).distance).toBeCloseTo(2, 14);
    expect(nearestOfLoops(circleLoop(O, 5), circleLoop({ x: 1, y: 0 }, 2)).distance).toBeCloseTo(2, 14);
    expect(nearestOfLoops(circleLoop(O, 5), circleLoop(O, 2)).distance).toBeCloseTo(3, 14);
    const web = nearestOfLoops(rectangleLoop(O, 10, 6), circleLoop({ x: 1, y: 1 }, 1.5));
    expect(web.distance).toBeCloseTo(0.5, 14);
    expect(web.from.x).toBeCloseTo(1, 14);
    expect(web.to.y).toBeCloseTo(2.5, 14);
    expect(
      nearestOfLoops(rectangleLoop(O, 2, 2), translateLoop(rectangleLoop(O, 2, 2), { x: 5, y: 6 })).distance,
    ).toBe(5);
  });

  test('crossing outlines are 0 apart', () => {
    expect(nearestOfLoops(circleLoop(O, 1), rectangleLoop({ x: 1, y: 0 }, 1, 1)).distance).toBe(0);
  });
});

describe('meeting and holding', () => {
  const plate = rectangleLoop(O, 10, 6);
  test('crossing, touching from outside, touching from inside, apart', () => {
    expect(loopsMeet(plate, circleLoop({ x: 5, y: 0 }, 1))).toBe(true);
    expect(loopsMeet(plate, circleLoop({ x: 6, y: 0 }, 1))).toBe(true);
    expect(loopsMeet(plate, circleLoop({ x: 4, y: 0 }, 1))).toBe(true);
    expect(loopsMeet(plate, circleLoop({ x: 3.99, y: 0 }, 1))).toBe(false);
    expect(loopsMeet(circleLoop(O, 1), circleLoop({ x: 2, y: 0 }, 1))).toBe(true);
    expect(loopsMeet(plate, translateLoop(plate, { x: 3, y: 0 }))).toBe(true); // edges that lie on each other
  });

  test('inside and overlapping', () => {
    const hole = slotLoop({ x: -1, y: 0 }, { x: 1, y: 0 }, 1);
    expect(loopInside(hole, plate)).toBe(true);
    expect(loopInside(plate, hole)).toBe(false);
    expect(loopsOverlap(plate, hole)).toBe(true);
    expect(loopsOverlap(plate, translateLoop(hole, { x: 20, y: 0 }))).toBe(false);
  });
});

describe('simple outlines', () => {
  const vertex = (x: number, y: number, bulge = 0): Loop[number] => ({ x, y, bulge });
  test.each([
    ['circle', circleLoop(O, 1), true],
    ['slot', slotLoop(O, { x: 1, y: 1 }, 0.3), true],
    ['bow tie', [vertex(0, 0), vertex(1, 1), vertex(1, 0), vertex(0, 1)], false],
    ['a spike that folds back', [vertex(0, 0), vertex(2, 0), vertex(1, 0), vertex(1, 1)], false],
    ['an arc through the opposite edge', [vertex(0, 0), vertex(4, 0), vertex(4, 1, -1), vertex(0, 1)], false],
    [
      'a corner that touches an edge',
      [vertex(0, 0), vertex(4, 0), vertex(4, 2), vertex(2, 0), vertex(0, 2)],
      false,
    ],
    ['one line there and back', [vertex(0, 0), vertex(1, 0)], false],
    ['nothing', [], false],
  ] as const)('%s', (_name, loop, simple) => {
    expect(isSimpleLoop(loop)).toBe(simple);
  });
});

test('flattening stays within its tolerance and on the arc', () => {
  for (const tolerance of [1e-3, 1e-5, 10]) {
    const points = flatten(circleLoop({ x: 1, y: 2 }, 0.5), tolerance);
    expect(points.length).toBeGreaterThanOrEqual(4);
    points.forEach((p, i) => {
      const q = points[(i + 1) % points.length]!;
      expect(distance2(p, { x: 1, y: 2 })).toBeCloseTo(0.5, 14);
      const sagitta = 0.5 - distance2({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }, { x: 1, y: 2 });
      expect(sagitta).toBeLessThanOrEqual(tolerance);
    });
  }
  expect(() => flatten(circleLoop(O, 1), 0)).toThrow(RangeError);
});
