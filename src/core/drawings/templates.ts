import { bad, good, type Outcome } from '../quantity/index.ts';
import { blockStrips } from './bookPages.ts';
import { clearance, crowding } from './crowding.ts';
import type { Paper } from './paper.ts';
import { correctionOf, judgePrinter, type PrinterCorrection, type PrinterReading } from './printerCheck.ts';
import { seamChecks } from './seamCheck.ts';
import { heightOf, type PaperRect, widthOf } from './shapes.ts';
import type { Sheet, SheetItem } from './sheet.ts';
import { cardBlocks, cardPages, stack } from './templateCard.ts';
import { noCorrection, type TemplateContent, templateContent } from './templateContent.ts';
import { templateFrame, templateWindow } from './templateFrame.ts';
import type { TemplateJob } from './templateJob.ts';
import { obstaclesOf, tileDrawing } from './templateTile.ts';
import { centeredOver, registerMarks, type Tile, type TileGrid, tileCount, tileGrid } from './tileGrid.ts';

export interface TemplateOptions {
  /** Upright; the part is turned instead, so that across and down stay those of the printer. */
  readonly paper: Paper;
  /** Bars measured on an earlier print; the sheets come out compensated. */
  readonly printer?: PrinterReading;
  readonly bike: string;
  /** As to be printed. */
  readonly date: string;
}

interface LaidOut {
  readonly content: TemplateContent;
  readonly grid: TileGrid;
}

/** A part that needs more sheets than this is not a template for glue and paper. */
const MOST_TILES = 60;

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
  if (!laid.ok) return laid;
  const { content, grid } = laid.value;
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
  const page = pageMaker({ job, options, grid, content, correction: correction.value, of });
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

function layOut(job: TemplateJob, window: PaperRect, correction: PrinterCorrection): Outcome<LaidOut> {
  const contents = [false, true].flatMap((turned) => templateContent(job, turned) ?? []);
  const fewest = Math.min(...contents.map((content) => tileCount(content, window, correction)));
  if (contents.length === 0) {
    return bad({ code: 'conflict', path: job.id, reason: `template ${job.title} has nothing to draw` });
  }
  if (!(fewest <= MOST_TILES)) {
    return bad({ code: 'too-large', path: job.id, given: fewest, max: MOST_TILES, unit: 'sheets' });
  }
  const [first, ...others] = contents
    .filter((content) => tileCount(content, window, correction) <= 2 * MOST_TILES)
    .map((content) => ({ content, grid: tileGrid(content, window, correction) }));
  return good(
    others.reduce(
      (best, next) => (next.grid.tiles.length < best.grid.tiles.length ? next : best),
      first as LaidOut,
    ),
  );
}

interface PageInput extends LaidOut {
  readonly job: TemplateJob;
  readonly options: TemplateOptions;
  readonly correction: PrinterCorrection;
  readonly of: number;
}

/** Makes page `number` of a job from what its window holds. */
function pageMaker(input: PageInput): (number: number, items: readonly SheetItem[], tile?: Tile) => Sheet {
  const { job, options, grid, content, correction, of } = input;
  return (number, items, tile) => {
    const frame = templateFrame({
      paper: options.paper,
      title: job.title,
      subtitle: `${piecesOn(content, job, tile)} · ${options.bike} · ${options.date}`,
      hand: job.hand,
      page: { number, of },
      ...(tile === undefined ? {} : { tile }),
      grid,
      content,
      correction,
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
