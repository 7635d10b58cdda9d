import { distance2 } from '../geometry/index.ts';
import { arrowhead } from './arrow.ts';
import { clipStroke } from './clipPath.ts';
import { type LabelRequest, type Obstacle, placeLabels } from './labelPlace.ts';
import { type SeamCheck, seamCheckStrokes } from './seamCheck.ts';
import { line, maskedText, type PaperRect } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { flattened, stretchStroke } from './stretch.ts';
import type { TemplateContent } from './templateContent.ts';
import { registerCross, windowCorners } from './templateFrame.ts';
import type { TemplateJob } from './templateJob.ts';
import { textWidth } from './textMetrics.ts';
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

const ARROW_LENGTH = 16;
const LABEL_SIZE = 2.6;

/** Everything inside the window of one tile. */
export function tileDrawing(input: TileDrawingInput): readonly SheetItem[] {
  const { content, tile, window, marks, seams } = input;
  const onTile = (item: Parameters<typeof clipStroke>[0]) =>
    clipStroke(item, tile.region).map((s) => stretchStroke(tile.stretch, s));
  const strokes = content.strokes.flatMap((s) => onTile(s.item));
  const seamLines = seams.flatMap((s) => seamCheckStrokes(s)).flatMap(onTile);
  const ownMarks = marks.filter((m) => m.tiles.some((t) => t.name === tile.name));
  const crosses = ownMarks.flatMap((m) => registerCross(onPage(tile, m.at), m.id));
  const trimLines = trims(input).map((t) => line(t.from, t.to, 'hidden'));
  const arrows = arrowItems(input);
  const fixed = [...trimLines, ...strokes, ...seamLines, ...crosses, ...arrows];
  const obstacles = fixed.flatMap((item) => obstaclesOf(item));
  const area = { ...window, bottom: Math.max(window.bottom, input.floor ?? window.bottom) };
  const labels = placeLabels(labelRequests(input, ownMarks, area), obstacles, area);
  return [
    ...trimLines,
    ...strokes,
    ...seamLines,
    ...crosses,
    ...arrows,
    ...lineLabels(input),
    ...labels,
    ...windowCorners(window),
  ];
}

/** Straight pieces of strokes and the box of texts, for keeping labels clear. */
export function obstaclesOf(item: SheetItem, error = 0.2): readonly Obstacle[] {
  if (item.type === 'text') {
    const half = textWidth(item.text, item.size, item.weight) / 2;
    return [
      [
        { x: item.at.x - half, y: item.at.y },
        { x: item.at.x + half, y: item.at.y + item.size * 0.7 },
      ],
    ];
  }
  if (item.pen === 'none') return [];
  const path =
    item.type === 'path'
      ? item
      : {
          vertices: [
            { x: item.center.x + item.radius, y: item.center.y, bulge: 1 },
            { x: item.center.x - item.radius, y: item.center.y, bulge: 1 },
          ],
          closed: true,
        };
  const points = flattened(path, error);
  const last = path.closed ? points.length : points.length - 1;
  return Array.from(
    { length: Math.max(0, last) },
    (_, i) => [points[i] as PaperPoint, points[(i + 1) % points.length] as PaperPoint] as const,
  );
}

function labelRequests(
  input: TileDrawingInput,
  marks: readonly RegisterMark[],
  area: PaperRect,
): readonly LabelRequest[] {
  const { job, content, tile, seams, window } = input;
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
            clear: c.diameter * 500 + 0.3,
            text: c.label,
            style: { size: LABEL_SIZE },
          },
        ],
  );
  // A check point that is a hole keeps its name outside the hole.
  const clearOf = (p: PaperPoint): number =>
    Math.max(
      0.8,
      ...circles
        .filter((c) => distance2(content.place(c.center), p) < 1e-6)
        .map((c) => c.diameter * 500 + 0.3),
    );
  const points = content.points
    .filter((p) => here(p.at))
    .map(
      (p) =>
        ({
          at: onPage(tile, p.at),
          clear: clearOf(p.at),
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
  return [...neighbors, ...trimNotes, ...seamNames, ...holes, ...points, ...words];
}

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

/** Words of bend and other lines, along the middle of what this tile shows of the line. */
function lineLabels(input: TileDrawingInput): readonly SheetItem[] {
  const { job, content, tile } = input;
  return job.pieces.flatMap((piece) =>
    piece.lines.flatMap((l) => {
      const whole = line(content.place(l.from), content.place(l.to), l.pen);
      const [shown] = clipStroke(whole, tile.region);
      if (l.label === undefined || shown?.type !== 'path') return [];
      const [a, b] = shown.vertices.map((v) => onPage(tile, v)) as [PaperPoint, PaperPoint];
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      if (length < textWidth(l.label, LABEL_SIZE) + 2) return [];
      let turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
      if (turn > 90 + 1e-9) turn -= 180;
      if (turn <= -90 + 1e-9) turn += 180;
      const up = (turn * Math.PI) / 180;
      const at = { x: (a.x + b.x) / 2 - 1.3 * Math.sin(up), y: (a.y + b.y) / 2 + 1.3 * Math.cos(up) };
      return maskedText(at, l.label, { size: LABEL_SIZE, turn, anchor: 'middle' });
    }),
  );
}

/** Arrows are drawn where their middle lies, pushed inside the window where they would leave it. */
function arrowItems(input: TileDrawingInput): readonly SheetItem[] {
  const { job, content, tile, window } = input;
  return job.pieces.flatMap((piece) =>
    piece.arrows.flatMap((arrow) => {
      const middle = onPage(tile, content.place(arrow.at));
      if (
        middle.x < window.left ||
        middle.x > window.right ||
        middle.y < window.bottom ||
        middle.y > window.top
      )
        return [];
      const direction = arrow.direction + (content.turned ? Math.PI / 2 : 0);
      const [c, s] = [Math.cos(direction), Math.sin(direction)];
      const half = ARROW_LENGTH / 2;
      const word = arrow.text.toUpperCase();
      const reach = half + textWidth(word, 3.4, 'bold');
      const at = {
        x: Math.min(window.right - reach, Math.max(window.left + reach, middle.x)),
        y: Math.min(window.top - half - 4, Math.max(window.bottom + half + 4, middle.y)),
      };
      const tip = { x: at.x + half * c, y: at.y + half * s };
      const tail = { x: at.x - half * c, y: at.y - half * s };
      const base = { x: tail.x - c * (textWidth(word, 3.4, 'bold') / 2 + 1), y: tail.y - s * 2.6 - 1.2 };
      return [
        line(tail, tip, 'outline'),
        arrowhead(tip, (direction * 180) / Math.PI, 'outline', 4),
        ...maskedText(base, word, { size: 3.4, weight: 'bold', anchor: 'middle' }),
      ];
    }),
  );
}

interface Trim {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly under: Tile;
}

/** Where the sheet on top is cut: the middle of the overlap with its left and its upper neighbor. */
function trims(input: TileDrawingInput): readonly Trim[] {
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
