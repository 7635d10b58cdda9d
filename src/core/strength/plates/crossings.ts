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
  pieces.forEach((piece, i) => {
    const a = piece.from.x * nx + piece.from.y * ny - offset;
    const b = piece.to.x * nx + piece.to.y * ny - offset;
    // A point on the line counts as below it, so that a corner on the line is met once or not at all.
    const isOdd = a > 0 !== b > 0;
    if (piece.kind === 'line') {
      if (!isOdd) return;
      const t = a / (a - b);
      const from = alongLine(line, piece.from.x, piece.from.y);
      const to = alongLine(line, piece.to.x, piece.to.y);
      found.push({ v: from + t * (to - from), key: i + t });
      return;
    }
    for (const share of arcShares(piece, line, a > 0, b > 0)) {
      const angle = piece.startAngle + share * piece.sweep;
      const x = piece.center.x + piece.radius * Math.cos(angle);
      const y = piece.center.y + piece.radius * Math.sin(angle);
      found.push({ v: alongLine(line, x, y), key: i + share });
    }
  });
  return found.sort((p, q) => p.v - q.v);
}

export const alongLine = ({ nx, ny }: CutLine, x: number, y: number): number => y * nx - x * ny;

type Arc = Extract<Segment, { kind: 'arc' }>;

/**
 * Shares of an arc where it crosses the line, by which sides its ends lie on: one where they differ, else none or two.
 * The way up or down tells which of the circle's two points it is, so rounding at an end can't lose or double one.
 */
function arcShares(arc: Arc, line: CutLine, isStartAhead: boolean, isEndAhead: boolean): number[] {
  const { angle, nx, ny, offset } = line;
  const rise = (offset - arc.center.x * nx - arc.center.y * ny) / arc.radius;
  const half = Math.acos(Math.min(1, Math.max(-1, rise)));
  // Counterclockwise, the arc goes up half a chord before the direction of the normal and down as far after it.
  const turn = Math.sign(arc.sweep);
  const up = (): number => shareWithin(arc, angle - turn * half);
  const down = (): number => shareWithin(arc, angle + turn * half);
  if (isStartAhead !== isEndAhead) return [isEndAhead ? up() : down()];
  if (Math.abs(rise) >= 1) return [];
  const far = shareAt(arc, isStartAhead ? angle + Math.PI : angle);
  if (far >= 1 || far <= 0) return [];
  return isStartAhead ? [down(), up()] : [up(), down()];
}

/** The share of a direction, or of the end nearest to it. */
function shareWithin(arc: Arc, angle: number): number {
  const share = shareAt(arc, angle);
  if (share <= 1) return share;
  const whole = (2 * Math.PI) / Math.abs(arc.sweep);
  return share - 1 < whole - share ? 1 : 0;
}
