import { describe, expect, test } from 'vitest';
import table from '../../../data/standards/sheet-gauges.json' with { type: 'json' };
import { type GaugeStock, readGauge } from './index.ts';

function inchesOf(gauge: number, stock: GaugeStock): number {
  const outcome = readGauge(gauge, stock);
  if (!outcome.ok) throw new Error(`no ${gauge} ga ${stock}`);
  return outcome.value / 0.0254;
}

describe('gauge tables', () => {
  // Weights of the gage in ounces a square foot, Act of Congress of March 3, 1893. Manufacturers' Standard Gage:
  // steel sheet of 41.82 lb a square foot per inch of thickness. Typed by hand, apart from the data file.
  const OUNCES: readonly (readonly [gauge: number, weight: number])[] = [
    [3, 160],
    [4, 150],
    [5, 140],
    [6, 130],
    [7, 120],
    [8, 110],
    [9, 100],
    [10, 90],
    [11, 80],
    [12, 70],
    [13, 60],
    [14, 50],
    [15, 45],
    [16, 40],
    [17, 36],
    [18, 32],
    [19, 28],
    [20, 24],
    [21, 22],
    [22, 20],
    [23, 18],
    [24, 16],
    [25, 14],
    [26, 12],
    [27, 11],
    [28, 10],
    [29, 9],
    [30, 8],
    [31, 7],
    [32, 6.5],
    [33, 6],
    [34, 5.5],
    [35, 5],
    [36, 4.5],
    [37, 4.25],
    [38, 4],
  ];

  test('every steel sheet gauge is its 1893 weight over 41.82 lb/ft² per inch, to the printed 0.0001 in', () => {
    expect(table.rows.filter((row) => row.stock === 'steel-sheet')).toHaveLength(OUNCES.length);
    for (const [gauge, weight] of OUNCES) {
      // Half of the last printed digit, and 1 % of it for rounding that lands on the half.
      expect(
        Math.abs(inchesOf(gauge, 'steel-sheet') - weight / 16 / 41.82),
        `${gauge} ga`,
      ).toBeLessThanOrEqual(0.0000505);
    }
  });

  // Birmingham wire gage, thousandths of an inch from 0 to 36; two public copies of the table agree.
  test('tube walls are the Birmingham gage', () => {
    const thousandths = [
      340, 300, 284, 259, 238, 220, 203, 180, 165, 148, 134, 120, 109, 95, 83, 72, 65, 58, 49, 42, 35, 32, 28,
      25, 22, 20, 18, 16, 14, 13, 12, 10, 9, 8, 7, 5, 4,
    ];
    expect(table.rows.filter((row) => row.stock === 'tube-wall')).toHaveLength(thousandths.length);
    thousandths.forEach((wall, gauge) => {
      expect(inchesOf(gauge, 'tube-wall') * 1000).toBeCloseTo(wall, 9);
    });
  });

  // Defining ends of the Brown & Sharpe progression: 0.4600 in at 4/0 and 0.0050 in at 36; values between as printed
  // in handbooks (14 ga 0.0641, 16 ga 0.0508, 18 ga 0.0403), from memory.
  test('aluminum sheet is the Brown & Sharpe progression', () => {
    expect(inchesOf(36, 'aluminum-sheet')).toBeCloseTo(0.005, 12);
    expect(inchesOf(14, 'aluminum-sheet')).toBeCloseTo(0.0641, 12);
    expect(inchesOf(16, 'aluminum-sheet')).toBeCloseTo(0.0508, 12);
    expect(inchesOf(18, 'aluminum-sheet')).toBeCloseTo(0.0403, 12);
    const ratio = (0.46 / 0.005) ** (1 / 39);
    for (let gauge = 0; gauge < 20; gauge++)
      // Two values rounded to 0.0001 in; the thinner is at least 0.035 in.
      expect(inchesOf(gauge, 'aluminum-sheet') / inchesOf(gauge + 1, 'aluminum-sheet')).toBeCloseTo(ratio, 2);
  });

  test('thickness falls as the number rises, and a number outside the table names its neighbors', () => {
    for (const stock of ['steel-sheet', 'tube-wall', 'aluminum-sheet'] as const) {
      const rows = table.rows.filter((row) => row.stock === stock);
      rows.slice(1).forEach((row, index) => {
        expect(row.gauge).toBe(rows[index]!.gauge + 1);
        expect(row.thicknessInch).toBeLessThan(rows[index]!.thicknessInch);
      });
    }
    const outcome = readGauge(1, 'steel-sheet');
    expect(!outcome.ok && outcome.issues[0]).toMatchObject({
      code: 'not-in-table',
      given: '1 ga steel sheet',
      nearest: ['3 ga (0.2391 in)', '4 ga (0.2242 in)'],
    });
    for (const gauge of [16.5, -1, Number.NaN, 1e9]) expect(readGauge(gauge, 'tube-wall').ok).toBe(false);
  });
});
