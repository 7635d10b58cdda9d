import { bad, good, type Outcome } from '../quantity/index.ts';
import type { Loop } from './loop.ts';
import { distanceToLoop, isSimpleLoop, locatePoint } from './loopPoint.ts';
import { signedArea } from './loopProperties.ts';
import {
  type ArcSegment,
  type Bounds,
  boundsGap,
  loopOfSegments,
  type Segment,
  segmentBounds,
  segmentHeading,
  segmentLength,
  segmentPoint,
  segments,
  shareOfArc,
} from './loopSegment.ts';
import { counterclockwise } from './loopTransform.ts';
import type { Point } from './point.ts';
import { segmentMeetings } from './segmentMeet.ts';
import { distance2, dot2, polar2, subtract2 } from './vec2.ts';

/** Parts of the raw offset shorter than this come from rounding at a crossing [m]. */
const SLIVER = 1e-8;
/** A part of the raw offset nearer to the outline than the offset distance less this is not on the true offset [m]. */
const TOO_NEAR = 1e-8;
/** Ends nearer than this join [m]; a dropped sliver may lie between them. */
const JOIN = 1e-7;

/** Least offset taken [m]. */
const LEAST = 1e-6;

/** A part of a raw offset piece: from share `from` to share `to` of raw piece `of`. */
interface Part {
  readonly of: number;
  readonly from: number;
  readonly to: number;
  readonly segment: Segment;
}

/**
 * The outline at `distance` [m] outside (> 0) or inside (< 0) of a loop, counterclockwise: the set of points exactly so
 * far from it. Lines stay lines and arcs stay arcs; a corner that opens becomes an arc about the corner.
 * Every piece is moved, all crossings are cut, and only the parts at the full distance from the loop are kept, so pieces
 * that vanish need no special case.
 * @issue conflict — the loop crosses itself; the offset is below a micrometer (0 is taken); nothing is left; the offset falls apart into several outlines
 * @source derived, parallel curve of a line or an arc
 */
export function offsetLoop(loop: Loop, distance: number): Outcome<Loop> {
  if (!Number.isFinite(distance)) throw new RangeError('an offset needs a finite distance');
  if (!isSimpleLoop(loop))
    return refuse('the outline crosses or touches itself, so it has no inside to offset');
  const outline = counterclockwise(loop);
  if (distance === 0) return good(outline);
  if (Math.abs(distance) < LEAST) return refuse('an offset below a micrometer is lost in rounding');
  const raw = rawOffset(segments(outline), distance);
  const boxes = raw.map(segmentBounds);
  const kept = raw
    .flatMap((_, i) => partsOf(raw, boxes, i))
    .filter((part) => isTrueOffset(part, outline, distance));
  const loops = chain(withoutDeadEnds(withoutDoubles(kept)));
  const by = `${(distance * 1e3).toFixed(3)} mm`;
  if (loops === undefined) return refuse(`the outline offset by ${by} does not close`);
  if (loops.length === 0) return refuse(`nothing is left of the outline offset by ${by}`);
  if (loops.length > 1)
    return refuse(`the outline offset by ${by} falls apart into ${loops.length} outlines`);
  const result = loopOfSegments(loops[0]!);
  if (!(signedArea(result) > 0) || !isSimpleLoop(result))
    return refuse(`the outline offset by ${by} touches itself`);
  return good(result);
}

const refuse = (reason: string): Outcome<Loop> => bad({ code: 'conflict', path: '', reason });

/** Each piece moved square to itself, with arcs about the corners that open. */
function rawOffset(pieces: readonly Segment[], distance: number): Segment[] {
  return pieces.flatMap((piece, i) => {
    const moved = movePiece(piece, distance);
    const corner = cornerArc(piece, pieces[(i + 1) % pieces.length]!, distance);
    return [...(moved ? [moved] : []), ...(corner ? [corner] : [])];
  });
}

/** Outside is on the right of a counterclockwise loop. An arc whose radius would turn negative vanishes. */
function movePiece(piece: Segment, distance: number): Segment | undefined {
  if (piece.kind === 'line') {
    const angle = segmentHeading(piece, 0) - Math.PI / 2;
    return { kind: 'line', from: polar2(piece.from, distance, angle), to: polar2(piece.to, distance, angle) };
  }
  const radius = piece.radius + Math.sign(piece.sweep) * distance;
  if (radius <= SLIVER) return undefined;
  return arcAbout(piece.center, radius, piece.startAngle, piece.sweep);
}

function cornerArc(piece: Segment, next: Segment, distance: number): ArcSegment | undefined {
  const heading = segmentHeading(piece, 1);
  const turn = wrap(segmentHeading(next, 0) - heading);
  if (Math.sign(turn) !== Math.sign(distance) || Math.abs(turn * distance) <= SLIVER) return undefined;
  const start = heading - (Math.sign(distance) * Math.PI) / 2;
  return arcAbout(next.from, Math.abs(distance), start, turn);
}

const arcAbout = (center: Point, radius: number, startAngle: number, sweep: number): ArcSegment => ({
  kind: 'arc',
  from: polar2(center, radius, startAngle),
  to: polar2(center, radius, startAngle + sweep),
  center,
  radius,
  startAngle,
  sweep,
});

