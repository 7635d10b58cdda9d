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
    for (const share of arcShares(piece, line, isOdd, Math.abs(a) < Math.abs(b))) {
      const angle = piece.startAngle + share * piece.sweep;
      const x = piece.center.x + piece.radius * Math.cos(angle);
      const y = piece.center.y + piece.radius * Math.sin(angle);
      found.push({ v: alongLine(line, x, y), key: i + share });
    }
  });
  return found.sort((p, q) => p.v - q.v);
}

export const alongLine = ({ nx, ny }: CutLine, x: number, y: number): number => y * nx - x * ny;

/** One share where the ends lie on different sides, else none or two; rounding at an end must not change that. */
function arcShares(
  arc: Extract<Segment, { kind: 'arc' }>,
  { angle, nx, ny, offset }: CutLine,
  isOdd: boolean,
  isStartNear: boolean,
): number[] {
  const rise = (offset - arc.center.x * nx - arc.center.y * ny) / arc.radius;
  if (Math.abs(rise) >= 1) return isOdd ? [isStartNear ? 0 : 1] : [];
  const half = Math.acos(rise);
  const inside = [angle - half, angle + half].map((one) => shareAt(arc, one)).filter((share) => share <= 1);
  if (!isOdd) return inside.length === 2 ? inside : [];
  if (inside.length === 0) return [isStartNear ? 0 : 1];
  // Of two, one is the end that lies on the line and only touches it.
  return [isStartNear ? Math.max(...inside) : Math.min(...inside)];
}
