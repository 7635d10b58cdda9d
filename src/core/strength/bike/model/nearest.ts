import { distance3, type Point3 } from '../../../geometry/index.ts';
import type { DraftLine } from './draft.ts';

/** The place of a line nearest to a point. */
export interface NearestPlace {
  /** [m] along the line */
  readonly at: number;
  /** From the line's middle [m]. */
  readonly distance: number;
}

const STEP = 0.01;
const ROUNDS = 30;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Nearest place on a line: coarse steps of 10 mm, then narrowed to a micrometer. */
export function nearestOnLine(line: DraftLine, point: Point3): NearestPlace {
  const count = Math.max(2, Math.ceil(line.length / STEP));
  const to = (s: number): number => distance3(line.at(Math.min(Math.max(s, 0), line.length)), point);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const d = to((line.length * k) / count);
    if (d < least) [best, least] = [k, d];
  }
  let low = (line.length * Math.max(best - 1, 0)) / count;
  let high = (line.length * Math.min(best + 1, count)) / count;
  for (let round = 0; round < ROUNDS; round++) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (to(a) <= to(b)) high = b;
    else low = a;
  }
  const at = (low + high) / 2;
  return { at, distance: to(at) };
}
