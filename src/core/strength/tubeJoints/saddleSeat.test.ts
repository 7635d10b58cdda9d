import { expect, test } from 'vitest';
import { type Force, mm, newtonMeters, newtons, type Torque } from '../../quantity/index.ts';
import { saddleLine } from './saddleSeat.ts';

/** Forces on the pieces of a weld along an arc, as on rivets: share of the force, and moment about their center by reach. */
function largestOnPieces(
  diameter: number,
  width: number,
  [v, n, t]: readonly [number, number, number],
): number {
  const count = 20_000;
  const [radius, half] = [diameter / 2, Math.asin(width / diameter)];
  const pieces = Array.from({ length: count }, (_, i) => {
    const angle = half * ((2 * (i + 0.5)) / count - 1);
    return { x: -radius * Math.sin(angle), y: radius * Math.cos(angle) };
  });
  const center = pieces.reduce((sum, { y }) => sum + y, 0) / count;
  const inertia = pieces.reduce((sum, { x, y }) => sum + x ** 2 + (y - center) ** 2, 0);
  const moment = t + v * center;
  const forces = pieces.map(({ x, y }) => ({
    x: v / count - (moment * (y - center)) / inertia,
    y: n / count + (moment * x) / inertia,
    at: { x, y },
  }));
  // The pieces together hold what comes in: a check of this check.
  const held = forces.reduce((sum, f) => sum + f.at.x * f.y - f.at.y * f.x, 0);
  expect(held).toBeCloseTo(t, 9);
  return Math.max(...forces.map(({ x, y }) => Math.hypot(x, y))) / ((2 * radius * half) / count);
}

test.each([
  [25.4, 22, [0, 0, 130]],
  [25.4, 25, [-1240, 800, 90]],
  [31.75, 31, [1667, -1667, -200]],
  [31.75, 20, [500, 0, -7.9]],
  [38.1, 30, [-1200, 1000, 20]],
] as const)('tube %d mm, tab %d mm: as a row of rivets, Shigley section 8-12', (tube, width, [v, n, t]) => {
  const line = saddleLine(
    { outside: mm(tube), width: mm(width) },
    { across: newtons(v), normal: newtons(n), twist: newtonMeters(t) },
  );
  // Midpoints of 20 000 pieces miss the end of the arc by half a piece.
  expect(line / largestOnPieces(tube / 1000, width / 1000, [v, n, t])).toBeCloseTo(1, 3);
});

test('on a tube far wider than the tab: N/l + 6·M/l², what EN 1993-1-8 has for a straight edge', () => {
  const [tube, width] = [100, 0.03];
  const [force, moment] = [800, 90];
  const load = { normal: force as Force, across: 0 as Force, twist: moment as Torque };
  const line = saddleLine({ outside: mm(tube * 1000), width: mm(width * 1000) }, load);
  expect(line / (force / width + (6 * moment) / width ** 2)).toBeCloseTo(1, 5);
});
