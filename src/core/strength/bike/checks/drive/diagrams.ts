import { type ShaftSolution, shaftStateAt } from '../../../shaft/solveShaft.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { ShaftDiagrams } from './driveTypes.ts';

const DIAGRAM_POINTS = 81;

/** Values left and right of every station, so that jumps stay jumps. */
export function diagramsOf({ shaft }: DriveShaftModel, solution: ShaftSolution): ShaftDiagrams {
  const from = Math.min(...shaft.segments.map((one) => one.from));
  const to = Math.max(...shaft.segments.map((one) => one.to));
  const stations = [...shaft.supports, ...shaft.loads].map(({ at }) => at as number);
  const even = Array.from(
    { length: DIAGRAM_POINTS },
    (_, k) => from + ((to - from) * k) / (DIAGRAM_POINTS - 1),
  );
  const at = [...new Set([...even, ...stations])].sort((a, b) => a - b);
  const states = at.flatMap((x) => [
    shaftStateAt(shaft, solution, x, 'left'),
    shaftStateAt(shaft, solution, x, 'right'),
  ]);
  return {
    at: at.flatMap((x) => [x, x]),
    shear: states.map((state) => state.shear),
    moment: states.map((state) => state.moment),
    torque: states.map((state) => state.torque),
    deflection: states.map((state) => state.deflection),
  };
}
