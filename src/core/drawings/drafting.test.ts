import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calloutColumn } from './callouts.ts';
import type { DimensionText } from './dimensionText.ts';
import { dimensionText, lengthInLine } from './dimensionText.ts';
import { angleDimension, diameterLeader } from './leader.ts';
import { baselineDimensions, baselineStep, linearDimension } from './linearDimension.ts';
import { ordinateDimensions } from './ordinate.ts';
import type { PaperPoint, PathItem, SheetItem, TextItem } from './sheet.ts';
import { boxesOverlap, type TextBox, textBox } from './textMetrics.ts';

const texts = (items: readonly SheetItem[]): readonly TextItem[] => items.filter((i) => i.type === 'text');
const lines = (items: readonly SheetItem[]): readonly PathItem[] =>
  items.filter((i): i is PathItem => i.type === 'path' && i.pen !== 'none');

function overlappingTexts(items: readonly SheetItem[]): number {
  const boxes = texts(items).map(textBox);
  return boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => boxesOverlap(a, b))).length;
}

/** Straight pieces of strokes that pass through a text's box. */
function struckTexts(items: readonly SheetItem[]): number {
  const boxes = texts(items).map(textBox);
  const thin = (p: PaperPoint, q: PaperPoint): TextBox => {
    const length = Math.hypot(q.x - p.x, q.y - p.y) || 1;
    const n = { x: (-(q.y - p.y) / length) * 0.01, y: ((q.x - p.x) / length) * 0.01 };
    return [
      { x: p.x - n.x, y: p.y - n.y },
      { x: q.x - n.x, y: q.y - n.y },
      { x: q.x + n.x, y: q.y + n.y },
      { x: p.x + n.x, y: p.y + n.y },
    ];
  };
  const pieces = lines(items).flatMap((path) => {
    const ends = path.closed ? [...path.vertices, path.vertices[0]!] : path.vertices;
    return ends.slice(1).map((q, i) => thin(ends[i]!, q));
  });
  return boxes.filter((box) => pieces.some((piece) => boxesOverlap(box, piece))).length;
}

const coordinate = fc.double({ min: 20, max: 250, noNaN: true });
const dual: DimensionText = ['214.3', '8 ⁷⁄₁₆'];

describe('linear dimensions', () => {
  test('no line of the dimension runs through its text, short or long, either way', () => {
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        coordinate,
        fc.constantFrom('horizontal' as const, 'vertical' as const),
        (a, b, at, direction) => {
          fc.pre(Math.abs(a - b) > 0.5);
          const [from, to] =
            direction === 'horizontal'
              ? [
                  { x: a, y: 10 },
                  { x: b, y: 12 },
                ]
              : [
                  { x: 10, y: a },
                  { x: 12, y: b },
                ];
          const items = linearDimension({ from, to, direction, at: 30 + at, text: dual });
          expect(struckTexts(items)).toBe(0);
          expect(overlappingTexts(items)).toBe(0);
        },
      ),
    );
  });

  test('arrowheads stand at the measured places, the text over and under the line', () => {
    const items = linearDimension({
      from: { x: 10, y: 0 },
      to: { x: 60, y: 5 },
      direction: 'horizontal',
      at: 20,
      text: dual,
    });
    const tips = lines(items)
      .filter((l) => l.closed)
      .map((l) => l.vertices[0]);
    expect(tips).toEqual([
      { x: 10, y: 20, bulge: 0 },
      { x: 60, y: 20, bulge: 0 },
    ]);
    const [mm, inch] = texts(items);
    expect(mm!.at.y).toBeGreaterThan(20);
    expect(inch!.at.y).toBeLessThan(20);
    expect(mm!.at.x).toBe(35);
  });

  test('an aligned dimension measures the distance itself and reads from below', () => {
    const items = linearDimension({
      from: { x: 50, y: 50 },
      to: { x: 20, y: 10 },
      direction: 'aligned',
      at: 8,
      text: ['50'],
    });
    const tips = lines(items)
      .filter((l) => l.closed)
      .map((l) => l.vertices[0]!);
    expect(Math.hypot(tips[0]!.x - tips[1]!.x, tips[0]!.y - tips[1]!.y)).toBeCloseTo(50, 9);
    expect(Math.abs(texts(items)[0]!.turn)).toBeLessThanOrEqual(90);
    expect(struckTexts(items)).toBe(0);
  });

  test('stacked dimensions keep clear of each other', () => {
    const points = [100, 130, 180].map((x) => ({ at: { x, y: 40 }, text: dual }));
    const items = baselineDimensions({
      direction: 'horizontal',
      base: { x: 20, y: 40 },
      points,
      first: 60,
      step: baselineStep(),
    });
    expect(overlappingTexts(items)).toBe(0);
    expect(struckTexts(items)).toBe(0);
  });
});

