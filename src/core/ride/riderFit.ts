import { placeFigure, type RiderContacts, type RiderFigure } from '../bike/index.ts';
import {
  angleBetween3,
  between3,
  distance3,
  type Frame3,
  length3,
  type Point3,
  rotatePointAbout,
  subtract3,
  toLocal,
} from '../geometry/index.ts';
import {
  type AngleRange,
  type BodyGroup,
  type BodyLinks,
  comfort,
  limbRadius,
  type Percentile,
  SHOES,
} from '../standards/index.ts';

/** A box that a leg may come near: engine, exhaust, tank. */
export interface Obstacle {
  readonly name: string;
  readonly frame: Frame3;
  readonly half: Point3;
  /** It burns: the engine, an exhaust. */
  readonly isHot: boolean;
}

/** What a rider meets; z above the ground. */
export interface RiderFitInput {
  readonly contacts: RiderContacts;
  /** Width of the seat [m], ≥ 0. */
  readonly seatWidth: number;
  /** Full lock, and the steering axis that the grips turn about. */
  readonly lock?: { readonly angle: number; readonly through: Point3; readonly axis: Point3 };
  readonly obstacles: readonly Obstacle[];
}

/** Who sits there. */
export interface FittedRider {
  readonly label: string;
  readonly links: BodyLinks;
  readonly group?: BodyGroup;
  readonly percentile?: Percentile;
}

export type Joint = 'knee' | 'hip' | 'elbow' | 'trunkLean';

export interface RiderFit {
  readonly rider: FittedRider;
  /** Points of the figure, left side, for the picture. */
  readonly figure: RiderFigure;
  /** Knee hip-knee-ankle, hip trunk-thigh, elbow shoulder-elbow-grip, trunk from vertical [rad]. */
  readonly angles: Readonly<Record<Joint, number>>;
  /** Against the usual comfort. */
  readonly comfort: Readonly<Record<Joint, 'inside' | 'below' | 'above'>>;
  readonly reaches: { readonly peg: boolean; readonly grip: boolean };
  /** Both feet flat, at a stop: what the leg has left over [m]; negative: it is short by that. */
  readonly groundMargin: number;
  /** Farther grip at full lock, trunk as at rest: what the arm has left over [m]. */
  readonly lockMargin?: number;
  /** Nearest approach of each leg part to each obstacle, rising by gap, knees held out by `splay`. */
  readonly clearances: readonly LegClearance[];
  /** How far each knee must be held out of the leg's plane at rest for the most room it can get [rad]. */
  readonly splay: { readonly left: number; readonly right: number };
}

export interface LegClearance {
  readonly limb: 'thigh' | 'knee' | 'calf';
  readonly side: 'left' | 'right';
  readonly against: string;
  readonly isHot: boolean;
  /** Between the clothed leg and the box [m]; negative: they meet. */
  readonly gap: number;
}

/** The triangle of seat, peg and grip, seen from the side. */
export interface SeatTriangle {
  readonly seatToPeg: number;
  readonly pegToGrip: number;
  readonly seatToGrip: number;
  /** Direction from peg up to seat and from seat to grip, from straight ahead, upward positive [rad]. */
  readonly pegToSeatAngle: number;
  readonly seatToGripAngle: number;
}

/** Angles that most riders find comfortable. @source memory, comfort of angles */
export const comfortAngles: Readonly<Record<Joint, AngleRange>> = comfort;

/** Farthest that a knee is held out while riding, and the steps that are tried [rad]. @source practice */
const MOST_SPLAY = Math.PI / 6;
const SPLAY_STEP = Math.PI / 36;
/** Points looked at along a limb: a limb strays from its nearest point by less than 1 % of its length. */
const ALONG = 50;

/**
 * Angles, reach and room of one rider at rest.
 * Feet: crotch height and soles must span from the ground over the edge of the seat, √(h² + (W/2)²).
 * @source ansur-2, sizes; derived, linked figure; memory, comfort of angles
 */
export function riderFit(input: RiderFitInput, rider: FittedRider): RiderFit {
  const { contacts, seatWidth } = input;
  const figure = placeFigure(rider.links, contacts);
  const angles = anglesOf(figure);
  const lockMargin = lockMarginOf(input, rider.links, figure);
  const [left, right] = [legRoom(input.obstacles, figure, 'left'), legRoom(input.obstacles, figure, 'right')];
  return {
    rider,
    figure,
    angles,
    comfort: {
      knee: placed(angles.knee, comfort.knee),
      hip: placed(angles.hip, comfort.hip),
      elbow: placed(angles.elbow, comfort.elbow),
      trunkLean: placed(angles.trunkLean, comfort.trunkLean),
    },
    reaches: { peg: !figure.outOfReach.includes('leg'), grip: !figure.outOfReach.includes('arm') },
    groundMargin: rider.links.inseam + SHOES - Math.hypot(contacts.seat.z, seatWidth / 2),
    ...(lockMargin === undefined ? {} : { lockMargin }),
    clearances: [...left.clearances, ...right.clearances].sort((a, b) => a.gap - b.gap),
    splay: { left: left.splay, right: right.splay },
  };
}

