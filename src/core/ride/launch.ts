import { bad, good, type Outcome } from '../quantity/index.ts';
import { type DrivePath, type DriveSegment, drivePath } from './drivePath.ts';
import { energyOf, type Run, runTo, startRun } from './launchRun.ts';
import type { Launch, LaunchInput, LaunchMark } from './launchTypes.ts';
import { accelerationLimits, roadForces } from './roadLoad.ts';
import { type TopSpeed, topSpeed } from './topSpeed.ts';

/** A top speed that resistance sets is only approached: the run ends at this share of it. */
const NEAR_TOP = 0.995;
/** A speed this near such a top speed is not called reached. */
const REACHABLE = 1 - 1e-9;

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
