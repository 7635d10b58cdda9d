import type { Bike, PlacedTube } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { overbentAngle } from '../geometry/index.ts';

/** One bend as it is marked and pulled. */
export interface BendRow {
  /** From the sawn end that is marked START to the start of the bend [m]. */
  readonly start: number;
  /** To the end of the bend [m]. */
  readonly end: number;
  /** Turn of the tube in the bender since the bend before, right-handed seen along the tube from START [rad]; 0 for the first. */
  readonly rotation: number;
  /** Bend angle that the tube must have when let go [rad]. */
  readonly angle: number;
  /** Angle to pull to, with the springback of the builder's own sample [rad]. */
  readonly pull: number;
  readonly radius: number;
}

export interface BendSchedule {
  readonly tube: string;
  readonly pair: boolean;
  readonly outside: number;
  readonly wall: number;
  readonly sawn: number;
  readonly rows: readonly BendRow[];
  /** Springback was measured by this shop; else none is allowed for and the sheet says so. */
  readonly springbackKnown: boolean;
}

const QUARTER = Math.PI / 2;

/** Bend schedule of every bent tube; of a mirrored pair the left one, the right one turns the other way. */
export function bendSchedules(build: Build, bike: Bike): readonly BendSchedule[] {
  return bike.tubes
    .filter((tube) => tube.hand !== 'right' && tube.centerline.bends.length > 0)
    .map((tube) => scheduleOf(build, tube));
}

function scheduleOf(build: Build, tube: PlacedTube): BendSchedule {
  const springback = build.shop?.bender?.springback;
  const [start, end] = tube.ends;
  // Marks are made on the sawn tube, whose end lies beyond the finished one by what is left on.
  const offset = start.leaveLong - start.longPoint;
  return {
    tube: tube.entry,
    pair: tube.hand === 'left',
    outside: tube.outside,
    wall: tube.wall,
    sawn: tube.centerline.length - start.longPoint - end.longPoint + start.leaveLong + end.leaveLong,
    springbackKnown: springback !== undefined,
    rows: tube.centerline.bends.map((bend) => ({
      start: bend.start + offset,
      end: bend.end + offset,
      rotation: bend.rotation,
      angle: bend.angle,
      pull: overbentAngle(bend.angle, springbackOf(bend.angle, springback ?? 0)),
      radius: bend.radius,
    })),
  };
}

/** What the tube lets go is the elastic turn over its bent length, so it grows with the angle from the 90° sample. */
function springbackOf(angle: number, atQuarter: number): number {
  return (atQuarter * angle) / QUARTER;
}
