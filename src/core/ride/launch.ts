import { type OdeEvent, solveOde } from '../numerics/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';
import { type Drive, type DrivePath, type DrivePhase, type DriveSegment, drivePath } from './drivePath.ts';
import type { EngineCurve } from './engine.ts';
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
import {
  type AccelerationLimit,
  accelerationLimits,
  type RideStance,
  type RoadForces,
  type RoadLoad,
  roadForces,
} from './roadLoad.ts';
import { type TopSpeed, topSpeed } from './topSpeed.ts';

export interface LaunchInput {
  readonly road: RoadLoad;
  readonly drive: Drive;
  readonly engine: EngineCurve;
  /** I, all that turns with the wheels, as seen at the driven wheel [kg·m²]. */
  readonly rotatingInertia: number;
  /** Left out: neither wheel lift nor grip is looked at. */
  readonly stance?: RideStance;
  /** Speeds to time [m/s]. */
  readonly speeds?: readonly number[];
  /** Speed at the start [m/s]; left out: standstill. */
  readonly startSpeed?: number;
  /** Local error of the steps, as a share; left out: 1e-10. */
  readonly tolerance?: number;
}

export interface LaunchMark {
  /** [m/s] */
  readonly speed: number;
  /** [s] */
  readonly time: number;
  /** [m] */
  readonly distance: number;
}

/** A point of the run, for pictures. */
export interface LaunchPoint extends LaunchMark {
  /** [m/s²] */
  readonly acceleration: number;
  /** At full throttle [rad/s]. */
  readonly engineSpeed: number;
}

/** A switch during the run: what begins there. */
export interface LaunchSwitch extends LaunchMark {
  readonly phase: DrivePhase;
  /** `full` throttle, or the limit that the throttle is closed to. */
  readonly throttle: 'full' | AccelerationLimit['by'];
}

/** Where the engine's work went [J]. */
export interface LaunchEnergy {
  readonly engineWork: number;
  /** Bike, rider and wheels; and the engine's own inertia. */
  readonly kinetic: number;
  readonly engineKinetic: number;
  readonly clutchHeat: number;
  readonly driveLoss: number;
  readonly air: number;
  readonly rolling: number;
  readonly climb: number;
  /** Engine work less all the others: error of the integration. */
  readonly residual: number;
}

export interface Launch {
  readonly path: DrivePath;
  readonly forces: RoadForces;
  readonly limits: readonly AccelerationLimit[];
  readonly top: TopSpeed;
  /** Speeds asked for that it reaches, in the order asked. */
  readonly times: readonly LaunchMark[];
  /** Speeds asked for that it does not reach, or not within 100 000 s [m/s]. */
  readonly unreached: readonly number[];
  /** Where the run was ended: the governor, or so near a top speed that is only approached. */
  readonly end: LaunchMark;
  /** When the clutch or belt locks up for good; absent when it never slips or never locks. */
  readonly lockUp?: LaunchMark;
  readonly switches: readonly LaunchSwitch[];
  readonly trace: readonly LaunchPoint[];
  /** From start to end. */
  readonly energy: LaunchEnergy;
}

