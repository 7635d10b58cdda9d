import type { Rates } from './dormandPrince.ts';

/** Something that happens when a function of time and state passes through zero. */
export interface OdeEvent {
  /** g(t, y), continuous along the solution. */
  readonly value: (time: number, state: Float64Array) => number;
  /** Only where g rises (1) or falls (−1) through zero; left out: both. */
  readonly direction?: 1 | -1;
  /** The integration ends there; otherwise the crossing is noted and it runs on. */
  readonly stops?: boolean;
}

export interface OdeProblem {
  /** dy/dt into `rate`; must not keep or change `state`. */
  readonly rates: Rates;
  readonly start: ArrayLike<number>;
  /** First and last time, from < to [unit of t]. */
  readonly from: number;
  readonly to: number;
  readonly events?: readonly OdeEvent[];
}

export interface OdeOptions {
  /** Largest local error as a share of each component, > 0. */
  readonly relative: number;
  /** Largest local error where a component is near zero, one for all or one each [unit of y], > 0. */
  readonly absolute: number | readonly number[];
  /** Steps tried first and never exceeded [unit of t]. */
  readonly firstStep?: number;
  readonly largestStep?: number;
  /** Steps, refused ones among them, before giving up; default 100 000. */
  readonly maxSteps?: number;
  /** Keep every step, so that {@link OdeSolution.path} can be asked. */
  readonly keepPath?: boolean;
  /** Called after each accepted step; the state is only lent. */
  readonly onStep?: (time: number, state: Float64Array) => void;
}

export interface OdeCrossing {
  /** Index in the problem's `events`. */
  readonly event: number;
  readonly time: number;
  readonly state: Float64Array;
}

export interface OdeSolution {
  /**
   * `end`: reached `to`; `event`: stopped by one; `too-many-steps`, `step-too-small`, `not-finite`: given up, with the
   * last good state. A state with NaN is never given.
   */
  readonly ending: 'end' | 'event' | 'too-many-steps' | 'step-too-small' | 'not-finite';
  readonly time: number;
  readonly state: Float64Array;
  readonly crossings: readonly OdeCrossing[];
  /** Steps taken and steps refused. */
  readonly steps: number;
  readonly refused: number;
  /** Step that would be tried next: a good first step for what follows [unit of t]. */
  readonly nextStep: number;
  /** State at any time between start and end; only with `keepPath`. */
  readonly path?: (time: number) => Float64Array;
}
