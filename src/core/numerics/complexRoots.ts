/** A root in the complex plane. */
export interface ComplexRoot {
  readonly re: number;
  readonly im: number;
}

/** Each step at least doubles the digits of a simple root; a multiple root gains a fixed part of a digit a step. */
const MOST_STEPS = 200;
/** A correction below this share of the root is rounding. */
const CORRECTION = 2 * Number.EPSILON;
/** An imaginary part below this share of the root is rounding, and the root is real. */
const REAL_WITHIN = 1e-9;

/**
 * All roots of a real polynomial at once, by Aberth's simultaneous iteration from points on a circle; roots off the
 * real line come as exact conjugate pairs.
 * @param polynomial coefficients by rising power; the highest must not be 0
 * @returns as many roots as the degree, by falling real part, then falling imaginary part; a root of multiplicity m
 *   keeps about 1/m of the digits
 * @source aberth-1973, simultaneous iteration; derived, conjugate pairs of a real polynomial
 */
export function complexRoots(polynomial: readonly number[]): readonly ComplexRoot[] {
  const leading = polynomial.at(-1);
  if (leading === undefined || leading === 0 || !polynomial.every(Number.isFinite))
    throw new RangeError('a polynomial needs finite coefficients, the highest not 0');
  const zeros = polynomial.findIndex((coefficient) => coefficient !== 0);
  const reduced = polynomial.slice(zeros);
  const found = reduced.length > 1 ? conjugated(iterate(reduced)) : [];
  const atZero = Array.from({ length: zeros }, () => ({ re: 0, im: 0 }));
  return [...found, ...atZero].sort((a, b) => b.re - a.re || b.im - a.im);
}

interface Guesses {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Guesses on the circle whose radius is the geometric mean of the roots' sizes, off the real line. */
function startGuesses(polynomial: readonly number[]): Guesses {
  const degree = polynomial.length - 1;
  const radius = Math.abs(polynomial[0]! / polynomial[degree]!) ** (1 / degree);
  const re = new Float64Array(degree);
  const im = new Float64Array(degree);
  for (let k = 0; k < degree; k += 1) {
    const angle = (2 * Math.PI * k) / degree + 0.4;
    re[k] = radius * Math.cos(angle);
    im[k] = radius * Math.sin(angle);
  }
  return { re, im };
}

function iterate(polynomial: readonly number[]): Guesses {
  const guesses = startGuesses(polynomial);
  const degree = polynomial.length - 1;
  const settled = new Uint8Array(degree);
  for (let step = 0, left = degree; step < MOST_STEPS && left > 0; step += 1) {
    for (let k = 0; k < degree; k += 1) {
      if (settled[k] === 0 && correct(polynomial, guesses, k)) {
        settled[k] = 1;
        left -= 1;
      }
    }
  }
  return guesses;
}

/**
 * One step of root k: Newton's step divided by 1 − step·Σ 1/(z − zⱼ). True when nothing is left to correct. Plain
 * scalars and square roots throughout: pairs and hypot cost three times as much here, where all the time goes.
 */
function correct(polynomial: readonly number[], { re, im }: Guesses, k: number): boolean {
  const x = re[k]!;
  const y = im[k]!;
  const modulus = Math.sqrt(x * x + y * y);
  let pr = 0;
  let pi = 0;
  let dr = 0;
  let di = 0;
  let size = 0;
  for (let i = polynomial.length - 1; i >= 0; i -= 1) {
    const coefficient = polynomial[i]!;
    const slope = dr * x - di * y + pr;
    di = dr * y + di * x + pi;
    dr = slope;
    const value = pr * x - pi * y + coefficient;
    pi = pr * y + pi * x;
    pr = value;
    size = size * modulus + Math.abs(coefficient);
  }
  // The value is smaller than its own rounding.
  const rounding = Number.EPSILON * size;
  if (pr * pr + pi * pi <= rounding * rounding) return true;
  let sr = 0;
  let si = 0;
  for (let j = 0; j < re.length; j += 1) {
    const ar = x - re[j]!;
    const ai = y - im[j]!;
    const square = ar * ar + ai * ai;
    if (j === k || square === 0) continue;
    sr += ar / square;
    si -= ai / square;
  }
  // Step = p / (p' − p·Σ).
  const nr = dr - (pr * sr - pi * si);
  const ni = di - (pr * si + pi * sr);
  const scale = nr * nr + ni * ni;
  if (scale === 0) return true;
  const stepRe = (pr * nr + pi * ni) / scale;
  const stepIm = (pi * nr - pr * ni) / scale;
  re[k] = x - stepRe;
  im[k] = y - stepIm;
  return Math.sqrt(stepRe * stepRe + stepIm * stepIm) <= CORRECTION * modulus;
}

/** Roots of a real polynomial are real or come in pairs; what the iteration left of an asymmetry is rounding. */
function conjugated({ re, im }: Guesses): ComplexRoot[] {
  const left = Array.from(re, (real, k) => ({ re: real, im: im[k]! }));
  left.sort((a, b) => Math.abs(b.im) - Math.abs(a.im));
  const isOff = (root: ComplexRoot): boolean =>
    Math.abs(root.im) > REAL_WITHIN * Math.hypot(root.re, root.im);
  const roots: ComplexRoot[] = [];
  while (left.length > 0) {
    const root = left.shift()!;
    const mate = isOff(root) ? mateOf(root, left) : -1;
    if (mate < 0) {
      roots.push({ re: root.re, im: 0 });
      continue;
    }
    const [other] = left.splice(mate, 1);
    const real = (root.re + other!.re) / 2;
    const imaginary = Math.abs(root.im - other!.im) / 2;
    roots.push({ re: real, im: imaginary }, { re: real, im: -imaginary });
  }
  return roots;
}

/** Place in `others` of the root nearest to the conjugate; −1 when none is left on the other side. */
function mateOf(root: ComplexRoot, others: readonly ComplexRoot[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  others.forEach((other, k) => {
    if (other.im * root.im >= 0) return;
    const distance = Math.hypot(other.re - root.re, other.im + root.im);
    if (distance < least) [best, least] = [k, distance];
  });
  return best;
}
