import { type OdeEvent, solveOde } from '../numerics/index.ts';
import type { DriveSegment } from './drivePath.ts';
import {
  AIR_WORK,
  CLUTCH_HEAT,
  cappedAcceleration,
  DISTANCE,
  DRIVE_LOSS,
  ENGINE_WORK,
  fullAcceleration,
  launchRates,
  SPEED,
  STATE_SIZE,
  type Stretch,
} from './launchModel.ts';
import type { LaunchEnergy, LaunchInput, LaunchMark, LaunchPoint, LaunchSwitch } from './launchTypes.ts';
import type { AccelerationLimit, RoadForces } from './roadLoad.ts';

/** A launch under way. */
export interface Run {
  readonly input: LaunchInput;
  readonly base: Omit<Stretch, 'cap' | 'segment' | 'engineMass'>;
  readonly limits: readonly AccelerationLimit[];
  readonly state: Float64Array;
  time: number;
  step: number | undefined;
  engineKinetic: number;
  readonly marks: LaunchMark[];
  readonly switches: LaunchSwitch[];
  readonly trace: LaunchPoint[];
  /** Ended by {@link LONGEST}, short of what was asked. */
  timedOut: boolean;
}

const TOLERANCE = 1e-10;
/** Speeds this near each other are one [m/s, share]. */
const SAME = 1e-13;
/** Most steps of one stretch; a run takes about a hundred in all. */
const MAX_STEPS = 20_000;
/** Within one segment force and limits, all of them quadratic in speed at most, take turns a few times only. */
const MAX_CHANGES = 50;
/** Longest run [s]; without resistance a top speed can be days away. */
const LONGEST = 1e5;

export function startRun(input: LaunchInput, forces: RoadForces, limits: readonly AccelerationLimit[]): Run {
  const state = new Float64Array(STATE_SIZE);
  state[SPEED] = input.startSpeed ?? 0;
  const inertialMass = input.road.mass + input.rotatingInertia / input.drive.wheelRadius ** 2;
  return {
    input,
    base: { drive: input.drive, forces, inertialMass },
    limits,
    state,
    time: 0,
    step: undefined,
    engineKinetic: 0,
    marks: [],
    switches: [],
    trace: [],
    timedOut: false,
  };
}

/** Runs to a speed within one segment, through changes between full throttle and a limit. */
export function runTo(run: Run, segment: DriveSegment, to: number): string | undefined {
  const perSpeed = segment.ratio / run.input.drive.wheelRadius;
  const engineMass = segment.engine1 === 0 ? 0 : run.input.engine.inertia * perSpeed ** 2;
  const free = { ...run.base, segment, engineMass };
  const before = run.state[SPEED]!;
  // Two stops that differ by rounding are one.
  if (to - before <= SAME * (1 + to)) run.state[SPEED] = to;
  let changes = 0;
  while (run.state[SPEED]! < to) {
    if (changes++ > MAX_CHANGES)
      return `throttle and limits take turns at ${run.state[SPEED]!.toFixed(3)} m/s`;
    const stretch: Stretch = { ...free, cap: rulingLimit(run, free) };
    noteSwitch(run, stretch);
    const speed = run.state[SPEED]!;
    const reason = integrate(run, stretch, to);
    if (reason) return reason;
    if (run.timedOut) break;
    if (run.state[SPEED]! <= speed) return `the run stands still at ${speed.toFixed(3)} m/s`;
  }
  const after = run.state[SPEED]!;
  run.engineKinetic += (engineMass / 2) * (after ** 2 - before ** 2);
  run.marks.push({ speed: after, time: run.time, distance: run.state[DISTANCE]! });
  return undefined;
}

/** The least of the limits where it is below what full throttle gives; just ahead, so that a switch is not repeated. */
function rulingLimit(run: Run, free: Omit<Stretch, 'cap'>): AccelerationLimit | undefined {
  const ahead = run.state[SPEED]! + 1e-9 * (1 + run.state[SPEED]!);
  let [ruling, least]: [AccelerationLimit | undefined, number] = [undefined, fullAcceleration(free, ahead)];
  for (const limit of run.limits) {
    const value = cappedAcceleration(limit, ahead);
    if (value < least) [ruling, least] = [limit, value];
  }
  return ruling;
}

