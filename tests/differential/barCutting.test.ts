/**
 * Cutting plans against a mixed-integer solver (HiGHS): as many pieces as the bars can give, then the fewest bars
 * begun, then the longest single offcut. Each cut takes a kerf, but a piece that ends with the bar needs none, so
 * pieces of length l share a bar of length L when Σ (l + k) ≤ L + k.
 */
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type CutPiece, planCuts, type StockBar } from '../../src/core/shop/index.ts';
import { seeded } from '../support/mutate.ts';

type Highs = Awaited<ReturnType<typeof loadHighs>>;
let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const KERF = 2;
/** Lengths are whole millimeters here, so that both count the same. */
const WHOLE = 0.5;

interface Instance {
  readonly pieces: readonly CutPiece[];
  readonly bars: readonly number[];
}

const variable = (piece: number, bar: number): string => `x${piece}b${bar}`;
const sum = (terms: readonly string[]): string => (terms.length > 0 ? terms.join(' + ') : '0 x0b0');

/** Best value of a linear objective over all ways to cut; undefined where no way keeps the extra rows. */
function optimum(
  { pieces, bars }: Instance,
  {
    sense,
    objective,
    rows,
    all,
  }: { sense: 'Minimize' | 'Maximize'; objective: string; rows: readonly string[]; all: boolean },
): number | undefined {
  const once = pieces.map((_, i) => `${sum(bars.map((_, b) => variable(i, b)))} ${all ? '=' : '<='} 1`);
  const room = bars.map(
    (bar, b) =>
      `${sum(pieces.map(({ length }, i) => `${length + KERF} ${variable(i, b)}`))} - ${bar + KERF} u${b} <= 0`,
  );
  const names = [
    ...pieces.flatMap((_, i) => bars.map((_, b) => variable(i, b))),
    ...bars.map((_, b) => `u${b}`),
  ];
  const model = `${sense}\n obj: ${objective}\nSubject To\n${[...once, ...room, ...rows].map((row, i) => ` r${i}: ${row}`).join('\n')}\nBinary\n ${names.join(' ')}\nEnd`;
  const solved = highs.solve(model);
  return solved.Status === 'Optimal' ? solved.ObjectiveValue : undefined;
}

const used = ({ bars }: Instance): string => sum(bars.map((_, b) => `u${b}`));
const placed = ({ pieces, bars }: Instance): string =>
  sum(pieces.flatMap((_, i) => bars.map((_, b) => variable(i, b))));

/** Longest single offcut when exactly the first bars are begun, each with a piece in it. */
function longestOffcut({ pieces, bars }: Instance, begun: number): number {
  const instance = { pieces, bars: bars.slice(0, begun) };
  const begin = instance.bars.map((_, b) => `${sum(pieces.map((_, i) => variable(i, b)))} >= 1`);
  const offcuts = instance.bars.map((bar, b) => {
    const objective = sum(pieces.map(({ length }, i) => `${length + KERF} ${variable(i, b)}`));
    const least = optimum(instance, { sense: 'Minimize', objective, rows: begin, all: true });
    return least === undefined ? 0 : Math.max(0, bar - least);
  });
  return Math.max(...offcuts);
}

function randomPieces(random: () => number, count: number, longest: number): readonly CutPiece[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `p${i}`,
    length: 80 + Math.floor(random() * (longest - 80)),
  }));
}

const lengthsOf = (stock: readonly StockBar[]): readonly number[] =>
  stock
    .flatMap(({ length, count = 0 }) => Array.from({ length: count }, () => length))
    .toSorted((a, b) => b - a);

describe('bars enough for all', () => {
  test.each(Array.from({ length: 24 }, (_, i) => i))('instance %i', (i) => {
    const random = seeded(100 + i);
    const pieces = randomPieces(random, 4 + Math.floor(random() * 6), 1400);
    const stock =
      i % 2 === 0
        ? [{ length: 2000, count: 12 }]
        : [
            { length: 2400, count: 2 },
            { length: 1800, count: 12 },
          ];
    const instance = { pieces, bars: lengthsOf(stock).slice(0, pieces.length) };
    const plan = planCuts(pieces, stock, KERF);
    expect(plan.missing).toEqual([]);
    const fewest = optimum(instance, { sense: 'Minimize', objective: used(instance), rows: [], all: true })!;
    expect(plan.bars.length).toBe(Math.round(fewest));
    const offcut = Math.max(...plan.bars.map((bar) => bar.left));
    expect(Math.abs(offcut - longestOffcut(instance, plan.bars.length))).toBeLessThan(WHOLE);
  });
});

describe('too few bars', () => {
  test.each(Array.from({ length: 12 }, (_, i) => i))(
    'instance %i gives as many pieces as can be had',
    (i) => {
      const random = seeded(900 + i);
      const pieces = randomPieces(random, 5 + Math.floor(random() * 5), 1900);
      const stock = [{ length: 2000, count: 1 + (i % 2) }];
      const instance = { pieces, bars: lengthsOf(stock) };
      const plan = planCuts(pieces, stock, KERF);
      const most = optimum(instance, {
        sense: 'Maximize',
        objective: placed(instance),
        rows: [],
        all: false,
      })!;
      expect(plan.bars.flatMap((bar) => bar.pieces)).toHaveLength(Math.round(most));
      expect(plan.missing).toHaveLength(pieces.length - Math.round(most));
    },
  );
});

test('no bar is overfull, no piece is cut twice or lost', () => {
  for (let i = 0; i < 200; i++) {
    const random = seeded(5000 + i);
    const pieces = randomPieces(random, 1 + Math.floor(random() * 12), 2600);
    const stock = [{ length: 2400, count: 1 + Math.floor(random() * 3) }, { length: 1200 }];
    const plan = planCuts(pieces, stock, KERF);
    for (const { bar, pieces: cut, left } of plan.bars) {
      const length = cut.reduce((total, piece) => total + piece.length, 0);
      expect(length + KERF * (cut.length - 1)).toBeLessThanOrEqual(bar);
      expect(left).toBe(Math.max(0, bar - length - KERF * cut.length));
    }
    const told = [...plan.bars.flatMap((bar) => bar.pieces), ...plan.missing].map(({ id }) => id);
    expect(told.toSorted()).toEqual(pieces.map(({ id }) => id).toSorted());
  }
});
