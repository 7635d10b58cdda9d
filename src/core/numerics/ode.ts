import {
  denseCoefficients,
  denseState,
  newStages,
  type Stages,
  stepError,
  takeStep,
} from './dormandPrince.ts';
import type { OdeCrossing, OdeOptions, OdeProblem, OdeSolution } from './odeTypes.ts';
import { findRoot } from './root.ts';

interface Piece {
  readonly time: number;
  readonly step: number;
  readonly coefficients: Float64Array;
}

interface Run {
  readonly problem: OdeProblem;
  readonly options: OdeOptions;
  readonly stages: Stages;
  time: number;
  readonly state: Float64Array;
  step: number;
  /** Error of the step before, for the smoother of the step control. */
  lastError: number;
  steps: number;
  refused: number;
  values: number[];
  readonly crossings: OdeCrossing[];
  readonly pieces: Piece[];
  ending?: OdeSolution['ending'];
}

const MAX_STEPS = 100_000;
/** Safety, least and greatest change of a step, and the smoother's exponent. @source hairer-1993, section II.4 and IV.2 */
const SAFETY = 0.9;
const LEAST_GROWTH = 0.2;
const MOST_GROWTH = 10;
const SMOOTHER = 0.04;
const EXPONENT = 0.2 - 0.75 * SMOOTHER;
/** Below so many spacings of doubles a step no longer moves the time. */
const LEAST_SPACINGS = 8;
/** Of a step: where a crossing is known to be on the continuous extension. */
const SHARE_TOLERANCE = 1e-13;
/** Of a step: for the slope of an event at its crossing. */
const SLOPE_SHARE = 1e-3;

/**
 * Solves y' = f(t, y) by the Dormand–Prince pair of order 5(4) with step control, and finds where events pass zero.
 * A crossing is found on the continuous extension and then made exact by a step that ends there, so that its error is
 * that of the steps. A step in which an event passes zero twice does not show it: limit `largestStep` where that matters.
 * Restart at every kink of the rates (an event that stops), or the order is lost there.
 * @source dormand-prince-1980, RK5(4)7M · hairer-1993, sections II.4 to II.6
 */
export function solveOde(problem: OdeProblem, options: OdeOptions): OdeSolution {
  const run = startRun(problem, options);
  const { maxSteps = MAX_STEPS } = options;
  while (run.ending === undefined) {
    if (run.steps + run.refused >= maxSteps) run.ending = 'too-many-steps';
    else advance(run);
  }
  const { time, state, crossings, steps, refused, step } = run;
  return {
    ending: run.ending,
    time,
    state,
    crossings,
    steps,
    refused,
    nextStep: step,
    ...(options.keepPath ? { path: (at: number) => pathState(run, at) } : {}),
  };
}

function startRun(problem: OdeProblem, options: OdeOptions): Run {
  if (!(problem.to > problem.from))
    throw new RangeError(`from ${problem.from} to ${problem.to} is no interval`);
  if (!(options.relative > 0)) throw new RangeError(`relative must be above 0, not ${options.relative}`);
  const state = Float64Array.from(problem.start);
  const stages = newStages(state.length);
  problem.rates(problem.from, state, stages.rates[0]!);
  const finite = state.every(Number.isFinite) && stages.rates[0]!.every(Number.isFinite);
  const run: Run = {
    problem,
    options,
    stages,
    time: problem.from,
    state,
    step: 0,
    lastError: 1e-4,
    steps: 0,
    refused: 0,
    values: eventValues(problem, problem.from, state),
    crossings: [],
    pieces: [],
    ...(finite ? {} : { ending: 'not-finite' }),
  };
  run.step = firstStep(run);
  return run;
}

/** As long as the state changes by a hundredth of itself, where no step is given. */
function firstStep(run: Run): number {
  const { from, to } = run.problem;
  const longest = Math.min(run.options.largestStep ?? to - from, to - from);
  if (run.options.firstStep !== undefined) return Math.min(run.options.firstStep, longest);
  let [size, pace] = [0, 0];
  for (const [i, value] of run.state.entries()) {
    const scale = tolerance(run, i, value);
    size += (value / scale) ** 2;
    pace += (run.stages.rates[0]![i]! / scale) ** 2;
  }
  const guess = size > 1e-10 && pace > 1e-10 ? 0.01 * Math.sqrt(size / pace) : 1e-6 * (to - from);
  return Math.min(guess, longest);
}

function tolerance(run: Run, i: number, value: number): number {
  const { relative, absolute } = run.options;
  return (typeof absolute === 'number' ? absolute : absolute[i]!) + relative * Math.abs(value);
}

function advance(run: Run): void {
  const { problem, stages, options } = run;
  const rest = problem.to - run.time;
  let step = Math.min(run.step, options.largestStep ?? rest);
  // A last step that is a little long is better than one more that is tiny.
  if (step >= rest * (1 - 1e-12)) step = rest;
  if (step <= Math.max(LEAST_SPACINGS * Number.EPSILON * Math.abs(run.time), Number.MIN_VALUE)) {
    run.ending = run.ending ?? (Number.isFinite(run.lastError) ? 'step-too-small' : 'not-finite');
    return;
  }
  takeStep(stages, problem.rates, { time: run.time, state: run.state, step });
  const error = errorNorm(run, step);
  if (!(error <= 1)) {
    run.refused += 1;
    run.step =
      step * (Number.isFinite(error) ? Math.max(LEAST_GROWTH, SAFETY * error ** -EXPONENT) : LEAST_GROWTH);
    if (!Number.isFinite(error)) run.lastError = Number.NaN;
    return;
  }
  accept(run, step, error);
}