/** Side lengths and directions of the triangle of contacts. @source derived, distances */
export function seatTriangle({ seat, peg, grip }: RiderContacts): SeatTriangle {
  const aside = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.z - b.z);
  const angle = (from: Point3, to: Point3): number => Math.atan2(to.z - from.z, to.x - from.x);
  return {
    seatToPeg: aside(seat, peg),
    pegToGrip: aside(peg, grip),
    seatToGrip: aside(seat, grip),
    pegToSeatAngle: angle(peg, seat),
    seatToGripAngle: angle(seat, grip),
  };
}

function anglesOf(figure: RiderFigure): Record<Joint, number> {
  const at = (joint: Point3, a: Point3, b: Point3): number =>
    angleBetween3(subtract3(a, joint), subtract3(b, joint));
  const { hip, knee, ankle, shoulder, elbow, grip } = figure;
  // The trunk is seen from the side: hips and shoulders differ in width.
  const level = { ...shoulder, y: hip.y };
  return {
    knee: at(knee, hip, ankle),
    hip: at({ ...hip, y: 0 }, { ...shoulder, y: 0 }, { ...knee, y: 0 }),
    elbow: at(elbow, shoulder, grip),
    trunkLean: Math.atan2(level.x - hip.x, level.z - hip.z),
  };
}

const placed = (angle: number, { least, most }: AngleRange): 'inside' | 'below' | 'above' =>
  angle < least ? 'below' : angle > most ? 'above' : 'inside';

function lockMarginOf(
  { lock, contacts }: RiderFitInput,
  links: BodyLinks,
  figure: RiderFigure,
): number | undefined {
  if (!lock) return undefined;
  const farthest = Math.max(
    ...[1, -1].map((way) =>
      distance3(figure.shoulder, rotatePointAbout(contacts.grip, lock.through, lock.axis, way * lock.angle)),
    ),
  );
  return links.upperArm + links.forearm - farthest;
}

interface LegRoom {
  readonly splay: number;
  readonly clearances: readonly LegClearance[];
}

/** A leg with its knee held out as little as clears everything, else as far as gives the most room. */
function legRoom(obstacles: readonly Obstacle[], figure: RiderFigure, side: LegClearance['side']): LegRoom {
  const least = (room: LegRoom): number => Math.min(...room.clearances.map(({ gap }) => gap));
  let best: LegRoom | undefined;
  for (let splay = 0; splay <= MOST_SPLAY + SPLAY_STEP / 2; splay += SPLAY_STEP) {
    const room = { splay, clearances: clearancesOf(obstacles, figure, side, splay) };
    if (!best || least(room) > least(best)) best = room;
    if (obstacles.length === 0 || least(room) >= 0) break;
  }
  return best!;
}

function clearancesOf(
  obstacles: readonly Obstacle[],
  { hip, knee: atRest, ankle }: RiderFigure,
  side: LegClearance['side'],
  splay: number,
): LegClearance[] {
  // About the upward line from ankle to hip, a positive turn takes a knee that is ahead of it to the left: outward.
  const knee = splay === 0 ? atRest : rotatePointAbout(atRest, hip, subtract3(hip, ankle), splay);
  const limbs = [
    { limb: 'thigh', from: hip, to: knee, radius: limbRadius.thigh },
    { limb: 'knee', from: knee, to: knee, radius: limbRadius.knee },
    { limb: 'calf', from: knee, to: ankle, radius: limbRadius.calf },
  ] as const;
  const own = (point: Point3): Point3 => (side === 'left' ? point : { ...point, y: -point.y });
  return obstacles.flatMap((box) =>
    limbs.map(({ limb, from, to, radius }): LegClearance => {
      const gap = distanceToBox(own(from), own(to), box) - radius;
      return { limb, side, against: box.name, isHot: box.isHot, gap };
    }),
  );
}

/** Of a straight limb from a box; 0 when it passes through. */
function distanceToBox(from: Point3, to: Point3, { frame, half }: Obstacle): number {
  const out = (value: number, limit: number): number => Math.max(0, Math.abs(value) - limit);
  const count = distance3(from, to) > 0 ? ALONG : 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k += 1) {
    const local = toLocal(frame, count === 0 ? from : between3(from, to, k / count));
    least = Math.min(
      least,
      length3({ x: out(local.x, half.x), y: out(local.y, half.y), z: out(local.z, half.z) }),
    );
  }
  return least;
}
