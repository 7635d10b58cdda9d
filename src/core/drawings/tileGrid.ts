import type { Bounds } from '../geometry/index.ts';
import { clipStroke } from './clipPath.ts';
import type { PrinterCorrection } from './printerCheck.ts';
import { heightOf, type PaperRect, widthOf } from './shapes.ts';
import type { PaperPoint } from './sheet.ts';
import { type Stretch, stretchPoint } from './stretch.ts';
import type { TemplateContent } from './templateContent.ts';

/** One printed piece of the plane. */
export interface Tile {
  /** Columns A, B … from the left, rows 1, 2 … from the top: `B2`. */
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** What it shows of the plane [true mm]. */
  readonly region: PaperRect;
  /** From the plane to its page. */
  readonly stretch: Stretch;
}

export interface TileGrid {
  readonly columns: number;
  readonly rows: number;
  /** Those with something on them, row by row. */
  readonly tiles: readonly Tile[];
  /** Shared strip of neighbors [true mm]. */
  readonly overlap: number;
  /** All that the grid covers [true mm]. */
  readonly region: PaperRect;
}

/** A cross that two neighbors both carry. */
export interface RegisterMark {
  readonly id: string;
  readonly at: PaperPoint;
  readonly tiles: readonly [Tile, Tile];
}

export const tileOverlap = 10;
/** Half of the widest line of a template, which must not fall off its tile [mm]. */
const PAD = 0.25;

/** How many tiles a grid over the content has, blank ones counted. */
export function tileCount(
  content: TemplateContent,
  window: PaperRect,
  correction: PrinterCorrection,
): number {
  const { columns, rows } = gridSize(content, window, correction);
  return columns * rows;
}

/** The least number of pages of this window that show the content, the content centered on them. */
export function tileGrid(
  content: TemplateContent,
  window: PaperRect,
  correction: PrinterCorrection,
): TileGrid {
  const { columns, rows, tileWide, tileHigh } = gridSize(content, window, correction);
  const { box } = content;
  const wide = columns * tileWide - (columns - 1) * tileOverlap;
  const high = rows * tileHigh - (rows - 1) * tileOverlap;
  const left = (box.minX + box.maxX - wide) / 2;
  const top = (box.minY + box.maxY + high) / 2;
  const all = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const x = left + column * (tileWide - tileOverlap);
    const y = top - row * (tileHigh - tileOverlap) - tileHigh;
    return tileAt(
      { name: tileName(column, row), column, row },
      { left: x, bottom: y, right: x + tileWide, top: y + tileHigh },
      window,
      correction,
    );
  });
  const shown = all.filter((tile) => content.strokes.some((s) => clipStroke(s.item, tile.region).length > 0));
  return {
    columns,
    rows,
    tiles: shown,
    overlap: tileOverlap,
    region: { left, right: left + wide, bottom: top - high, top },
  };
}

/** The same single tile with the content in the middle of what is left over `floor`, a height on the page [mm]. */
export function centeredOver(tile: Tile, box: Bounds, floor: number): Tile {
  const { stretch, region } = tile;
  const lowest = region.bottom + (floor - stretch.to.y) / stretch.down;
  const rise = (lowest + region.top) / 2 - (box.minY + box.maxY) / 2;
  const bottom = region.bottom - rise;
  return {
    ...tile,
    region: { ...region, bottom, top: region.top - rise },
    stretch: { ...stretch, from: { x: region.left, y: bottom } },
  };
}

export const tileName = (column: number, row: number): string =>
  `${String.fromCharCode(65 + (column % 26))}${row + 1}`;

/**
 * Two crosses on each seam between printed neighbors, in the middle of their overlap, one in each half of the seam and
 * as far from the drawing's own lines as that half allows.
 */
export function registerMarks(
  grid: TileGrid,
  clearanceAt: (p: PaperPoint) => number,
): readonly RegisterMark[] {
  return grid.tiles.flatMap((tile) =>
    [
      grid.tiles.find((t) => t.row === tile.row && t.column === tile.column + 1),
      grid.tiles.find((t) => t.column === tile.column && t.row === tile.row + 1),
    ].flatMap((next) => (next === undefined ? [] : seamMarks(tile, next, clearanceAt))),
  );
}

/** The strip that two neighbors share [true mm]. */
export const sharedStrip = (a: Tile, b: Tile): PaperRect => ({
  left: Math.max(a.region.left, b.region.left),
  right: Math.min(a.region.right, b.region.right),
  bottom: Math.max(a.region.bottom, b.region.bottom),
  top: Math.min(a.region.top, b.region.top),
});

export const onPage = (tile: Tile, p: PaperPoint): PaperPoint => stretchPoint(tile.stretch, p);

function seamMarks(a: Tile, b: Tile, clearanceAt: (p: PaperPoint) => number): readonly RegisterMark[] {
  const strip = sharedStrip(a, b);
  const upright = a.row === b.row;
  const along = (share: number): PaperPoint =>
    upright
      ? { x: (strip.left + strip.right) / 2, y: strip.bottom + share * heightOf(strip) }
      : { x: strip.left + share * widthOf(strip), y: (strip.bottom + strip.top) / 2 };
  const best = (shares: readonly number[]): PaperPoint =>
    shares
      .map(along)
      .reduce((p, q) => (Math.min(8, clearanceAt(q)) > Math.min(8, clearanceAt(p)) + 0.5 ? q : p));
  const places = [
    best([0.1, 0.14, 0.18, 0.22, 0.26, 0.3, 0.34, 0.38]),
    best([0.9, 0.86, 0.82, 0.78, 0.74, 0.7, 0.66, 0.62]),
  ];
  return places.map((at, i) => ({ id: `register:${a.name}-${b.name}:${i + 1}`, at, tiles: [a, b] }));
}

function tileAt(
  name: Pick<Tile, 'name' | 'column' | 'row'>,
  region: PaperRect,
  window: PaperRect,
  correction: PrinterCorrection,
): Tile {
  const from = { x: region.left, y: region.bottom };
  const to = { x: window.left, y: window.bottom };
  return { ...name, region, stretch: { from, to, ...correction } };
}

function gridSize(content: TemplateContent, window: PaperRect, correction: PrinterCorrection) {
  const tileWide = widthOf(window) / correction.across;
  const tileHigh = heightOf(window) / correction.down;
  const { box } = content;
  const columns = countOf(box.maxX - box.minX + 2 * PAD, tileWide);
  const rows = countOf(box.maxY - box.minY + 2 * PAD, tileHigh);
  return { columns, rows, tileWide, tileHigh };
}

/** Fewest tiles of this size that cover a length when neighbors share the overlap. */
const countOf = (length: number, tile: number): number =>
  Math.max(1, Math.ceil((length - tileOverlap) / (tile - tileOverlap) - 1e-9));
