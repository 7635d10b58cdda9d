import { describe, expect, test } from 'vitest';
import type { Loop } from './loop.ts';
import { clipLoop, type HalfPlane } from './loopClip.ts';
import { loopProperties, signedArea } from './loopProperties.ts';
import { circleLoop, polygonLoop, rectangleLoop, slotLoop } from './loopShapes.ts';
import { reverseLoop, rotateLoop } from './loopTransform.ts';

/** Rounding of sums of a few hundred terms. */
const RELATIVE = 1e-13;

const toward = (angle: number, at = { x: 0, y: 0 }): HalfPlane => ({
  at,
  out: { x: Math.cos(angle), y: Math.sin(angle) },
});
const flipped = ({ at, out }: HalfPlane): HalfPlane => ({ at, out: { x: -out.x, y: -out.y } });

describe('closed forms', () => {
  test.each([-0.9, -0.3, 0, 0.2, 0.7, 0.99])(
    'segment of a circle cut at %f r: r²(acos k − k√(1 − k²))',
    (k) => {
      const r = 0.04;
      const center = { x: 0.3, y: -0.2 };
      for (const angle of [0, 0.4, Math.PI / 2, 2, Math.PI, -1.1]) {
        const at = { x: center.x + k * r * Math.cos(angle), y: center.y + k * r * Math.sin(angle) };
        const found = signedArea(clipLoop(circleLoop(center, r), toward(angle, at)));
        const wanted = r ** 2 * (Math.acos(k) - k * Math.sqrt(1 - k * k));

        expect(Math.abs(found - wanted)).toBeLessThan(RELATIVE * r ** 2);
      }
    },
  );

  test('half disc: centroid 4r/3π from the cut, Ixx = r⁴(π/8 − 8/9π)', () => {
    const r = 0.05;
    const p = loopProperties(clipLoop(circleLoop({ x: 0, y: 0 }, r), toward(Math.PI / 2)));
    expect(Math.abs(p.centroid.y - (4 * r) / (3 * Math.PI))).toBeLessThan(RELATIVE * r);
    expect(Math.abs(p.ixx / (r ** 4 * (Math.PI / 8 - 8 / (9 * Math.PI))) - 1)).toBeLessThan(RELATIVE * 10);
  });
});

test('both parts make up the whole, whichever way it is walked', () => {
  const shapes: Loop[] = [
    slotLoop({ x: -0.02, y: 0 }, { x: 0.03, y: 0.01 }, 0.02),
    rectangleLoop({ x: 0.001, y: 0.002 }, 0.05, 0.03),
  ];
  for (const shape of shapes.flatMap((loop) => [loop, reverseLoop(loop)])) {
    for (let angle = 0; angle < 6; angle += 0.37) {
      const half = toward(angle, { x: 0.003, y: -0.001 });
      const parts = [clipLoop(shape, half), clipLoop(shape, flipped(half))];
      const sum = parts.reduce((total, part) => total + signedArea(part), 0);
      expect(Math.abs(sum - signedArea(shape))).toBeLessThan(RELATIVE * Math.abs(signedArea(shape)));
      for (const part of parts) expect(Math.sign(signedArea(part))).toBe(Math.sign(signedArea(shape)));
    }
  }
});

test('a region that falls apart keeps its area: two prongs of a fork, 10 by 20 each', () => {
  const fork = polygonLoop(
    [
      [0, 0],
      [50, 0],
      [50, 30],
      [40, 30],
      [40, 10],
      [10, 10],
      [10, 30],
      [0, 30],
    ].map(([x, y]) => ({ x: x!, y: y! })),
  );
  const prongs = clipLoop(fork, toward(Math.PI / 2, { x: 0, y: 10 }));
  expect(signedArea(prongs)).toBeCloseTo(400, 9);
  expect(signedArea(clipLoop(fork, toward(-Math.PI / 2, { x: 0, y: 10 })))).toBeCloseTo(500, 9);
});

describe('a line that only touches', () => {
  const circle = circleLoop({ x: 0, y: 0 }, 0.01);

  test('leaves a circle whole on one side and nothing on the other, at any angle', () => {
    for (let angle = 0; angle < 6.3; angle += Math.PI / 8) {
      const at = { x: 0.01 * Math.cos(angle), y: 0.01 * Math.sin(angle) };
      const whole = clipLoop(circle, toward(angle + Math.PI, at));
      expect(signedArea(whole)).toBeCloseTo(Math.PI * 1e-4, 15);
      expect(clipLoop(circle, toward(angle, at)).length === 0).toBe(true);
    }
  });

  test('along a side of a rectangle leaves it whole or nothing', () => {
    for (const angle of [0, 0.3, 1, 2.5]) {
      const turned = rotateLoop(rectangleLoop({ x: 0, y: 0 }, 0.2, 0.1), angle);
      const side = toward(angle, rotateLoop([{ x: 0.1, y: 0, bulge: 0 }], angle)[0]!);
      expect(clipLoop(turned, side)).toEqual([]);
      expect(signedArea(clipLoop(turned, flipped(side)))).toBeCloseTo(0.02, 15);
    }
  });
});
