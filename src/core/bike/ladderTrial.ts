import type { BeltStage, Build, ChainStage } from '../build/index.ts';
import type { ModelPlane, StackModel } from './stackModel.ts';
import { featureY, type SolvedRows, solveRows } from './stackRows.ts';

export interface OptionContext {
  readonly build: Build;
  readonly model: StackModel;
  /** The stacks as they stand. */
  readonly base: SolvedRows;
}

/** One item of one row, by index. */
export interface Place {
  readonly row: number;
  readonly item: number;
}

/** The stacks solved again with one length given. */
export function solvedWith({ model }: OptionContext, { row, item }: Place, length: number): SolvedRows {
  const rows = model.rows.map((entry, r) =>
    r === row
      ? { ...entry, items: entry.items.map((one, i) => (i === item ? { id: one.id, length } : one)) }
      : entry,
  );
  return solveRows(rows, model.pins);
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
export const lengthAt = (solved: SolvedRows, { row, item }: Place): number =>
  solved.lengths[row]?.[item] ?? 0;
