import { checkBar } from './checkBar.ts';
import { type Paper, printableArea } from './paper.ts';
import type { PrinterCorrection } from './printerCheck.ts';
import { circle, heightOf, line, openPath, type PaperRect, rectangle, text, widthOf } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { stretchStroke } from './stretch.ts';
import type { TemplateContent } from './templateContent.ts';
import type { HandMark } from './templateJob.ts';
import { textWidth, wrapText } from './textMetrics.ts';
import { type Tile, type TileGrid, tileName } from './tileGrid.ts';

export interface TemplateFrameInput {
  readonly paper: Paper;
  readonly title: string;
  /** Pieces, bike, date. */
  readonly subtitle: string;
  readonly hand: HandMark;
  /** `sheet 2 of 4`, with the tile's name when there is more than one. */
  readonly page: { readonly number: number; readonly of: number };
  readonly tile?: Tile;
  readonly grid: TileGrid;
  readonly content: TemplateContent;
  readonly correction: PrinterCorrection;
}

const HEADER = 16;
/** Strip of the upright bars, and of the two level ones one over the other [mm]. */
const SIDE = 5.2;
const FOOT = 11;
const MAP_WIDTH = 26;

export const handWords: Readonly<Record<HandMark, string>> = {
  left: 'LEFT',
  right: 'RIGHT',
  mirror: 'MIRROR PAIR',
  none: '',
};

/** Where the drawing goes: what is printable less title, hand mark and check bars. */
export function templateWindow(paper: Paper): PaperRect {
  const area = printableArea(paper);
  return { left: area.left + SIDE, right: area.right, bottom: area.bottom + FOOT, top: area.top - HEADER };
}

/** All that a template page carries besides the drawing. */
export function templateFrame(input: TemplateFrameInput): readonly SheetItem[] {
  const area = printableArea(input.paper);
  return [...header(input, { ...area, bottom: area.top - HEADER }), ...bars(input, area)];
}

/** A small picture of how the sheets lie, the current one filled. */
export function tileMap(
  input: Pick<TemplateFrameInput, 'grid' | 'content' | 'tile'>,
  rect: PaperRect,
): readonly SheetItem[] {
  const { grid, content, tile } = input;
  const scale = Math.min(widthOf(rect) / widthOf(grid.region), heightOf(rect) / heightOf(grid.region));
  const to = {
    x: rect.right - widthOf(grid.region) * scale,
    y: (rect.bottom + rect.top - heightOf(grid.region) * scale) / 2,
  };
  const stretch = { from: { x: grid.region.left, y: grid.region.bottom }, to, across: scale, down: scale };
  const at = (p: PaperPoint): PaperPoint => ({
    x: to.x + (p.x - grid.region.left) * scale,
    y: to.y + (p.y - grid.region.bottom) * scale,
  });
  const box = (t: Tile): PaperRect => {
    const [low, high] = [
      at({ x: t.region.left, y: t.region.bottom }),
      at({ x: t.region.right, y: t.region.top }),
    ];
    return { left: low.x, bottom: low.y, right: high.x, top: high.y };
  };
  const outlines = content.strokes.filter((s) => s.item.pen === 'cut' || s.item.pen === 'outline');
  const several = grid.columns * grid.rows > 1;
  return [
    ...grid.tiles.map((t) =>
      rectangle(box(t), 'dimension', tile?.name === t.name && several ? 'medium' : 'none'),
    ),
    ...outlines.map((s) => ({ ...stretchStroke(stretch, s.item), pen: 'dimension' as const })),
    ...(several ? grid.tiles.map((t) => mapName(t, box(t))) : []),
  ];
}

function mapName(tile: Tile, box: PaperRect): SheetItem {
  const size = Math.min(4, heightOf(box) * 0.4, widthOf(box) * 0.5);
  const at = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 - size * 0.36 };
  return text(at, tileName(tile.column, tile.row), { size, anchor: 'middle', weight: 'bold' });
}

function header(input: TemplateFrameInput, rect: PaperRect): readonly SheetItem[] {
  const { tile, grid, page } = input;
  const mapRect = {
    left: rect.right - MAP_WIDTH,
    right: rect.right,
    bottom: rect.bottom + 1.5,
    top: rect.top,
  };
  const several = grid.columns * grid.rows > 1 && tile !== undefined;
  const nameWidth = several ? textWidth(tile.name, 9, 'bold') + 3 : 0;
  const right = mapRect.left - 3;
  const hand = handWords[input.hand];
  const handWidth = hand === '' ? 0 : textWidth(hand, 6.5, 'bold') + 6;
  const room = right - nameWidth - handWidth - rect.left - 2;
  return [
    ...titleLines(input, rect, room),
    ...(hand === ''
      ? []
      : handMark(hand, {
          left: right - nameWidth - handWidth,
          right: right - nameWidth - 2,
          bottom: rect.top - 8.6,
          top: rect.top,
        })),
    ...(several
      ? [text({ x: right, y: rect.top - 7 }, tile.name, { size: 9, weight: 'bold', anchor: 'end' })]
      : []),
    text({ x: right, y: rect.top - 12.4 }, `1 : 1 · sheet ${page.number} of ${page.of}`, {
      size: 2.6,
      anchor: 'end',
    }),
    ...tileMap(input, mapRect),
    line({ x: rect.left, y: rect.bottom + 0.7 }, { x: rect.right, y: rect.bottom + 0.7 }, 'thin'),
  ];
}

