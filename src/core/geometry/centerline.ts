import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import type { Point3 } from './point.ts';
import {
  along3,
  angleAbout3,
  angleBetween3,
  anyAcross3,
  cross3,
  distance3,
  rotate3,
  subtract3,
  unit3,
} from './vec3.ts';

export interface CenterlineInput {
  /** Points the tube is drawn through: its two ends and the corners of its bends, before rounding [m]. */
  readonly points: readonly Point3[];
  /** Centerline radius of the bends [m], > 0: one for all, or one for each interior point in order. */
  readonly bendRadius: number | readonly number[];
}

/** A straight or bent length of tube, in order from the first point. */
export type CenterlinePiece = StraightPiece | BendPiece;

interface PieceBase {
  readonly from: Point3;
  readonly to: Point3;
  /** Distance along the tube at which the piece starts [m]. */
  readonly start: number;
  /** [m] */
  readonly length: number;
  /** Unit direction of travel at the start of the piece. */
  readonly direction: Point3;
}

export interface StraightPiece extends PieceBase {
  readonly kind: 'straight';
}

export interface BendPiece extends PieceBase {
  readonly kind: 'bend';
  readonly center: Point3;
  /** Centerline radius [m]. */
  readonly radius: number;
  /** [rad], 0 to π. */
  readonly angle: number;
  /** Unit vector square to the plane of the bend; the tube turns about it by the right-hand rule. */
  readonly axis: Point3;
}

/** One bend as the bender needs it. */
export interface Bend {
  /** Index in `points` of the corner. */
  readonly point: number;
  /** Distance along the tube from its first end to the start of the bend [m]. */
  readonly start: number;
  /** Distance along the tube to the end of the bend [m]. */
  readonly end: number;
  /** Straight length between the bend before (or the first end) and this one [m]. */
  readonly straightBefore: number;
  /**
   * Turn of the tube in the bender before this bend [rad], −π to π: from the plane of the bend before to this one's,
   * right-hand rule about the direction of travel; so clockwise as seen along the tube from its first end. 0 for the first.
   */
  readonly rotation: number;
  /** Angle to end up with [rad], 0 to π. */
  readonly angle: number;
  /** Centerline radius [m]. */
  readonly radius: number;
  /** Corner to start of bend: radius·tan(angle/2) [m]. */
  readonly tangentLength: number;
  /** radius·angle [m]. */
  readonly arcLength: number;
}

export interface Centerline {
  readonly pieces: readonly CenterlinePiece[];
  readonly bends: readonly Bend[];
  /** Developed length, the length of straight tube it is made from [m]. */
  readonly length: number;
}

/** A place on a centerline. `up` is square to `direction` and is carried along without twist. */
export interface CenterlinePlace {
  /** Distance along the tube [m]. */
  readonly at: number;
  readonly point: Point3;
  readonly direction: Point3;
  readonly up: Point3;
}

/** Lengths below this are no lengths: a nanometer [m]. */
const NOTHING = 1e-9;
/** A corner that turns by less is no bend: 1 µm in a kilometer [rad]. */
const STRAIGHT = 1e-9;

/**
 * The centerline of a bent tube: straights joined by arcs tangent to both, tangent length = R·tan(angle/2),
 * developed length = straights + Σ R·angle. A corner that does not turn is passed straight through.
 * @issue conflict — points in one place, a tube that turns straight back, bends whose tangents overlap
 * @issue out-of-range — bend radius not above 0, or a list of radii of the wrong length
 * @source derived, tangent arc in a corner
 */
export function buildCenterline(input: CenterlineInput): Outcome<Centerline> {
  const { points } = input;
  const issues = inputIssues(input);
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const directions = points.slice(1).map((p, i) => unit3(subtract3(p, points[i]!)));
  const corners = points.slice(1, -1).map((_, k) => cornerOf(input, directions, k));
  const overlaps = overlapIssues(points, corners);
  const [overlap, ...more] = [...corners.flatMap((c) => c.issues), ...overlaps];
  if (overlap) return bad(overlap, ...more);
  return good(assemble(points, directions, corners));
}

/** Place at distance `at` along the tube [m], 0 to its length; throws outside. `up` at the start may be given. */
export function centerlineAt(line: Centerline, at: number, up?: Point3): CenterlinePlace {
  if (!(at >= -NOTHING && at <= line.length + NOTHING))
    throw new RangeError('that distance is not on the tube');
  let carried = up ?? anyAcross3(line.pieces[0]!.direction);
  for (const piece of line.pieces) {
    if (at <= piece.start + piece.length || piece === line.pieces.at(-1)) return placeOn(piece, at, carried);
    if (piece.kind === 'bend') carried = rotate3(carried, piece.axis, piece.angle);
  }
  throw new RangeError('a centerline without pieces');
}

/**
 * Places for drawing and sweeping: the ends of every piece, and each bend cut into equal turns of at most
 * `angleStep` [rad].
 */
export function centerlinePlaces(line: Centerline, angleStep: number, up?: Point3): CenterlinePlace[] {
  if (!(angleStep > 0)) throw new RangeError('the angle step must be above 0');
  let carried = up ?? anyAcross3(line.pieces[0]!.direction);
  const places: CenterlinePlace[] = [placeOn(line.pieces[0]!, 0, carried)];
  for (const piece of line.pieces) {
    const cuts = piece.kind === 'bend' ? Math.ceil(piece.angle / angleStep - 1e-9) : 1;
    for (let k = 1; k <= cuts; k++)
      places.push(placeOn(piece, piece.start + (piece.length * k) / cuts, carried));
    if (piece.kind === 'bend') carried = rotate3(carried, piece.axis, piece.angle);
  }
  return places;
}

