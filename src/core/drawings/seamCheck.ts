import { line } from './shapes.ts';
import type { PaperPoint, PathItem } from './sheet.ts';
import { type Tile, type TileGrid, tileOverlap } from './tileGrid.ts';

/** A line of known length over a row or a column of joined sheets: the joint is measured on it. */
export interface SeamCheck {
  /** `S1` */
  readonly mark: string;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** [true mm] */
  readonly length: number;
  readonly tiles: readonly Tile[];
}

const INDENT = 8;
const TICK = 2;

/** One line along each row and each column of at least two joined sheets, a whole number of centimeters long. */
export function seamChecks(
  grid: TileGrid,
  crowding: (from: PaperPoint, to: PaperPoint) => number,
): readonly SeamCheck[] {
  const runs = [
    ...Array.from({ length: grid.rows }, (_, row) => grid.tiles.filter((t) => t.row === row)).flatMap(
      (tiles) => joined(tiles, 'column'),
    ),
    ...Array.from({ length: grid.columns }, (_, column) =>
      grid.tiles.filter((t) => t.column === column),
    ).flatMap((tiles) => joined(tiles, 'row')),
  ];
  return runs.map((tiles, i) => ({ mark: `S${i + 1}`, tiles, ...quietLine(tiles, crowding) }));
}

/** The line and its end ticks [true mm]. */
export function seamCheckStrokes(check: SeamCheck): readonly PathItem[] {
  const level = check.from.y === check.to.y;
  const tick = (p: PaperPoint): PathItem =>
    level
      ? line({ x: p.x, y: p.y - TICK }, { x: p.x, y: p.y + TICK }, 'dimension')
      : line({ x: p.x - TICK, y: p.y }, { x: p.x + TICK, y: p.y }, 'dimension');
  return [line(check.from, check.to, 'dimension', `seam:${check.mark}`), tick(check.from), tick(check.to)];
}

/** Runs of neighbors with none missing between, at least two long. */
function joined(tiles: readonly Tile[], axis: 'row' | 'column'): readonly (readonly Tile[])[] {
  const runs: Tile[][] = [];
  for (const tile of [...tiles].sort((a, b) => a[axis] - b[axis])) {
    const last = runs.at(-1);
    if (last && last.at(-1)?.[axis] === tile[axis] - 1) last.push(tile);
    else runs.push([tile]);
  }
  return runs.filter((run) => run.length > 1);
}

/** Of the lines along the run, clear of the seams beside it, the one that meets the least of the drawing. */
function quietLine(
  tiles: readonly Tile[],
  crowding: (from: PaperPoint, to: PaperPoint) => number,
): Pick<SeamCheck, 'from' | 'to' | 'length'> {
  const [first, last] = [tiles[0] as Tile, tiles.at(-1) as Tile];
  const level = first.row === last.row;
  const [low, high] = level ? [first.region.left, last.region.right] : [last.region.bottom, first.region.top];
  const [near, far] = level
    ? [first.region.bottom, first.region.top]
    : [first.region.left, first.region.right];
  const length = Math.floor((high - low - 2 * INDENT) / 10) * 10;
  const start = (low + high - length) / 2;
  const options = Array.from({ length: 41 }, (_, i) => {
    const side = near + tileOverlap + 3 + ((far - near - 2 * tileOverlap - 6) * i) / 40;
    const at = (along: number): PaperPoint => (level ? { x: along, y: side } : { x: side, y: along });
    const [from, to] = [at(start), at(start + length)];
    return { from, to, length, crowding: crowding(from, to) };
  });
  const { from, to } = options.reduce((best, option) =>
    option.crowding < best.crowding - 1e-9 ? option : best,
  );
  return { from, to, length };
}