describe('ordinate dimensions', () => {
  test('labels never overlap each other or any line, however close the features', () => {
    fc.assert(
      fc.property(
        fc.array(coordinate, { minLength: 1, maxLength: 20 }),
        fc.constantFrom('x' as const, 'y' as const),
        fc.boolean(),
        (places, axis, low) => {
          const labelsAt = low ? 0 : 300;
          const features = places.map((p) => ({
            at: axis === 'x' ? { x: p, y: 150 } : { x: 150, y: p },
            text: dual,
          }));
          const items = ordinateDimensions({ axis, features, labelsAt });
          expect(overlappingTexts(items)).toBe(0);
          expect(struckTexts(items)).toBe(0);
          // Every line starts at its own feature.
          lines(items).forEach((l, i) => {
            expect(axis === 'x' ? l.vertices[0]!.x : l.vertices[0]!.y).toBe(places[i]);
          });
        },
      ),
    );
  });
});

describe('callouts', () => {
  const at = fc.record({
    x: fc.double({ min: 10, max: 150, noNaN: true }),
    y: fc.double({ min: 20, max: 180, noNaN: true }),
  });
  test('labels keep apart and leaders do not cross', () => {
    fc.assert(
      fc.property(
        fc.array(at, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('left' as const, 'right' as const),
        (points, side) => {
          const callouts = points.map((p, i) => ({
            at: p,
            text: `spacer ${i}, 12.7 mm long, turned to fit`,
            number: String(i + 1),
          }));
          const x = side === 'right' ? 170 : -10;
          const items = calloutColumn({ callouts, x, side, width: 40, range: { min: 10, max: 190 } });
          // The number in a balloon belongs to its own label.
          const notes = items.filter((i) => !(i.type === 'text' && i.weight === 'bold'));
          expect(overlappingTexts(notes)).toBe(0);
          const leaders = lines(items).map((l) => l.vertices);
          const neighbors = [...leaders].sort((a, b) => a[1]!.y - b[1]!.y);
          for (let i = 0; i + 1 < neighbors.length; i += 1)
            expect(cross(neighbors[i]!, neighbors[i + 1]!)).toBe(false);
        },
      ),
    );
  });
});

test('a diameter leader ends on the circle and keeps its text clear of the line', () => {
  for (const toward of [0, 30, 130, 200, 270]) {
    const items = diameterLeader({
      center: { x: 50, y: 50 },
      radius: 12,
      toward,
      reach: 10,
      text: ['Ø35.0', '1 ⅜'],
    });
    const tip = lines(items)[0]!.vertices[0]!;
    expect(Math.hypot(tip.x - 50, tip.y - 50)).toBeCloseTo(12, 9);
    expect(struckTexts(items)).toBe(0);
  }
});

test('an angle dimension spans its legs', () => {
  const items = angleDimension({ vertex: { x: 0, y: 0 }, radius: 30, from: 350, to: 24, text: '34.0°' });
  const arc = lines(items)[0]!;
  expect((Math.atan(arc.vertices[0]!.bulge) * 4 * 180) / Math.PI).toBeCloseTo(34, 9);
});

test('a length is written in both systems', () => {
  // 214.3 mm = 8.437 in; 8 7/16 = 8.4375.
  expect(dimensionText(0.2143)).toEqual(['214.3', '8\u2009⁷⁄₁₆']);
  expect(dimensionText(0.035, { prefix: 'Ø', system: 'mm' })).toEqual(['Ø35.0']);
  expect(lengthInLine(0.0254)).toBe('25.4 mm (1 in)');
});

type Vertices = readonly PaperPoint[];
function cross([a, b]: Vertices, [c, d]: Vertices): boolean {
  const side = (p: PaperPoint, q: PaperPoint, r: PaperPoint): number =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a!, b!, c!) * side(a!, b!, d!) < 0 && side(c!, d!, a!) * side(c!, d!, b!) < 0;
}

test('the detector of struck and overlapping texts finds them', () => {
  const word: TextItem = {
    type: 'text',
    at: { x: 0, y: 0 },
    text: '214.3',
    size: 3,
    anchor: 'middle',
    turn: 0,
    weight: 'regular',
    tone: 'ink',
  };
  const stroke: PathItem = {
    type: 'path',
    vertices: [
      { x: -9, y: 1, bulge: 0 },
      { x: 9, y: 1, bulge: 0 },
    ],
    closed: false,
    pen: 'dimension',
    fill: 'none',
  };
  expect(struckTexts([word, stroke])).toBe(1);
  expect(overlappingTexts([word, { ...word, at: { x: 2, y: 1 } }])).toBe(1);
});
