import { expect, test } from 'vitest';
import { loopBounds, loopPerimeter, rectangleLoop, signedArea, slotLoop } from '../geometry/index.ts';
import { type CutFile, withKerf } from './cutFile.ts';

const cut: CutFile = {
  id: 'plate',
  name: 'Plate',
  outline: rectangleLoop({ x: 0, y: 0 }, 0.1, 0.06),
  openings: [slotLoop({ x: -0.02, y: 0 }, { x: 0.01, y: 0 }, 0.0085)],
  circles: [{ center: { x: 0.035, y: 0 }, diameter: 0.01 }],
  marks: [],
  bends: [],
};

test('the outline grows and openings shrink by half a kerf; the true size stays', () => {
  const made = withKerf(cut, 0.002);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  const { kerf, ...rest } = made.value;
  expect(rest).toEqual(cut);
  const box = loopBounds(kerf!.outline);
  expect([box.maxX - box.minX, box.maxY - box.minY].map((v) => Number(v.toFixed(12)))).toEqual([
    0.102, 0.062,
  ]);
  // Steiner: area of the parallel body = A + P·d + π·d², d = 1 mm.
  expect(signedArea(kerf!.outline)).toBeCloseTo(
    0.1 * 0.06 + loopPerimeter(cut.outline) * 0.001 + Math.PI * 0.001 ** 2,
    12,
  );
  // A slot 30 long and 8.5 wide becomes 6.5 wide with the same centers.
  expect(Math.abs(signedArea(kerf!.openings[0]!))).toBeCloseTo(0.03 * 0.0065 + Math.PI * 0.00325 ** 2, 12);
  expect(kerf!.circles[0]!.diameter).toBeCloseTo(0.008, 12);
});

test('what the cut would close is named', () => {
  for (const width of [0.0085, 0.012, 0, Number.NaN]) expect(withKerf(cut, width).ok).toBe(false);
  const made = withKerf(cut, 0.012);
  expect(made.ok ? '' : JSON.stringify(made.issues)).toContain('10.00 mm is no wider than the kerf');
});