function inputIssues({ points, bendRadius }: CenterlineInput): Issue[] {
  if (points.length < 2)
    return [{ code: 'missing', path: 'points', wanted: 'at least the two ends of the tube' }];
  const issues: Issue[] = [];
  points.forEach((p, i) => {
    const before = points[i - 1];
    if (before && !(distance3(before, p) > NOTHING)) {
      issues.push({
        code: 'conflict',
        path: `points[${i}]`,
        reason: 'this point lies on the point before it',
      });
    }
  });
  if (typeof bendRadius !== 'number' && bendRadius.length !== points.length - 2) {
    issues.push({
      code: 'conflict',
      path: 'bendRadius',
      reason: `found ${bendRadius.length} bend radii for ${points.length - 2} interior points`,
    });
  }
  return issues;
}

interface Corner {
  readonly angle: number;
  readonly radius: number;
  readonly tangent: number;
  readonly axis: Point3;
  readonly issues: readonly Issue[];
}

function cornerOf(input: CenterlineInput, directions: readonly Point3[], k: number): Corner {
  const [arriving, leaving] = [directions[k]!, directions[k + 1]!];
  const angle = angleBetween3(arriving, leaving);
  const none = { angle: 0, radius: 0, tangent: 0, axis: anyAcross3(arriving) };
  if (angle < STRAIGHT) return { ...none, issues: [] };
  if (Math.PI - angle < STRAIGHT) {
    const reason = 'the tube turns straight back here; put two corners where its bends begin and end';
    return { ...none, issues: [{ code: 'conflict', path: `points[${k + 1}]`, reason }] };
  }
  const { bendRadius } = input;
  const radius = typeof bendRadius === 'number' ? bendRadius : bendRadius[k]!;
  if (!(radius > 0 && Number.isFinite(radius))) {
    const path = typeof bendRadius === 'number' ? 'bendRadius' : `bendRadius[${k}]`;
    const reason = `the tube turns by ${((angle * 180) / Math.PI).toFixed(2)}° at point ${k + 1} and needs a bend radius above 0`;
    return { ...none, issues: [{ code: 'conflict', path, reason }] };
  }
  const axis = unit3(cross3(arriving, leaving));
  return { angle, radius, tangent: radius * Math.tan(angle / 2), axis, issues: [] };
}

function overlapIssues(points: readonly Point3[], corners: readonly Corner[]): Issue[] {
  return points.slice(1).flatMap((p, i): Issue[] => {
    const wanted = (corners[i - 1]?.tangent ?? 0) + (corners[i]?.tangent ?? 0);
    const given = distance3(points[i]!, p);
    if (wanted <= given + NOTHING) return [];
    const reason = `the bends next to it need ${(wanted * 1e3).toFixed(2)} mm between points ${i} and ${i + 1}, which are ${(given * 1e3).toFixed(2)} mm apart`;
    return [{ code: 'conflict', path: `points[${i + 1}]`, reason }];
  });
}

function assemble(
  points: readonly Point3[],
  directions: readonly Point3[],
  corners: readonly Corner[],
): Centerline {
  const pieces: CenterlinePiece[] = [];
  const bends: Bend[] = [];
  let at = 0;
  let from = points[0]!;
  let straight = 0;
  let lastAxis: Point3 | undefined;
  const push = (piece: CenterlinePiece): void => {
    pieces.push(piece);
    at += piece.length;
    from = piece.to;
  };
  directions.forEach((direction, i) => {
    const corner = corners[i];
    const to = along3(points[i + 1]!, direction, -(corner?.tangent ?? 0));
    const length =
      distance3(points[i]!, points[i + 1]!) - (corner?.tangent ?? 0) - (corners[i - 1]?.tangent ?? 0);
    if (length > NOTHING) {
      push({ kind: 'straight', from, to, start: at, length, direction });
      straight += length;
    }
    if (!corner || corner.angle === 0) return;
    const piece = bendPiece(from, at, direction, corner);
    bends.push({
      point: i + 1,
      start: at,
      end: at + piece.length,
      straightBefore: straight,
      rotation: lastAxis ? angleAbout3(lastAxis, corner.axis, direction) : 0,
      angle: corner.angle,
      radius: corner.radius,
      tangentLength: corner.tangent,
      arcLength: piece.length,
    });
    push(piece);
    straight = 0;
    lastAxis = corner.axis;
  });
  return { pieces, bends, length: at };
}

function bendPiece(from: Point3, start: number, direction: Point3, corner: Corner): BendPiece {
  const center = along3(from, cross3(corner.axis, direction), corner.radius);
  const to = along3(center, rotate3(subtract3(from, center), corner.axis, corner.angle), 1);
  const { angle, radius, axis } = corner;
  return { kind: 'bend', from, to, start, length: radius * angle, direction, center, radius, angle, axis };
}

function placeOn(piece: CenterlinePiece, at: number, up: Point3): CenterlinePlace {
  const s = at - piece.start;
  if (piece.kind === 'straight') {
    return { at, point: along3(piece.from, piece.direction, s), direction: piece.direction, up };
  }
  const turn = s / piece.radius;
  const arm = subtract3(piece.from, piece.center);
  return {
    at,
    point: along3(piece.center, rotate3(arm, piece.axis, turn), 1),
    direction: rotate3(piece.direction, piece.axis, turn),
    up: rotate3(up, piece.axis, turn),
  };
}
