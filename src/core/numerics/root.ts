export interface RootOptions {
  /** Half width of the interval that the root is known to lie in at the end, in the unit of x; > 0. */
  readonly tolerance: number;
  /** Most evaluations after the two ends; default 500. */
  readonly maxSteps?: number;
}

export type RootOutcome =
  | {
      readonly ok: true;
      /** x with f(x) = 0 within the tolerance, in the unit of x. */
      readonly value: number;
      /** Evaluations after the two ends [-]. */
      readonly steps: number;
    }
  | {
      readonly ok: false;
      /**
       * `no-sign-change`: f has one sign at both ends; `not-finite`: f or a bound is NaN or infinite;
       * `too-many-steps`: not within the tolerance after `maxSteps`.
       */
      readonly reason: 'no-sign-change' | 'not-finite' | 'too-many-steps';
    };

export interface Bracket {
  readonly lo: number;
  readonly hi: number;
}

/** A smooth function takes about ten, a ninefold root 113; the proven bound is the square of bisection's count. */
const DEFAULT_STEPS = 500;

/** Growth of the searched interval at each step; the golden ratio is customary, any value above 1 serves. */
const GROWTH = 1.618;

/** Where the search stands: `best` has the smaller |f|, `other` the opposite sign. */
interface State {
  best: number;
  fBest: number;
  other: number;
  fOther: number;
  previous: number;
  fPrevious: number;
  step: number;
  stepBefore: number;
}

/**
 * Root of a continuous function inside [lo, hi] by Brent's method: inverse quadratic interpolation or the
 * secant where they shrink the bracket fast enough, bisection where they do not. Never leaves the bracket.
 * @param f function; must differ in sign at the ends
 * @param lo lower end [unit of x]
 * @param hi upper end [unit of x]
 * @returns the root within `tolerance` (plus twice the spacing of doubles there), or why there is none
 * @source brent-1973, section 4.2 to 4.4
 */
export function findRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  options: RootOptions,
): RootOutcome {
  if (!(options.tolerance > 0)) throw new RangeError(`tolerance must be above 0, not ${options.tolerance}`);
  const fLo = f(lo);
  const fHi = f(hi);
  if (![lo, hi, fLo, fHi].every(Number.isFinite)) return { ok: false, reason: 'not-finite' };
  if (fLo === 0) return { ok: true, value: lo, steps: 0 };
  if (fHi === 0) return { ok: true, value: hi, steps: 0 };
  if (fLo > 0 === fHi > 0) return { ok: false, reason: 'no-sign-change' };
  return iterate(f, startState(lo, fLo, hi, fHi), options.tolerance, options.maxSteps ?? DEFAULT_STEPS);
}

/**
 * Widens [lo, hi] on both sides until f changes sign.
 * @returns the bracket, or undefined when there is no change of sign in 60 widenings or f stops being finite
 * @source derived, geometric widening
 */
export function bracketRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  maxSteps: number = 60,
): Bracket | undefined {
  if (!(lo < hi)) throw new RangeError(`a bracket needs lo < hi, not ${lo} and ${hi}`);
  let [low, high] = [lo, hi];
  let [fLow, fHigh] = [f(low), f(high)];
  for (let step = 0; step <= maxSteps; step++) {
    if (!Number.isFinite(fLow) || !Number.isFinite(fHigh)) return undefined;
    if (fLow === 0 || fHigh === 0 || fLow > 0 !== fHigh > 0) return { lo: low, hi: high };
    const wider = GROWTH * (high - low);
    if (Math.abs(fLow) < Math.abs(fHigh)) {
      low -= wider;
      fLow = f(low);
    } else {
      high += wider;
      fHigh = f(high);
    }
  }
  return undefined;
}

function startState(lo: number, fLo: number, hi: number, fHi: number): State {
  return {
    best: hi,
    fBest: fHi,
    other: lo,
    fOther: fLo,
    previous: lo,
    fPrevious: fLo,
    step: hi - lo,
    stepBefore: hi - lo,
  };
}

function iterate(f: (x: number) => number, state: State, tolerance: number, maxSteps: number): RootOutcome {
  for (let steps = 0; steps <= maxSteps; steps++) {
    if (state.fBest > 0 === state.fOther > 0) reopen(state);
    if (Math.abs(state.fOther) < Math.abs(state.fBest)) exchange(state);
    const within = 2 * Number.EPSILON * Math.abs(state.best) + tolerance;
    const half = (state.other - state.best) / 2;
    if (Math.abs(half) <= within || state.fBest === 0) return { ok: true, value: state.best, steps };
    chooseStep(state, half, within);
    state.previous = state.best;
    state.fPrevious = state.fBest;
    // A step below the tolerance would stand still; the bracket closes faster by going just past it.
    state.best += Math.abs(state.step) > within ? state.step : Math.sign(half) * within;
    state.fBest = f(state.best);
    if (!Number.isFinite(state.fBest)) return { ok: false, reason: 'not-finite' };
  }
  return { ok: false, reason: 'too-many-steps' };
}

/** The new point took the sign of the far end: the last point is the far end now. */
function reopen(state: State): void {
  state.other = state.previous;
  state.fOther = state.fPrevious;
  state.step = state.best - state.previous;
  state.stepBefore = state.step;
}

/** Keeps the smaller |f| at `best`. */
function exchange(state: State): void {
  [state.best, state.other] = [state.other, state.best];
  [state.fBest, state.fOther] = [state.fOther, state.fBest];
  state.previous = state.other;
  state.fPrevious = state.fOther;
}

/** Interpolates where the last steps shrank and the new one stays well inside; else bisects. */
function chooseStep(state: State, half: number, within: number): void {
  const isShrinking =
    Math.abs(state.stepBefore) >= within && Math.abs(state.fPrevious) > Math.abs(state.fBest);
  const proposed = isShrinking ? interpolated(state, half) : half;
  const limit = Math.min(3 * Math.abs(half) - within, Math.abs(state.stepBefore));
  // Brent's acceptance: toward the far end, less than 3/4 of the way, less than half the step before the last.
  if (isShrinking && proposed * half > 0 && 2 * Math.abs(proposed) < limit) {
    state.stepBefore = state.step;
    state.step = proposed;
  } else {
    state.step = half;
    state.stepBefore = half;
  }
}

function interpolated(state: State, half: number): number {
  const s = state.fBest / state.fPrevious;
  if (state.previous === state.other) return (2 * half * s) / (s - 1);
  const q = state.fPrevious / state.fOther;
  const r = state.fBest / state.fOther;
  const top = s * (2 * half * q * (q - r) - (state.best - state.previous) * (r - 1));
  return -top / ((q - 1) * (r - 1) * (s - 1));
}
