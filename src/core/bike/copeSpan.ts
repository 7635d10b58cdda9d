import { type CopeJoint, copeIssues, copePosition } from '../geometry/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';

/** How far a cope reaches along its branch, from the trunk's axis plane [m]. */
export interface CopeSpan {
  /** Least s of the cut: the longest wall. */
  readonly least: number;
  /** Greatest s: the shortest wall. */
  readonly greatest: number;
  /** Mean s around the branch: where the tube ends for its mass. */
  readonly mean: number;
}

const TURN = 2 * Math.PI;
/** Turning points of a saddle lie a quarter turn apart, so that one of them at most lies within two steps. */
const STEPS = 72;
const STEP = TURN / STEPS;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Narrowings of two steps by the golden section: to under 1e-8 of a radian, in s far under a nanometer. */
const NARROWINGS = 34;

/**
 * Least, greatest and mean position of a cope, without its ordinates: a solve asks this of every tube end.
 * @issue the issues of `copeProfile`
 * @source derived, circular saddle
 */
export function copeSpan(joint: CopeJoint): Outcome<CopeSpan> {
  const [first, ...more] = copeIssues(joint);
  if (first) return bad(first, ...more);
  const at = (around: number): number => copePosition(joint, around);
  const ring = Array.from({ length: STEPS }, (_, k) => at(k * STEP));
  const nearest = (value: number): number => ring.indexOf(value) * STEP;
  return good({
    least: leastNear(at, nearest(Math.min(...ring))),
    greatest: -leastNear((around) => -at(around), nearest(Math.max(...ring))),
    mean: ring.reduce((sum, position) => sum + position, 0) / STEPS,
  });
}

/** Least value within a step of `around`, by golden section; kinks do not disturb it. */
function leastNear(of: (around: number) => number, around: number): number {
  let [low, high] = [around - STEP, around + STEP];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [of(a), of(b)];
  for (let k = 0; k < NARROWINGS; k++) {
    if (atA <= atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = of(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = of(b);
    }
  }
  return Math.min(of(around), atA, atB);
}
