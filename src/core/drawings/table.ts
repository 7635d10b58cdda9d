import { line, text } from './shapes.ts';
import type { SheetItem, TextItem } from './sheet.ts';
import { textDrop, textRise, textWidth, wrapText } from './textMetrics.ts';

export interface TableColumn {
  readonly title: string;
  readonly align?: 'left' | 'right' | 'center';
  /** Fixed width [mm]; left out, columns share the page by what they hold. */
  readonly width?: number;
}

export type TableCell =
  | string
  | { readonly text: string; readonly weight?: TextItem['weight']; readonly tone?: TextItem['tone'] };

export interface TableInput {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly TableCell[])[];
  /** Text size [mm]; default 2.6. */
  readonly size?: number;
}

/** A strip of a page: its items lie between x = 0 and the page width, y = 0 (top) and −height. */
export interface Strip {
  readonly height: number;
  readonly items: readonly SheetItem[];
}

export interface TableLayout {
  /** Widths of the columns [mm]. */
  readonly widths: readonly number[];
  readonly header: Strip;
  readonly rows: readonly Strip[];
}

const PAD_X = 1.2;
const PAD_Y = 0.7;
/** A column of words is not made narrower than this, however long its neighbors are [mm]. */
const LEAST_WIDTH = 8;
/** Most that a column of a table that fits is made wider than its text [mm]. */
const MOST_EXTRA = 6;

/** Columns, wrapped cells, a bold header over a rule and a thin rule under each row. */
export function layoutTable(input: TableInput, width: number): TableLayout {
  const { columns, rows, size = 2.6 } = input;
  const widths = columnWidths(input, width, size);
  const header = rowStrip({
    columns,
    widths,
    size,
    cells: columns.map((c) => ({ text: c.title, weight: 'bold' as const })),
    rule: 'outline',
  });
  return {
    widths,
    header,
    rows: rows.map((cells) => rowStrip({ columns, widths, size, cells, rule: 'dimension' })),
  };
}

interface RowInput {
  readonly columns: readonly TableColumn[];
  readonly widths: readonly number[];
  readonly size: number;
  readonly cells: readonly TableCell[];
  readonly rule: 'outline' | 'dimension';
}

function rowStrip(input: RowInput): Strip {
  const { columns, widths, size, rule } = input;
  const cells = columns.map((_, i) => cellOf(input.cells[i] ?? ''));
  const pitch = 1.18 * size;
  const wrapped = cells.map((c, i) => wrapText(c.text, (widths[i] as number) - 2 * PAD_X, size, c.weight));
  const height =
    2 * PAD_Y + (textRise + textDrop) * size + (Math.max(...wrapped.map((w) => w.length)) - 1) * pitch;
  const total = widths.reduce((a, b) => a + b, 0);
  let left = 0;
  const texts = cells.flatMap((cell, i) => {
    const w = widths[i] as number;
    const x = { left: left + PAD_X, center: left + w / 2, right: left + w - PAD_X }[
      columns[i]?.align ?? 'left'
    ];
    left += w;
    const anchor = ({ left: 'start', center: 'middle', right: 'end' } as const)[columns[i]?.align ?? 'left'];
    return (wrapped[i] as readonly string[]).map((content, k) =>
      text({ x, y: -PAD_Y - textRise * size - k * pitch }, content, {
        size,
        anchor,
        weight: cell.weight,
        tone: cell.tone,
      }),
    );
  });
  return { height, items: [...texts, line({ x: 0, y: -height }, { x: total, y: -height }, rule)] };
}

function cellOf(cell: TableCell): { text: string; weight: TextItem['weight']; tone: TextItem['tone'] } {
  return typeof cell === 'string'
    ? { text: cell, weight: 'regular', tone: 'ink' }
    : { text: cell.text, weight: cell.weight ?? 'regular', tone: cell.tone ?? 'ink' };
}

/**
 * Each column gets at least its longest word and at most its longest cell; what is left between is shared in
 * proportion to what each could still use. A table that fits whole is loosened a little, not stretched to the width:
 * the eye loses its row over a wide gap.
 */
function columnWidths(input: TableInput, width: number, size: number): readonly number[] {
  const measure = input.columns.map((column, i) => {
    if (column.width !== undefined) return { least: column.width, most: column.width };
    const cells = [
      { text: column.title, weight: 'bold' as const },
      ...input.rows.map((row) => cellOf(row[i] ?? '')),
    ];
    const longest = (gap: RegExp | string): number => {
      let most = 0;
      for (const { text: content, weight } of cells)
        for (const piece of content.split(gap)) most = Math.max(most, textWidth(piece, size, weight));
      return most + 2 * PAD_X + 0.01;
    };
    return { least: longest(/\s/), most: longest('\n') };
  });
  const least = measure.map((m) => m.least);
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  if (sum(least) > width) {
    // Words must break: shrink all but the fixed and the narrowest in proportion.
    const floor = measure.map((m, i) =>
      input.columns[i]?.width === undefined ? Math.min(LEAST_WIDTH, m.least) : m.least,
    );
    const share = Math.max(0, width - sum(floor)) / Math.max(1e-9, sum(least) - sum(floor));
    return least.map((l, i) => (floor[i] as number) + (l - (floor[i] as number)) * share);
  }
  const slack = measure.map((m) => m.most - m.least);
  const left = width - sum(least);
  if (left <= sum(slack))
    return least.map((l, i) => l + ((slack[i] as number) * left) / Math.max(1e-9, sum(slack)));
  const open = input.columns.filter((c) => c.width === undefined).length;
  const extra = Math.min(MOST_EXTRA, (left - sum(slack)) / Math.max(1, open));
  return measure.map((m, i) => m.most + (input.columns[i]?.width === undefined ? extra : 0));
}
