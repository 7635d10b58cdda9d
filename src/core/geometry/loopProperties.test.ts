import { describe, expect, test } from 'vitest';
import type { Loop } from './loop.ts';
import { loopPerimeter, loopProperties, regionProperties, signedArea } from './loopProperties.ts';
import { circleLoop, rectangleLoop, slotLoop } from './loopShapes.ts';
import { reverseLoop, translateLoop } from './loopTransform.ts';
import { loopBounds } from './outline.ts';

/** Rounding of sums of a few hundred terms. */
const RELATIVE = 1e-13;

function close(found: number, wanted: number, scale: number = Math.abs(wanted)): void {
  expect(Math.abs(found - wanted), `${found}, wanted ${wanted}`).toBeLessThanOrEqual(RELATIVE * scale);
}

describe('closed forms of textbook sections', () => {
  test('circle: πr², πr⁴/4', () => {
    const r = 0.037;
    const p = loopProperties(circleLoop({ x: 0.2, y: -0.3 }, r));
    close(p.area, Math.PI * r ** 2);
    close(p.perimeter, 2 * Math.PI * r);
    close(p.centroid.x, 0.2);
    close(p.centroid.y, -0.3);
    close(p.ixx, (Math.PI * r ** 4) / 4, p.ixx);
    close(p.iyy, (Math.PI * r ** 4) / 4, p.iyy);
    close(p.ixy, 0, p.ixx);
  });

  test('rectangle: bh³/12', () => {
    const p = loopProperties(rectangleLoop({ x: 1, y: 2 }, 0.3, 0.1));
    close(p.area, 0.03);
    close(p.ixx, (0.3 * 0.1 ** 3) / 12, 0.03 * 4); // moments are shifted from the first corner, 1 to 2 m off nowhere: scale A·d²
    close(p.iyy, (0.1 * 0.3 ** 3) / 12, 0.03 * 4);
  });

  test('half disc: centroid 4r/3π, Ixx = r⁴(π/8 − 8/9π)', () => {
    const r = 0.05;
    const half: Loop = [
      { x: r, y: 0, bulge: 1 },
      { x: -r, y: 0, bulge: 0 },
    ];
    const p = loopProperties(half);
    close(p.area, (Math.PI * r * r) / 2);
    close(p.centroid.y, (4 * r) / (3 * Math.PI));
    close(p.centroid.x, 0, r);
    close(p.ixx, r ** 4 * (Math.PI / 8 - 8 / (9 * Math.PI)));
    close(p.iyy, (Math.PI * r ** 4) / 8);
  });

  test('quarter disc: Ixy about the centroid = r⁴(1/8 − 4/9π)', () => {
    const r = 0.05;
    const quarter: Loop = [
      { x: 0, y: 0, bulge: 0 },
      { x: r, y: 0, bulge: Math.tan(Math.PI / 8) },
      { x: 0, y: r, bulge: 0 },
    ];
    const p = loopProperties(quarter);
    close(p.area, (Math.PI * r * r) / 4);
    close(p.centroid.x, (4 * r) / (3 * Math.PI));
    close(p.ixy, r ** 4 * (1 / 8 - 4 / (9 * Math.PI)), p.ixx);
    close(p.ixx, r ** 4 * (Math.PI / 16 - 4 / (9 * Math.PI)));
  });

  test('slot: rectangle and two half discs', () => {
    const [r, length] = [0.006, 0.04];
    const p = loopProperties(slotLoop({ x: -length / 2, y: 0 }, { x: length / 2, y: 0 }, 2 * r));
    close(p.area, 2 * r * length + Math.PI * r * r);
    close(p.perimeter, 2 * length + 2 * Math.PI * r);
    close(p.ixx, (length * (2 * r) ** 3) / 12 + (Math.PI * r ** 4) / 4);
    const halfDisc = r ** 4 * (Math.PI / 8 - 8 / (9 * Math.PI));
    const arm = length / 2 + (4 * r) / (3 * Math.PI);
    close(p.iyy, (2 * r * length ** 3) / 12 + 2 * (halfDisc + ((Math.PI * r * r) / 2) * arm * arm));
  });

  test('annulus: π(R² − r²), π(R⁴ − r⁴)/4, whichever way the hole is walked', () => {
    const [R, r] = [0.05, 0.03];
    const hole = circleLoop({ x: 0, y: 0 }, r);
    for (const walked of [hole, reverseLoop(hole)]) {
      const p = regionProperties(circleLoop({ x: 0, y: 0 }, R), [walked]);
      close(p.area, Math.PI * (R * R - r * r));
      close(p.ixx, (Math.PI * (R ** 4 - r ** 4)) / 4);
      close(p.perimeter, 2 * Math.PI * (R + r));
    }
  });

  test('arc over half a turn: circle less a segment', () => {
    const [r, sweep] = [0.04, 5];
    const big: Loop = [
      { x: r, y: 0, bulge: Math.tan(sweep / 4) },
      { x: r * Math.cos(sweep), y: r * Math.sin(sweep), bulge: 0 },
    ];
    close(signedArea(big), (r * r * (sweep - Math.sin(sweep))) / 2);
    close(loopPerimeter(big), r * sweep + 2 * r * Math.abs(Math.sin(sweep / 2)));
  });
});

test('a very flat arc loses no digits: segment area 2/3·chord·rise to first order', () => {
  const bulge = 1e-7; // rise = chord·bulge/2
  const lens: Loop = [
    { x: 0, y: 0, bulge },
    { x: 0.1, y: 0, bulge: 0 },
  ];
  const area = ((2 / 3) * 0.1 * (0.1 * bulge)) / 2;
  expect(Math.abs(signedArea(lens) / area - 1)).toBeLessThan(1e-12);
});

test('the box of an arc reaches its extreme points exactly', () => {
  const box = loopBounds([
    { x: 0.03, y: 0.04, bulge: 0.5 },
    { x: -0.04, y: 0.03, bulge: 0 },
  ]);
  expect(box.maxX).toBe(0.03);
  expect(box.minX).toBe(-0.04);
  // chord 0.0707, b 0.5: radius = chord·1.25/2 = 0.0442; the top lies on that circle straight above its center
  const chord = Math.hypot(0.07, 0.01);
  const radius = (chord * 1.25) / 2;
  const centerY = 0.035 + (-0.07 / chord) * chord * (0.75 / 2);
  expect(box.maxY).toBeCloseTo(centerY + radius, 14);
});

test('a hole moved inside its plate leaves the area', () => {
  const plate = rectangleLoop({ x: 0, y: 0 }, 0.2, 0.1);
  const hole = circleLoop({ x: 0, y: 0 }, 0.01);
  const a = regionProperties(plate, [hole]);
  const b = regionProperties(plate, [translateLoop(hole, { x: 0.05, y: 0.02 })]);
  close(a.area, b.area);
  expect(b.centroid.x).toBeLessThan(0);
});

test('an outline without inside is refused', () => {
  expect(() => loopProperties([])).toThrow(RangeError);
  expect(() => regionProperties(circleLoop({ x: 0, y: 0 }, 1), [circleLoop({ x: 0, y: 0 }, 1)])).toThrow(
    RangeError,
  );
});
