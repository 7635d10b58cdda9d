import { circle, line, type PaperRect, polygon, rectangle, text } from './shapes.ts';
import type { SheetItem } from './sheet.ts';
import { textWidth, wrapText } from './textMetrics.ts';

export interface TitleBlockInput {
  /** Where it stands; as wide as the drawing, {@link titleBlockHeight} high. */
  readonly rect: PaperRect;
  readonly title: string;
  readonly bike: string;
  readonly scale?: string;
  /** What the figures are in: `mm over in`. */
  readonly units: string;
  /** As to be printed; the core has no clock. */
  readonly date: string;
  readonly sheet: { readonly number: number; readonly of: number };
  readonly projection: 'third-angle' | 'first-angle' | 'none';
}

export const titleBlockHeight = 12;

interface Field {
  readonly label: string;
  readonly value: string;
  readonly width: number;
  readonly bold?: boolean;
}

const LABEL_SIZE = 1.9;
const VALUE_SIZE = 3;
const SYMBOL_WIDTH = 16;

/** One strip along the foot of the sheet: title, bike, scale, units, projection, date, sheet number. */
export function titleBlock(input: TitleBlockInput): readonly SheetItem[] {
  const { rect } = input;
  const wide = rect.right - rect.left;
  const symbol = input.projection === 'none' ? 0 : SYMBOL_WIDTH;
  const small: readonly Field[] = [
    { label: 'Scale', value: input.scale ?? '–', width: 18 },
    { label: 'Figures in', value: input.units, width: 25 },
    { label: 'Date', value: input.date, width: 22 },
    { label: 'Sheet', value: `${input.sheet.number} of ${input.sheet.of}`, width: 19, bold: true },
  ];
  const rest = wide - symbol - small.reduce((sum, f) => sum + f.width, 0);
  const fields: readonly Field[] = [
    { label: 'Title', value: input.title, width: rest * 0.56, bold: true },
    { label: 'Bike', value: input.bike, width: rest * 0.44 },
    ...small,
  ];
  let left = rect.left;
  const items = fields.flatMap((field, i) => {
    const x = left;
    left += field.width;
    return [
      ...fieldItems(field, x, rect),
      ...(i === 0 ? [] : [line({ x, y: rect.bottom }, { x, y: rect.top }, 'thin')]),
    ];
  });
  const symbolBox = { left, bottom: rect.bottom, right: rect.right, top: rect.top };
  return [
    rectangle(rect, 'thin'),
    ...items,
    ...(symbol === 0 ? [] : projectionSymbol(symbolBox, input.projection === 'third-angle')),
  ];
}

function fieldItems(field: Field, x: number, rect: PaperRect): readonly SheetItem[] {
  const weight = field.bold ? ('bold' as const) : ('regular' as const);
  const room = field.width - 2.4;
  const label = text({ x: x + 1.2, y: rect.top - 2.6 }, field.label, { size: LABEL_SIZE, tone: 'muted' });
  // A long title takes two lines, then smaller letters; it never runs into the next field.
  let size = VALUE_SIZE;
  if (textWidth(field.value, size, weight) > room) {
    size = 2.5;
    while (size > 1.2 && wrapText(field.value, room, size, weight).length > 2) size -= 0.1;
  }
  const lines = wrapText(field.value, room, size, weight);
  const pitch = size * 1.15;
  const first = rect.bottom + 2.2 + (lines.length - 1) * pitch + (lines.length === 1 ? 1 : 0);
  return [
    label,
    ...lines.map((content, k) => text({ x: x + 1.2, y: first - k * pitch }, content, { size, weight })),
  ];
}

/** The cut cone in two views. The end view lies on the side that it shows in third angle, on the other in first. @source iso-5456-2, symbols */
function projectionSymbol(box: PaperRect, third: boolean): readonly SheetItem[] {
  const y = (box.bottom + box.top) / 2;
  const middle = (box.left + box.right) / 2;
  const [small, large, length] = [1.4, 2.7, 5];
  const ends = { x: middle + (third ? -3.6 : 3.6), y };
  const cone = middle + (third ? 2.4 : -2.4);
  const [near, far] = [cone - length / 2, cone + length / 2];
  return [
    line({ x: box.left, y: box.bottom }, { x: box.left, y: box.top }, 'thin'),
    circle(ends, large, 'thin'),
    circle(ends, small, 'thin'),
    polygon(
      [
        { x: near, y: y - small },
        { x: far, y: y - large },
        { x: far, y: y + large },
        { x: near, y: y + small },
      ],
      'thin',
    ),
    line({ x: box.left + 0.8, y }, { x: box.right - 0.8, y }, 'center'),
  ];
}
