import { describe, expect, test } from 'vitest';
import type { Outcome } from '../quantity/index.ts';
import type { Loop } from './loop.ts';
import { offsetLoop } from './loopOffset.ts';
import { loopProperties, signedArea } from './loopProperties.ts';
import { segments } from './loopSegment.ts';
import { circleLoop, polygonLoop, rectangleLoop, roundedPolygonLoop, slotLoop } from './loopShapes.ts';
import { reverseLoop } from './loopTransform.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const radii = (loop: Loop): number[] => segments(loop).flatMap((p) => (p.kind === 'arc' ? [p.radius] : []));

describe('known offsets', () => {
  test('circle', () => {
    for (const d of [0.005, -0.005]) {
      const loop = must(offsetLoop(circleLoop({ x: 1, y: 2 }, 0.02), d));
      expect(loop).toHaveLength(2);
      for (const r of radii(loop)) expect(r).toBeCloseTo(0.02 + d, 15);
    }
  });

  test('rectangle outward: A + P·d + πd², corners become arcs; inward: (w − 2d)(h − 2d), corners stay', () => {
    const rectangle = rectangleLoop({ x: 0, y: 0 }, 0.1, 0.06);
    const out = must(offsetLoop(rectangle, 0.004));
    expect(signedArea(out)).toBeCloseTo(0.006 + 0.32 * 0.004 + Math.PI * 0.004 ** 2, 15);
    expect(out).toHaveLength(8);
    const inward = must(offsetLoop(rectangle, -0.004));
    expect(inward).toHaveLength(4);
    expect(signedArea(inward)).toBeCloseTo(0.092 * 0.052, 15);
  });

  test('slot stays a slot', () => {
    for (const d of [0.002, -0.002]) {
      const loop = must(offsetLoop(slotLoop({ x: 0, y: 0 }, { x: 0.05, y: 0.01 }, 0.012), d));
      expect(loop).toHaveLength(4);
      const wanted = slotLoop({ x: 0, y: 0 }, { x: 0.05, y: 0.01 }, 0.012 + 2 * d);
      expect(signedArea(loop)).toBeCloseTo(signedArea(wanted), 15);
    }
  });

  test('the direction of walking does not matter', () => {
    const loop = rectangleLoop({ x: 0, y: 0 }, 0.1, 0.06);
    expect(signedArea(must(offsetLoop(reverseLoop(loop), 0.01)))).toBeCloseTo(
      signedArea(must(offsetLoop(loop, 0.01))),
      15,
    );
  });

  test('corner arcs smaller than an inward offset vanish into sharp corners', () => {
    const rounded = must(
      roundedPolygonLoop([
        { x: 0, y: 0, radius: 0.005 },
        { x: 0.1, y: 0, radius: 0.005 },
        { x: 0.1, y: 0.06, radius: 0.02 },
        { x: 0, y: 0.06, radius: 0.005 },
      ]),
    );
    const loop = must(offsetLoop(rounded, -0.01));
    expect(radii(loop).map((r) => Math.round(r * 1e9))).toEqual([1e7]);
    expect(signedArea(loop)).toBeCloseTo(0.08 * 0.04 - (1 - Math.PI / 4) * 1e-4, 12);
  });

  test('a short edge that the offset uses up is gone', () => {
    const chamfered = polygonLoop([
      { x: 0, y: 0 },
      { x: 0.099, y: 0 },
      { x: 0.1, y: 0.001 },
      { x: 0.1, y: 0.06 },
      { x: 0, y: 0.06 },
    ]);
    expect(must(offsetLoop(chamfered, -0.01))).toHaveLength(4);
  });

  test('zero gives the outline itself, counterclockwise', () => {
    const loop = rectangleLoop({ x: 0, y: 0 }, 1, 1);
    expect(must(offsetLoop(loop, 0))).toEqual(loop);
  });
});

// A rise of 0.1 µm over 65 mm: the arc's center is 4.8 km off, and closed forms lose the crossing.
test('an arc that is almost a line is crossed where it should be', () => {
  const outline: Loop = [
    { x: 0.0722, y: 0, bulge: 0.11 },
    { x: 0.0671, y: 0.0671, bulge: -0.029 },
    { x: -0.0833, y: 0, bulge: 3.35e-6 },
    { x: -0.0607, y: -0.0607, bulge: -0.00136 },
    { x: 0, y: -0.0863, bulge: 0 },
  ];
  expect(segments(must(offsetLoop(outline, -0.008)))).toHaveLength(5);
});

test('out and back in returns the area of an outline without sharp corners', () => {
  const rounded = must(
    roundedPolygonLoop([
      { x: 0, y: 0, radius: 0.008 },
      { x: 0.1, y: 0, radius: 0.012 },
      { x: 0.06, y: 0.03, radius: 0.02 },
      { x: 0.02, y: 0.1, radius: 0.008 },
    ]),
  );
  const back = must(offsetLoop(must(offsetLoop(rounded, 0.003)), -0.003));
  expect(Math.abs(loopProperties(back).area - loopProperties(rounded).area)).toBeLessThan(1e-12);
});

describe('offsets that can not be', () => {
  const reasons = (outcome: Outcome<unknown>): string =>
    outcome.ok
      ? 'taken'
      : outcome.issues.map((issue) => (issue.code === 'conflict' ? issue.reason : issue.code)).join();

  test('nothing left', () => {
    expect(reasons(offsetLoop(circleLoop({ x: 0, y: 0 }, 0.01), -0.01))).toMatch('nothing is left');
    expect(reasons(offsetLoop(circleLoop({ x: 0, y: 0 }, 0.01), -0.03))).toMatch('nothing is left');
    expect(reasons(offsetLoop(rectangleLoop({ x: 0, y: 0 }, 0.1, 0.06), -0.031))).toMatch('nothing is left');
    expect(reasons(offsetLoop(rectangleLoop({ x: 0, y: 0 }, 0.1, 0.06), -0.03))).not.toBe('taken');
  });

  test('a waist narrower than twice the offset falls apart', () => {
    const waist = polygonLoop([
      { x: 0, y: 0 },
      { x: 0.1, y: 0 },
      { x: 0.1, y: 0.05 },
      { x: 0.06, y: 0.05 },
      { x: 0.06, y: 0.02 },
      { x: 0.04, y: 0.02 },
      { x: 0.04, y: 0.05 },
      { x: 0, y: 0.05 },
    ]);
    expect(reasons(offsetLoop(waist, -0.012))).toMatch('falls apart into 2');
  });

  test('an outline that crosses itself', () => {
    const bow: Loop = [
      { x: 0, y: 0, bulge: 0 },
      { x: 1, y: 1, bulge: 0 },
      { x: 1, y: 0, bulge: 0 },
      { x: 0, y: 1, bulge: 0 },
    ];
    expect(reasons(offsetLoop(bow, 0.1))).toMatch('crosses or touches itself');
  });
});
