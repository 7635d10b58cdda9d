import { bad, good, type Outcome } from '../quantity/index.ts';
import { type Block, blockStrips } from './bookPages.ts';
import { lengthInLine } from './dimensionText.ts';
import type { Obstacle } from './labelPlace.ts';
import type { Paper } from './paper.ts';
import { correctionOf, judgePrinter, type PrinterCorrection, type PrinterReading } from './printerCheck.ts';
import { type SeamCheck, seamChecks } from './seamCheck.ts';
import { heightOf, moved, type PaperRect, widthOf } from './shapes.ts';
import type { PaperPoint, Sheet, SheetItem } from './sheet.ts';
import type { Strip } from './table.ts';
import { noCorrection, type TemplateContent, templateContent } from './templateContent.ts';
import { templateFrame, templateWindow, tileMap } from './templateFrame.ts';
import type { TemplateJob } from './templateJob.ts';
import { obstaclesOf, tileDrawing } from './templateTile.ts';
import { centeredOver, registerMarks, type Tile, type TileGrid, tileGrid } from './tileGrid.ts';

export interface TemplateOptions {
  /** Upright; the part is turned instead, so that across and down stay those of the printer. */
  readonly paper: Paper;
  /** Bars measured on an earlier print; the sheets come out compensated. */
  readonly printer?: PrinterReading;
  readonly bike: string;
  /** As to be printed. */
  readonly date: string;
}

/** A part that needs more sheets than this is not a template for glue and paper. */
const MOST_TILES = 60;
/** A check line nearer than this to a line of the part is hard to tell from it [mm]. */
const CROWDED = 4;

/**
 * A job as true-size pages: the fewest tiles (turned a quarter where that needs fewer), each with check bars in
 * both axes, register crosses shared with its neighbors, center marks and labels; the check lengths stand under
 * the drawing when one page holds both, else on a card before it.
 * @issue conflict: nothing to draw, or a printer whose pages must not be used
 * @issue too-large: more than 60 sheets
 */
export function templateSheets(job: TemplateJob, options: TemplateOptions): Outcome<readonly Sheet[]> {
  const correction = correctionFor(options.printer);
  if (!correction.ok) return correction;
  const window = templateWindow(options.paper);
  const laid = layOut(job, window, correction.value);
  if (laid === undefined)
    return bad({ code: 'conflict', path: job.id, reason: `template ${job.title} has nothing to draw` });
  const { content, grid } = laid;
  if (grid.columns * grid.rows > MOST_TILES) {
    return bad({
      code: 'too-large',
      path: job.id,
      given: grid.columns * grid.rows,
      max: MOST_TILES,
      unit: 'sheets',
    });
  }
  const obstacles = content.strokes.flatMap((s) => obstaclesOf(s.item, 0.5));
  const marks = registerMarks(grid, (p) => clearance(obstacles, p));
  const seams = seamChecks(grid, (from, to) => crowding(obstacles, from, to));
  const strips = blockStrips(cardBlocks(job, content, seams), widthOf(window));
  const cardHeight = strips.reduce((sum, s) => sum + s.height, 0);
  const only = grid.tiles.length === 1 ? grid.tiles[0] : undefined;
  const spare =
    only === undefined
      ? 0
      : heightOf(window) - (content.box.maxY - content.box.minY) * correction.value.down - 4;
  const together = only !== undefined && spare >= cardHeight;
  const cards = together ? [] : cardPages(strips, window, { grid, content });
  const of = cards.length + grid.tiles.length;
  const page = (number: number, items: readonly SheetItem[], tile?: Tile): Sheet => {
    const frame = templateFrame({
      paper: options.paper,
      title: job.title,
      subtitle: `${piecesOn(content, job, tile)} · ${options.bike} · ${options.date}`,
      hand: job.hand,
      page: { number, of },
      ...(tile === undefined ? {} : { tile }),
      grid,
      content,
      correction: correction.value,
    });
    const name = tile === undefined ? 'check card' : grid.tiles.length > 1 ? `tile ${tile.name}` : 'template';
    return {
      id: of === 1 ? job.id : `${job.id}-${number}-of-${of}`,
      title: `${job.title}, ${name}`,
      width: options.paper.width,
      height: options.paper.height,
      scale: '1 : 1',
      items: [...items, ...frame],
    };
  };
  const tiles = grid.tiles.map((tile, i) => {
    const floor = window.bottom + (together ? cardHeight : 0);
    const shown = together ? centeredOver(tile, content.box, floor) : tile;
    const drawing = tileDrawing({ job, content, grid, tile: shown, window, marks, seams, floor });
    const list = together ? stack(strips, { ...window, top: floor }) : [];
    return page(cards.length + i + 1, [...drawing, ...list], tile);
  });
  return good([...cards.map((items, i) => page(i + 1, items)), ...tiles]);
}

function correctionFor(printer: PrinterReading | undefined): Outcome<PrinterCorrection> {
  if (printer === undefined) return good(noCorrection);
  const judged = judgePrinter(printer);
  if (!judged.ok) return judged;
  if (judged.value.verdict === 'reject')
    return bad({ code: 'conflict', path: 'printer', reason: judged.value.text });
  return good(judged.value.verdict === 'pass' ? noCorrection : correctionOf(judged.value));
}

