import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import { integrate } from './gaussLegendre.ts';

/**
 * How a round branch tube meets a round trunk tube. The axes cross at `angle`; `offset` is the distance between them.
 * Around the branch, φ = 0 is the heel (the obtuse side), φ = π the crotch (the acute side), φ = π/2 the side
 * toward which the branch is offset; φ runs clockwise as seen from the branch's far end toward the trunk.
 */
export interface CopeJoint {
  /** r, outside radius of the branch [m], > 0. */
  readonly branchRadius: number;
  /** Wall of the branch [m], 0 < wall < r; gives the inside line. */
  readonly wall?: number;
  /** R, outside radius of the trunk [m], > 0. */
  readonly trunkRadius: number;
  /** θ, angle between the axes [rad], 0 < θ < π; π/2 is square. */
  readonly angle: number;
  /** e, offset of the branch axis from the trunk axis [m], |e| + r ≤ R. */
  readonly offset: number;
}

/** A point of a cope: where around the branch and how far along its axis. */
export interface CopeOrdinate {
  /** φ [rad], 0 to 2π. */
  readonly around: number;
  /** s, distance along the branch axis from the trunk's axis plane [m]; a larger s is a shorter wall. */
  readonly position: number;
}

export interface CopeProfile {
  /** The cut on the branch's outside, φ from 0 to 2π in equal steps, both ends given. */
  readonly outside: readonly CopeOrdinate[];
  /** The cut on the branch's inside, at the same φ; empty without a wall. */
  readonly inside: readonly CopeOrdinate[];
  /**
   * Cut square through the wall that touches the trunk and nowhere enters it: at each φ the largest s over the wall's
   * thickness. The outside line when there is no wall.
   */
  readonly controlling: readonly CopeOrdinate[];
  /** Longest wall: least s of the outside line. */
  readonly lowest: CopeOrdinate;
  /** Shortest wall: greatest s of the outside line. */
  readonly highest: CopeOrdinate;
  /** Cut depth, greatest less least s of the outside line [m]. */
  readonly depth: number;
  /** Length of the joint on the outside, along the curve in space [m]. */
  readonly jointLength: number;
}

const TURN = 2 * Math.PI;
const DEGREE = Math.PI / 180;
/** Ordinates at least every 5° around the tube. */
const LARGEST_STEP = 5 * DEGREE;
/** Sizes nearer than this are equal: 1 in and 25.4 mm may differ in their last digit [m]. */
const SAME_SIZE = 1e-9;
/** Steps of the search for least and greatest s; its curve has at most four turning points. */
const SEARCH_STEPS = 720;

/**
 * s(φ) = [√(R² − (e + ρ·sin φ)²) − ρ·cos φ·cos θ] / sin θ at radius ρ in the branch's wall [m].
 * R − e − ρ·sin φ is taken as (R − e − ρ) + 2ρ·sin²((π/2 − φ)/2), and its partner likewise, so that equal tubes lose no digits.
 * @source derived, circular saddle: cylinder y² + z² = R² on a line parallel to the branch axis
 */
export function copePosition(joint: CopeJoint, around: number, radius: number = joint.branchRadius): number {
  const { trunkRadius: R, angle, offset: e } = joint;
  return (
    (Math.sqrt(halfChordSquared(R, e, radius, around)) - radius * Math.cos(around) * cosine(angle)) /
    Math.sin(angle)
  );
}

/**
 * The unwrapped cope of a branch on a trunk: ordinates at least every `step` [rad, at most 5°], least and greatest s,
 * cut depth and joint length.
 * @issue conflict — a size, wall or angle that is no tube or no joint, a branch wider than the trunk, an offset that
 * carries the branch past the trunk's side
 * @source derived, circular saddle; checked against a direct intersection in space
 */
export function copeProfile(joint: CopeJoint, step: number = LARGEST_STEP): Outcome<CopeProfile> {
  const [first, ...rest] = copeIssues(joint);
  if (first) return bad(first, ...rest);
  if (!(step > 0)) throw new RangeError('the step around the tube must be above 0');
  const count = Math.ceil(TURN / Math.min(step, LARGEST_STEP) - 1e-9);
  const arounds = Array.from({ length: count + 1 }, (_, k) => (TURN * k) / count);
  const line = (at: (around: number) => number): CopeOrdinate[] =>
    arounds.map((around) => ({ around, position: at(around) }));
  const { lowest, highest } = copeExtremes(joint);
  const { wall } = joint;
  return good({
    outside: line((phi) => copePosition(joint, phi)),
    inside: wall === undefined ? [] : line((phi) => copePosition(joint, phi, joint.branchRadius - wall)),
    controlling: line((phi) => controllingPosition(joint, phi)),
    lowest,
    highest,
    depth: highest.position - lowest.position,
    jointLength: jointLength(joint),
  });
}

/**
 * Largest s over the wall's thickness at φ [m]. s is concave in ρ, so the largest is at the inside, at the outside, or
 * where e + ρ·sin φ = −R·k/√(1 + k²) with k = cos φ·cos θ / sin φ.
 */