function titleLines(input: TemplateFrameInput, rect: PaperRect, room: number): readonly SheetItem[] {
  let size = 5;
  while (size > 2.4 && wrapText(input.title, room, size, 'bold').length > 1) size -= 0.2;
  const title = wrapText(input.title, room, size, 'bold').slice(0, 2);
  const wide = rect.right - MAP_WIDTH - 45 - rect.left;
  const under = wrapText(input.subtitle, wide, 2.4).slice(0, title.length > 1 ? 1 : 2);
  return [
    ...title.map((content, i) =>
      text({ x: rect.left, y: rect.top - 4.2 - i * size * 1.2 }, content, { size, weight: 'bold' }),
    ),
    ...under.map((content, i) =>
      text({ x: rect.left, y: rect.top - 9.8 - (title.length > 1 ? 1 : 0) - i * 3 }, content, {
        size: 2.4,
        tone: 'muted',
      }),
    ),
  ];
}

function handMark(word: string, box: PaperRect): readonly SheetItem[] {
  const at = { x: (box.left + box.right) / 2, y: box.bottom + 2 };
  return [rectangle(box, 'outline'), text(at, word, { size: 6.5, weight: 'bold', anchor: 'middle' })];
}

function bars(input: TemplateFrameInput, area: PaperRect): readonly SheetItem[] {
  const { across, down } = input.correction;
  const left = area.left + SIDE;
  const up = area.bottom + FOOT;
  const x = area.left + SIDE - 0.9;
  const level = [
    checkBar({
      at: { x: left, y: area.bottom + 5.6 },
      axis: 'across',
      kind: '100 mm',
      factor: across,
      part: 'bar:across:100mm',
    }),
    checkBar({
      at: { x: left, y: area.bottom + 0.7 },
      axis: 'across',
      kind: '4 in',
      factor: across,
      part: 'bar:across:4in',
    }),
  ];
  const upright = [
    checkBar({ at: { x, y: up + 0.5 }, axis: 'down', kind: '100 mm', factor: down, part: 'bar:down:100mm' }),
    checkBar({
      at: { x, y: up + 0.5 + 106 * down },
      axis: 'down',
      kind: '4 in',
      factor: down,
      part: 'bar:down:4in',
    }),
  ];
  return [
    ...level.flat(),
    ...upright.flat(),
    ...barNote(input, { ...area, left: left + 107 * across, top: up - 1 }),
  ];
}

function barNote(input: TemplateFrameInput, rect: PaperRect): readonly SheetItem[] {
  const { across, down } = input.correction;
  const compensated =
    across === 1 && down === 1
      ? ''
      : ` Compensated for a printer that gives ${(100 / across).toFixed(2)} across and ${(100 / down).toFixed(2)} down for 100 mm.`;
  const note = `Print at actual size (100 %). Measure all bars before cutting: 100 mm within 0.25 mm, 4 in within 0.010 in, across and down.${compensated}`;
  const size = 2.3;
  const lines = wrapText(note, widthOf(rect), size);
  return lines.map((content, i) =>
    text({ x: rect.left, y: rect.top - size * 0.76 - 0.3 - i * 2.75 }, content, { size }),
  );
}

/** A cross in a ring: laid on its twin when the sheets are joined. */
export function registerCross(at: PaperPoint, id: string): readonly SheetItem[] {
  return [
    { ...line({ x: at.x - 4, y: at.y }, { x: at.x + 4, y: at.y }, 'mark'), part: id },
    line({ x: at.x, y: at.y - 4 }, { x: at.x, y: at.y + 4 }, 'mark'),
    circle(at, 2, 'mark'),
  ];
}

/** Small corners that show where the window of a tile ends. */
export function windowCorners(rect: PaperRect): readonly SheetItem[] {
  return (
    [
      [rect.left, rect.bottom, 1, 1],
      [rect.right, rect.bottom, -1, 1],
      [rect.right, rect.top, -1, -1],
      [rect.left, rect.top, 1, -1],
    ] as const
  ).map(([x, y, dx, dy]) =>
    openPath(
      [
        { x: x + 3 * dx, y },
        { x, y },
        { x, y: y + 3 * dy },
      ],
      'dimension',
    ),
  );
}
