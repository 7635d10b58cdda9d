import { bulgeOfSweep, type Segment, segmentPoint } from '../geometry/index.ts';
import { pathPieces } from './pathPieces.ts';
import type { PaperRect } from './shapes.ts';
import type { CircleItem, PathItem, PathStep } from './sheet.ts';

const TURN = 2 * Math.PI;
/** Points this near to the edge count as inside [mm]. */
const EDGE = 1e-9;

/** What of a stroke lies inside a rectangle, as open paths (a shape wholly inside stays as it is); fills are dropped. */
export function clipStroke(item: PathItem | CircleItem, rect: PaperRect): readonly (PathItem | CircleItem)[] {
  if (item.pen === 'none') return [];
  if (item.type === 'circle') {
    const { center, radius } = item;
    const inside =
      center.x - radius >= rect.left &&
      center.x + radius <= rect.right &&
      center.y - radius >= rect.bottom &&
      center.y + radius <= rect.top;
    return inside ? [{ ...item, fill: 'none' }] : clipStroke(circleAsPath(item), rect);
  }
  const pieces = pathPieces(item);
  const cuts = pieces.map((piece) => insideParts(piece, rect));
  if (cuts.every((parts) => parts.length === 1 && parts[0]?.from === 0 && parts[0].to === 1))
    return [{ ...item, fill: 'none' }];
  const paths: PathStep[][] = [];
  let open = false;
  pieces.forEach((piece, i) => {
    for (const part of cuts[i] ?? []) {
      const start = segmentPoint(piece, part.from);
      const end = segmentPoint(piece, part.to);
      const bulge = piece.kind === 'arc' ? bulgeOfSweep(piece.sweep * (part.to - part.from)) : 0;
      if (!(open && part.from === 0)) paths.push([]);
      const path = paths.at(-1) as PathStep[];
      if (path.length > 0) path.pop();
      path.push({ ...start, bulge }, { ...end, bulge: 0 });
      open = part.to === 1;
    }
    if ((cuts[i] ?? []).length === 0) open = false;
  });
  const base = item.part === undefined ? {} : { part: item.part };
  return paths.map((vertices) => ({
    type: 'path',
    vertices,
    closed: false,
    pen: item.pen,
    fill: 'none',
    ...base,
  }));
}

export function circleAsPath(item: CircleItem): PathItem {
  const { center, radius, pen, fill } = item;
  const vertices = [
    { x: center.x + radius, y: center.y, bulge: 1 },
    { x: center.x - radius, y: center.y, bulge: 1 },
  ];
  return {
    type: 'path',
    vertices,
    closed: true,
    pen,
    fill,
    ...(item.part === undefined ? {} : { part: item.part }),
  };
}

interface Part {
  readonly from: number;
  readonly to: number;
}

/** Shares of a piece that lie inside, ascending. */
function insideParts(piece: Segment, rect: PaperRect): readonly Part[] {
  const shares = [0, 1, ...edgeShares(piece, rect)].sort((a, b) => a - b);
  const parts: Part[] = [];
  for (let i = 0; i + 1 < shares.length; i += 1) {
    const [from, to] = [shares[i] as number, shares[i + 1] as number];
    if (to - from < 1e-12) continue;
    const middle = segmentPoint(piece, (from + to) / 2);
    const inside =
      middle.x >= rect.left - EDGE &&
      middle.x <= rect.right + EDGE &&
      middle.y >= rect.bottom - EDGE &&
      middle.y <= rect.top + EDGE;
    if (!inside) continue;
    const last = parts.at(-1);
    if (last && last.to === from) parts[parts.length - 1] = { from: last.from, to };
    else parts.push({ from, to });
  }
  return parts;
}

function edgeShares(piece: Segment, rect: PaperRect): readonly number[] {
  const xs = [rect.left, rect.right];
  const ys = [rect.bottom, rect.top];
  if (piece.kind === 'line') {
    const { from, to } = piece;
    const at = (a: number, b: number, edge: number): number[] => (a === b ? [] : [(edge - a) / (b - a)]);
    return [...xs.flatMap((x) => at(from.x, to.x, x)), ...ys.flatMap((y) => at(from.y, to.y, y))].filter(
      (t) => t > 0 && t < 1,
    );
  }
  const { center, radius } = piece;
  const angles = [
    ...xs.flatMap((x) =>
      Math.abs(x - center.x) < radius ? [1, -1].map((s) => s * Math.acos((x - center.x) / radius)) : [],
    ),
    ...ys.flatMap((y) => {
      const a = Math.asin((y - center.y) / radius);
      return Math.abs(y - center.y) < radius ? [a, Math.PI - a] : [];
    }),
  ];
  return angles
    .map((angle) => {
      const turned = (angle - piece.startAngle) * Math.sign(piece.sweep);
      return (turned - TURN * Math.floor(turned / TURN)) / Math.abs(piece.sweep);
    })
    .filter((t) => t > 0 && t < 1);
}
