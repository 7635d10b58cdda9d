import type { Bike, MassSummary } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { longitudinalBike } from './brakingOfBuild.ts';
import { wheelLoads } from './statics.ts';
import {
  type BouncePitch,
  bouncePitch,
  type Drop,
  dropOn,
  forkWheelRate,
  inSeries,
  naturalFrequency,
  type SpringEnd,
  type SpringEndResult,
  springEnd,
} from './suspension.ts';
import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

/** How one end is sprung. */
export interface SprungEnd {
  /** `fork`: its springs are known; `fork-by-sag`: their rate follows from the sag; `tire`: the tire alone. */
  readonly by: 'fork' | 'fork-by-sag' | 'tire';
  /** k of both fork springs along the fork [N/m], and its rake [rad]; absent on the tire. */
  readonly fork?: { readonly rate: number; readonly rake: number };
  readonly end: SpringEnd;
  readonly result: SpringEndResult;
  /** Load over rest load of the bump case, and whether the travel holds out; absent without a travel. */
  readonly bump?: { readonly factor: number; readonly bottoms: boolean };
}

export interface SuspensionOfBuild {
  readonly front: SprungEnd;
  readonly rear: SprungEnd;
  readonly bouncePitch: BouncePitch;
  /** Seat springs, where the build has them. */
  readonly seat?: {
    readonly rate: number;
    readonly mass: number;
    readonly sag: number;
    readonly frequency: number;
  };
  /** A drop of both wheels by 0.1 m onto these springs. */
  readonly drop: Drop;
}

/** Rate of a small tire [N/m]: the middle of 80 to 150 N/mm. @source memory */
export const TIRE_RATE = 115e3;
/** Load over rest load in the bump case. @source memory, vertical 3 g */
export const BUMP_FACTOR = 3;
/** Height of the drop [m]. @source memory, suggested load cases */
export const DROP_HEIGHT = 0.1;
/** Share of the rider's mass on the seat. @source practice */
const ON_SEAT = 0.75;

/**
 * Springs of a placed bike with rider: sag, frequencies, load that uses up the travel, bounce and pitch. Where there is
 * no suspension the tire acts instead; a telescopic fork without a spring rate takes it from its sag, without preload.
 * The sag counted is that of the whole load; the design ride height already holds a part of it.
 * @source derived, see `springEnd` and `bouncePitch`; memory, rate of small tires
 */
export function suspensionOfBuild(build: Build, bike: Bike, masses: MassSummary): SuspensionOfBuild {
  const body = longitudinalBike(bike, masses);
  const loads = wheelLoads(body, 0);
  const unsprung = {
    front: build.wheels.front.mass * STANDARD_GRAVITY,
    rear: build.wheels.rear.mass * STANDARD_GRAVITY,
  };
  const front = frontEnd(build, bike, loads.front, unsprung.front);
  const rear = onTire(loads.rear);
  const rate = (one: SprungEnd): number =>
    one.by === 'tire' ? TIRE_RATE : inSeries(one.end.wheelRate, TIRE_RATE);
  const { springRate } = build.seating.seat;
  const seated = ON_SEAT * build.rider.mass;
  return {
    front,
    rear,
    bouncePitch: bouncePitch({
      mass: masses.total,
      inertia: masses.inertia[1],
      toFront: body.wheelbase - body.ahead,
      toRear: body.ahead,
      frontRate: rate(front),
      rearRate: rate(rear),
    }),
    ...(springRate === undefined
      ? {}
      : {
          seat: {
            rate: springRate,
            mass: seated,
            sag: (seated * STANDARD_GRAVITY) / springRate,
            frequency: naturalFrequency(springRate, seated),
          },
        }),
    drop: dropOn(masses.total, rate(front) + rate(rear), DROP_HEIGHT),
  };
}

function frontEnd(build: Build, bike: Bike, load: number, unsprung: number): SprungEnd {
  const { fork } = build.steering;
  const { rake } = bike.layout.stances.sag;
  const sprung = load - unsprung;
  const bySag = fork.sag !== undefined && fork.sag > 0 ? (sprung * Math.cos(rake)) / fork.sag : undefined;
  const axial = fork.springRate ?? bySag;
  if (fork.kind !== 'telescopic' || axial === undefined || !(sprung > 0)) return onTire(load);
  const vertical = Math.cos(rake);
  const end: SpringEnd = {
    load: sprung,
    wheelRate: forkWheelRate(axial, rake),
    preload: (fork.springRate === undefined ? 0 : (fork.preload ?? 0)) * vertical,
    ...(fork.travel === undefined || fork.travel === 0 ? {} : { travel: fork.travel * vertical }),
  };
  const by = fork.springRate === undefined ? 'fork-by-sag' : 'fork';
  return { ...judged(by, end), fork: { rate: axial, rake } };
}

const onTire = (load: number): SprungEnd => judged('tire', { load, wheelRate: TIRE_RATE, preload: 0 });

function judged(by: SprungEnd['by'], end: SpringEnd): SprungEnd {
  const result = springEnd(end);
  const { bottomsAt } = result;
  return {
    by,
    end,
    result,
    ...(bottomsAt === undefined ? {} : { bump: { factor: BUMP_FACTOR, bottoms: bottomsAt < BUMP_FACTOR } }),
  };
}
