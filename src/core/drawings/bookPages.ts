import { type Paper, printableArea } from './paper.ts';
import { moved, type PaperRect, text, widthOf } from './shapes.ts';
import type { Sheet, SheetItem, TextItem } from './sheet.ts';
import { layoutTable, type Strip, type TableInput } from './table.ts';
import { textDrop, textRise, wrapText } from './textMetrics.ts';
import { type TitleBlockInput, titleBlock, titleBlockHeight } from './titleBlock.ts';

/** A part of a running text, set from top to bottom over as many pages as it needs. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string; readonly level?: 1 | 2 | 3 }
  | {
      readonly kind: 'paragraph';
      readonly text: string;
      readonly size?: number;
      readonly weight?: TextItem['weight'];
      readonly tone?: TextItem['tone'];
    }
  | {
      readonly kind: 'list';
      readonly items: readonly string[];
      readonly marker: 'bullet' | 'number' | 'box' | 'none';
      readonly size?: number;
    }
  | (TableInput & { readonly kind: 'table' })
  | {
      readonly kind: 'drawing';
      /** [mm] */
      readonly height: number;
      /** Draws inside the rectangle that it is given. */
      readonly draw: (area: PaperRect) => readonly SheetItem[];
    }
  | { readonly kind: 'space'; readonly height: number }
  | { readonly kind: 'pageBreak' };

/** A sheet before it is numbered. */
export interface DraftSheet {
  readonly id: string;
  readonly title: string;
  readonly paper: Paper;
  readonly scale?: string;
  readonly projection?: TitleBlockInput['projection'];
  readonly items: readonly SheetItem[];
}

export interface BookInfo {
  readonly bike: string;
  /** As to be printed. */
  readonly date: string;
  /** What drawings' figures are in: `mm over in`. */
  readonly units: string;
}

interface Piece extends Strip {
  /** Stays on the page of the piece after it. */
  readonly keepWithNext?: boolean;
  /** Printed again at the head of the next page, when the break comes right before this piece. */
  readonly repeat?: Strip;
  readonly breakBefore?: boolean;
  /** Left out at the head of a page. */
  readonly blank?: boolean;
}

const GAP_OVER_TITLE_BLOCK = 4;
const HEADING_SIZES = { 1: 5.4, 2: 4, 3: 3.2 } as const;
const TEXT_SIZE = 3;
const LINE = 1.32;

/** Room for drawings and text on a page that gets a title block. */
export function contentArea(sheet: Paper): PaperRect {
  const area = printableArea(sheet);
  return { ...area, bottom: area.bottom + titleBlockHeight + GAP_OVER_TITLE_BLOCK };
}

export interface FlowInput {
  readonly id: string;
  readonly title: string;
  readonly paper: Paper;
  readonly blocks: readonly Block[];
}

/** Blocks as strips of this width, for a page that is not a page of a book. */
export function blockStrips(blocks: readonly Block[], width: number): readonly Strip[] {
  return blocks.flatMap((block) => piecesOf(block, width)).map(({ height, items }) => ({ height, items }));
}

/** Sets blocks over as many pages as they need; the first keeps `id`, the others get `-2`, `-3` … */
export function flowPages(input: FlowInput): readonly DraftSheet[] {
  const area = contentArea(input.paper);
  const pieces = input.blocks.flatMap((block) => piecesOf(block, widthOf(area)));
  const pages: SheetItem[][] = [[]];
  let y = area.top;
  const put = (strip: Strip): void => {
    (pages.at(-1) as SheetItem[]).push(...strip.items.map((item) => moved(item, area.left, y)));
    y -= strip.height;
  };
  pieces.forEach((piece, i) => {
    const fresh = y === area.top;
    const full = !fresh && y - runHeight(pieces, i) < area.bottom - 1e-6;
    if (full || (piece.breakBefore && !fresh)) {
      pages.push([]);
      y = area.top;
      if (piece.repeat) put(piece.repeat);
    }
    if (!(piece.blank && y === area.top)) put(piece);
  });
  return pages
    .filter((items, i) => items.length > 0 || i === 0)
    .map((items, i) => ({
      id: i === 0 ? input.id : `${input.id}-${i + 1}`,
      title: i === 0 ? input.title : `${input.title} (${i + 1})`,
      paper: input.paper,
      projection: 'none',
      items,
    }));
}