function layOut(
  job: TemplateJob,
  window: PaperRect,
  correction: PrinterCorrection,
): { content: TemplateContent; grid: TileGrid } | undefined {
  const options = [false, true].flatMap((turned) => {
    const content = templateContent(job, turned);
    return content === undefined ? [] : [{ content, grid: tileGrid(content, window, correction) }];
  });
  return options.reduce<(typeof options)[number] | undefined>(
    (best, option) =>
      best === undefined || option.grid.tiles.length < best.grid.tiles.length ? option : best,
    undefined,
  );
}

function piecesOn(content: TemplateContent, job: TemplateJob, tile: Tile | undefined): string {
  if (tile === undefined) return job.pieces.map((p) => p.name).join(', ');
  const { left, right, bottom, top } = tile.region;
  const names = content.strokes
    .filter(({ item }) => {
      const points = item.type === 'circle' ? [item.center] : item.vertices;
      const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
      return (
        Math.min(...xs) <= right &&
        Math.max(...xs) >= left &&
        Math.min(...ys) <= top &&
        Math.max(...ys) >= bottom
      );
    })
    .map((s) => s.piece);
  return [...new Set(names)].join(', ');
}

function cardBlocks(
  job: TemplateJob,
  content: TemplateContent,
  seams: readonly SeamCheck[],
): readonly Block[] {
  const listed = [
    ...content.checks.map((c) => ({ ...c, where: c.name })),
    ...seams.map((s) => ({
      mark: s.mark,
      where: `across the seam${s.tiles.length > 2 ? 's' : ''} ${s.tiles.map((t) => t.name).join(', ')}`,
      length: s.length / 1000,
    })),
  ];
  const rows = listed.map((c) => {
    const [metric, inch] = [
      lengthInLine(c.length, { system: 'mm' }),
      lengthInLine(c.length, { system: 'in' }),
    ];
    return ['☐', c.mark, c.where, metric, inch];
  });
  const hand = {
    left: 'LEFT hand part as drawn.',
    right: 'RIGHT hand part as drawn.',
    mirror: 'MIRROR PAIR: cut one as drawn and one with the sheet turned face down.',
    none: '',
  }[job.hand];
  const join =
    seams.length === 0
      ? ''
      : 'Trim each sheet along its dashed line, lay it on its neighbor so that the crosses fall on each other, tape, then measure the S lines.';
  const turned = content.turned ? 'The part is turned a quarter on the paper to save sheets.' : '';
  const notes = [hand, join, turned, ...job.notes].filter((n) => n !== '');
  return [
    { kind: 'heading', text: `Check lengths, ${job.title}`, level: 3 },
    {
      kind: 'table',
      size: 2.5,
      columns: [
        { title: '', width: 6 },
        { title: 'Mark' },
        { title: 'Measure' },
        { title: 'mm', align: 'right' },
        { title: 'in (nearest 1/64)', align: 'right' },
      ],
      rows,
    },
    { kind: 'list', marker: 'bullet', items: notes, size: 2.6 },
  ];
}

function cardPages(
  strips: readonly Strip[],
  window: PaperRect,
  map: { grid: TileGrid; content: TemplateContent },
): readonly (readonly SheetItem[])[] {
  const mapHeight = map.grid.tiles.length > 1 ? 80 : 0;
  const pages: SheetItem[][] = [[]];
  if (mapHeight > 0) {
    const rect = {
      ...window,
      bottom: window.top - mapHeight + 6,
      right: window.left + widthOf(window) * 0.75,
      left: window.left + widthOf(window) * 0.25,
    };
    pages[0]?.push(...tileMap(map, rect));
  }
  let y = window.top - mapHeight;
  for (const strip of strips) {
    if (y - strip.height < window.bottom && y < window.top) {
      pages.push([]);
      y = window.top;
    }
    pages.at(-1)?.push(...strip.items.map((item) => moved(item, window.left, y)));
    y -= strip.height;
  }
  return pages;
}

function stack(strips: readonly Strip[], rect: PaperRect): readonly SheetItem[] {
  let y = rect.top;
  return strips.flatMap((strip) => {
    const top = y;
    y -= strip.height;
    return strip.items.map((item) => moved(item, rect.left, top));
  });
}

function clearance(obstacles: readonly Obstacle[], p: PaperPoint): number {
  return obstacles.reduce((least, [a, b]) => Math.min(least, distanceToPiece(p, a, b)), Infinity);
}

function distanceToPiece(p: PaperPoint, a: PaperPoint, b: PaperPoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

/** How much of the drawing a line comes near: one for each of its points, every 5 mm, within 4 mm of a stroke. */
function crowding(obstacles: readonly Obstacle[], from: PaperPoint, to: PaperPoint): number {
  const count = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 5);
  const [left, right] = [Math.min(from.x, to.x) - CROWDED, Math.max(from.x, to.x) + CROWDED];
  const [low, high] = [Math.min(from.y, to.y) - CROWDED, Math.max(from.y, to.y) + CROWDED];
  const close = obstacles.filter(
    ([a, b]) =>
      Math.max(a.x, b.x) > left &&
      Math.min(a.x, b.x) < right &&
      Math.max(a.y, b.y) > low &&
      Math.min(a.y, b.y) < high,
  );
  let near = 0;
  for (let i = 0; i <= count; i += 1) {
    const p = { x: from.x + ((to.x - from.x) * i) / count, y: from.y + ((to.y - from.y) * i) / count };
    if (close.some(([a, b]) => distanceToPiece(p, a, b) < CROWDED)) near += 1;
  }
  return near;
}
