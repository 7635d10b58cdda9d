import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meetingTexts, texts } from '../../../tests/support/sheetChecks.ts';
import { type ChartInput, chart } from './chart.ts';
import { axisMap, type ChartAxis, niceEnd, niceStep, niceTicks, plotArea } from './chartAxis.ts';
import type { PathItem, Sheet, SheetItem } from './sheet.ts';

const one = [{ symbol: 'm', unit: 1 }] as const;
const area = { left: 10, bottom: 10, right: 190, top: 110 };
const axis = (from: number, to: number): ChartAxis => ({ name: 'Way', scales: one, from, to });
const sheetOf = (items: readonly SheetItem[]): Sheet => ({
  id: 's',
  title: 's',
  width: 210,
  height: 297,
  items,
});
const curvesOf = (items: readonly SheetItem[]): readonly PathItem[] =>
  items.filter((item): item is PathItem => item.type === 'path' && item.pen === 'outline');

describe('marks of an axis', () => {
  test.each([
    [0, 10, 5, [0, 2, 4, 6, 8, 10]],
    [-15, 8, 5, [-15, -10, -5, 0, 5]],
    [0, 0.7, 4, [0, 0.2, 0.4, 0.6]],
  ])('%d to %d in %d steps', (from, to, most, expected) => {
    niceTicks(from, to, most).forEach((tick, i) => {
      expect(tick).toBeCloseTo(expected[i]!, 12);
    });
    expect(niceTicks(from, to, most).length).toBe(expected.length);
  });

  test('steps are 1, 2 or 5 by tens, no less than asked', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (least) => {
        const step = niceStep(least);
        const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect(Math.min(...[1, 2, 5].map((n) => Math.abs(lead - n)))).toBeLessThan(1e-9);
        expect(step).toBeGreaterThanOrEqual(least * (1 - 1e-9));
        expect(step).toBeLessThan(least * 2.5 * (1 + 1e-9) + 1e-12);
      }),
    );
  });

  test('an end covers its value and is a mark', () => {
    expect(niceEnd(26.2 / 3.6, { symbol: 'km/h', unit: 1 / 3.6 })).toBeCloseTo(30 / 3.6, 12);
    expect(niceEnd(-7, one[0])).toBe(-7);
    expect(niceEnd(30, one[0])).toBe(30);
    expect(niceEnd(0, one[0])).toBe(1);
  });

  test('an axis that does not run upward is a fault of the caller', () => {
    expect(() => niceTicks(1, 1, 5)).toThrow(RangeError);
    expect(() => niceTicks(0, Number.NaN, 5)).toThrow(RangeError);
  });
});

describe('a chart', () => {
  const input: ChartInput = {
    area,
    x: axis(0, 10),
    y: axis(-5, 5),
    curves: [
      {
        points: [
          { x: 0, y: -10 },
          { x: 10, y: 10 },
        ],
        line: 'solid',
        label: 'rising',
      },
      {
        points: [
          { x: 0, y: 1 },
          { x: 10, y: 1 },
        ],
        line: 'dashed',
        label: 'level',
      },
    ],
    points: [{ at: { x: 5, y: 0 }, label: 'crossing' }],
    bands: [{ from: 2, to: 3, label: 'a band with a long name' }],
  };

  test('curves lie where their values say and are cut at the plot', () => {
    const plot = plotArea(area, input.x, input.y);
    const [curve] = curvesOf(chart(input));
    // y = 2·x − 10 leaves the plot of −5 to 5 at x = 2.5 and 7.5.
    const [x, y] = [axisMap(input.x, plot.left, plot.right), axisMap(input.y, plot.bottom, plot.top)];
    expect(curve?.vertices[0]?.x).toBeCloseTo(x(2.5), 9);
    expect(curve?.vertices[0]?.y).toBeCloseTo(plot.bottom, 9);
    expect(curve?.vertices.at(-1)?.x).toBeCloseTo(x(7.5), 9);
    expect(curve?.vertices.at(-1)?.y).toBeCloseTo(y(5), 9);
  });

  test('every curve, point and band is named once, and no two texts meet', () => {
    const items = chart(input);
    const said = texts(items).map((item) => item.text);
    for (const name of ['rising', 'level', 'crossing', 'a band with a long name'])
      expect(said.filter((one) => one === name)).toEqual([name]);
    expect(meetingTexts(sheetOf(items))).toEqual([]);
  });

  test('twelve curves that all but fall together are still named apart', () => {
    const curves = Array.from({ length: 12 }, (_, k) => ({
      points: [
        { x: 0, y: 0 },
        { x: 10, y: k / 10 },
      ],
      line: 'fine' as const,
      label: `curve ${k}`,
    }));
    const items = chart({ ...input, curves });
    expect(texts(items).filter((item) => item.text.startsWith('curve')).length).toBe(12);
    expect(meetingTexts(sheetOf(items))).toEqual([]);
  });

  test('two units mark both sides with the same places', () => {
    const both: ChartAxis = {
      name: 'Speed',
      scales: [
        { symbol: 'km/h', unit: 1 / 3.6 },
        { symbol: 'mph', unit: 0.44704 },
      ],
      from: 0,
      to: 20,
    };
    const items = chart({ area, x: both, y: axis(0, 5), curves: [] });
    const plot = plotArea(area, both, axis(0, 5));
    const at = axisMap(both, plot.left, plot.right);
    // 40 mph is 17.8816 m/s by definition of the mile.
    const mph = texts(items).find((item) => item.text === '40' && item.tone === 'muted');
    const kmh = texts(items).find((item) => item.text === '40' && item.tone === 'ink');
    expect(mph?.at.x).toBeCloseTo(at(17.8816), 9);
    expect(kmh?.at.x).toBeCloseTo(at(40 / 3.6), 9);
  });
});
