import { expect, test } from 'vitest';
import { circleLoop } from '../geometry/index.ts';
import { fineScales, fitView, viewLoop, viewPoint } from './view.ts';

const area = { left: 10, bottom: 20, right: 290, top: 190 };

test('the largest preferred scale that fits, centered', () => {
  const bounds = { minX: -0.4, minY: 0, maxX: 1.6, maxY: 1.1 };
  const view = fitView({ bounds, area });
  // 2000 × 1100 mm into 280 × 170: 1 : 10 gives 200 × 110; 1 : 5 would be 400 wide.
  expect(view?.scale.label).toBe('1 : 10');
  expect(viewPoint(view!, { x: 0.6, y: 0.55 })).toEqual({ x: 150, y: 105 });
  expect(fitView({ bounds, area, scales: fineScales })?.scale.label).toBe('1 : 8');
  expect(fitView({ bounds: { ...bounds, maxX: 1000 }, area })).toBeUndefined();
});

test('a part that fills the area exactly still fits, and a tiny one is enlarged', () => {
  expect(fitView({ bounds: { minX: 0, minY: 0, maxX: 0.28, maxY: 0.17 }, area })?.scale.label).toBe('1 : 1');
  expect(fitView({ bounds: { minX: 0, minY: 0, maxX: 0.01, maxY: 0.01 }, area })?.scale.label).toBe('10 : 1');
});

test('seen from the left, forward runs to the left and arcs turn the other way', () => {
  const view = fitView({ bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 }, area, flipX: true })!;
  expect(viewPoint(view, { x: 1, y: 0 }).x).toBeLessThan(viewPoint(view, { x: 0, y: 0 }).x);
  expect(viewLoop(view, circleLoop({ x: 0.5, y: 0.5 }, 0.1), 'outline').vertices.map((v) => v.bulge)).toEqual(
    [-1, -1],
  );
});