function errorNorm(run: Run, step: number): number {
  const { stages, state } = run;
  let sum = 0;
  for (let i = 0; i < stages.size; i++) {
    const size = Math.max(Math.abs(state[i]!), Math.abs(stages.end[i]!));
    sum += (stepError(stages, i, step) / tolerance(run, i, size)) ** 2;
  }
  return Math.sqrt(sum / stages.size);
}

function accept(run: Run, step: number, error: number): void {
  const { stages, problem } = run;
  const least = Math.max(error, 1e-10);
  const before = Number.isFinite(run.lastError) ? run.lastError : 1;
  const growth = SAFETY * least ** -EXPONENT * before ** SMOOTHER;
  run.step = step * Math.min(MOST_GROWTH, Math.max(LEAST_GROWTH, growth));
  run.lastError = Math.max(error, 1e-4);
  run.steps += 1;
  const values = eventValues(problem, run.time + step, stages.end);
  const crossed = values.some((value, k) => passes(run, k, value));
  const dense = crossed || run.options.keepPath ? denseCoefficients(stages, run.state, step) : undefined;
  if (dense && run.options.keepPath) run.pieces.push({ time: run.time, step, coefficients: dense });
  if (dense && crossed && stopAt(run, { step, dense, values })) return;
  moveTo(run, run.time + step, stages.end, values);
  if (run.time >= problem.to) run.ending = 'end';
}

function moveTo(run: Run, time: number, state: Float64Array, values: number[]): void {
  run.time = time;
  run.state.set(state);
  run.stages.rates[0]!.set(run.stages.rates[6]!);
  run.values = values;
  run.options.onStep?.(time, run.state);
}

const eventValues = (problem: OdeProblem, time: number, state: Float64Array): number[] =>
  (problem.events ?? []).map((event) => event.value(time, state));

function passes(run: Run, k: number, after: number): boolean {
  const before = run.values[k]!;
  if (before === 0 || before * after > 0) return false;
  const { direction } = run.problem.events![k]!;
  return direction === undefined || direction === Math.sign(-before);
}

/** Notes the crossings of a step, in order; true when one of them ends the run. */
function stopAt(run: Run, done: { step: number; dense: Float64Array; values: readonly number[] }): boolean {
  const events = run.problem.events!;
  const shares = done.values.flatMap((value, k) =>
    passes(run, k, value) ? [{ k, share: crossingShare(run, k, done) }] : [],
  );
  shares.sort((a, b) => a.share - b.share);
  for (const { k, share } of shares) {
    const exact = exactCrossing(run, k, { ...done, share });
    run.crossings.push({ event: k, time: exact.time, state: exact.state });
    if (!events[k]!.stops) continue;
    run.problem.rates(exact.time, exact.state, run.stages.rates[6]!);
    moveTo(run, exact.time, exact.state, eventValues(run.problem, exact.time, exact.state));
    run.ending = 'event';
    return true;
  }
  // The exact crossings were stepped to with the same arrays: the whole step has to be taken again.
  takeStep(run.stages, run.problem.rates, { time: run.time, state: run.state, step: done.step });
  return false;
}

function crossingShare(run: Run, k: number, done: { step: number; dense: Float64Array }): number {
  const scratch = new Float64Array(run.stages.size);
  const at = (share: number): number =>
    run.problem.events![k]!.value(run.time + share * done.step, denseState(done.dense, share, scratch));
  const root = findRoot(at, 0, 1, { tolerance: SHARE_TOLERANCE });
  // The extension meets both ends of the step, so only an event that is not continuous has no root: its end counts.
  return root.ok ? root.value : 1;
}

/** A step that ends at the crossing, corrected once by the slope of the event there. */
function exactCrossing(
  run: Run,
  k: number,
  found: { step: number; dense: Float64Array; share: number },
): { time: number; state: Float64Array } {
  const { value } = run.problem.events![k]!;
  const scratch = new Float64Array(run.stages.size);
  const onPath = (share: number): number =>
    value(run.time + share * found.step, denseState(found.dense, share, scratch));
  const [below, above] = [Math.max(0, found.share - SLOPE_SHARE), Math.min(1, found.share + SLOPE_SHARE)];
  const slope = (onPath(above) - onPath(below)) / (above - below);
  let share = found.share;
  for (let round = 0; round < 2; round++) {
    const state = stepTo(run, share * found.step);
    const corrected = share - value(run.time + share * found.step, state) / slope;
    if (!(corrected > 0 && corrected <= 1)) break;
    share = corrected;
  }
  const time = run.time + share * found.step;
  return { time, state: Float64Array.from(stepTo(run, share * found.step)) };
}

function stepTo(run: Run, step: number): Float64Array {
  if (step === 0) return run.state;
  takeStep(run.stages, run.problem.rates, { time: run.time, state: run.state, step });
  return run.stages.end;
}

function pathState(run: Run, time: number): Float64Array {
  const { pieces } = run;
  if (!(time >= run.problem.from && time <= run.time)) throw new RangeError(`no state is known at ${time}`);
  if (pieces.length === 0) return Float64Array.from(run.state);
  let [low, high] = [0, pieces.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (pieces[middle]!.time <= time) low = middle;
    else high = middle - 1;
  }
  const piece = pieces[low]!;
  const share = Math.min(1, (time - piece.time) / piece.step);
  return denseState(piece.coefficients, share, new Float64Array(run.stages.size));
}
