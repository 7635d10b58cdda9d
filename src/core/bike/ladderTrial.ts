import type { BeltStage, Build, ChainStage } from '../build/index.ts';
import type { Neighbor } from './ladderNeighbors.ts';
import type { RowPlace } from './rowChange.ts';
import type { ModelPlane } from './stackModel.ts';
import { featureY, type SolvedRows } from './stackRows.ts';
import type { SolvedStacks } from './stacks.ts';

export interface OptionContext extends SolvedStacks {
  readonly build: Build;
  /** The stacks as they stand. */
  readonly base: SolvedRows;
  /** Where a chain or an overhang could touch what is beside it. */
  readonly neighbors: readonly Neighbor[];
  /** Those that touch as the stacks stand. */
  readonly touching: readonly string[];
}

/** The planes of a drive on its driving and driven shafts. */
function lineFeatures(
  { build, model }: OptionContext,
  stage: ChainStage | BeltStage,
): readonly [ModelPlane, ModelPlane] | undefined {
  const on = (shaft: string) =>
    model.planes.find(
      (plane) => plane.drive === stage.id && build.stacks[model.names[plane.on.row] ?? '']?.shaft === shaft,
    );
  const [driver, driven] = [on(stage.from), on(stage.to)];
  return driver && driven && [driver, driven];
}

/** Offset of a drive in solved stacks [m]. */
export function offsetIn(context: OptionContext, stage: ChainStage | BeltStage, solved: SolvedRows): number {
  const planes = lineFeatures(context, stage);
  return planes === undefined ? 0 : featureY(solved, planes[0].on) - featureY(solved, planes[1].on);
}

/** Length of an item in solved stacks [m]. */
export const lengthAt = (solved: SolvedRows, { row, item }: RowPlace): number =>
  solved.lengths[row]?.[item] ?? 0;
