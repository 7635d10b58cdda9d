/** What is spread: a label that would like its middle at `wanted` and is `size` long. */
export interface SpreadLabel {
  readonly wanted: number;
  readonly size: number;
}

/** Room for all labels; left out, they may spread as far as they need. */
export interface SpreadRange {
  readonly min: number;
  readonly max: number;
}

/**
 * Middles for labels along a line so that no two come closer than `gap`, in the order of `wanted` (ties in the
 * order given), with the least sum of squared moves (pool adjacent violators: labels that collide form a block
 * that sits at the mean of what its members want). With a range the blocks are pushed inside it; when the labels
 * are longer than the range, they overrun `max`.
 * @returns one middle per label, in the order given
 */
export function spreadLabels(
  labels: readonly SpreadLabel[],
  gap: number,
  range?: SpreadRange,
): readonly number[] {
  const order = labels.map((_, i) => i).sort((a, b) => at(labels, a).wanted - at(labels, b).wanted || a - b);
  const offsets: number[] = [];
  let run = 0;
  order.forEach((index, place) => {
    const half = at(labels, index).size / 2;
    if (place > 0) run += gap + half;
    offsets.push(run);
    run += half;
  });
  // With the offsets taken off, "no overlap" is "never falling", which pooling solves exactly.
  const blocks: { sum: number; count: number }[] = [];
  order.forEach((index, place) => {
    blocks.push({ sum: at(labels, index).wanted - at(offsets, place), count: 1 });
    while (blocks.length > 1 && mean(at(blocks, blocks.length - 2)) >= mean(at(blocks, blocks.length - 1))) {
      const last = blocks.pop() as { sum: number; count: number };
      const before = at(blocks, blocks.length - 1);
      blocks[blocks.length - 1] = { sum: before.sum + last.sum, count: before.count + last.count };
    }
  });
  const bases = blocks.flatMap((block) => new Array<number>(block.count).fill(mean(block)));
  const limit = rangeOfBases(
    order.map((i) => at(labels, i).size),
    offsets,
    range,
  );
  const middles = new Array<number>(labels.length).fill(0);
  order.forEach((index, place) => {
    middles[index] = Math.max(limit.min, Math.min(limit.max, at(bases, place))) + at(offsets, place);
  });
  return middles;
}

function rangeOfBases(
  sizes: readonly number[],
  offsets: readonly number[],
  range?: SpreadRange,
): SpreadRange {
  const last = sizes.length - 1;
  if (range === undefined || last < 0) return { min: -Infinity, max: Infinity };
  const min = range.min + at(sizes, 0) / 2;
  const max = range.max - at(sizes, last) / 2 - at(offsets, last);
  return { min, max: Math.max(min, max) };
}

const mean = (block: { readonly sum: number; readonly count: number }): number => block.sum / block.count;

function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