/** Adds title blocks and sheet numbers: the last step of a book. */
export function finishBook(drafts: readonly DraftSheet[], info: BookInfo): readonly Sheet[] {
  return drafts.map((draft, i) => {
    const area = printableArea(draft.paper);
    const block = titleBlock({
      rect: { ...area, top: area.bottom + titleBlockHeight },
      title: draft.title,
      bike: info.bike,
      ...(draft.scale === undefined ? {} : { scale: draft.scale }),
      units: info.units,
      date: info.date,
      sheet: { number: i + 1, of: drafts.length },
      projection: draft.projection ?? 'third-angle',
    });
    return {
      id: draft.id,
      title: draft.title,
      width: draft.paper.width,
      height: draft.paper.height,
      ...(draft.scale === undefined ? {} : { scale: draft.scale }),
      items: [...draft.items, ...block],
    };
  });
}

/** Height of a piece and of those it must stay with. */
function runHeight(pieces: readonly Piece[], from: number): number {
  let height = 0;
  for (let i = from; i < pieces.length; i += 1) {
    const piece = pieces[i] as Piece;
    height += piece.height;
    if (!piece.keepWithNext) break;
  }
  return height;
}

function piecesOf(block: Block, width: number): readonly Piece[] {
  switch (block.kind) {
    case 'heading':
      return headingPieces(block.text, block.level ?? 1, width);
    case 'paragraph':
      return [...textPieces(block.text, width, block), space(1.5)];
    case 'list':
      return [...block.items.flatMap((item, i) => listPieces(item, i, block, width)), space(1.5)];
    case 'table':
      return tablePieces(block, width);
    case 'drawing': {
      const items = block.draw({ left: 0, right: width, top: 0, bottom: -block.height });
      return [{ height: block.height, items }, space(2)];
    }
    case 'space':
      return [space(block.height)];
    case 'pageBreak':
      return [{ height: 0, items: [], breakBefore: true }];
  }
}

const space = (height: number): Piece => ({ height, items: [], blank: true });

function headingPieces(content: string, level: 1 | 2 | 3, width: number): readonly Piece[] {
  const size = HEADING_SIZES[level];
  const lines = wrapText(content, width, size, 'bold');
  const before = { ...space(level === 1 ? 4 : 2.5), keepWithNext: true };
  return [
    before,
    ...lines.map((l) => ({ ...textStrip(l, 0, size, { weight: 'bold' }), keepWithNext: true })),
    { height: 1, items: [], keepWithNext: true },
  ];
}

interface TextLook {
  readonly size?: number;
  readonly weight?: TextItem['weight'];
  readonly tone?: TextItem['tone'];
}

function textPieces(content: string, width: number, look: TextLook, indent = 0): readonly Piece[] {
  const { size = TEXT_SIZE, weight = 'regular' } = look;
  const lines = wrapText(content, width - indent, size, weight);
  // The first two lines stay together, and so do the last two.
  return lines.map((l, i) => ({
    ...textStrip(l, indent, size, look),
    keepWithNext: i + 1 < lines.length && (i === 0 || i === lines.length - 2),
  }));
}

function textStrip(content: string, x: number, size: number, look: TextLook): Strip {
  const { weight = 'regular', tone = 'ink' } = look;
  const lead = (LINE - textRise - textDrop) * size;
  return {
    height: LINE * size,
    items: [text({ x, y: -lead / 2 - textRise * size }, content, { size, weight, tone })],
  };
}

function listPieces(
  item: string,
  index: number,
  list: Extract<Block, { kind: 'list' }>,
  width: number,
): readonly Piece[] {
  const size = list.size ?? TEXT_SIZE;
  const indent = list.marker === 'none' ? 0 : list.marker === 'number' ? 2.3 * size : 1.7 * size;
  const marker = { bullet: '•', number: `${index + 1}.`, box: '☐', none: '' }[list.marker];
  const lines = textPieces(item, width, { size }, indent);
  return lines.map((piece, i) =>
    i === 0 && marker !== ''
      ? { ...piece, items: [...textStrip(marker, 0, size, {}).items, ...piece.items] }
      : piece,
  );
}

function tablePieces(table: TableInput, width: number): readonly Piece[] {
  const layout = layoutTable(table, width);
  return [
    { ...layout.header, keepWithNext: true },
    ...layout.rows.map((row) => ({ ...row, repeat: layout.header })),
    space(3),
  ];
}
