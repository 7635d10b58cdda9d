import { expect, test } from 'vitest';
import { changedLength, movedPins } from './rowChange.ts';
import {
  middle,
  type Row,
  type RowPin,
  rightFace,
  rowSystem,
  type SolvedRows,
  solveRows,
} from './stackRows.ts';

// Two ways to one answer: a change followed through the solved system, and the changed rows solved from scratch.
// Lengths are of a few tens of millimeters, so a picometer is a hundred times the rounding of their sums.
const DIGITS = 12;

const items = (...lengths: readonly (number | 'solve')[]): Row['items'] =>
  lengths.map((length, i) => ({ id: `item-${i}`, length }));

/** A closed row with two spacers, one in line with it, one that is loose, and one that two pins contradict. */
const rows: readonly Row[] = [
  { id: 'axle', items: items(0.01, 'solve', 0.03, 'solve', 0.012) },
  { id: 'countershaft', items: items(0.02, 'solve', 0.015, 0.005) },
  { id: 'loose', items: items(0.01, 'solve', 'solve') },
  { id: 'tight', items: items(0.01, 0.02, 0.03) },
];
const pins: readonly RowPin[] = [
  { on: middle(0, 2), at: 0 },
  { on: middle(0, 0), at: 0.06 },
  { on: rightFace(0, 4), at: -0.07 },
  { on: rightFace(1, 0), at: 0.05 },
  { on: middle(1, 2), at: middle(0, 4) },
  { on: middle(3, 0), at: 0.03 },
  { on: middle(3, 2), at: 0.001 },
];
const system = rowSystem(rows, pins);

const numbersOf = ({ lefts, lengths, misfits }: SolvedRows) => [
  ...lefts,
  ...lengths.flat(),
  ...misfits.map((one) => one.excess),
];

function expectSame(followed: SolvedRows, again: SolvedRows): void {
  expect(followed.misfits.map(({ row, between }) => [row, ...between])).toEqual(
    again.misfits.map(({ row, between }) => [row, ...between]),
  );
  const [one, other] = [numbersOf(followed), numbersOf(again)];
  expect(one).toHaveLength(other.length);
  for (const [i, value] of one.entries()) expect(value).toBeCloseTo(other[i]!, DIGITS);
}

for (const [row, { id, items: own }] of rows.entries()) {
  for (const item of own.keys()) {
    test(`another length of item ${item} of the ${id} row`, () => {
      const length = 0.0173;
      const changed = rows.map((entry, r) =>
        r === row
          ? { ...entry, items: entry.items.map((one, i) => (i === item ? { ...one, length } : one)) }
          : entry,
      );
      expectSame(changedLength(system, { row, item }, length), solveRows(changed, pins));
    });
  }
}

test('a pin that moves carries what is in line with it', () => {
  const moved = pins.map((pin, i) =>
    i === 2 && typeof pin.at === 'number' ? { ...pin, at: pin.at + 0.004 } : pin,
  );
  expectSame(
    movedPins(system, (pin) => pin === 2, 0.004),
    solveRows(rows, moved),
  );
});
