import type { Loop } from './loop.ts';
import { type Bounds, joinBounds, type Segment, segmentBounds, segments } from './loopSegment.ts';
import { type BoxedSegment, boxed } from './segmentMeet.ts';

/** A loop with its pieces and their boxes worked out: made once by whoever asks many questions about one loop. */
export interface Outline {
  readonly loop: Loop;
  /** As {@link segments} gives them. */
  readonly pieces: readonly BoxedSegment[];
  readonly box: Bounds;
}

/** What questions about a loop are asked of. */
export type Shape = Loop | Outline;

/** Throws for a loop without pieces. */
export function outlineOf(shape: Shape): Outline {
  if ('pieces' in shape) return shape;
  const pieces = segments(shape).map(boxed);
  if (pieces.length === 0) throw new RangeError('an outline needs pieces');
  return { loop: shape, pieces, box: joinBounds(pieces.map(({ box }) => box)) };
}

export const piecesOf = (shape: Shape): readonly Segment[] =>
  'pieces' in shape ? shape.pieces.map(({ piece }) => piece) : segments(shape);

/** Exact box around a loop [m]. */
export const loopBounds = (shape: Shape): Bounds =>
  'pieces' in shape ? shape.box : joinBounds(segments(shape).map(segmentBounds));
