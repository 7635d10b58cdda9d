import { type ComplexRoot, complexRoots, findRoot, polynomialAt } from '../numerics/index.ts';
import type { WhippleMatrices } from './whipple.ts';

/** Speeds at which the character of the motion changes; absent where there is no such speed. */
export interface WhippleSpeeds {
  /** Lowest speed at which an oscillating pair crosses from growing to dying away or back [m/s]. */
  readonly weave?: number;
  /** Every such speed, rising [m/s]. */
  readonly weaveCrossings: readonly number[];
  /** Speed at which a real root is 0: above it the bike slowly falls into a turn [m/s]. */
  readonly capsize?: number;
  /** Speed at which two real roots first meet and begin to oscillate [m/s], and the root there [1/s]. */
  readonly doubleRoot?: { readonly speed: number; readonly root: number };
  /** Speeds at which every disturbance dies away by itself [m/s]; `to` absent: no upper end. */
  readonly selfStable: readonly { readonly from: number; readonly to?: number }[];
}

/** Eigenvalues of one speed under the names of their modes. */
export interface WhippleModes {
  /** The most negative real root. */
  readonly castering?: number;
  /** The other real root. */
  readonly capsize?: number;
  /** The oscillating pair, or the pair of real roots that it is made of at low speed. */
  readonly weave: readonly [ComplexRoot, ComplexRoot];
}

/** Speeds searched for the double root [m/s], and their step: a small bike's lies below 3 m/s. */
const SEARCH = { to: 40, step: 0.02 };
const SPEED_TOLERANCE = 1e-14;

/**
 * Coefficients of det(M·λ² + v·C1·λ + g·K0 + v²·K2), by rising power of λ.
 * @param speed v [m/s]
 * @source derived, determinant of a 2×2 matrix polynomial
 */
export function characteristic(
  m: WhippleMatrices,
  speed: number,
): readonly [number, number, number, number, number] {
  const c = coefficients(m);
  const s = speed * speed;
  return [
    c.a0[0] + s * c.a0[1] + s * s * c.a0[2],
    speed * (c.a1[0] + s * c.a1[1]),
    c.a2[0] + s * c.a2[1],
    speed * c.a3,
    c.a4,
  ];
}

/**
 * The four eigenvalues λ of q = q₀·e^(λt) at a speed, by falling real part, then falling imaginary part.
 * @param speed v [m/s]
 * @source derived, roots of the characteristic polynomial
 */
export function whippleEigenvalues(m: WhippleMatrices, speed: number): readonly ComplexRoot[] {
  return complexRoots(characteristic(m, speed));
}

/**
 * Names for the four eigenvalues of a speed: castering the most negative real one, capsize the real one next to it,
 * weave the two that are left. At speeds with two oscillating pairs the faster one is weave and no real mode is named.
 * @source whipple-2007, names of the modes
 */
export function whippleModes(eigenvalues: readonly ComplexRoot[]): WhippleModes {
  const real = eigenvalues.filter((root) => root.im === 0).sort((a, b) => a.re - b.re);
  const [castering, capsize, ...growing] = real;
  const pairs = eigenvalues.filter((root) => root.im > 0).sort((a, b) => b.im - a.im);
  const pair = pairs[0];
  const weave: readonly [ComplexRoot, ComplexRoot] = pair
    ? [pair, { re: pair.re, im: -pair.im }]
    : [growing.at(-1)!, growing[0]!];
  return castering && capsize ? { castering: castering.re, capsize: capsize.re, weave } : { weave };
}

/**
 * Weave speed from Routh's condition a1·a2·a3 = a0·a3² + a4·a1², which is quadratic in v², with a1/a3 > 0 (the pair
 * lies on the imaginary axis); capsize speed from det(g·K0 + v²·K2) = 0; double root from the discriminant.
 * @source whipple-2007, weave and capsize speed; derived, Routh-Hurwitz
 */
export function whippleSpeeds(m: WhippleMatrices): WhippleSpeeds {
  const weaveCrossings = weaveSpeeds(m);
  const capsize = capsizeSpeed(m);
  const doubleRoot = doubleRootSpeed(m);
  return {
    ...(weaveCrossings[0] === undefined ? {} : { weave: weaveCrossings[0] }),
    weaveCrossings,
    ...(capsize === undefined ? {} : { capsize }),
    ...(doubleRoot === undefined ? {} : { doubleRoot }),
    selfStable: stableRanges(m, weaveCrossings, capsize),
  };
}

interface Coefficients {
  readonly a4: number;
  /** Over v. */
  readonly a3: number;
  /** By powers of v². */
  readonly a2: readonly [number, number];
  /** Over v, by powers of v². */
  readonly a1: readonly [number, number];
  /** By powers of v². */
  readonly a0: readonly [number, number, number];
}

