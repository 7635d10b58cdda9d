/**
 * One step of the Dormand–Prince pair of order 5(4), with the continuous extension of order 4.
 * Stage rates lie one after the other in `rates`: stage s of component i is `rates[s·size + i]`, stages 0 to 6.
 */
export type Rates = (time: number, state: Float64Array, rate: Float64Array) => void;

/** Arrays of one integration, made once. */
export interface Stages {
  readonly size: number;
  /** k1 … k7. */
  readonly rates: readonly Float64Array[];
  /** State at the end of the step. */
  readonly end: Float64Array;
  /** Argument of the stage at hand. */
  readonly trial: Float64Array;
}

/** a(s, j): weights of the earlier rates in the argument of stage s; the last row is also the solution of order 5. */
const WEIGHTS: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
/** Order 5 less order 4. */
const ERROR = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];
/** Last coefficient of the continuous extension. */
const DENSE = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
];

export function newStages(size: number): Stages {
  return {
    size,
    rates: WEIGHTS.map(() => new Float64Array(size)),
    end: new Float64Array(size),
    trial: new Float64Array(size),
  };
}

/**
 * Fills stages 1 to 6 and the end of a step; stage 0 must hold the rate at the start.
 * @source dormand-prince-1980, table 2 (RK5(4)7M)
 */
export function takeStep(
  stages: Stages,
  rates: Rates,
  at: { time: number; state: Float64Array; step: number },
) {
  const { size, trial, end } = stages;
  for (let stage = 1; stage < WEIGHTS.length; stage++) {
    const weights = WEIGHTS[stage]!;
    const target = stage === WEIGHTS.length - 1 ? end : trial;
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < stage; j++) sum += weights[j]! * stages.rates[j]![i]!;
      target[i] = at.state[i]! + at.step * sum;
    }
    rates(at.time + NODES[stage]! * at.step, target, stages.rates[stage]!);
  }
}

/** Error of component i over a step: the difference of the two orders. */
export function stepError(stages: Stages, i: number, step: number): number {
  let sum = 0;
  for (let stage = 0; stage < ERROR.length; stage++) sum += ERROR[stage]! * stages.rates[stage]![i]!;
  return step * sum;
}

/**
 * Coefficients of the continuous extension, five a component, from the start of the step.
 * @source hairer-1993, section II.6, continuous extension of order 4
 */
export function denseCoefficients(stages: Stages, start: Float64Array, step: number): Float64Array {
  const coefficients = new Float64Array(5 * stages.size);
  for (let i = 0; i < stages.size; i++) {
    const change = stages.end[i]! - start[i]!;
    const bend = step * stages.rates[0]![i]! - change;
    let last = 0;
    for (let stage = 0; stage < DENSE.length; stage++) last += DENSE[stage]! * stages.rates[stage]![i]!;
    coefficients.set(
      [start[i]!, change, bend, change - step * stages.rates[6]![i]! - bend, step * last],
      5 * i,
    );
  }
  return coefficients;
}

/** State at the share 0 ≤ θ ≤ 1 of the step. */
export function denseState(coefficients: Float64Array, share: number, into: Float64Array): Float64Array {
  const rest = 1 - share;
  for (let i = 0; i < into.length; i++) {
    const k = 5 * i;
    const inner = coefficients[k + 3]! + rest * coefficients[k + 4]!;
    into[i] =
      coefficients[k]! + share * (coefficients[k + 1]! + rest * (coefficients[k + 2]! + share * inner));
  }
  return into;
}
