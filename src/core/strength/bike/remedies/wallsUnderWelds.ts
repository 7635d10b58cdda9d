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
  const tried = WALLS.filter((wall) => wall > stock.wall * 1.01 && wall < stock.outside / 2).map((wall) => ({
    wall,
    rows: wallRows({ ...input, frame, settings, cases, results }, { line: row.part, wall }).rows,
  }));
  const holds = ({ rows }: (typeof tried)[number]): boolean =>
    rows.every(({ quantity, utilization }) => quantity !== row.quantity || utilization <= 1);
  const best = tried.find(holds) ?? tried.at(-1);
  if (!best) return [];
  const { wall, rows } = best;
  return [
    {
      what: `Make "${tube.entry}" of ${(wall * 1000).toFixed(2)} mm (${(wall / inches(1)).toFixed(3)} in) wall, under the same forces`,
      rows: () => rows,
    },
  ];
}
