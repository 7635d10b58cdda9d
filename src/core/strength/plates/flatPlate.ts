import {
  type Loop,
  type Point,
  reverseLoop,
  type Segment,
  segmentPoint,
  segments,
  signedArea,
} from '../../geometry/index.ts';

/** A flat plate of even thickness, in its own plane [m]. */
export interface FlatPlate {
  readonly outline: Loop;
  /** Holes, slots and windows; they may overlap each other or the outline. */
  readonly openings: readonly Loop[];
  /** t [m] */
  readonly thickness: number;
}

/** Corner of the outline cut into chords; `key` = piece + share of it, so that the walk round the outline is ordered. */
export interface WalkPoint extends Point {
  readonly key: number;
}

/** A plate made ready to be cut. */
export interface CuttingPlate {
  readonly thickness: number;
  /** Counterclockwise. */
  readonly outline: readonly Segment[];
  readonly openings: readonly (readonly Segment[])[];
  /** The outline as a polygon, for the question on which side of a chord a point lies. */
  readonly walk: readonly WalkPoint[];
}

/** Step of an arc cut into chords [rad]. */
const CHORD_STEP = Math.PI / 24;

/** Pieces of a plate, the outline counterclockwise. */
export function cuttingPlate({ outline, openings, thickness }: FlatPlate): CuttingPlate {
  const pieces = segments(signedArea(outline) < 0 ? reverseLoop(outline) : outline);
  return {
    thickness,
    outline: pieces,
    openings: openings.map((loop) => segments(loop)),
    walk: pieces.flatMap((piece, i) => {
      const parts = piece.kind === 'line' ? 1 : Math.ceil(Math.abs(piece.sweep) / CHORD_STEP);
      return Array.from({ length: parts }, (_, k) => ({
        ...segmentPoint(piece, k / parts),
        key: i + k / parts,
      }));
    }),
  };
}

/** How far pieces reach along a direction of length 1: least and most [m]. */
export function reachAlong(pieces: readonly Segment[], nx: number, ny: number): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const see = (value: number): void => {
    if (value < low) low = value;
    if (value > high) high = value;
  };
  for (const piece of pieces) {
    see(piece.from.x * nx + piece.from.y * ny);
    if (piece.kind === 'line') continue;
    const angle = Math.atan2(ny, nx);
    const middle = piece.center.x * nx + piece.center.y * ny;
    if (shareAt(piece, angle) <= 1) see(middle + piece.radius);
    if (shareAt(piece, angle + Math.PI) <= 1) see(middle - piece.radius);
  }
  return [low, high];
}

const TURN = 2 * Math.PI;

/** How far along an arc a direction from its center lies: 0 to 1 on it, more off it. */
export function shareAt(arc: Extract<Segment, { kind: 'arc' }>, angle: number): number {
  const turned = arc.sweep > 0 ? angle - arc.startAngle : arc.startAngle - angle;
  return (turned - TURN * Math.floor(turned / TURN)) / Math.abs(arc.sweep);
}
