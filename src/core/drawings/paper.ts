import type { PaperRect } from './shapes.ts';

export type PaperName = 'a4' | 'letter';
export type Orientation = 'portrait' | 'landscape';

/** A sheet of paper and the border that home printers leave blank or blur [mm]. */
export interface Paper {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/** Home printers leave 4.2 to 6.4 mm blank; 7 mm keeps every line on the paper. @source practice */
const MARGIN = 7;
const INCH = 25.4;

/** @source iso-216, A4 · ansi-y14-1, size A (8.5 × 11 in) */
const portrait: Readonly<Record<PaperName, Paper>> = {
  a4: { name: 'a4', width: 210, height: 297, margin: MARGIN },
  letter: { name: 'letter', width: 8.5 * INCH, height: 11 * INCH, margin: MARGIN },
};

export function paper(name: PaperName, orientation: Orientation = 'portrait'): Paper {
  const sheet = portrait[name];
  return orientation === 'portrait' ? sheet : { ...sheet, width: sheet.height, height: sheet.width };
}

/** What can be printed on. */
export const printableArea = (sheet: Paper): PaperRect => ({
  left: sheet.margin,
  bottom: sheet.margin,
  right: sheet.width - sheet.margin,
  top: sheet.height - sheet.margin,
});
