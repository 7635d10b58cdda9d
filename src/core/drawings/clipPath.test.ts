import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Segment, segmentLength } from '../geometry/index.ts';
import { clipStroke } from './clipPath.ts';
import { pathPieces } from './pathPieces.ts';
import { circle, polygon, rectangle } from './shapes.ts';
import { flattened } from './stretch.ts';

const rect = { left: 0, bottom: 0, right: 100, top: 60 };
const lengthOf = (items: ReturnType<typeof clipStroke>): number =>
  items.reduce(
    (sum, i) =>
      sum +
      (i.type === 'circle'
        ? 2 * Math.PI * i.radius
        : pathPieces(i).reduce((s, p) => s + segmentLength(p), 0)),
    0,
  );

/** Arrow height of the chords that an arc is compared with [mm]. */
const ARROW = 1e-3;

/** An arc that touches the edge from inside lies within the arrow height of it over √(8·R·h), once a side [mm]. */
const grazing = (piece: Segment): number =>
  piece.kind === 'line' ? 0 : Math.min(segmentLength(piece), 4 * Math.sqrt(8 * piece.radius * ARROW));

test('a circle over a corner keeps the quarter inside; over an edge, the half', () => {
  expect(lengthOf(clipStroke(circle({ x: 0, y: 0 }, 20, 'cut'), rect))).toBeCloseTo((Math.PI / 2) * 20, 9);
  expect(lengthOf(clipStroke(circle({ x: 50, y: 60 }, 20, 'cut'), rect))).toBeCloseTo(Math.PI * 20, 9);
  expect(clipStroke(circle({ x: 50, y: 30 }, 20, 'cut'), rect)).toEqual([
    circle({ x: 50, y: 30 }, 20, 'cut'),
  ]);
  expect(clipStroke(circle({ x: 50, y: 30 }, 80, 'cut'), rect)).toEqual([]);
});

test('a rectangle round the window leaves nothing; one across it leaves two lines', () => {
  expect(clipStroke(rectangle({ left: -1, bottom: -1, right: 101, top: 61 }, 'cut'), rect)).toEqual([]);
  const across = clipStroke(rectangle({ left: -10, bottom: 20, right: 110, top: 30 }, 'cut'), rect);
  expect(across.length).toBe(2);
  expect(lengthOf(across)).toBeCloseTo(200, 9);
});

test('what is kept lies inside, and as much of it as fine chords keep', () => {
  const coordinate = fc.double({ min: -60, max: 160, noNaN: true });
  const vertex = fc.record({
    x: coordinate,
    y: coordinate,
    bulge: fc.double({ min: -2, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(vertex, { minLength: 2, maxLength: 5 }), (vertices) => {
      const path = { type: 'path', vertices, closed: true, pen: 'cut', fill: 'none' } as const;
      const kept = clipStroke(path, rect);
      for (const item of kept)
        for (const p of item.type === 'path' ? flattened(item) : []) {
          expect(p.x).toBeGreaterThan(-1e-6);
          expect(p.x).toBeLessThan(100 + 1e-6);
          expect(p.y).toBeGreaterThan(-1e-6);
          expect(p.y).toBeLessThan(60 + 1e-6);
        }
      const chords = clipStroke(polygon(flattened(path, ARROW), 'cut'), rect);
      // Chords are shorter than their arcs by less than 0.1 %.
      const graze = pathPieces(path).reduce((sum, piece) => sum + grazing(piece), 0);
      expect(Math.abs(lengthOf(kept) - lengthOf(chords))).toBeLessThan(1e-6 + graze + 1e-3 * lengthOf(kept));
    }),
  );
});
