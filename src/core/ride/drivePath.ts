import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import { type ClutchModel, type SlipBand, slipBands } from './clutch.ts';
import { type EngineCurve, torqueAt } from './engine.ts';

/** A variable belt drive between its ends; ratios are driven over driver diameter. */
export interface BeltShift {
  /** Ratio at launch. */
  readonly low: number;
  /** Ratio at the top, ≤ low. */
  readonly high: number;
  /** Engine speed at which it bites [rad/s]; left out: it is always taut. */
  readonly engages?: number;
  /** Engine speed held while it shifts [rad/s]. */
  readonly shiftsAt: number;
}

/** Everything between the engine shaft and the rear tire. */
export interface Drive {
  /** Engine turns per wheel turn through the fixed stages, without the belt; > 0. */
  readonly ratio: number;
  /** Product of the efficiencies of all stages, belt included; 0 < η ≤ 1. */
  readonly efficiency: number;
  /** Rolling radius of the rear tire [m]. */
  readonly wheelRadius: number;
  readonly clutch?: ClutchModel;
  readonly belt?: BeltShift;
}

export type DrivePhase = 'slip' | 'bite' | 'fixed' | 'low' | 'shift' | 'high';

/** A span of road speed over which full-throttle force is one smooth function. */
export interface DriveSegment {
  readonly phase: DrivePhase;
  /** Road speeds [m/s]. */
  readonly from: number;
  readonly to: number;
  /** Force at the tire after losses: F = force0 + force1·v + power/v [N]. */
  readonly force0: number;
  readonly force1: number;
  readonly power: number;
  /** Engine speed: ω = engine0 + engine1·v [rad/s]. */
  readonly engine0: number;
  readonly engine1: number;
  /** Engine-side turns per wheel turn; while shifting, that at `from`. */
  readonly ratio: number;
}

export interface DrivePath {
  readonly segments: readonly DriveSegment[];
  /** Where the clutch slips, in engine speeds; empty without one. */
  readonly slips: readonly SlipBand[];
  /** Road speed at the end of the engine's curve in the highest ratio [m/s]. */
  readonly highest: number;
}

/**
 * Full-throttle force over road speed, cut at every switch: bite, lock-up, corners of the torque curve, both ends of the
 * shift, governor. F = T·G·η/R with a fixed ratio; P = η·T·ω while a belt shifts at constant engine speed.
 * @issue conflict — the belt shifts above the engine's highest speed, or its ratios are out of order
 * @source derived, power passed on less losses
 */
export function drivePath(drive: Drive, engine: EngineCurve): Outcome<DrivePath> {
  const [first, ...rest] = driveIssues(drive, engine);
  if (first) return bad(first, ...rest);
  const slips = drive.clutch ? slipBands(drive.clutch, engine) : [];
  const { belt } = drive;
  if (!belt) {
    const segments = lowerSegments(drive, engine, {
      ratio: drive.ratio,
      upTo: engine.highest,
      phase: 'fixed',
      slips,
    });
    return good({ segments, slips, highest: (engine.highest * drive.wheelRadius) / drive.ratio });
  }
  const [low, high] = [drive.ratio * belt.low, drive.ratio * belt.high];
  const before = lowerSegments(drive, engine, { ratio: low, upTo: belt.shiftsAt, phase: 'low', slips });
  const after = runSegments(drive, engine, {
    ratio: high,
    from: belt.shiftsAt,
    to: engine.highest,
    phase: 'high',
  });
  return good({
    segments: [...before, ...shiftSegment(drive, engine, belt), ...after],
    slips,
    highest: (engine.highest * drive.wheelRadius) / high,
  });
}

/** @source derived */
export const forceAt = (segment: DriveSegment, speed: number): number =>
  segment.force0 + segment.force1 * speed + (segment.power === 0 ? 0 : segment.power / speed);

/** The segment that a road speed lies in, from ≤ v < to, or the last one. */
export const segmentAt = (path: DrivePath, speed: number): DriveSegment | undefined =>
  path.segments.find((segment) => speed < segment.to) ?? path.segments.at(-1);

interface Lower {
  readonly ratio: number;
  /** Engine speed at which this ratio is left [rad/s]. */
  readonly upTo: number;
  readonly phase: DrivePhase;
  readonly slips: readonly SlipBand[];
}

