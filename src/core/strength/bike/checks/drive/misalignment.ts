import type { Length } from '../../../../quantity/index.ts';
import { solveShaft } from '../../../shaft/solveShaft.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { Misalignment } from './driveTypes.ts';

/** How far off a bearing comes that is lined up with a straightedge and tacked [m]. @source practice */
const FIT_UP = 5e-4;

/**
 * The shaft without load with one bearing set off, each in turn: what a fit-up adds to the reactions. Two bearings
 * feel nothing of it. Alike in every direction across, so one is enough.
 * @source derived, continuous beam with a settled support
 */
export function misalignmentOf({ shaft, bearings }: DriveShaftModel): Misalignment | undefined {
  if (bearings.length < 3) return undefined;
  const tries = bearings.flatMap(({ item }, moved): Misalignment[] => {
    const supports = shaft.supports.map(({ offset: _, ...support }, i) =>
      i === moved ? { ...support, offset: [FIT_UP as Length, 0 as Length] as const } : support,
    );
    const solved = solveShaft({ ...shaft, supports, loads: [] });
    if (!solved.ok) return [];
    const sizes = solved.value.supports.map(({ force }) => Math.hypot(...force));
    const reaction = Math.max(...sizes);
    const loaded = bearings[sizes.indexOf(reaction)]!.item;
    return [{ offset: FIT_UP, item, loaded, reaction, stress: solved.value.maxStress.value }];
  });
  return tries.reduce<Misalignment | undefined>(
    (most, next) => (most === undefined || next.reaction > most.reaction ? next : most),
    undefined,
  );
}