export function controllingPosition(joint: CopeJoint, around: number): number {
  const { branchRadius, wall, trunkRadius, angle, offset } = joint;
  if (wall === undefined) return copePosition(joint, around);
  const inner = branchRadius - wall;
  const radii = [inner, branchRadius];
  const sin = Math.sin(around);
  if (Math.abs(sin) > 1e-12) {
    const k = (Math.cos(around) * cosine(angle)) / sin;
    const turning = ((-trunkRadius * k) / Math.hypot(1, k) - offset) / sin;
    if (turning > inner && turning < branchRadius) radii.push(turning);
  }
  return Math.max(...radii.map((radius) => copePosition(joint, around, radius)));
}

/** Why a joint can't be coped; empty when it can. */
export function copeIssues(joint: CopeJoint): Issue[] {
  const { branchRadius: r, wall, trunkRadius: R, angle, offset } = joint;
  const issues: Issue[] = [];
  const refuse = (path: string, reason: string): void => {
    issues.push({ code: 'conflict', path, reason });
  };
  if (!(r > 0 && Number.isFinite(r))) refuse('branchRadius', 'a branch tube needs a diameter above 0');
  if (!(R > 0 && Number.isFinite(R))) refuse('trunkRadius', 'a trunk tube needs a diameter above 0');
  if (!(angle > 0 && angle < Math.PI))
    refuse('angle', 'the axes must cross at an angle above 0° and below 180°');
  if (!Number.isFinite(offset)) refuse('offset', 'the offset must be a number');
  if (wall !== undefined && !(wall > 0 && wall < r)) {
    refuse('wall', `the wall must be above 0 and below the branch's radius of ${text(r)}`);
  }
  if (issues.length > 0) return issues;
  if (r > R + SAME_SIZE) {
    refuse(
      'branchRadius',
      `a branch of ${text(2 * r)} is wider than the trunk of ${text(2 * R)}; cope the wider tube's partner instead`,
    );
  } else if (Math.abs(offset) + r > R + SAME_SIZE) {
    refuse(
      'offset',
      `at an offset of ${text(offset)} the branch of ${text(2 * r)} passes the side of the trunk of ${text(2 * R)}; the offset can be ${text(R - r)} at most`,
    );
  }
  return issues;
}

const text = (meters: number): string => `${Number((meters * 1e3).toFixed(3))} mm`;

// cos(π/2) is 6e-17 in floating point, which would tilt a square joint.
const cosine = (angle: number): number => (angle === Math.PI / 2 ? 0 : Math.cos(angle));

/** R² − (e + ρ·sin φ)² without cancellation. */
function halfChordSquared(R: number, e: number, radius: number, around: number): number {
  // Both gaps are 0 or more for a joint that passed copeIssues, but for rounding.
  const plus = Math.max(0, R - e - radius) + 2 * radius * Math.sin((Math.PI / 2 - around) / 2) ** 2;
  const minus = Math.max(0, R + e - radius) + 2 * radius * Math.sin((Math.PI / 2 + around) / 2) ** 2;
  return plus * minus;
}

/** sin θ · ds/dφ of the outside line; undefined only where the root is 0 (branch grazing the trunk's side). */
function slope(joint: CopeJoint, around: number): number {
  const { branchRadius: r, trunkRadius: R, angle, offset: e } = joint;
  const root = Math.sqrt(halfChordSquared(R, e, r, around));
  const side = (e + r * Math.sin(around)) * r * Math.cos(around);
  return (root > 0 ? -side / root : 0) + r * Math.sin(around) * cosine(angle);
}

/** Least and greatest s of the outside line: turning points found by bisecting the sign changes of ds/dφ. */
function copeExtremes(joint: CopeJoint): { readonly lowest: CopeOrdinate; readonly highest: CopeOrdinate } {
  const at = (around: number): CopeOrdinate => ({ around, position: copePosition(joint, around) });
  let lowest = at(0);
  let highest = lowest;
  const consider = (candidate: CopeOrdinate): void => {
    if (candidate.position < lowest.position) lowest = candidate;
    if (candidate.position > highest.position) highest = candidate;
  };
  for (let k = 0; k < SEARCH_STEPS; k++) {
    const a = (TURN * k) / SEARCH_STEPS;
    const b = (TURN * (k + 1)) / SEARCH_STEPS;
    consider(at(a));
    if (slope(joint, a) * slope(joint, b) < 0) consider(at(bisect((phi) => slope(joint, phi), a, b)));
  }
  return { lowest, highest };
}

function bisect(f: (t: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  const sign = Math.sign(f(a));
  for (let k = 0; k < 60; k++) {
    const middle = (a + b) / 2;
    if (Math.sign(f(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** ∫ √(r² + s'²) dφ, cut at the quarters, where the curve has its kinks when the tubes are equal. */
function jointLength(joint: CopeJoint): number {
  const { branchRadius: r, angle } = joint;
  const speed = (phi: number): number => Math.hypot(r, slope(joint, phi) / Math.sin(angle));
  const quarters = [0, 1, 2, 3].map((k) =>
    integrate(speed, (k * Math.PI) / 2, ((k + 1) * Math.PI) / 2, r * 1e-12),
  );
  return quarters.reduce((sum, part) => sum + part, 0);
}
