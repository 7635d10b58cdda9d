import { line, rectangle, text } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';

export interface CheckBarInput {
  /** The zero end. */
  readonly at: PaperPoint;
  /** Across the paper (to the right) or down it (drawn upward from the zero end). */
  readonly axis: 'across' | 'down';
  readonly kind: '100 mm' | '4 in';
  /** Drawn / true length along the axis, for a printer that prints short or long; default 1. */
  readonly factor?: number;
  readonly part?: string;
}

/** A bar that is laid against a rule: filled and blank steps of 10 mm (or 1/2 in), ends marked. */
export function checkBar(input: CheckBarInput): readonly SheetItem[] {
  const { at, axis, kind, factor = 1, part } = input;
  const step = (kind === '100 mm' ? 10 : 12.7) * factor;
  const count = kind === '100 mm' ? 10 : 8;
  const length = step * count;
  const place = (along: number, aside: number): PaperPoint =>
    axis === 'across' ? { x: at.x + along, y: at.y + aside } : { x: at.x - aside, y: at.y + along };
  const box = (from: number, to: number) => {
    const [a, b] = [place(from, 0), place(to, 1.2)];
    return {
      left: Math.min(a.x, b.x),
      bottom: Math.min(a.y, b.y),
      right: Math.max(a.x, b.x),
      top: Math.max(a.y, b.y),
    };
  };
  const label = kind === '100 mm' ? '100 mm' : '4 in';
  return [
    ...Array.from({ length: count / 2 }, (_, i) =>
      rectangle(box(2 * i * step, (2 * i + 1) * step), 'none', 'dark'),
    ),
    { ...line(place(0, 0), place(length, 0), 'mark'), ...(part === undefined ? {} : { part }) },
    line(place(0, 1.2), place(length, 1.2), 'mark'),
    line(place(0, -0.6), place(0, 2.4), 'mark'),
    line(place(length, -0.6), place(length, 2.4), 'mark'),
    text(place(length / 2, 1.9), `${label} ${axis}`, {
      size: 2.2,
      anchor: 'middle',
      turn: axis === 'across' ? 0 : 90,
    }),
  ];
}
