import type { Build, StackEntry, StackItem } from '../build/index.ts';
import type { PlacedItem, PlacedStack } from './bike.ts';
import { givenBore, shaftDiameter } from './stackSizes.ts';

/** Thread pitch where the file gives none [m]: that of an M10 to M12 axle, within a quarter of the finer ones. */
export const USUAL_PITCH = 1.5e-3;

/** Threads that show beyond a locknut: the locking part has then a full thread in it. Practice. */
export const THREADS_SHOWING = 2;

/** Height of a hex nut as a multiple of the thread, where the file has no nut in the stack. Practice: 0.8 to 1. */
const NUT_PER_DIAMETER = 0.9;

/** How loose a bore may be before it wants a sleeve [m]. A sleeve itself is a slip fit of 0.05 to 0.1 mm. */
export const SLIP = 0.1e-3;

/** Slots and holes of plates are left this much over the axle on purpose [m]. */
export const SLOT_OVER_AXLE = 0.5e-3;

/** What locates on the axle by its bore; of the others only the length matters. */
const LOCATED: readonly StackItem['kind'][] = [
  'hub',
  'bearing',
  'sprocket',
  'sheave',
  'clutch',
  'disc',
  'collar',
];
const SLOTTED: readonly StackItem['kind'][] = ['plate', 'leg', 'adjuster'];

type Axle = NonNullable<PlacedStack['axle']>;

/** The axle of a stack across its placed items; nothing where the file has no axle. */
export function placeAxle(entry: StackEntry, items: readonly PlacedItem[]): Axle | undefined {
  const axle = entry.axle;
  const [first, last] = [items[0], items[items.length - 1]];
  if (axle === undefined || first === undefined || last === undefined) return undefined;
  const pitch = axle.pitch ?? USUAL_PITCH;
  const outLeft =
    axle.leftEnd ?? threadWanted(first.kind === 'nut', axle.threadLeft ?? 0, axle.diameter, pitch);
  const left = first.left + outLeft;
  const right = left - axle.length;
  return {
    diameter: axle.diameter,
    length: axle.length,
    left,
    right,
    threadLeft: axle.threadLeft ?? 0,
    threadRight: axle.threadRight ?? 0,
    pitch,
    outLeft,
    outRight: last.right - right,
  };
}

/** How far a threaded end stands out: two threads beyond a nut that is in the stack, or beyond one that is not; a head has none. */
export function threadWanted(hasNut: boolean, thread: number, diameter: number, pitch: number): number {
  if (hasNut) return THREADS_SHOWING * pitch;
  return thread > 0 ? NUT_PER_DIAMETER * diameter + THREADS_SHOWING * pitch : 0;
}

/** How much larger than the axle a bore may be before a sleeve is wanted [m]; undefined for what does not locate. */
export function looseLimit(kind: StackItem['kind']): number | undefined {
  if (LOCATED.includes(kind)) return SLIP;
  return SLOTTED.includes(kind) ? SLOT_OVER_AXLE : undefined;
}

/** Sleeves between bores and a thinner axle: inside = axle, outside = bore, full length of the item, no split. */
export function sleevesOf(
  build: Build,
  entry: StackEntry,
  items: readonly PlacedItem[],
): PlacedStack['sleeves'] {
  const inside = shaftDiameter(build, entry);
  if (inside === undefined) return [];
  return entry.items.flatMap((item, i) => {
    const bore = givenBore(build, entry, item);
    const limit = looseLimit(item.kind);
    if (bore === undefined || limit === undefined || bore - inside <= limit + 1e-9) return [];
    return [{ item: item.id, inside, outside: bore, length: items[i]?.length ?? 0 }];
  });
}

/** True for a washer that a bolt holds on the end of a shaft: it neither goes over the shaft nor needs its length. */
export function isEndWasher({ axle, items }: StackEntry, index: number): boolean {
  const isAtEnd = index === 0 || index === items.length - 1;
  return axle === undefined && isAtEnd && items[index]?.kind === 'washer';
}

/** Length of shaft that the items of a stack take up [m]. */
export function lengthOnShaft(entry: StackEntry, lengths: readonly number[]): number {
  return lengths.reduce((sum, length, i) => (isEndWasher(entry, i) ? sum : sum + length), 0);
}
