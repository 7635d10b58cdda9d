import type { Build, StackEntry } from '../build/index.ts';
import type { Layout, PlacedItem, PlacedStack, StackGap } from './bike.ts';
import { placeAxle, sleevesOf } from './stackAxle.ts';
import { type StackModel, stackModel } from './stackModel.ts';
import { featureY, type RowSystem, rowSystem, type SolvedRows } from './stackRows.ts';
import { itemSizes } from './stackSizes.ts';

/** Shorter than this below zero is rounding, not a spacer that has no room [m]. */
const NO_LENGTH = 1e-9;

/** All stacks of a build as rows, and those rows solved. */
export interface SolvedStacks {
  readonly model: StackModel;
  readonly system: RowSystem;
}

export function solveStacks(build: Build, layout: Layout): SolvedStacks {
  const model = stackModel(build, layout);
  return { model, system: rowSystem(model.rows, model.pins) };
}

/**
 * Places every stack of the build across the bike, all at once, since a sprocket in line with another hangs on the
 * other shaft's stack. Between two pinned features one length may be left to solve; what does not close, what stays
 * open and what comes out negative is placed all the same and named in `misfits` and `gaps`.
 *
 * @returns by stack name; Y in [m], left positive, items left to right
 * @source derived, sums of lengths along each shaft (see `solveRows`)
 */
export function placeStacks(
  build: Build,
  layout: Layout,
  { model, system }: SolvedStacks = solveStacks(build, layout),
): Readonly<Record<string, PlacedStack>> {
  const { solved } = system;
  return Object.fromEntries(
    model.names.map((name, row) => [
      name,
      placeStack({ build, model, solved, row, entry: build.stacks[name]! }),
    ]),
  );
}

interface PlaceContext {
  readonly build: Build;
  readonly model: StackModel;
  readonly solved: SolvedRows;
  readonly row: number;
  readonly entry: StackEntry;
}

function placeStack(context: PlaceContext): PlacedStack {
  const { build, model, solved, row, entry } = context;
  const id = model.names[row]!;
  const items = placeItems(context);
  const axle = placeAxle(entry, items);
  const itemId = (index: number) => entry.items[index]!.id;
  return {
    id,
    shaft: entry.shaft,
    items,
    ...(axle === undefined ? {} : { axle }),
    sleeves: sleevesOf(build, entry, items),
    misfits: solved.misfits
      .filter((misfit) => misfit.row === row)
      .map(({ between: [left, right], excess }) => ({
        stack: id,
        between: [itemId(left), itemId(right)] as const,
        excess,
      })),
    gaps: [
      ...model.gaps.filter((gap) => gap.stack === id),
      ...looseGaps(context),
      ...negativeGaps(id, items),
    ],
  };
}

function placeItems({ build, model, solved, row, entry }: PlaceContext): readonly PlacedItem[] {
  let left = solved.lefts[row] ?? 0;
  return entry.items.map((item, i): PlacedItem => {
    const length = solved.lengths[row]?.[i] ?? 0;
    const placed: PlacedItem = {
      id: item.id,
      kind: item.kind,
      left,
      right: left - length,
      length,
      solved: item.length === 'solve',
      ...itemSizes(build, entry, item),
      planes: model.planes
        .filter((plane) => plane.on.row === row && plane.on.item === i)
        .map(({ on, ...plane }) => ({ ...plane, y: featureY(solved, on) })),
      ...(item.note === undefined ? {} : { note: item.note }),
    };
    left = placed.right;
    return placed;
  });
}

const looseGaps = ({ model, solved, row }: PlaceContext): readonly StackGap[] =>
  solved.gaps
    .filter((gap) => gap.row === row)
    .map(({ reason, items }) => ({ stack: model.names[row]!, reason, items }));

const negativeGaps = (stack: string, items: readonly PlacedItem[]): readonly StackGap[] =>
  items
    .filter((item) => item.solved && item.length < -NO_LENGTH)
    .map((item) => ({ stack, reason: 'negative-spacer', items: [item.id], length: item.length }));
