import type { Segment } from '../../geometry/index.ts';
import { shareAt } from './flatPlate.ts';

/** Where a line meets an outline. */
export interface Crossing {
  /** Along the line [m]. */
  readonly v: number;
  /** Piece of the outline and share of it. */
  readonly key: number;
}

/** The line of points p with p·n = d; along it v = p·u, u the normal turned a quarter to the left. */
export interface CutLine {
  /** Direction of the normal [rad]. */
  readonly angle: number;
  readonly nx: number;
  readonly ny: number;
  /** d [m] */
  readonly offset: number;
}

/** Crossings of a line with a closed outline in the order along the line, always an even number. */
export function crossings(pieces: readonly Segment[], line: CutLine): Crossing[] {
  const { nx, ny, offset } = line;
  const found: Crossing[] = [];
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i]!;
    const { from, to } = piece;
    const a = from.x * nx + from.y * ny - offset;
    const b = to.x * nx + to.y * ny - offset;
    if (piece.kind === 'arc') arcCrossings(piece, i, line, a > 0, b > 0, found);
    // A point on the line counts as below it, so that a corner on the line is met once or not at all.
    else if (a > 0 !== b > 0) {
      const t = a / (a - b);
      found.push({
        v: alongLine(line, from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)),
        key: i + t,
      });
    }
  }
  return found.length > 1 ? found.sort(byPlace) : found;
}

const byPlace = (p: Crossing, q: Crossing): number => p.v - q.v;

export const alongLine = ({ nx, ny }: CutLine, x: number, y: number): number => y * nx - x * ny;

type Arc = Extract<Segment, { kind: 'arc' }>;

/**
 * Crossings of an arc, by which sides its ends lie on: one where they differ, else none or two. The way up or down tells
 * which of the circle's two points it is, so rounding at an end can't lose or double one.
 */
function arcCrossings(
  arc: Arc,
  index: number,
  line: CutLine,
  isStartAhead: boolean,
  isEndAhead: boolean,
  found: Crossing[],
): void {
  const { angle, nx, ny, offset } = line;
  const rise = (offset - arc.center.x * nx - arc.center.y * ny) / arc.radius;
  const isOdd = isStartAhead !== isEndAhead;
  if (!isOdd) {
    if (rise >= 1 || rise <= -1) return;
    const far = shareAt(arc, isStartAhead ? angle + Math.PI : angle);
    if (far >= 1 || far <= 0) return;
  }
  const half = Math.acos(Math.min(1, Math.max(-1, rise)));
  // Counterclockwise, the arc goes up half a chord before the direction of the normal and down as far after it.
  const turn = arc.sweep > 0 ? half : -half;
  if (!isOdd || isEndAhead) found.push(crossingAt(arc, index, line, angle - turn));
  if (!isOdd || isStartAhead) found.push(crossingAt(arc, index, line, angle + turn));
}

function crossingAt(arc: Arc, index: number, line: CutLine, direction: number): Crossing {
  const share = shareWithin(arc, direction);
  const angle = arc.startAngle + share * arc.sweep;
  const x = arc.center.x + arc.radius * Math.cos(angle);
  const y = arc.center.y + arc.radius * Math.sin(angle);
  return { v: alongLine(line, x, y), key: index + share };
}

/** The share of a direction, or of the end nearest to it. */
function shareWithin(arc: Arc, angle: number): number {
  const share = shareAt(arc, angle);
  if (share <= 1) return share;
  const whole = (2 * Math.PI) / Math.abs(arc.sweep);
  return share - 1 < whole - share ? 1 : 0;
}