const wrap = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** Raw piece i, cut wherever another raw piece meets it. */
function partsOf(raw: readonly Segment[], boxes: readonly Bounds[], i: number): Part[] {
  const piece = raw[i]!;
  const cuts = raw
    .flatMap((other, j) =>
      j === i || boundsGap(boxes[i]!, boxes[j]!) > SLIVER ? [] : segmentMeetings(piece, other),
    )
    .map((point) => ({ point, share: shareAt(piece, point) }))
    .sort((a, b) => a.share - b.share);
  const stops = [{ point: piece.from, share: 0 }, ...cuts, { point: piece.to, share: 1 }];
  const length = segmentLength(piece);
  const parts: Part[] = [];
  let last = stops[0]!;
  for (const stop of stops.slice(1)) {
    if ((stop.share - last.share) * length <= SLIVER) continue;
    parts.push({ of: i, from: last.share, to: stop.share, segment: cut(piece, last, stop) });
    last = stop;
  }
  return parts;
}

function shareAt(piece: Segment, p: Point): number {
  if (distance2(p, piece.from) <= SLIVER) return 0;
  if (distance2(p, piece.to) <= SLIVER) return 1;
  if (piece.kind === 'arc') {
    return shareOfArc(piece, Math.atan2(p.y - piece.center.y, p.x - piece.center.x)) ?? 1;
  }
  const d = subtract2(piece.to, piece.from);
  return dot2(subtract2(p, piece.from), d) / dot2(d, d);
}

interface Stop {
  readonly point: Point;
  readonly share: number;
}

function cut(piece: Segment, from: Stop, to: Stop): Segment {
  if (piece.kind === 'line') return { kind: 'line', from: from.point, to: to.point };
  return {
    ...piece,
    from: from.point,
    to: to.point,
    startAngle: piece.startAngle + from.share * piece.sweep,
    sweep: (to.share - from.share) * piece.sweep,
  };
}

function isTrueOffset(part: Part, outline: Loop, distance: number): boolean {
  const middle = segmentPoint(part.segment, 0.5);
  if (distanceToLoop(outline, middle) < Math.abs(distance) - TOO_NEAR) return false;
  return locatePoint(outline, middle) === (distance > 0 ? 'outside' : 'inside');
}

/** Two pieces that cross at a very small angle run along each other within rounding; that stretch counts once. */
function withoutDoubles(parts: readonly Part[]): readonly Part[] {
  const isSame = (a: Segment, b: Segment): boolean =>
    distance2(a.from, b.from) <= SLIVER &&
    distance2(a.to, b.to) <= SLIVER &&
    distance2(segmentPoint(a, 0.5), segmentPoint(b, 0.5)) <= SLIVER;
  return parts.filter(
    (part, i) => !parts.slice(0, i).some((earlier) => isSame(earlier.segment, part.segment)),
  );
}

/**
 * Where two pieces meet almost smoothly, the tails past their crossing are too near the outline by less than rounding
 * shows and are kept. They lead nowhere: a part whose end meets no beginning, or whose beginning no end, is no outline.
 */
function withoutDeadEnds(parts: readonly Part[]): readonly Part[] {
  const meets = (p: Point, end: 'from' | 'to', not: Part): boolean =>
    parts.some((other) => other !== not && distance2(other.segment[end], p) <= JOIN);
  const left = parts.filter(
    (part) => meets(part.segment.to, 'from', part) && meets(part.segment.from, 'to', part),
  );
  return left.length === parts.length ? parts : withoutDeadEnds(left);
}

/**
 * Parts joined end to end into closed outlines; undefined when an end finds no beginning. What is left over and shorter
 * than the gaps that are bridged is rounding and goes.
 */
function chain(parts: readonly Part[]): Segment[][] | undefined {
  const left = [...parts];
  const loops: Segment[][] = [];
  for (let first = left.shift(); first; first = left.shift()) {
    const run: Part[] = [first];
    // One part never closes by itself: an arc stops short of a full turn.
    for (let end = first.segment.to; run.length < 2 || distance2(end, first.segment.from) > JOIN; ) {
      const k = nearestStart(left, end);
      if (k === undefined) break;
      const next = left.splice(k, 1)[0]!;
      run.push(next);
      end = next.segment.to;
    }
    const length = run.reduce((sum, part) => sum + segmentLength(part.segment), 0);
    if (length <= 4 * JOIN) continue;
    if (run.length < 2 || distance2(run.at(-1)!.segment.to, first.segment.from) > JOIN) return undefined;
    loops.push(merge(run));
  }
  return loops;
}

function nearestStart(parts: readonly Part[], end: Point): number | undefined {
  let best: number | undefined;
  let least = JOIN;
  parts.forEach((part, k) => {
    const gap = distance2(part.segment.from, end);
    if (gap > least) return;
    best = k;
    least = gap;
  });
  return best;
}

/** Parts of one raw piece that follow each other become one again. */
function merge(run: readonly Part[]): Segment[] {
  const merged: Part[] = [];
  for (const part of run) {
    const last = merged.at(-1);
    if (last && last.of === part.of && last.to === part.from) merged[merged.length - 1] = unite(last, part);
    else merged.push(part);
  }
  const [head, tail] = [merged[0]!, merged.at(-1)!];
  if (merged.length > 1 && head.of === tail.of && tail.to === head.from) {
    return [unite(tail, head), ...merged.slice(1, -1)].map((part) => part.segment);
  }
  return merged.map((part) => part.segment);
}

function unite(a: Part, b: Part): Part {
  const segment: Segment =
    a.segment.kind === 'arc' && b.segment.kind === 'arc'
      ? { ...a.segment, to: b.segment.to, sweep: a.segment.sweep + b.segment.sweep }
      : { kind: 'line', from: a.segment.from, to: b.segment.to };
  return { of: a.of, from: a.from, to: b.to, segment };
}
