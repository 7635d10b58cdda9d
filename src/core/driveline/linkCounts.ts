/** Within this of a whole count the length is met as it stands; 1e-9 of a link is far below any play. */
const WHOLE = 1e-9;

export interface LinkCountQuestion {
  /** L at the wanted center, not rounded, > 0. */
  readonly exactLinks: number;
  /** Take odd counts too, closed with an offset link. */
  readonly offsetLinks?: boolean;
  /** How many counts on each side of the wanted one. */
  readonly eachSide: number;
}

/**
 * The chain lengths that can be made up around a wanted one, in rising order: even counts, or with an offset
 * link every count. The count just below (or met exactly) and the one above are its neighbors.
 * @returns whole link counts, > 0
 * @source derived, inner and outer links alternate, so a plain chain closes on an even count
 */
export function linkCountsAround(question: LinkCountQuestion): readonly number[] {
  const step = question.offsetLinks ? 1 : 2;
  const below = step * Math.floor(question.exactLinks / step + WHOLE);
  const counts = [];
  for (let offset = 1 - question.eachSide; offset <= question.eachSide; offset += 1) {
    const links = below + offset * step;
    if (links > 0) counts.push(links);
  }
  return counts;
}

/**
 * Greatest common divisor: how evenly teeth and links share their wear.
 * @source derived, Euclid's algorithm
 */
export function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
