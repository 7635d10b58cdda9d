import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** Full-throttle torque at one speed. */
export interface TorquePoint {
  /** Shaft speed [rad/s], ≥ 0. */
  readonly speed: number;
  /** [N·m] */
  readonly torque: number;
}

export interface EngineInput {
  /** By rising speed, at least one. */
  readonly points: readonly TorquePoint[];
  /** Governed speed [rad/s]; left out: the curve ends at its last point, and so does the engine. */
  readonly governed?: number;
  /** Governor droop as a share of the governed speed, from full torque to none; 0 or left out: a sharp cut. */
  readonly droop?: number;
  /** Crank, flywheel and what turns with them [kg·m²]; left out: 0. */
  readonly inertia?: number;
  /** Torque is multiplied by it: altitude, heat, a gross rating; left out: 1. */
  readonly factor?: number;
}

/** Full-throttle torque as straight lines between corners, from standstill to the speed at which nothing is left. */
export interface EngineCurve {
  /** Corners by rising speed; the first lies at standstill. */
  readonly corners: readonly TorquePoint[];
  /** Speed at which full torque ends [rad/s]. */
  readonly governed: number;
  /** Last speed of the curve: governed · (1 + droop) [rad/s]. */
  readonly highest: number;
  /** True where a governor, not the end of the data, ends it. */
  readonly hasGovernor: boolean;
  /** Torque between the last point and the governed speed is that of the last point: it was not given. */
  readonly extended: boolean;
  /** [kg·m²] */
  readonly inertia: number;
}

/** What is known of an engine when only its rating is printed. */
export interface RatedShape {
  /** Speed and value of the greatest torque [rad/s], [N·m]. */
  readonly torqueSpeed: number;
  readonly torque: number;
  /** Speed of the greatest power [rad/s], above `torqueSpeed`. */
  readonly powerSpeed: number;
}

/** Speeds nearer each other than this are one: a torque can't jump, and slopes stay numbers [rad/s]. */
const LEAST_GAP = 1e-6;
/** A droop below this is a sharp cut and is to be given as one. */
const LEAST_DROOP = 1e-3;

/**
 * Full-throttle curve: straight between the points, the first torque held below the first point, the last one up to
 * the governed speed; from there a straight fall to nothing over the droop, or a sharp cut.
 * @issue missing — no point · out-of-range, conflict — points not by rising speed, negative, or droop below 0
 * @source derived, straight lines between the points of the maker's curve
 */
export function engineCurve(input: EngineInput): Outcome<EngineCurve> {
  const [first, ...rest] = engineIssues(input);
  if (first) return bad(first, ...rest);
  const { points, droop = 0, factor = 1 } = input;
  const last = points.at(-1)!;
  const governed = input.governed ?? last.speed;
  const raw: EngineCurve = {
    corners: [{ speed: 0, torque: points[0]!.torque }, ...points.filter((point) => point.speed > LEAST_GAP)],
    governed,
    highest: Math.max(governed, last.speed),
    hasGovernor: input.governed !== undefined,
    extended: governed > last.speed,
    inertia: input.inertia ?? 0,
  };
  const below = raw.corners.filter((corner) => corner.speed < governed - LEAST_GAP);
  const corners = [...below, { speed: governed, torque: torqueAt(raw, governed) }];
  if (droop > 0) corners.push({ speed: governed * (1 + droop), torque: 0 });
  return good({
    ...raw,
    corners: corners.map(({ speed, torque }) => ({ speed, torque: torque * factor })),
    highest: governed * (1 + droop),
  });
}

/**
 * Full-throttle torque; 0 past the highest speed.
 * @param speed ω [rad/s]
 * @returns [N·m]
 * @source derived, straight line between two corners
 */
export function torqueAt(curve: EngineCurve, speed: number): number {
  const { corners } = curve;
  if (speed > curve.highest) return 0;
  for (let k = 1; k < corners.length; k++) {
    const [low, high] = [corners[k - 1]!, corners[k]!];
    if (speed > high.speed) continue;
    const share = (speed - low.speed) / (high.speed - low.speed);
    return low.torque + share * (high.torque - low.torque);
  }
  return corners.at(-1)!.torque;
}

/**
 * Torque points from power points: T = P/ω.
 * @param points speed [rad/s] above 0 and power [W]
 * @source derived, power is torque times speed
 */
