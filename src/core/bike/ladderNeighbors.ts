import type { Build, StackEntry } from '../build/index.ts';
import { findChain } from '../standards/index.ts';
import { type ModelPlane, type StackModel, stageOf } from './stackModel.ts';
import { featureY, leftFace, type SolvedRows } from './stackRows.ts';
import { givenOutside, pitchDiameter } from './stackSizes.ts';

/** Two things in a row that touch when the lengths between them come out so. */
export interface Neighbor {
  readonly touches: (solved: SolvedRows) => boolean;
  readonly says: string;
}

/** Rounding of a length [m]. */
const NO_LENGTH = 1e-9;

/** Chains beside something larger than their sprocket, and items that overhang the next one. */
export const neighborsOf = (build: Build, model: StackModel): readonly Neighbor[] => [
  ...model.planes.flatMap((plane) => besideChain(build, build.stacks[model.names[plane.on.row]!]!, plane)),
  ...model.names.flatMap((name, row) => overhangs(build.stacks[name]!, row)),
];

/** What those that touch in solved rows say. */
export const touchesIn = (neighbors: readonly Neighbor[], solved: SolvedRows): readonly string[] =>
  neighbors.filter((one) => one.touches(solved)).map((one) => one.says);

function besideChain(build: Build, entry: StackEntry, { drive, on }: ModelPlane): readonly Neighbor[] {
  const stage = drive === undefined ? undefined : stageOf(build, drive);
  if (stage?.kind !== 'chain') return [];
  const chain = findChain(stage.chain);
  const pitch = pitchDiameter(build, entry.shaft, stage.id);
  if (!chain.ok || pitch === undefined) return [];
  const { plateHeight, halfWidth } = chain.value;
  const inside = pitch / 2 - plateHeight / 2;
  return entry.items.flatMap((item, i): readonly Neighbor[] => {
    const outside = i === on.item ? undefined : givenOutside(build, entry, item);
    if (outside === undefined || outside / 2 <= inside) return [];
    const touches = (solved: SolvedRows) => {
      const y = featureY(solved, on);
      const left = featureY(solved, leftFace(on.row, i));
      const right = left - (solved.lengths[on.row]?.[i] ?? 0);
      return Math.max(y - left, right - y) < halfWidth;
    };
    return [{ touches, says: `the chain of ${stage.id} would touch ${item.id}` }];
  });
}

const overhangs = ({ items }: StackEntry, row: number): readonly Neighbor[] =>
  items.flatMap(({ id, overhang }, i): readonly Neighbor[] => {
    const next = items[i + 1];
    // The last item of a stack may stand inside what overhangs it.
    if (overhang === undefined || next === undefined || items[i + 2] === undefined) return [];
    const touches = (solved: SolvedRows) => overhang > (solved.lengths[row]?.[i + 1] ?? 0) + NO_LENGTH;
    return [{ touches, says: `${id} would reach past ${next.id}` }];
  });