function integrate(run: Run, stretch: Stretch, to: number): string | undefined {
  const tolerance = run.input.tolerance ?? TOLERANCE;
  const solved = solveOde(
    {
      rates: (_time, state, rate) => launchRates(stretch, state, rate),
      start: run.state,
      from: run.time,
      to: run.time + LONGEST,
      events: launchEvents(run, stretch, to),
    },
    {
      relative: tolerance,
      absolute: absoluteTolerances(run, tolerance),
      maxSteps: MAX_STEPS,
      firstStep: run.step ?? firstStep(stretch, run.state[SPEED]!, to),
      onStep: (time, state) => run.trace.push(pointOf(stretch, time, state)),
    },
  );
  run.state.set(solved.state);
  run.time = solved.time;
  run.step = solved.nextStep;
  if (solved.ending === 'end') {
    run.timedOut = true;
    return undefined;
  }
  if (solved.ending !== 'event')
    return `the run ends without reaching ${to.toFixed(2)} m/s (${solved.ending})`;
  if (solved.crossings.at(-1)!.event === 0) run.state[SPEED] = to;
  return undefined;
}

/** First event: the speed is reached. The others: another limit, or none, begins to rule. */
function launchEvents(run: Run, stretch: Stretch, to: number): OdeEvent[] {
  const reached: OdeEvent = { value: (_time, state) => state[SPEED]! - to, direction: 1, stops: true };
  const now = (speed: number): number =>
    stretch.cap ? cappedAcceleration(stretch.cap, speed) : fullAcceleration(stretch, speed);
  const others = run.limits.filter((limit) => limit !== stretch.cap);
  const challengers = [
    ...others.map((limit) => (speed: number) => cappedAcceleration(limit, speed)),
    ...(stretch.cap ? [(speed: number) => fullAcceleration(stretch, speed)] : []),
  ];
  return [
    reached,
    ...challengers.map(
      (other): OdeEvent => ({
        value: (_time, state) => other(state[SPEED]!) - now(state[SPEED]!),
        direction: -1,
        stops: true,
      }),
    ),
  ];
}

/** A hundredth of the time that the stretch would take at its first acceleration. */
function firstStep(stretch: Stretch, from: number, to: number): number {
  const acceleration = stretch.cap ? cappedAcceleration(stretch.cap, from) : fullAcceleration(stretch, from);
  return acceleration > 0 && Number.isFinite(acceleration) ? (0.01 * (to - from)) / acceleration : 1e-3;
}

/** Speed to the tolerance in m/s, distance in m, works as shares of m·(1 m/s)². */
function absoluteTolerances(run: Run, tolerance: number): number[] {
  const work = tolerance * run.base.inertialMass;
  return [tolerance, tolerance, work, work, work, work];
}

function noteSwitch(run: Run, stretch: Stretch): void {
  const { phase } = stretch.segment;
  const throttle = stretch.cap?.by ?? 'full';
  const last = run.switches.at(-1);
  if (last?.phase === phase && last.throttle === throttle) return;
  const mark = { speed: run.state[SPEED]!, time: run.time, distance: run.state[DISTANCE]! };
  run.switches.push({ ...mark, phase, throttle });
  if (run.trace.length === 0) run.trace.push(pointOf(stretch, run.time, run.state));
}

function pointOf(stretch: Stretch, time: number, state: Float64Array): LaunchPoint {
  const speed = state[SPEED]!;
  const { segment, cap } = stretch;
  return {
    time,
    speed,
    distance: state[DISTANCE]!,
    acceleration: cap ? cappedAcceleration(cap, speed) : fullAcceleration(stretch, speed),
    engineSpeed: segment.engine0 + segment.engine1 * speed,
  };
}

/** Where the work went from the start to where the run now stands. */
export function energyOf(run: Run, startSpeed: number): LaunchEnergy {
  const { state, engineKinetic } = run;
  const { rolling, climb } = run.base.forces;
  const distance = state[DISTANCE]!;
  const parts = {
    kinetic: (run.base.inertialMass / 2) * (state[SPEED]! ** 2 - startSpeed ** 2),
    engineKinetic,
    clutchHeat: state[CLUTCH_HEAT]!,
    driveLoss: state[DRIVE_LOSS]!,
    air: state[AIR_WORK]!,
    rolling: rolling * distance,
    climb: climb * distance,
  };
  const engineWork = state[ENGINE_WORK]!;
  const spent = Object.values(parts).reduce((sum, part) => sum + part, 0);
  return { engineWork, ...parts, residual: engineWork - spent };
}
