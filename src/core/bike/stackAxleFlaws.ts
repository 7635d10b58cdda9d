import { derived, practice, printMillimeters } from '../quantity/index.ts';
import type { PlacedItem } from './bike.ts';
import { threadWanted } from './stackAxle.ts';
import type { FlawContext, StackFlaw } from './stackFlaw.ts';

/** Lengths this near are equal [m]. */
const EQUAL = 1e-9;

/** What a thread spoils: what locates on the axle, and, less so, what clamps on it. */
const SPOILED_BY_THREAD: Readonly<Partial<Record<PlacedItem['kind'], StackFlaw['severity']>>> = {
  bearing: 'caution',
  hub: 'caution',
  sprocket: 'caution',
  disc: 'caution',
  plate: 'note',
  leg: 'note',
};

/** The two ends of an axle with the items next to them, outermost first. */
function axleEnds({ stack, entry }: FlawContext) {
  const axle = stack.axle;
  if (axle === undefined || entry.axle === undefined) return [];
  const { items } = stack;
  return [
    {
      end: 'left',
      outermost: items[0]!,
      out: axle.outLeft,
      thread: entry.axle.threadLeft,
      axle,
      tip: axle.left,
      sign: 1,
    },
    {
      end: 'right',
      outermost: items[items.length - 1]!,
      out: axle.outRight,
      thread: entry.axle.threadRight,
      axle,
      tip: axle.right,
      sign: -1,
    },
  ] as const;
}

/** An axle that ends too soon for its nut. */
export function axleFlaws(context: FlawContext): readonly StackFlaw[] {
  return axleEnds(context).flatMap(({ end, outermost, out, thread, axle }): readonly StackFlaw[] => {
    const wanted = threadWanted(outermost.kind === 'nut', thread ?? 0, axle.diameter, axle.pitch);
    if (out >= wanted - EQUAL) return [];
    const isShort = out < -EQUAL;
    const missing = printMillimeters(wanted - out);
    const nut =
      wanted > 0 ? 'a locknut with full thread and two threads showing' : `${outermost.id} stands past it`;
    return [
      {
        stack: context.stack.id,
        rule: isShort ? 'axle-too-short' : 'thread-out',
        items: [outermost.id],
        value: out,
        limit: wanted,
        severity: isShort && wanted > 0 ? 'stop' : 'caution',
        remedy: `The ${end} end wants ${missing} more axle: ${nut}.`,
        source: practice('locknut with full thread plus 2 threads showing'),
      },
    ];
  });
}

/** Thread that ends before its nut is home, or runs on into what it would chew. */
export function threadFlaws(context: FlawContext): readonly StackFlaw[] {
  return axleEnds(context).flatMap(({ outermost, thread, axle, tip, sign }) => {
    if (thread === undefined || thread === 0) return [];
    // Depths inward from the tip of the axle.
    const depth = (y: number) => (tip - y) * sign;
    const near = (item: PlacedItem) => depth(sign > 0 ? item.left : item.right);
    const far = (item: PlacedItem) => depth(sign > 0 ? item.right : item.left);
    return [
      ...(outermost.kind === 'nut' && far(outermost) > thread + EQUAL
        ? [nutFlaw(context, outermost, far(outermost), thread)]
        : []),
      ...context.stack.items.flatMap((item) => {
        const overlap = Math.min(far(item), thread) - Math.max(near(item), 0);
        const severity = SPOILED_BY_THREAD[item.kind];
        if (severity === undefined || overlap <= axle.pitch + EQUAL) return [];
        return [{ ...inBearingFlaw(context, item, overlap, axle.pitch), severity }];
      }),
    ];
  });
}

const nutFlaw = ({ stack }: FlawContext, nut: PlacedItem, value: number, limit: number): StackFlaw => ({
  stack: stack.id,
  rule: 'nut-off-thread',
  items: [nut.id],
  value,
  limit,
  severity: 'stop',
  remedy: `The nut runs out of thread ${printMillimeters(value - limit)} before it is home: cut more thread or add a washer.`,
  source: derived('thread length against the stack'),
});

const inBearingFlaw = (
  { stack }: FlawContext,
  item: PlacedItem,
  value: number,
  limit: number,
): Omit<StackFlaw, 'severity'> => ({
  stack: stack.id,
  rule: 'thread-in-bearing',
  items: [item.id],
  value,
  limit,
  remedy: `Thread runs ${printMillimeters(value)} into ${item.id}: use an axle with a longer plain shank there.`,
  source: practice('no more than one thread inside a bearing or plate'),
});
