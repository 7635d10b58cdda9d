import { inches } from '../../../quantity/index.ts';
import type { UtilizationRow } from '../checks/utilizationRow.ts';
import { wallRows } from '../checks/walls/wallRows.ts';
import type { StrengthCore, StrengthInput } from '../strengthCore.ts';
import type { Change } from './change.ts';
import { WALLS } from './tubeWalls.ts';

/**
 * The next wall of the tube under a weld that holds, or the heaviest there is. The forces are taken as they are: what is
 * welded on brings them, whatever it stands on.
 */
export function wallUnderWeldChanges(
  input: StrengthInput,
  { frame, settings, cases, results }: StrengthCore,
  row: UtilizationRow,
): readonly Change[] {
  const stock = frame.draft.lines.get(row.part)?.stock;
  const tube = input.bike.tubes.find(({ id }) => id === row.part);
  if (!stock || !tube || !results) return [];
  const walls = WALLS.filter((wall) => wall > stock.wall * 1.01 && wall < stock.outside / 2);
  const rowsOf = (wall: number): readonly UtilizationRow[] =>
    wallRows({ ...input, frame, settings, cases, results }, { line: row.part, wall }).rows;
  const best = firstThatHolds(walls, rowsOf, row.check);
  if (!best) return [];
  const { wall, rows } = best;
  return [
    {
      what: `Make "${tube.entry}" of ${(wall * 1000).toFixed(2)} mm (${(wall / inches(1)).toFixed(3)} in) wall, under the same forces`,
      rows: () => rows,
    },
  ];
}

/** By halves, as a heavier wall is always used less; the heaviest where none holds. */
function firstThatHolds(
  walls: readonly number[],
  rowsOf: (wall: number) => readonly UtilizationRow[],
  check: UtilizationRow['check'],
): { readonly wall: number; readonly rows: readonly UtilizationRow[] } | undefined {
  const heaviest = walls.at(-1);
  if (heaviest === undefined) return undefined;
  const holds = (rows: readonly UtilizationRow[]): boolean =>
    rows.every((one) => one.check !== check || one.utilization <= 1);
  let best = { wall: heaviest, rows: rowsOf(heaviest) };
  if (!holds(best.rows)) return best;
  let [low, high] = [0, walls.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const wall = walls[middle]!;
    const rows = rowsOf(wall);
    if (holds(rows)) {
      best = { wall, rows };
      high = middle;
    } else low = middle + 1;
  }
  return best;
}