interface Run {
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

/** A top speed that resistance sets is only approached: the run ends at this share of it. */
const NEAR_TOP = 0.995;
/** A speed this near such a top speed is not called reached. */
const REACHABLE = 1 - 1e-9;
const TOLERANCE = 1e-10;
/** Speeds this near each other are one [m/s, share]. */
const SAME = 1e-13;
/** Most steps of one stretch; a run takes about a hundred in all. */
const MAX_STEPS = 20_000;
/** Longest run [s]; without resistance a top speed can be days away. */
const LONGEST = 1e5;

/**
 * Full-throttle run from standstill (or a speed) to top speed: clutch slip or belt bite, shift, fixed ratios, losses,
 * rolling, air, grade, rotating masses, grip and wheel lift, cut at every switch. On a hill the brake holds the bike
 * until the force at the tire is more than the resistance. The engine is at its slip speed when the run begins; the time
 * and work of running up from idle are not counted.
 * @issue out-of-range, conflict — mass, ratios or speeds that cannot be; see `drivePath`
 * @source derived, see `launchRates`; integrated by `solveOde`
 */
export function simulateLaunch(input: LaunchInput): Outcome<Launch> {
  const path = drivePath(input.drive, input.engine);
  if (!path.ok) return path;
  const { road, startSpeed = 0 } = input;
  if (!(road.mass > 0)) {
    return bad({ code: 'out-of-range', path: 'mass', given: road.mass, above: 0, unit: 'kg' });
  }
  const forces = roadForces(road);
  const limits = input.stance ? accelerationLimits(road, input.stance) : [];
  const top = topSpeed(path.value, forces, limits, startSpeed);
  const run = startRun(input, forces, limits);
  const reachable = reachedSpeeds(input, top);
  const last = Math.max(endSpeed(top), ...reachable);
  if (top.limitedBy !== 'no-launch' && last > startSpeed) {
    for (const stretch of stretches(path.value, startSpeed, last, reachable)) {
      const reason = runTo(run, stretch.segment, stretch.to);
      if (reason) return bad({ code: 'conflict', path: '', reason });
      if (run.timedOut) break;
    }
  }
  return good(launchOf(run, { path: path.value, forces, limits, top }));
}

function launchOf(run: Run, known: Pick<Launch, 'path' | 'forces' | 'limits' | 'top'>): Launch {
  const { speeds = [], startSpeed = 0 } = run.input;
  const start: LaunchMark = { speed: startSpeed, time: 0, distance: 0 };
  const marks = new Map([start, ...run.marks].map((mark) => [mark.speed, mark]));
  const reached = reachedSpeeds(run.input, known.top).filter((speed) =>
    marks.has(Math.max(speed, startSpeed)),
  );
  const locked = run.switches.findLastIndex(({ phase }) => phase === 'slip' || phase === 'bite');
  const lockUp =
    locked < 0
      ? undefined
      : run.switches.slice(locked).find((one) => one.phase !== 'slip' && one.phase !== 'bite');
  return {
    ...known,
    times: reached
      .map((speed) => marks.get(Math.max(speed, startSpeed))!)
      .filter((mark) => mark !== undefined),
    unreached: speeds.filter((speed) => !reached.includes(speed)),
    end: run.marks.at(-1) ?? start,
    ...(lockUp ? { lockUp: { speed: lockUp.speed, time: lockUp.time, distance: lockUp.distance } } : {}),
    switches: run.switches,
    trace: run.trace,
    energy: energyOf(run, startSpeed),
  };
}

function startRun(input: LaunchInput, forces: RoadForces, limits: readonly AccelerationLimit[]): Run {
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

const isApproached = (top: TopSpeed): boolean =>
  top.limitedBy !== 'engine-speed' && top.limitedBy !== 'force-drop';

const endSpeed = (top: TopSpeed): number => (isApproached(top) ? NEAR_TOP * top.speed : top.speed);

function reachedSpeeds({ speeds = [], startSpeed = 0 }: LaunchInput, top: TopSpeed): number[] {
  const highest = isApproached(top) ? top.speed * REACHABLE : top.speed;
  return speeds.filter((speed) => speed <= Math.max(highest, startSpeed));
}

/** Pieces of the run: up to each end of a segment and each speed to time. */
function stretches(
  path: DrivePath,
  start: number,
  last: number,
  marks: readonly number[],
): { segment: DriveSegment; to: number }[] {
  const stops = [...new Set([...marks, last])].sort((a, b) => a - b);
  return path.segments.flatMap((segment) => {
    if (segment.to <= start || segment.from >= last) return [];
    const inside = stops.filter((speed) => speed > Math.max(segment.from, start) && speed < segment.to);
    return [...inside, Math.min(segment.to, last)]
      .filter((to, k, all) => to !== all[k - 1])
      .map((to) => ({ segment, to }));
  });
}

/** Runs to a speed within one segment, through changes between full throttle and a limit. */
function runTo(run: Run, segment: DriveSegment, to: number): string | undefined {
  const perSpeed = segment.ratio / run.input.drive.wheelRadius;
  const engineMass = segment.engine1 === 0 ? 0 : run.input.engine.inertia * perSpeed ** 2;
  const free = { ...run.base, segment, engineMass };
  const before = run.state[SPEED]!;
  // Two stops that differ by rounding are one.
  if (to - before <= SAME * (1 + to)) run.state[SPEED] = to;
  while (run.state[SPEED]! < to) {
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

function energyOf(run: Run, startSpeed: number): LaunchEnergy {
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
