import { expect, test } from 'vitest';
import { circleLoop, rectangleLoop, regionProperties } from '../geometry/index.ts';
import { hatch } from './hatch.ts';
import type { SheetItem } from './sheet.ts';

const lengthOf = (items: readonly SheetItem[]): number =>
  items.reduce(
    (sum, i) =>
      i.type === 'path'
        ? sum + Math.hypot(i.vertices[1]!.x - i.vertices[0]!.x, i.vertices[1]!.y - i.vertices[0]!.y)
        : sum,
    0,
  );

test.each([0, 30, 45, 90, 135])('lines × spacing is the area of a ring in a plate, at %d°', (angle) => {
  const loops = [rectangleLoop({ x: 50, y: 40 }, 80, 60), circleLoop({ x: 45, y: 42 }, 20)];
  const spacing = 0.05;
  const area = 80 * 60 - Math.PI * 400;
  expect(regionProperties).toBeTypeOf('function');
  // A midpoint sum over lines 0.05 apart; its error is far under 0.1 % here.
  expect(lengthOf(hatch({ loops, angle, spacing })) * spacing).toBeCloseTo(area, -1);
});

test('a spacing of nothing is refused', () => {
  expect(() => hatch({ loops: [circleLoop({ x: 0, y: 0 }, 5)], spacing: 0 })).toThrow('spacing');
});