export const pointsOfPower = (
  points: readonly { readonly speed: number; readonly power: number }[],
): readonly TorquePoint[] => points.map(({ speed, power }) => ({ speed, torque: power / speed }));

/**
 * A curve from a rating alone: T = T_max·[1 − κ·((ω − ω_T)/(ω_P − ω_T))²], κ = 1/(1 + 2·ω_P/(ω_P − ω_T)), which puts the
 * greatest power at ω_P. An estimate: the true curve is flatter or steeper.
 * @param count points from half the torque speed to the power speed, ≥ 2
 * @issue conflict — the power speed is not above the torque speed
 * @source derived, parabola through both conditions
 */
export function pointsOfRating(shape: RatedShape, count: number = 24): Outcome<readonly TorquePoint[]> {
  const { torqueSpeed, torque, powerSpeed } = shape;
  if (!(powerSpeed > torqueSpeed && torqueSpeed > 0 && torque >= 0)) {
    const reason = 'the speed of greatest power lies above that of greatest torque, and both above 0';
    return bad({ code: 'conflict', path: 'powerSpeed', reason });
  }
  const kappa = 1 / (1 + (2 * powerSpeed) / (powerSpeed - torqueSpeed));
  const from = torqueSpeed / 2;
  return good(
    Array.from({ length: count }, (_, k) => {
      const speed = from + ((powerSpeed - from) * k) / (count - 1);
      const share = (speed - torqueSpeed) / (powerSpeed - torqueSpeed);
      return { speed, torque: torque * (1 - kappa * share * share) };
    }),
  );
}

/**
 * Greatest power of a curve and where: on a straight line T = a + b·ω it lies at ω = −a/2b or at a corner.
 * @returns [W] and [rad/s]
 * @source derived, extreme of ω·T(ω)
 */
export function greatestPower(curve: EngineCurve): { readonly power: number; readonly speed: number } {
  const { corners } = curve;
  const speeds = corners.map((corner) => corner.speed);
  for (let k = 1; k < corners.length; k++) {
    const [low, high] = [corners[k - 1]!, corners[k]!];
    const slope = (high.torque - low.torque) / (high.speed - low.speed);
    const peak = slope < 0 ? (low.speed - low.torque / slope) / 2 : 0;
    if (peak > low.speed && peak < high.speed) speeds.push(peak);
  }
  const [first = 0] = speeds;
  const speed = speeds.reduce(
    (best, one) => (one * torqueAt(curve, one) > best * torqueAt(curve, best) ? one : best),
    first,
  );
  return { speed, power: speed * torqueAt(curve, speed) };
}

/**
 * Brake mean effective pressure of a four-stroke: bmep = 4π·T/V_d.
 * @param displacement V_d [m³]
 * @returns [Pa]
 * @source derived, work of one cycle over two turns
 */
export const meanEffectivePressure = (torque: number, displacement: number): number =>
  (4 * Math.PI * torque) / displacement;

function engineIssues({
  points,
  governed,
  droop = 0,
  inertia = 0,
  factor = 1,
}: EngineInput): readonly Issue[] {
  if (points.length === 0) return [{ code: 'missing', path: 'torque', wanted: 'at least one point' }];
  const issues: Issue[] = [];
  const atLeast = (path: string, given: number, min: number) => {
    if (!(given >= min)) issues.push({ code: 'out-of-range', path, given, min, unit: '' });
  };
  points.forEach((point, k) => {
    atLeast(`torque[${k}]`, Math.min(point.torque, point.speed), 0);
    if (k > 0 && !(point.speed - points[k - 1]!.speed > LEAST_GAP))
      issues.push({ code: 'conflict', path: `torque[${k}]`, reason: 'points go by rising speed, each once' });
  });
  if (governed !== undefined) atLeast('governed', governed, 2 * LEAST_GAP);
  if (governed === undefined && points.at(-1)!.speed <= LEAST_GAP) {
    issues.push({
      code: 'missing',
      path: 'governed',
      wanted: 'a governed speed, or a point above standstill',
    });
  }
  if (droop !== 0) atLeast('droop', droop, LEAST_DROOP);
  atLeast('inertia', inertia, 0);
  atLeast('factor', factor, 0);
  return issues;
}
