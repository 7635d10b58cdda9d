import type {
  CircleItem,
  FillRole,
  PaperPoint,
  PathItem,
  PathStep,
  PenRole,
  SheetItem,
  TextItem,
} from './sheet.ts';
import { textBox } from './textMetrics.ts';

/** A rectangle on paper by its lower left and upper right corners [mm]. */
export interface PaperRect {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** How a text is set; what is left out: 3 mm, start, level, regular, ink. */
export interface TextStyle {
  readonly size?: number;
  readonly anchor?: TextItem['anchor'];
  readonly turn?: number;
  readonly weight?: TextItem['weight'];
  readonly tone?: TextItem['tone'];
  readonly part?: string;
}

const straight = (p: PaperPoint): PathStep => ({ x: p.x, y: p.y, bulge: 0 });

export function line(from: PaperPoint, to: PaperPoint, pen: PenRole, part?: string): PathItem {
  return { ...openPath([from, to], pen), ...(part === undefined ? {} : { part }) };
}

/** Straight lines through the points. */
export function openPath(points: readonly PaperPoint[], pen: PenRole): PathItem {
  return { type: 'path', vertices: points.map(straight), closed: false, pen, fill: 'none' };
}

export function polygon(
  points: readonly PaperPoint[],
  pen: PenRole | 'none',
  fill: FillRole = 'none',
): PathItem {
  return { type: 'path', vertices: points.map(straight), closed: true, pen, fill };
}

export function rectangle(rect: PaperRect, pen: PenRole | 'none', fill: FillRole = 'none'): PathItem {
  return polygon(
    [
      { x: rect.left, y: rect.bottom },
      { x: rect.right, y: rect.bottom },
      { x: rect.right, y: rect.top },
      { x: rect.left, y: rect.top },
    ],
    pen,
    fill,
  );
}

export function circle(
  center: PaperPoint,
  radius: number,
  pen: PenRole | 'none',
  fill: FillRole = 'none',
): CircleItem {
  return { type: 'circle', center, radius, pen, fill };
}

export function text(at: PaperPoint, content: string, style: TextStyle = {}): TextItem {
  const { size = 3, anchor = 'start', turn = 0, weight = 'regular', tone = 'ink', part } = style;
  return {
    type: 'text',
    at,
    text: content,
    size,
    anchor,
    turn,
    weight,
    tone,
    ...(part === undefined ? {} : { part }),
  };
}

/** A text on a strip of blank paper, so that no line runs through it; draw it after the lines. */
export function maskedText(at: PaperPoint, content: string, style: TextStyle = {}): readonly SheetItem[] {
  const item = text(at, content, style);
  return [polygon(textBox(item), 'none', 'paper'), item];
}

/** A copy moved by (x, y) [mm]. */
export function moved<Item extends SheetItem>(item: Item, x: number, y: number): Item {
  const shift = (p: PaperPoint): PaperPoint => ({ x: p.x + x, y: p.y + y });
  if (item.type === 'path')
    return { ...item, vertices: item.vertices.map((v) => ({ ...shift(v), bulge: v.bulge })) };
  if (item.type === 'circle') return { ...item, center: shift(item.center) };
  return { ...item, at: shift(item.at) };
}

export const widthOf = (rect: PaperRect): number => rect.right - rect.left;
export const heightOf = (rect: PaperRect): number => rect.top - rect.bottom;

/** The rectangle less a border on each side [mm]. */
export function inset(rect: PaperRect, by: number): PaperRect {
  return { left: rect.left + by, bottom: rect.bottom + by, right: rect.right - by, top: rect.top - by };
}
