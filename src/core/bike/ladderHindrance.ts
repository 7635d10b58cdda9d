import type { StackEntry } from '../build/index.ts';
import { printMillimeters } from '../quantity/index.ts';
import { touchesIn } from './ladderNeighbors.ts';
import { type OptionContext, offsetIn } from './ladderTrial.ts';
import type { RowPlace } from './rowChange.ts';
import { lengthOnShaft, threadWanted, USUAL_PITCH } from './stackAxle.ts';
import { AGREES_WITHIN, type SolvedRows } from './stackRows.ts';

/** Lengths below this are none [m]. */
const NO_LENGTH = 1e-9;

/** What stands in the way of a changed spacer, as a sentence; undefined when nothing does. */
export function hindranceOf(context: OptionContext, place: RowPlace, solved: SolvedRows): string | undefined {
  const reasons = [
    ...negativeLengths(context, place, solved),
    ...movedPins(context, solved),
    ...movedLines(context, solved),
    ...shortThreads(context, solved),
    ...touchesIn(context.neighbors, solved).filter((one) => !context.touching.includes(one)),
  ];
  return reasons.length === 0 ? undefined : reasons.join('; ');
}

function negativeLengths(
  { model, base }: OptionContext,
  place: RowPlace,
  solved: SolvedRows,
): readonly string[] {
  return model.rows.flatMap((entry, row) =>
    entry.items.flatMap((item, i) => {
      const length = solved.lengths[row]?.[i] ?? 0;
      const isChanged = row === place.row && i === place.item;
      const was = base.lengths[row]?.[i] ?? 0;
      if (length >= -NO_LENGTH || (!isChanged && was <= length)) return [];
      return [`${item.id} would come out ${printMillimeters(length, 0.01)}: there is no room for it`];
    }),
  );
}

/** Pins that agreed before and would not any more. */
function movedPins({ build, model, base }: OptionContext, solved: SolvedRows): readonly string[] {
  return solved.misfits.flatMap(({ row, between, excess }) => {
    const [left, right] = between;
    const before = base.misfits.find(
      (one) => one.row === row && one.between[0] === left && one.between[1] === right,
    );
    if (before !== undefined && Math.abs(excess) <= Math.abs(before.excess) + AGREES_WITHIN) return [];
    const entry = build.stacks[model.names[row]!]!;
    const name = (item: number) => pinName(entry, item);
    return [
      `between ${name(left)} and ${name(right)} it would be ${printMillimeters(Math.abs(excess), 0.01)} too ${excess > 0 ? 'long' : 'short'}`,
    ];
  });
}

function pinName(entry: StackEntry, index: number): string {
  const item = entry.items[index]!;
  const pin = item.pin;
  if (pin === undefined) return item.id;
  if (pin.to === 'in-line') return `${item.id} in line with drive ${pin.drive}`;
  if (pin.to === 'caliper') return `${item.id} in the ${pin.brake} caliper`;
  if (pin.to === 'rim-center') return `${item.id} with the rim in the center`;
  return pin.to === 'engine-face' ? `${item.id} on the engine face` : `${item.id} in its place`;
}

function movedLines(context: OptionContext, solved: SolvedRows): readonly string[] {
  return context.build.driveline.stages.flatMap((stage) => {
    if (stage.kind === 'clutch') return [];
    const [before, after] = [offsetIn(context, stage, context.base), offsetIn(context, stage, solved)];
    if (Math.abs(after) <= Math.abs(before) + AGREES_WITHIN) return [];
    return [`drive ${stage.id} would be ${printMillimeters(Math.abs(after), 0.01)} out of line`];
  });
}

/** Axles whose far end would no longer hold its nut, and shafts that would no longer reach through. */
function shortThreads({ build, model, base }: OptionContext, solved: SolvedRows): readonly string[] {
  return model.names.flatMap((name, row) => {
    const entry = build.stacks[name]!;
    const length = lengthOnShaft(entry, solved.lengths[row] ?? []);
    if (length - lengthOnShaft(entry, base.lengths[row] ?? []) <= NO_LENGTH) return [];
    const { left, wanted } = roomAtEnd(entry, length) ?? shaftRoom(build, entry, length);
    if (left >= wanted - NO_LENGTH) return [];
    const short = printMillimeters(wanted - left, 0.1);
    if (entry.axle === undefined) return [`${name} would stand ${short} past the end of its shaft`];
    return [`thread left at the right end of ${name} would be ${short} too short`];
  });
}

interface Room {
  /** Length of axle or shaft beyond the stack, and how much is wanted [m]. */
  readonly left: number;
  readonly wanted: number;
}

function roomAtEnd({ axle, items }: StackEntry, length: number): Room | undefined {
  if (axle === undefined) return undefined;
  const pitch = axle.pitch ?? USUAL_PITCH;
  const isNut = (item: StackEntry['items'][number] | undefined) => item?.kind === 'nut';
  const end = (hasNut: boolean, thread: number | undefined) =>
    threadWanted(hasNut, thread ?? 0, axle.diameter, pitch);
  const outLeft = axle.leftEnd ?? end(isNut(items[0]), axle.threadLeft);
  return {
    left: axle.length - outLeft - length,
    wanted: end(isNut(items[items.length - 1]), axle.threadRight),
  };
}

function shaftRoom(build: OptionContext['build'], entry: StackEntry, length: number): Room {
  const shaft =
    entry.shaft === 'engine' ? build.engine.shaft.length : build.driveline.shafts[entry.shaft]?.length;
  return { left: (shaft ?? Number.POSITIVE_INFINITY) - length, wanted: 0 };
}
