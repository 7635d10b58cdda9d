import type { Build } from '../build/index.ts';
import { derived, practice, printMillimeters } from '../quantity/index.ts';
import type { PlacedStack, StackGap } from './bike.ts';
import { planeOn } from './ladder.ts';
import { isEndWasher, lengthOnShaft, SLIP } from './stackAxle.ts';
import { axleFlaws, threadFlaws } from './stackAxleFlaws.ts';
import type { FlawContext, StackFlaw } from './stackFlaw.ts';
import { wheelOn } from './stackModel.ts';
import { AGREES_WITHIN } from './stackRows.ts';
import { givenBore, shaftDiameter } from './stackSizes.ts';

/** Rim center to frame center [m]. Practice. */
const RIM_CENTERED = 1e-3;
/** Disc to the middle of its caliper [m], the rest being taken up by shims. Practice. */
const DISC_CENTERED = 0.5e-3;
/** A turned spacer thinner than this is a shim washer [m]. Practice. */
const THIN_SPACER = 1e-3;
/** Lengths this near are equal [m]. */
const EQUAL = 1e-9;

/**
 * Every rule that the placed stacks break: what does not close or stays open, bores against axles, axle and thread
 * length, rims and discs off their planes, drives without a plane on one shaft.
 * @returns in the order of the stacks; empty when nothing is found
 * @source practice, shop rules for axles, sleeves and spacers; each flaw names its own
 */
export function stackFlaws(
  build: Build,
  stacks: Readonly<Record<string, PlacedStack>>,
): readonly StackFlaw[] {
  return [
    ...Object.values(stacks).flatMap((stack) => {
      const context: FlawContext = { build, stack, entry: build.stacks[stack.id]! };
      return [
        ...stack.gaps.map(gapFlaw),
        ...misfitFlaws(context),
        ...boreFlaws(context),
        ...sleeveFlaws(context),
        ...axleFlaws(context),
        ...threadFlaws(context),
        ...spacerFlaws(context),
        ...wheelFlaws(context),
        ...discFlaws(context),
        ...shaftFlaws(context),
      ];
    }),
    ...planeFlaws(build, stacks),
  ];
}

function gapFlaw({ stack, reason, items, length }: StackGap): StackFlaw {
  const remedy: Readonly<Record<StackGap['reason'], string>> = {
    'two-unknowns': `Give the length of all but one of ${items.join(', ')}, or pin something between them.`,
    'no-pin': `Pin something in the stack${items.length > 0 ? ` beyond ${items.join(', ')}` : ''}: a place, the rim, the engine face or another drive's line.`,
    'negative-spacer': `Take ${printMillimeters(-(length ?? 0), 0.01)} out of the other lengths, or move one of the pins.`,
    'unknown-drive': `Name a drive of the driveline that has a plane on the other shaft.`,
    circular: `Give one of these stacks a pin of its own: each now follows the other.`,
  };
  const base = {
    stack,
    rule: reason,
    items,
    value: length ?? items.length,
    limit: reason === 'negative-spacer' ? 0 : 1,
  };
  return {
    ...base,
    severity: 'stop',
    remedy: remedy[reason],
    source: derived('sums of lengths along the shaft'),
  };
}

const misfitFlaws = ({ stack }: FlawContext): readonly StackFlaw[] =>
  stack.misfits.map(({ between, excess }) => ({
    stack: stack.id,
    rule: 'misfit',
    items: between,
    value: excess,
    limit: AGREES_WITHIN,
    severity: 'stop',
    remedy:
      excess > 0
        ? `Shorten what lies between ${between[0]} and ${between[1]} by ${printMillimeters(excess, 0.01)}.`
        : `Add ${printMillimeters(-excess, 0.01)} between ${between[0]} and ${between[1]}.`,
    source: derived('sums of lengths along the shaft'),
  }));

function boreFlaws({ build, stack, entry }: FlawContext): readonly StackFlaw[] {
  const shaft = shaftDiameter(build, entry);
  if (shaft === undefined) return [];
  return entry.items.flatMap((item, i): readonly StackFlaw[] => {
    const bore = givenBore(build, entry, item);
    if (
      bore === undefined ||
      item.kind === 'nut' ||
      isEndWasher(entry, i) ||
      item.kind === 'clearance' ||
      bore >= shaft - EQUAL
    )
      return [];
    return [
      {
        stack: stack.id,
        rule: 'bore-under-shaft',
        items: [item.id],
        value: bore,
        limit: shaft,
        severity: 'stop',
        remedy: `Bore ${item.id} to ${printMillimeters(shaft, 0.01)}, or use one that fits.`,
        source: derived('bore against shaft'),
      },
    ];
  });
}

const sleeveFlaws = ({ stack }: FlawContext): readonly StackFlaw[] =>
  stack.sleeves.map(({ item, inside, outside, length }) => ({
    stack: stack.id,
    rule: 'needs-sleeve',
    items: [item],
    value: outside,
    limit: inside + SLIP,
    severity: 'caution',
    remedy: `Make a sleeve ${printMillimeters(outside, 0.01)} outside, ${printMillimeters(inside, 0.01)} inside, ${printMillimeters(length)} long: full length, no split, 0.05 to 0.1 mm slip.`,
    source: practice('sleeves full width, no split, slip fit'),
  }));

