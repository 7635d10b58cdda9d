import type { TubeEntry } from '../build/index.ts';
import {
  type Axis,
  along3,
  angleAbout3,
  type Centerline,
  type CenterlinePiece,
  type CopePlace,
  centerlineAt,
  copePlace,
  cross3,
  distance3,
  dot3,
  type Point3,
  rotate3,
  scale3,
  subtract3,
  unit3,
} from '../geometry/index.ts';
import type { Issue } from '../quantity/index.ts';
import type { PlacedTube, PlacedTubeEnd, TubeFlaw } from './bike.ts';
import { copeSpan } from './copeSpan.ts';

/** A tube before its ends are worked out. */
export interface BareTube extends Omit<PlacedTube, 'ends' | 'mass' | 'purpose'> {
  /** Names of the points that it passes. */
  readonly nodes: readonly string[];
}

export interface TubeEndQuestion {
  readonly tube: BareTube;
  readonly end: 0 | 1;
  readonly joint: NonNullable<TubeEntry['start']>;
  /** What it is fitted round: another tube, or the neck with its axis. */
  readonly trunk?: { readonly id: string; readonly outside: number } & (
    | { readonly axis: Axis }
    | { readonly centerline: Centerline }
  );
}

export interface TubeEndAnswer {
  readonly end: PlacedTubeEnd;
  readonly flaws: readonly TubeFlaw[];
  /** From the end of the centerline back to the middle of the cut [m]. */
  readonly meanCut: number;
}

/** A tube steeper than this has no clear upper side; its forward side is taken [rad]. */
const STEEP = Math.PI / 12;
const UP: Point3 = { x: 0, y: 0, z: 1 };
const FORWARD: Point3 = { x: 1, y: 0, z: 0 };

/**
 * One end of a tube: for a cope, the angle and offset of the two axes where the trunk passes nearest to the end, the
 * turn of the cope about the tube, and where its longest and shortest points lie.
 * @source derived, common perpendicular of two lines and the circular saddle
 */
export function placeTubeEnd(question: TubeEndQuestion): TubeEndAnswer {
  const { tube, end, joint, trunk } = question;
  const node = end === 0 ? tube.nodes[0]! : tube.nodes.at(-1)!;
  const plain: PlacedTubeEnd = {
    joint: joint.joint,
    node,
    longPoint: 0,
    shortPoint: 0,
    leaveLong: joint.leaveLong ?? 0,
  };
  if (!trunk) return { end: plain, flaws: [], meanCut: 0 };
  const branch = inward(tube.centerline, end);
  const axis = 'axis' in trunk ? trunk.axis : axisNear(trunk.centerline, branch.point);
  const onto = { onto: trunk.id, trunkOutside: trunk.outside };
  const place = copePlace(branch, axis);
  const flaw = (rule: TubeFlaw['rule'], issues: readonly Issue[]): TubeFlaw => ({
    tube: tube.id,
    end: end === 0 ? 'start' : 'end',
    rule,
    reason: issues.map((issue) => (issue.code === 'conflict' ? issue.reason : issue.code)).join('; '),
  });
  if (!place.ok) return { end: { ...plain, ...onto }, flaws: [flaw('no-cope', place.issues)], meanCut: 0 };
  const { angle, offset } = place.value;
  const clock =
    joint.clock ??
    angleAbout3(referenceAt(tube.centerline, end), place.value.heel, scale3(place.value.away, -1));
  const joined = { ...plain, ...onto, angle, offset, clock };
  const span = copeSpan({
    branchRadius: tube.outside / 2,
    wall: tube.wall,
    trunkRadius: trunk.outside / 2,
    angle,
    offset,
  });
  if (!span.ok) return { end: joined, flaws: [flaw('no-cope', span.issues)], meanCut: 0 };
  const level = levelOf(place.value, branch);
  const longPoint = level + span.value.least;
  const shortPoint = level + span.value.greatest;
  const meanCut = level + span.value.mean;
  const straight = straightAt(tube.centerline, end);
  const flaws: TubeFlaw[] =
    shortPoint > straight
      ? [
          {
            ...flaw('bend-in-cope', []),
            reason: 'the bend begins before the cope ends',
            value: straight,
            limit: shortPoint,
          },
        ]
      : [];
  return { end: { ...joined, longPoint, shortPoint }, flaws, meanCut };
}

/**
 * Reference direction across a tube at one of its ends: toward the inside of its first bend, carried along without
 * twist; on a straight tube the upper side, or the forward side when it stands steeply.
 */
export function referenceAt(line: Centerline, end: 0 | 1): Point3 {
  const first = line.pieces[0]!.direction;
  const bend = line.pieces.find((piece) => piece.kind === 'bend');
  if (!bend) {
    const steep = Math.abs(first.z) > Math.cos(STEEP);
    const hint = steep ? FORWARD : UP;
    return unit3(subtract3(hint, scale3(first, dot3(hint, first))));
  }
  const inside = cross3(bend.axis, bend.direction);
  return end === 0 ? inside : centerlineAt(line, line.length, inside).up;
}

/** The end's point, and the direction from it into the tube. */
function inward(line: Centerline, end: 0 | 1): Axis {
  const place = centerlineAt(line, end === 0 ? 0 : line.length);
  return { point: place.point, direction: end === 0 ? place.direction : scale3(place.direction, -1) };
}

/** From the end of the centerline to the place level with the trunk's axis, along the branch [m]. */
const levelOf = (place: CopePlace, branch: Axis): number =>
  dot3(subtract3(place.origin, branch.point), place.away);

function straightAt(line: Centerline, end: 0 | 1): number {
  const piece = end === 0 ? line.pieces[0]! : line.pieces.at(-1)!;
  return piece.kind === 'straight' ? piece.length : 0;
}

/** Tangent line of a centerline where it passes nearest to a point. */
export function axisNear(line: Centerline, point: Point3): Axis {
  const candidates = line.pieces.map((piece) => nearestOn(piece, point));
  return candidates.reduce((best, next) =>
    distance3(next.point, point) < distance3(best.point, point) ? next : best,
  );
}

function nearestOn(piece: CenterlinePiece, point: Point3): Axis {
  if (piece.kind === 'straight') {
    const along = dot3(subtract3(point, piece.from), piece.direction);
    const at = Math.min(Math.max(along, 0), piece.length);
    return { point: along3(piece.from, piece.direction, at), direction: piece.direction };
  }
  const arm = subtract3(piece.from, piece.center);
  const turn = angleAbout3(arm, subtract3(point, piece.center), piece.axis);
  // Beyond an end of the arc the nearer end is nearest.
  const past =
    turn > piece.angle / 2 + Math.PI || turn < piece.angle / 2 - Math.PI
      ? turn - Math.sign(turn) * 2 * Math.PI
      : turn;
  const at = Math.min(Math.max(past, 0), piece.angle);
  return {
    point: along3(piece.center, rotate3(arm, piece.axis, at), 1),
    direction: rotate3(piece.direction, piece.axis, at),
  };
}
