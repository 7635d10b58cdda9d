import type { JointInput } from '../joints/jointInput.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { braceWalls } from './braceWalls.ts';
import { type OtherWall, wallContext } from './chordEnds.ts';
import { tabWalls } from './tabWalls.ts';

/** What was found of the walls of tubes under what is welded to them, and which were left out. */
export interface WallRows {
  readonly rows: readonly UtilizationRow[];
  readonly notChecked: readonly string[];
}

/**
 * Walls under coped tubes and under tabs; other plates spread over several tubes, and no rule is for that.
 * @param other one tube alone, with another wall
 */
export function wallRows(input: JointInput, other?: OtherWall): WallRows {
  const context = wallContext(input, other);
  const [braces, tabs] = [braceWalls(context), tabWalls(context)];
  return {
    rows: [...braces.rows, ...tabs.rows],
    notChecked: [
      ...braces.left,
      ...tabs.left,
      'walls of tubes under plates other than tabs, and under tabs that are bent flat',
    ],
  };
}
