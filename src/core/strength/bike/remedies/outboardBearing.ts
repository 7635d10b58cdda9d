import { driveStrength } from '../checks/drive/driveStrength.ts';
import type { Check, UtilizationRow } from '../checks/utilizationRow.ts';
import type { StrengthCore, StrengthInput } from '../strengthCore.ts';
import type { Change } from './change.ts';

/** What an overhung drive makes worse. */
const HELPED: readonly Check[] = [
  'shaftStress',
  'keyseatFatigue',
  'bearingTilt',
  'bearingLife',
  'bearingStatic',
];

/**
 * One bearing more at the end of a shaft whose drive hangs beyond its outermost bearing. Only the shafts are solved
 * again: what the frame feels is left as it was.
 */
export function outboardChanges(
  { build, bike, driveline, patterns }: StrengthInput,
  { drive, frame, settings, limits }: StrengthCore,
  row: UtilizationRow,
): readonly Change[] {
  const tried = drive.shafts.find(({ id }) => id === row.part)?.outboard;
  if (!tried || tried.isThere || !HELPED.includes(row.check)) return [];
  const { at } = tried;
  const added = { shaft: row.part, at };
  return [
    {
      what: `Add an outboard bearing ${Math.round(Math.abs(at) * 1000)} mm ${at < 0 ? 'right' : 'left'} of the middle of the bike, in a plate of its own`,
      rows: () => driveStrength({ build, bike, driveline, frame, settings, limits, patterns, added }).rows,
    },
  ];
}