function coefficients({ M, C1, K0, K2, g }: WhippleMatrices): Coefficients {
  const [[m11, m12], [m21, m22]] = M;
  const [[c11, c12], [c21, c22]] = C1;
  const mixed = (
    [[p11, p12], [p21, p22]]: WhippleMatrices['M'],
    [[q11, q12], [q21, q22]]: WhippleMatrices['M'],
  ): number => p11 * q22 + p22 * q11 - p12 * q21 - p21 * q12;
  return {
    a4: m11 * m22 - m12 * m21,
    a3: mixed(M, C1),
    a2: [g * mixed(M, K0), mixed(M, K2) + c11 * c22 - c12 * c21],
    a1: [g * mixed(C1, K0), mixed(C1, K2)],
    a0: [g * g * (mixed(K0, K0) / 2), g * mixed(K0, K2), mixed(K2, K2) / 2],
  };
}

function weaveSpeeds(m: WhippleMatrices): number[] {
  const { a4, a3, a2, a1, a0 } = coefficients(m);
  // K2 has an empty first column, so a0 has no v⁴ and the condition over v² is quadratic in v².
  const q0 = a3 * a1[0] * a2[0] - a3 ** 2 * a0[0] - a4 * a1[0] ** 2;
  const q1 = a3 * (a1[0] * a2[1] + a1[1] * a2[0]) - a3 ** 2 * a0[1] - 2 * a4 * a1[0] * a1[1];
  const q2 = a3 * a1[1] * a2[1] - a4 * a1[1] ** 2;
  return quadraticRoots(q2, q1, q0)
    .filter((s) => s > 0 && (a1[0] + a1[1] * s) / a3 > 0)
    .map(Math.sqrt)
    .sort((a, b) => a - b);
}

function capsizeSpeed({ K0, K2, g }: WhippleMatrices): number | undefined {
  const above = K0[0][1] * K0[1][0] - K0[0][0] * K0[1][1];
  const below = K0[0][0] * K2[1][1] - K2[0][1] * K0[1][0];
  const square = (g * above) / below;
  return square > 0 && Number.isFinite(square) ? Math.sqrt(square) : undefined;
}

/** Real roots of a·x² + b·x + c without loss of digits. */
function quadraticRoots(a: number, b: number, c: number): number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}

/** First speed at which the discriminant changes sign, from four real roots to two and a pair. */
function doubleRootSpeed(m: WhippleMatrices): WhippleSpeeds['doubleRoot'] {
  const at = (speed: number): number => discriminant(characteristic(m, speed));
  if (!(at(0) > 0)) return undefined;
  for (let speed = SEARCH.step; speed <= SEARCH.to; speed += SEARCH.step) {
    if (at(speed) > 0) continue;
    const found = findRoot(at, speed - SEARCH.step, speed, { tolerance: SPEED_TOLERANCE });
    return found.ok ? { speed: found.value, root: doubleRootAt(m, found.value) } : undefined;
  }
  return undefined;
}

/** The double root is a simple root of the derivative: there it keeps its digits. */
function doubleRootAt(m: WhippleMatrices, speed: number): number {
  const polynomial = characteristic(m, speed);
  const [, a1, a2, a3, a4] = polynomial;
  const near = complexRoots([a1, 2 * a2, 3 * a3, 4 * a4]);
  const value = (root: ComplexRoot): number =>
    Math.abs(polynomialAt(polynomial, root.re)) + Math.abs(root.im);
  return near.reduce((best, root) => (value(root) < value(best) ? root : best)).re;
}

/** Discriminant of a quartic: positive for four real roots or two pairs, negative for two real roots and a pair. */
function discriminant([e, d, c, b, a]: readonly [number, number, number, number, number]): number {
  const delta0 = c * c - 3 * b * d + 12 * a * e;
  const delta1 = 2 * c ** 3 - 9 * b * c * d + 27 * b * b * e + 27 * a * d * d - 72 * a * c * e;
  return (4 * delta0 ** 3 - delta1 ** 2) / 27;
}

/** Stability changes only at these speeds; one speed between each two tells for all. */
function stableRanges(
  m: WhippleMatrices,
  weave: readonly number[],
  capsize: number | undefined,
): WhippleSpeeds['selfStable'] {
  const marks = [0, ...weave, ...(capsize === undefined ? [] : [capsize])].sort((a, b) => a - b);
  const ranges: { from: number; to?: number }[] = [];
  marks.forEach((from, k) => {
    const to = marks[k + 1];
    const middle = to === undefined ? from + Math.max(1, from) : (from + to) / 2;
    if (!whippleEigenvalues(m, middle).every((root) => root.re < 0)) return;
    const last = ranges.at(-1);
    const joins = last !== undefined && last.to === from;
    const start = joins ? last.from : from;
    if (joins) ranges.pop();
    ranges.push(to === undefined ? { from: start } : { from: start, to });
  });
  return ranges;
}
