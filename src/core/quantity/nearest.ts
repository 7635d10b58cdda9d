/** Longer names are compared by their start only, so that a hostile file costs no time. */
const LONGEST_COMPARED = 64;

/** The known name that `given` most likely means, or undefined when none is close. */
export function nearestName(given: string, known: readonly string[]): string | undefined {
  const wanted = plain(given);
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of known) {
    const distance = editDistance(wanted, plain(name));
    if (distance < bestDistance) [best, bestDistance] = [name, distance];
  }
  if (best === undefined) return undefined;
  // A third of the letters may be wrong; of a one- or two-letter name, one.
  const allowed = Math.max(1, Math.floor(Math.max(wanted.length, plain(best).length) / 3));
  return bestDistance <= allowed && bestDistance < wanted.length ? best : undefined;
}

/** Insertions, deletions, replacements and swaps of neighbors that turn `a` into `b` (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const replaced = last[column - 1]! + (a[row - 1] === b[column - 1] ? 0 : 1);
      let cost = Math.min(last[column]! + 1, current[column - 1]! + 1, replaced);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) cost = Math.min(cost, beforeLast[column - 2]! + 1);
      current.push(cost);
    }
    [beforeLast, last] = [last, current];
  }
  return last[b.length]!;
}

/** Case and word separators do not make another name: `head-angle`, `headAngle`. */
const plain = (name: string): string =>
  name
    .slice(0, LONGEST_COMPARED)
    .toLowerCase()
    .replace(/[\s_-]/g, '');
