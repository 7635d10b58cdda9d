import { distance2 } from '../geometry/index.ts';
import type { LabelRequest } from './labelPlace.ts';
import type { SeamCheck } from './seamCheck.ts';
import type { PaperRect } from './shapes.ts';
import type { PaperPoint } from './sheet.ts';
import type { TemplateContent } from './templateContent.ts';
import type { TemplateJob } from './templateJob.ts';
import { onPage, type RegisterMark, sharedStrip, type Tile, type TileGrid } from './tileGrid.ts';

export interface TileDrawingInput {
  readonly job: TemplateJob;
  readonly content: TemplateContent;
  readonly grid: TileGrid;
  readonly tile: Tile;
  readonly window: PaperRect;
  readonly marks: readonly RegisterMark[];
  readonly seams: readonly SeamCheck[];
  /** Lower limit for labels on the page: what lies under it is a list. */
  readonly floor?: number;
}

/** Where the sheet on top is cut, and what lies under it there. */
export interface Trim {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly under: Tile;
}

const HOLE_LABEL = 2.6;

/** What a tile's labels say and where they belong, the ones that must be found first. */
export function labelRequests(input: TileDrawingInput, area: PaperRect): readonly LabelRequest[] {
  return [...seamLabels(input), ...partLabels(input, area)];
}

/** Where the sheet on top is cut: the middle of the overlap with its left and its upper neighbor. */
export function trims(input: TileDrawingInput): readonly Trim[] {
  const { grid, tile, window } = input;
  const left = grid.tiles.find((t) => t.row === tile.row && t.column === tile.column - 1);
  const above = grid.tiles.find((t) => t.column === tile.column && t.row === tile.row - 1);
  const middleOf = (other: Tile): PaperPoint => {
    const strip = sharedStrip(tile, other);
    return onPage(tile, { x: (strip.left + strip.right) / 2, y: (strip.bottom + strip.top) / 2 });
  };
  const found: Trim[] = [];
  if (left) {
    const { x } = middleOf(left);
    found.push({ from: { x, y: window.bottom }, to: { x, y: window.top }, under: left });
  }
  if (above) {
    const { y } = middleOf(above);
    found.push({ from: { x: window.left, y }, to: { x: window.right, y }, under: above });
  }
  return found;
}

/** Names of neighbors, where to trim, and the lengths over the seams. */
function seamLabels(input: TileDrawingInput): readonly LabelRequest[] {
  const { tile, seams, window } = input;
  const marks = input.marks.filter((m) => m.tiles.some((t) => t.name === tile.name));
  const seamNames = seams
    .filter((s) => s.tiles.some((t) => t.name === tile.name))
    .map((s) => ({
      at: middleOnPage(s, tile, window),
      clear: 0.4,
      text: `check ${s.mark}: ${s.length} mm`,
      style: { size: 2.4 },
    }));
  const neighbors = marks.map((m) => {
    const other = m.tiles[0].name === tile.name ? m.tiles[1] : m.tiles[0];
    return {
      at: onPage(tile, m.at),
      clear: 4.2,
      text: `on ${other.name}`,
      style: { size: 2.4, weight: 'bold' },
    } as const;
  });
  const trimNotes = trims(input).map((t) => ({
    at: { x: t.from.x + 0.35 * (t.to.x - t.from.x), y: t.from.y + 0.35 * (t.to.y - t.from.y) },
    clear: 0.4,
    text: `trim here, lay on ${t.under.name}`,
    style: { size: 2.2, tone: 'muted' } as const,
  }));
  return [...neighbors, ...trimNotes, ...seamNames];
}

/** Holes, check points and the part's own words. */
function partLabels(input: TileDrawingInput, area: PaperRect): readonly LabelRequest[] {
  const { job, content, tile } = input;
  const here = (p: PaperPoint): boolean => {
    const q = onPage(tile, p);
    return q.x >= area.left && q.x <= area.right && q.y >= area.bottom && q.y <= area.top;
  };
  const circles = job.pieces.flatMap((piece) => piece.circles);
  const holes = circles.flatMap((c): readonly LabelRequest[] =>
    c.label === undefined || !here(content.place(c.center))
      ? []
      : [
          {
            at: onPage(tile, content.place(c.center)),
            clear: clearOf(c),
            text: c.label,
            style: { size: HOLE_LABEL },
          },
        ],
  );
  // A check point that is a hole keeps its name outside the hole.
  const clearAt = (p: PaperPoint): number =>
    Math.max(0.8, ...circles.filter((c) => distance2(content.place(c.center), p) < 1e-6).map(clearOf));
  const points = content.points
    .filter((p) => here(p.at))
    .map(
      (p) =>
        ({
          at: onPage(tile, p.at),
          clear: clearAt(p.at),
          text: p.name,
          style: { size: 2.2, weight: 'bold', tone: 'muted' },
        }) as const,
    );
  const words = job.pieces
    .flatMap((piece) => piece.labels)
    .filter((l) => here(content.place(l.at)))
    .map((l) => ({
      at: onPage(tile, content.place(l.at)),
      clear: 0,
      text: l.text,
      style: { size: l.size ?? 3 },
    }));
  return [...holes, ...points, ...words];
}

/** Radius of a hole and a little more [mm]. */
const clearOf = (c: { readonly diameter: number }): number => c.diameter * 500 + 0.3;

/** Middle of what a seam check shows on this tile. */
function middleOnPage(check: SeamCheck, tile: Tile, window: PaperRect): PaperPoint {
  const [a, b] = [onPage(tile, check.from), onPage(tile, check.to)];
  const clip = (v: number, low: number, high: number): number => Math.min(high, Math.max(low, v));
  const at = (p: PaperPoint): PaperPoint => ({
    x: clip(p.x, window.left, window.right),
    y: clip(p.y, window.bottom, window.top),
  });
  const [c, d] = [at(a), at(b)];
  return { x: (c.x + d.x) / 2, y: (c.y + d.y) / 2 };
}
