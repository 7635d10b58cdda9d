import type { Build, StackEntry } from '../build/index.ts';
import type { LadderStep, Layout, PlacedItem, PlacedStack } from './bike.ts';

/** Steps shorter than this are rounding, not steps [m]. */
const NO_STEP = 1e-12;

/** Where a stack is measured from: an item and a plane in it, and how that plane is reached from the center plane. */
interface Anchor {
  readonly item: number;
  readonly y: number;
  readonly says: string;
  readonly lead: readonly { readonly label: string; readonly to: number }[];
}

export interface StepsInput {
  readonly build: Build;
  readonly layout: Layout;
  readonly stack: PlacedStack;
  /** Index of the item with the plane, the plane's name in words and its Y [m]. */
  readonly item: number;
  readonly plane: string;
  readonly y: number;
  /** A drive whose plane is wanted cannot be what it is measured from. */
  readonly drive: string;
}

/**
 * The lengths from the bike's center plane out to a plane, in the order in which a person adds them: rim center or
 * engine face first, then item by item. Lengths count toward the plane's side, so that their sum is its distance
 * from the center plane.
 * @source derived, sums of lengths along the shaft
 */
export function stepsTo(input: StepsInput): readonly LadderStep[] {
  const anchor = anchorOf(input);
  const side = input.y < 0 ? -1 : 1;
  const steps: LadderStep[] = [];
  let from = 0;
  const go = (label: string, to: number, item?: PlacedItem) => {
    if (Math.abs(to - from) > NO_STEP || item?.solved) steps.push(stepOf({ label, from, to, side, item }));
    from = to;
  };
  for (const { label, to } of anchor.lead) go(label, to);
  walk(input, anchor, go);
  return steps;
}

type Go = (label: string, to: number, item?: PlacedItem) => void;

function walk({ stack, item: wanted, plane, y }: StepsInput, anchor: Anchor, go: Go): void {
  const items = stack.items;
  const start = items[anchor.item]!;
  const end = items[wanted]!;
  if (anchor.item === wanted) {
    go(`${words(end)}, ${anchor.says} to ${plane}`, y, end);
    return;
  }
  const isLeft = wanted < anchor.item;
  const [out, back] = isLeft ? (['left', 'right'] as const) : (['right', 'left'] as const);
  go(`${words(start)}, ${anchor.says} to ${out} face`, start[out], start);
  const way = isLeft ? -1 : 1;
  for (let i = anchor.item + way; i !== wanted; i += way) go(words(items[i]!), items[i]![out], items[i]);
  go(`${words(end)}, ${back} face to ${plane}`, y, end);
}

function stepOf(step: {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly side: number;
  readonly item: PlacedItem | undefined;
}): LadderStep {
  const { label, from, to, side, item } = step;
  return {
    label,
    length: (to - from) * side,
    from,
    to,
    ...(item === undefined ? {} : { part: item.id }),
    ...(item?.solved ? { solved: true } : {}),
  };
}

/** The firmest thing in the stack: rim, engine face, a placed face, another drive's line, else its first face. */
function anchorOf(input: StepsInput): Anchor {
  return (
    rimAnchor(input) ?? engineAnchor(input) ?? placedAnchor(input) ?? lineAnchor(input) ?? freeAnchor(input)
  );
}

function rimAnchor({ stack }: StepsInput): Anchor | undefined {
  const item = stack.items.findIndex((one) => one.planes.some((plane) => plane.runs === 'rim'));
  const y = stack.items[item]?.planes.find((plane) => plane.runs === 'rim')?.y;
  if (y === undefined) return undefined;
  return { item, y, says: 'rim center', lead: [{ label: 'center plane to rim center', to: y }] };
}

function engineAnchor(input: StepsInput): Anchor | undefined {
  const { build, layout, stack } = input;
  const item = entryOf(input).items.findIndex((one) => one.pin?.to === 'engine-face');
  const face = stack.items[item];
  if (face === undefined) return undefined;
  const middle = layout.points.engineBase?.y ?? 0;
  const y = build.engine.shaft.side === 'left' ? face.right : face.left;
  return {
    item,
    y,
    says: 'engine face',
    lead: [
      { label: 'center plane to engine mount center', to: middle },
      { label: 'engine mount center to engine face', to: y },
    ],
  };
}

function placedAnchor(input: StepsInput): Anchor | undefined {
  const { stack, item: wanted } = input;
  const placed = entryOf(input).items.flatMap((one, i) =>
    one.pin?.to === 'place' ? [{ i, pin: one.pin }] : [],
  );
  const [nearest] = placed.sort((a, b) => Math.abs(a.i - wanted) - Math.abs(b.i - wanted));
  const item = nearest && stack.items[nearest.i];
  if (nearest === undefined || item === undefined) return undefined;
  const { feature } = nearest.pin;
  const y =
    feature === 'left-face'
      ? item.left
      : feature === 'right-face'
        ? item.right
        : (item.left + item.right) / 2;
  const says = feature.replace('-', ' ');
  return { item: nearest.i, y, says, lead: [{ label: `center plane to ${says} of ${words(item)}`, to: y }] };
}

function lineAnchor(input: StepsInput): Anchor | undefined {
  const { stack, drive } = input;
  for (const [item, one] of entryOf(input).items.entries()) {
    if (one.pin?.to !== 'in-line' || one.pin.drive === drive) continue;
    const other = one.pin.drive;
    const y = stack.items[item]?.planes.find((plane) => plane.drive === other)?.y;
    if (y !== undefined)
      return {
        item,
        y,
        says: `line of ${other}`,
        lead: [{ label: `center plane to line of ${other}`, to: y }],
      };
  }
  return undefined;
}

function freeAnchor({ stack }: StepsInput): Anchor {
  const first = stack.items[0]!;
  return {
    item: 0,
    y: first.left,
    says: 'left face',
    lead: [{ label: `center plane to left face of ${words(first)}`, to: first.left }],
  };
}

const entryOf = ({ build, stack }: StepsInput): StackEntry => build.stacks[stack.id]!;

/** Names are written with hyphens in the file and with spaces on a drawing. */
const words = (item: PlacedItem): string => item.id.replaceAll('-', ' ');
