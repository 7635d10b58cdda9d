import { segments } from '../geometry/index.ts';
import { line } from './shapes.ts';
import type { PathStep, PenRole, SheetItem } from './sheet.ts';

export interface HatchInput {
  /** Closed outlines on paper; what lies inside an odd number of them is hatched. */
  readonly loops: readonly (readonly PathStep[])[];
  /** [degrees]; default 45 */
  readonly angle?: number;
  /** Between lines, square to them [mm]; default 2. */
  readonly spacing?: number;
  readonly pen?: PenRole;
}

/**
 * Section hatching: parallel lines clipped to outlines of lines and arcs, exactly (each hatch line is met with
 * each side and each arc; a tangent touch counts twice or not at all, so it never turns inside out).
 */
export function hatch(input: HatchInput): readonly SheetItem[] {
  const { loops, angle = 45, spacing = 2, pen = 'dimension' } = input;
  if (!(spacing > 0)) throw new RangeError('hatch spacing must be above 0');
  const turn = (angle * Math.PI) / 180;
  const along = { x: Math.cos(turn), y: Math.sin(turn) };
  const normal = { x: -along.y, y: along.x };
  const pieces = loops.flatMap((loop) => segments(loop));
  const heights = pieces.flatMap((piece) => {
    const ends = [piece.from, piece.to].map((p) => p.x * normal.x + p.y * normal.y);
    if (piece.kind === 'line') return ends;
    const middle = piece.center.x * normal.x + piece.center.y * normal.y;
    return [...ends, middle - piece.radius, middle + piece.radius];
  });
  const items: SheetItem[] = [];
  const last = Math.ceil(Math.max(...heights) / spacing);
  for (let k = Math.floor(Math.min(...heights) / spacing); k <= last; k += 1) {
    // Half a step off the grid, so that a side that lies on a round number is not met along its length.
    const height = (k + 0.5) * spacing;
    const hits = pieces.flatMap((piece) => crossings(piece, along, normal, height)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < hits.length; i += 2) {
      const at = (t: number) => ({ x: along.x * t + normal.x * height, y: along.y * t + normal.y * height });
      items.push(line(at(hits[i]!), at(hits[i + 1]!), pen));
    }
  }
  return items;
}

type Piece = ReturnType<typeof segments>[number];
interface Vector {
  readonly x: number;
  readonly y: number;
}

/** Where the line at `height` over the origin meets the piece, as distances along it; ends count half open. */
function crossings(piece: Piece, along: Vector, normal: Vector, height: number): number[] {
  const over = (p: Vector): number => p.x * normal.x + p.y * normal.y - height;
  if (piece.kind === 'line') {
    const [a, b] = [over(piece.from), over(piece.to)];
    if (a >= 0 === b >= 0) return [];
    const t = a / (a - b);
    const x = piece.from.x + t * (piece.to.x - piece.from.x);
    const y = piece.from.y + t * (piece.to.y - piece.from.y);
    return [x * along.x + y * along.y];
  }
  const middle = piece.center.x * along.x + piece.center.y * along.y;
  const depth = over(piece.center);
  const half = Math.sqrt(Math.max(0, piece.radius ** 2 - depth ** 2));
  const hits =
    half === 0 ? [] : [middle - half, middle + half].filter((t) => onArc(piece, along, normal, t, height));
  // The count must agree with the sides on which the two ends lie; rounding at an end is settled by it.
  const odd = over(piece.from) >= 0 !== over(piece.to) >= 0;
  if (hits.length % 2 === (odd ? 1 : 0)) return hits;
  return odd ? [nearestHit(piece, along, [middle - half, middle + half])] : [];
}

function onArc(
  arc: Extract<Piece, { kind: 'arc' }>,
  along: Vector,
  normal: Vector,
  t: number,
  height: number,
): boolean {
  const x = along.x * t + normal.x * height - arc.center.x;
  const y = along.y * t + normal.y * height - arc.center.y;
  const turned = (Math.atan2(y, x) - arc.startAngle) * Math.sign(arc.sweep);
  const full = 2 * Math.PI;
  return turned - full * Math.floor(turned / full) <= Math.abs(arc.sweep);
}

function nearestHit(arc: Extract<Piece, { kind: 'arc' }>, along: Vector, hits: readonly number[]): number {
  const ends = [arc.from, arc.to].map((p) => p.x * along.x + p.y * along.y);
  const miss = (t: number): number => Math.min(...ends.map((e) => Math.abs(e - t)));
  return [...hits].sort((a, b) => miss(a) - miss(b))[0] as number;
}
