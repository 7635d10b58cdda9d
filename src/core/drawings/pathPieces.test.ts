import { expect, test } from 'vitest';
import { arcCubics } from './pathPieces.ts';

test.each([0.5, 5, 100, 2000])('cubics stay within 1e-4 mm of an arc of radius %d mm', (radius) => {
  for (const sweep of [2 * Math.PI, -4, 0.7]) {
    let from = { x: radius * Math.cos(0.3), y: radius * Math.sin(0.3) };
    let worst = 0;
    for (const [c, d, to] of arcCubics({ x: 0, y: 0 }, radius, 0.3, sweep)) {
      for (let i = 0; i <= 50; i += 1) {
        const t = i / 50;
        const [a0, a1, a2, a3] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
        const x = a0 * from.x + a1 * c.x + a2 * d.x + a3 * to.x;
        const y = a0 * from.y + a1 * c.y + a2 * d.y + a3 * to.y;
        worst = Math.max(worst, Math.abs(Math.hypot(x, y) - radius));
      }
      from = to;
    }
    expect(worst).toBeLessThan(1.01e-4);
    expect(from.x).toBeCloseTo(radius * Math.cos(0.3 + sweep), 9);
    expect(from.y).toBeCloseTo(radius * Math.sin(0.3 + sweep), 9);
  }
});
