import { comparisonOf, type UtilizationRow } from './checks/utilizationRow.ts';
import { boltChanges } from './remedies/boltGrades.ts';
import type { Change } from './remedies/change.ts';
import { outboardChanges } from './remedies/outboardBearing.ts';
import { plateChanges } from './remedies/plateThickness.ts';
import { shaftChanges } from './remedies/shaftSizes.ts';
import { wallChanges } from './remedies/tubeWalls.ts';
import { wallUnderWeldChanges } from './remedies/wallsUnderWelds.ts';
import { legChanges } from './remedies/weldLegs.ts';
import type { StrengthCore, StrengthInput } from './strengthCore.ts';

/** A change that was tried by running the same check again. */
export interface Remedy {
  readonly row: UtilizationRow;
  /** In the imperative: what to change. */
  readonly what: string;
  /** Utilization of the same comparison then, and whether it is within the limit. */
  readonly utilization: number;
  readonly holds: boolean;
}

/** Rows that get a change of size, tries each, and tries in all: every try is a whole check. */
const ROWS = 4;
const TRIES = 3;
const MOST_TRIES = 8;

/**
 * For rows over their limit an outboard bearing, which solves one shaft only; for the worst of those that are left the
 * next sizes up, until one holds.
 */
export function triedRemedies(input: StrengthInput, core: StrengthCore): readonly Remedy[] {
  const remedies: Remedy[] = [];
  const seen = new Set<string>();
  let [rows, left] = [ROWS, MOST_TRIES];
  for (const row of core.rows.filter(({ utilization }) => utilization > 1)) {
    const key = comparisonOf(row);
    if (seen.has(key)) continue;
    seen.add(key);
    const added = outboardChanges(input, core, row)
      .flatMap((change) => tryChange(row, change))
      .filter(({ utilization }) => utilization < row.utilization);
    remedies.push(...added);
    if (added.some(({ holds }) => holds) || rows <= 0 || left <= 0) continue;
    const changes = changesFor(input, core, row).slice(0, Math.min(TRIES, left));
    if (changes.length > 0) rows--;
    const { last, tries } = firstThatHolds(row, changes);
    left -= tries;
    if (last) remedies.push(last);
  }
  return remedies;
}

/** Each better than the one before, up to the first that is within the limit. */
function firstThatHolds(
  row: UtilizationRow,
  changes: readonly Change[],
): { readonly last?: Remedy; readonly tries: number } {
  let last: Remedy | undefined;
  let tries = 0;
  for (const change of changes) {
    tries++;
    const [tried] = tryChange(row, change);
    if (!tried || tried.utilization >= (last ?? row).utilization) continue;
    last = tried;
    if (last.holds) break;
  }
  return { ...(last ? { last } : {}), tries };
}

/** The same comparison of the same part after a change, the worst of its places. */
function tryChange(row: UtilizationRow, { what, rows }: Change): readonly Remedy[] {
  const again = rows().filter((one) => one.part === row.part && one.check === row.check);
  if (again.length === 0) return [];
  const utilization = Math.max(0, ...again.map((one) => one.utilization));
  return [{ row, what, utilization, holds: utilization <= 1 }];
}

function changesFor(input: StrengthInput, core: StrengthCore, row: UtilizationRow): readonly Change[] {
  const tube = input.bike.tubes.find(({ id }) => id === row.part);
  if (row.check === 'tubeWeld' || row.check === 'footWeld') return legChanges(input, core, row.part);
  if (row.check === 'wallUnderTube' || row.check === 'wallUnderPlate')
    return wallUnderWeldChanges(input, core, row);
  if (tube) return wallChanges(input, tube);
  // A thicker axle leaves the hub's bearings as they are.
  if (row.check === 'wheelBearingLife' || row.check === 'wheelBearingStatic') return [];
  const stack = Object.entries(input.bike.stacks).find(([, one]) => one.shaft === row.part);
  if (stack) return shaftChanges(input, row.part, stack);
  if (row.check === 'plateStress') return plateChanges(input, core, row);
  if (input.build.plates[row.part]?.recipe === 'engine-plate') return boltChanges(input, row.part);
  return [];
}