/** From standstill in the lowest ratio: slip or bite first, then the engine's curve. */
function lowerSegments(drive: Drive, engine: EngineCurve, lower: Lower): DriveSegment[] {
  const { ratio, upTo, phase } = lower;
  const bite = drive.clutch ? undefined : drive.belt?.engages;
  const slips: readonly SlipBand[] =
    bite === undefined
      ? lower.slips
      : [{ from: 0, to: bite, held: bite, torque: torqueAt(engine, bite), endless: false }];
  const segments: DriveSegment[] = [];
  let speed = 0;
  for (const slip of slips) {
    if (slip.from >= upTo) break;
    segments.push(...runSegments(drive, engine, { ratio, from: speed, to: slip.from, phase }));
    const to = Math.min(slip.to, upTo);
    segments.push(
      slipSegment(drive, { ...slip, to }, { ratio, phase: bite === undefined ? 'slip' : 'bite' }),
    );
    speed = to;
  }
  segments.push(...runSegments(drive, engine, { ratio, from: speed, to: upTo, phase }));
  return segments;
}

function slipSegment(drive: Drive, slip: SlipBand, as: { ratio: number; phase: DrivePhase }): DriveSegment {
  const perSpeed = drive.wheelRadius / as.ratio;
  return {
    phase: as.phase,
    from: slip.from * perSpeed,
    to: slip.to * perSpeed,
    force0: (slip.torque * drive.efficiency) / perSpeed,
    force1: 0,
    power: 0,
    engine0: slip.held,
    engine1: 0,
    ratio: as.ratio,
  };
}

/** One segment between each two corners of the torque curve. */
function runSegments(
  drive: Drive,
  engine: EngineCurve,
  run: { ratio: number; from: number; to: number; phase: DrivePhase },
): DriveSegment[] {
  const perSpeed = drive.wheelRadius / run.ratio;
  const gain = drive.efficiency / perSpeed;
  const segments: DriveSegment[] = [];
  for (let k = 1; k < engine.corners.length; k++) {
    const [low, high] = [engine.corners[k - 1]!, engine.corners[k]!];
    const [from, to] = [Math.max(low.speed, run.from), Math.min(high.speed, run.to)];
    if (!(to > from)) continue;
    const slope = (high.torque - low.torque) / (high.speed - low.speed);
    segments.push({
      phase: run.phase,
      from: from * perSpeed,
      to: to * perSpeed,
      force0: gain * (low.torque - slope * low.speed),
      force1: (gain * slope) / perSpeed,
      power: 0,
      engine0: 0,
      engine1: 1 / perSpeed,
      ratio: run.ratio,
    });
  }
  return segments;
}

function shiftSegment(drive: Drive, engine: EngineCurve, belt: BeltShift): DriveSegment[] {
  if (belt.low === belt.high) return [];
  const pace = belt.shiftsAt * drive.wheelRadius;
  return [
    {
      phase: 'shift',
      from: pace / (drive.ratio * belt.low),
      to: pace / (drive.ratio * belt.high),
      force0: 0,
      force1: 0,
      power: drive.efficiency * torqueAt(engine, belt.shiftsAt) * belt.shiftsAt,
      engine0: belt.shiftsAt,
      engine1: 0,
      ratio: drive.ratio * belt.low,
    },
  ];
}

function driveIssues(drive: Drive, engine: EngineCurve): readonly Issue[] {
  const issues: Issue[] = [];
  const above = (path: string, given: number) => {
    if (!(given > 0 && Number.isFinite(given)))
      issues.push({ code: 'out-of-range', path, given, above: 0, unit: '' });
  };
  above('ratio', drive.ratio);
  above('wheelRadius', drive.wheelRadius);
  above('efficiency', drive.efficiency);
  if (drive.efficiency > 1) {
    issues.push({ code: 'out-of-range', path: 'efficiency', given: drive.efficiency, max: 1, unit: '' });
  }
  const conflict = (path: string, reason: string) => issues.push({ code: 'conflict', path, reason });
  const { belt } = drive;
  if (!belt) return issues;
  above('belt.high', belt.high);
  if (!(belt.low >= belt.high)) conflict('belt.low', 'the launch ratio is at least the top ratio');
  if (!(belt.shiftsAt <= engine.highest)) {
    conflict('belt.shiftsAt', 'the belt would shift above the highest engine speed, so never');
  }
  if (belt.engages !== undefined && !(belt.engages <= belt.shiftsAt)) {
    conflict('belt.engages', 'the belt bites before it shifts');
  }
  return issues;
}
