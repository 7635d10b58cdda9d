import type { Length } from '../../../../quantity/index.ts';
import { type ShaftSolution, solveShaft } from '../../../shaft/solveShaft.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { DriveInput, OutboardComparison, ShaftSide } from './driveTypes.ts';

/** The shaft without the bearings of outboard supports. */
export function compareOutboard(
  { build }: DriveInput,
  model: DriveShaftModel,
  solution: ShaftSolution,
): OutboardComparison | undefined {
  const kept = model.bearings.map(
    ({ plate }) => plate === undefined || build.plates[plate]?.recipe !== 'outboard-support',
  );
  if (kept.every(Boolean)) return tryOutboard(model, solution);
  if (kept.filter(Boolean).length < 2) return undefined;
  const supports = model.shaft.supports.filter((_, i) => kept[i]);
  const without = solveShaft({ ...model.shaft, supports });
  const at = model.bearings[kept.indexOf(false)]!.y;
  return without.ok
    ? { isThere: true, at, with: sideOf(solution), without: sideOf(without.value) }
    : undefined;
}

/** A bearing more at the end of the shaft beyond the drive that hangs out furthest. */
function tryOutboard(model: DriveShaftModel, solution: ShaftSolution): OutboardComparison | undefined {
  const { supports, loads, segments } = model.shaft;
  const [least, most] = [
    Math.min(...supports.map(({ at }) => at)),
    Math.max(...supports.map(({ at }) => at)),
  ];
  const [right, left] = [
    least - Math.min(...loads.map(({ at }) => at)),
    Math.max(...loads.map(({ at }) => at)) - most,
  ];
  if (!(Math.max(right, left) > 0)) return undefined;
  const at =
    left > right ? Math.max(...segments.map(({ to }) => to)) : Math.min(...segments.map(({ from }) => from));
  const held = solveShaft(withBearing(model, at).shaft);
  return held.ok ? { isThere: false, at, with: sideOf(held.value), without: sideOf(solution) } : undefined;
}

/** The shaft with one bearing more, rigid and in line. */
export const withBearing = (model: DriveShaftModel, at: number): DriveShaftModel => ({
  ...model,
  bearings: [...model.bearings, { item: 'outboard', y: at, node: '' }],
  shaft: { ...model.shaft, supports: [...model.shaft.supports, { at: at as Length }] },
});

const sideOf = (solution: ShaftSolution): ShaftSide => ({
  maxMoment: solution.maxMoment.value,
  maxStress: solution.maxStress.value,
  maxDeflection: solution.maxDeflection.value,
  maxSlope: Math.max(...solution.supports.map(({ slope }) => slope)),
  maxReaction: Math.max(...solution.supports.map(({ force }) => Math.hypot(...force))),
});
