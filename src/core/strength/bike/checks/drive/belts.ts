import type { DrivePull } from '../../loads/drivePull.ts';
import type { BeltStrength } from './driveTypes.ts';

/** Both sides of every belt, and the pull that it needs at rest, the mean of the two [N]. */
export const beltsOf = (pulls: readonly DrivePull[]): readonly BeltStrength[] =>
  pulls
    .filter((pull) => pull.kind === 'variable-belt')
    .map(({ drive, tight, slack }) => ({ drive, tight, slack, initial: (tight + slack) / 2 }));
