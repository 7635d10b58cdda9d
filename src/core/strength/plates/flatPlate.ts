import {
  type Loop,
  type Point,
  reverseLoop,
  type Segment,
  segmentPoint,
  segments,
  signedArea,
} from '../../geometry/index.ts';
import type { PlateWeld } from './seams.ts';

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
  readonly welds: readonly PlateWeld[];
  /** How far from a weld metal is softened [m]. */
  readonly weldReach: number;
}

/** Step of an arc cut into chords [rad]. */
const CHORD_STEP = Math.PI / 24;

/** Pieces of a plate, the outline counterclockwise. */
export function cuttingPlate(
  { outline, openings, thickness }: FlatPlate,
  welds: readonly PlateWeld[],
  weldReach: number,
): CuttingPlate {
  const pieces = segments(signedArea(outline) < 0 ? reverseLoop(outline) : outline);
  return {
    thickness,
    welds,
    weldReach,
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

/** How far pieces reach along the direction of an angle [rad]: least and most [m]. */
export function reachAlong(pieces: readonly Segment[], angle: number): readonly [number, number] {
  const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const piece of pieces) {
    const at = piece.from.x * nx + piece.from.y * ny;
    low = Math.min(low, at);
    high = Math.max(high, at);
    if (piece.kind === 'line') continue;
    const middle = piece.center.x * nx + piece.center.y * ny;
    if (shareAt(piece, angle) <= 1) high = Math.max(high, middle + piece.radius);
    if (shareAt(piece, angle + Math.PI) <= 1) low = Math.min(low, middle - piece.radius);
  }
  return [low, high];
}

const TURN = 2 * Math.PI;

/** How far along an arc a direction from its center lies: 0 to 1 on it, more off it. */
export function shareAt(arc: Extract<Segment, { kind: 'arc' }>, angle: number): number {
  const turned = arc.sweep > 0 ? angle - arc.startAngle : arc.startAngle - angle;
  return (turned - TURN * Math.floor(turned / TURN)) / Math.abs(arc.sweep);
}