const spacerFlaws = ({ stack }: FlawContext): readonly StackFlaw[] =>
  stack.items
    .filter((item) => item.solved && item.length > EQUAL && item.length < THIN_SPACER)
    .map((item) => ({
      stack: stack.id,
      rule: 'thin-spacer',
      items: [item.id],
      value: item.length,
      limit: THIN_SPACER,
      severity: 'note',
      remedy: `Use shim washers of ${printMillimeters(item.length, 0.01)} in all, or lengthen the spacer beside it.`,
      source: practice('a spacer under 1 mm is a shim'),
    }));

function wheelFlaws({ build, stack, entry }: FlawContext): readonly StackFlaw[] {
  const wheel = wheelOn(build, entry.shaft);
  return stack.items.flatMap((item): readonly StackFlaw[] => {
    const rim = item.planes.find((plane) => plane.runs === 'rim');
    const base = { stack: stack.id, items: [item.id] };
    const wide = wheel === undefined || item.kind !== 'hub' ? 0 : item.length - wheel.hub.width;
    const isOff = rim !== undefined && Math.abs(rim.y) > RIM_CENTERED + EQUAL;
    return [
      ...(isOff
        ? [
            {
              ...base,
              rule: 'rim-off-center' as const,
              value: Math.abs(rim.y),
              limit: RIM_CENTERED,
              severity: 'caution' as const,
              remedy: `Move the wheel ${printMillimeters(Math.abs(rim.y))} to the ${rim.y > 0 ? 'right' : 'left'}: less spacer on one side, more on the other.`,
              source: practice('rim center to frame center within 1 mm'),
            },
          ]
        : []),
      ...(Math.abs(wide) > AGREES_WITHIN
        ? [
            {
              ...base,
              rule: 'hub-width' as const,
              value: item.length,
              limit: wheel!.hub.width,
              severity: 'caution' as const,
              remedy: `The stack and the wheel give the hub two widths: measure it over the faces that the spacers bear on.`,
              source: derived('one hub, one width'),
            },
          ]
        : []),
    ];
  });
}

/** A disc of a caliper whose place is fixed, whether or not the disc is pinned to it. */
function discFlaws({ build, stack }: FlawContext): readonly StackFlaw[] {
  return stack.items.flatMap((item) =>
    item.planes.flatMap((plane): readonly StackFlaw[] => {
      const brake = plane.brake === 'front' || plane.brake === 'rear' ? build.brakes[plane.brake] : undefined;
      if (brake?.kind !== 'disc' || brake.caliper.centerY === undefined) return [];
      const off = plane.y - brake.caliper.centerY;
      if (Math.abs(off) <= DISC_CENTERED + EQUAL) return [];
      return [
        {
          stack: stack.id,
          rule: 'disc-off-caliper',
          items: [item.id],
          value: Math.abs(off),
          limit: DISC_CENTERED,
          severity: 'stop',
          remedy: `Move the disc ${printMillimeters(Math.abs(off))} to the ${off > 0 ? 'right' : 'left'}, or shim the caliper.`,
          source: practice('disc centered in its caliper within 0.5 mm by shims'),
        },
      ];
    }),
  );
}

/** Shafts without an axle entry of their own: engine and driveline shafts, by the length that the file gives. */
function shaftFlaws({ build, stack, entry }: FlawContext): readonly StackFlaw[] {
  const shaft = entry.shaft === 'engine' ? build.engine.shaft : build.driveline.shafts[entry.shaft];
  const length = lengthOnShaft(
    entry,
    stack.items.map((item) => item.length),
  );
  if (entry.axle !== undefined || shaft?.length === undefined || length <= shaft.length + EQUAL) return [];
  return [
    {
      stack: stack.id,
      rule: 'shaft-too-short',
      items: stack.items.map((item) => item.id),
      value: length,
      limit: shaft.length,
      severity: 'caution',
      remedy: `What sits on the shaft is ${printMillimeters(length - shaft.length)} longer than the shaft: see what may stand over its end.`,
      source: derived('sum of lengths against the shaft'),
    },
  ];
}

function planeFlaws(build: Build, stacks: Readonly<Record<string, PlacedStack>>): readonly StackFlaw[] {
  return build.driveline.stages.flatMap((stage) => {
    if (stage.kind === 'clutch') return [];
    return [stage.from, stage.to]
      .filter((shaft) => planeOn(stacks, shaft, stage.id) === undefined)
      .map(
        (shaft): StackFlaw => ({
          stack: Object.values(stacks).find((stack) => stack.shaft === shaft)?.id ?? shaft,
          rule: 'no-plane',
          items: [stage.id],
          value: 0,
          limit: 1,
          severity: 'caution',
          remedy: `Give a sprocket or sheave on shaft ${shaft} a plane for drive ${stage.id}; without it the line cannot be checked.`,
          source: derived('a line has two ends'),
        }),
      );
  });
}
