import type { BeltStage, ChainStage } from '../build/index.ts';
import type { ChainLine, SpacerOption } from './bike.ts';
import { hindranceOf } from './ladderHindrance.ts';
import { lengthAt, type OptionContext, offsetIn } from './ladderTrial.ts';
import { changedLength, movedPins, type RowPlace } from './rowChange.ts';
import type { SolvedRows } from './stackRows.ts';

/** An offset below this is none: the spacers were worked out to bring it to nothing [m]. */
export const IN_LINE = 1e-6;
/** Test change by which it is found out what a length moves [m]. */
const NUDGE = 1e-3;
/** A length that moves less than this share of its own change moves nothing. */
const NO_EFFECT = 1e-6;

type Line = Omit<ChainLine, 'options'>;

/**
 * Every spacer on either shaft by which a drive can be brought in line, with its new length and what stands in the
 * way. A line that is out names what closes it; a line that a worked-out spacer closes names that spacer and, in
 * its stead, the others that could take its length.
 * @source derived, each change followed over all stacks
 */
export function spacerOptions(
  context: OptionContext,
  stage: ChainStage | BeltStage,
  line: Line,
): readonly SpacerOption[] {
  const spacers = spacersOn(context, [stage.from, stage.to]);
  if (Math.abs(line.offset) > IN_LINE) {
    return spacers.flatMap((place) => closingOption(context, stage, line.offset, place));
  }
  return closingSpacers(context, stage, line).flatMap((closing) => [
    optionOf(context, { place: closing, change: 0, solved: context.base }),
    ...spacers.flatMap((place) => insteadOption(context, closing, place)),
  ]);
}

function spacersOn({ build, model }: OptionContext, shafts: readonly string[]): readonly RowPlace[] {
  return model.names.flatMap((name, row) => {
    const entry = build.stacks[name]!;
    if (!shafts.includes(entry.shaft)) return [];
    return entry.items.flatMap((one, item) =>
      one.kind === 'spacer' || one.kind === 'washer' ? [{ row, item }] : [],
    );
  });
}

/** A change of one length that closes an open offset; none when the length does not move the line. */
function closingOption(
  context: OptionContext,
  stage: ChainStage | BeltStage,
  offset: number,
  place: RowPlace,
): readonly SpacerOption[] {
  const length = lengthAt(context.base, place);
  const { system } = context;
  const nudged = offsetIn(context, stage, changedLength(system, place, length + NUDGE));
  const effect = (nudged - offset) / NUDGE;
  if (Math.abs(effect) < NO_EFFECT) return [];
  const change = -offset / effect;
  return [optionOf(context, { place, change, solved: changedLength(system, place, length + change) })];
}

/** The worked-out spacers on the way to either plane that a shifted line would change. */
function closingSpacers(
  context: OptionContext,
  stage: ChainStage | BeltStage,
  line: Line,
): readonly RowPlace[] {
  const { build, model, system, base } = context;
  const moved = movedPins(system, (pin) => model.pins[pin]!.drive === stage.id, NUDGE);
  const isOnTheWay = ({ row }: RowPlace, id: string) => {
    const isDriving = build.stacks[model.names[row]!]?.shaft === stage.from;
    return (isDriving ? line.driverSteps : line.drivenSteps).some((step) => step.solved && step.part === id);
  };
  return spacersOn(context, [stage.from, stage.to]).filter((place) => {
    const item = model.rows[place.row]?.items[place.item];
    const changes = Math.abs(lengthAt(moved, place) - lengthAt(base, place)) > NO_EFFECT * NUDGE;
    return item?.length === 'solve' && isOnTheWay(place, item.id) && changes;
  });
}

/** Another spacer that takes the length of a worked-out one, which is then left out. */
function insteadOption(context: OptionContext, closing: RowPlace, place: RowPlace): readonly SpacerOption[] {
  const { model, system, base } = context;
  if (model.rows[place.row]?.items[place.item]?.length === 'solve') return [];
  const [length, spacer] = [lengthAt(base, place), lengthAt(base, closing)];
  const nudged = lengthAt(changedLength(system, place, length + NUDGE), closing);
  const effect = (nudged - spacer) / NUDGE;
  if (Math.abs(effect) < NO_EFFECT) return [];
  const change = -spacer / effect;
  const solved = changedLength(system, place, length + change);
  const insteadOf = model.rows[closing.row]!.items[closing.item]!.id;
  return [{ ...optionOf(context, { place, change, solved }), insteadOf }];
}

function optionOf(
  context: OptionContext,
  {
    place,
    change,
    solved,
  }: { readonly place: RowPlace; readonly change: number; readonly solved: SolvedRows },
): SpacerOption {
  const { model, base } = context;
  const hindrance = hindranceOf(context, place, solved);
  return {
    stack: model.names[place.row]!,
    item: model.rows[place.row]!.items[place.item]!.id,
    change,
    length: lengthAt(base, place) + change,
    ...(hindrance === undefined ? {} : { hindrance }),
  };
}
