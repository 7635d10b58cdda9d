import font from '../../../data/font-widths.json' with { type: 'json' };
import type { PaperPoint, TextItem } from './sheet.ts';

export type TextWeight = TextItem['weight'];

/** A rectangle of any turn as its four corners, counterclockwise [mm]. */
export type TextBox = readonly [PaperPoint, PaperPoint, PaperPoint, PaperPoint];

/** Name of the one font of all sheets and the files it comes in (package dejavu-fonts-ttf, folder ttf). */
export const sheetFont = { family: font.family, files: font.files } as const;

/** Heights over and under the base line as parts of the size, for capitals and figures with descenders. */
export const textRise = 0.76;
export const textDrop = 0.24;

const widths = { regular: widthMap(font.regular.runs), bold: widthMap(font.bold.runs) } as const;

/** Width of a text set in one line [mm]: the sum of the advance widths, with no kerning and no ligatures. */
export function textWidth(text: string, size: number, weight: TextWeight = 'regular'): number {
  return millimeters(advance(text, weight), size, weight);
}

/** The text as writers set it: composed letters, and each control character as a space. */
export function printable(text: string): string {
  if (PLAIN.test(text)) return text;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  return text.normalize('NFC').replace(/[\u0000-\u001f\u007f-\u009f]/g, ' ');
}

/** Characters of a text that the font has no width for; they print as an empty box. */
export function missingCharacters(text: string): readonly string[] {
  return [...new Set(printable(text))].filter((char) => !widths.regular.has(char.codePointAt(0) as number));
}

/** Splits a text into lines no wider than `width` [mm]; keeps its own line breaks, breaks an overlong word. */
export function wrapText(
  text: string,
  width: number,
  size: number,
  weight: TextWeight = 'regular',
): readonly string[] {
  const lines: string[] = [];
  const space = advance(' ', weight);
  for (const paragraph of text.split('\n')) {
    let line = '';
    let used = 0;
    for (const word of paragraph.split(' ').flatMap((w) => breakWord(w, width, size, weight))) {
      const own = advance(word, weight);
      const joins = line !== '' && millimeters(used + space + own, size, weight) <= width;
      if (line !== '' && !joins) lines.push(line);
      line = joins ? `${line} ${word}` : word;
      used = joins ? used + space + own : own;
    }
    lines.push(line);
  }
  return lines;
}

/** The box that a text item covers, from its descenders to its capitals. */
export function textBox(item: TextItem): TextBox {
  const width = textWidth(item.text, item.size, item.weight);
  const left = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? -width / 2 : -width;
  const bottom = -textDrop * item.size;
  const top = textRise * item.size;
  const turn = (item.turn * Math.PI) / 180;
  const place = (x: number, y: number): PaperPoint => ({
    x: item.at.x + x * Math.cos(turn) - y * Math.sin(turn),
    y: item.at.y + x * Math.sin(turn) + y * Math.cos(turn),
  });
  return [place(left, bottom), place(left + width, bottom), place(left + width, top), place(left, top)];
}

/** Whether two boxes of any turn share area (separating axis test; touching is no overlap). */
export function boxesOverlap(a: TextBox, b: TextBox): boolean {
  return ![a, b].some((box) =>
    [0, 1].some((side) => {
      const p = box[side] as PaperPoint;
      const q = box[(side + 1) % 4] as PaperPoint;
      const along = (r: PaperPoint): number => r.x * (q.x - p.x) + r.y * (q.y - p.y);
      const [as, bs] = [a.map(along), b.map(along)];
      const slack = 1e-9 * Math.hypot(q.x - p.x, q.y - p.y);
      return Math.max(...as) <= Math.min(...bs) + slack || Math.max(...bs) <= Math.min(...as) + slack;
    }),
  );
}

/** Letters, figures and signs that are composed already, whatever stands beside them: most texts are nothing else. */
const PLAIN = /^[ -~\u00a0-\u02ff\u0391-\u03c9\u2010-\u2027\u2030-\u205e\u2190-\u2328]*$/;

/** Sum of the advance widths [font units, whole numbers, so that sums of parts are exact]. */
function advance(text: string, weight: TextWeight): number {
  const { missing } = font[weight];
  let sum = 0;
  for (const char of printable(text)) sum += widths[weight].get(char.codePointAt(0) as number) ?? missing;
  return sum;
}

const millimeters = (units: number, size: number, weight: TextWeight): number =>
  (units / font[weight].unitsPerEm) * size;

function breakWord(word: string, width: number, size: number, weight: TextWeight): string[] {
  if (textWidth(word, size, weight) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const char of word) {
    if (piece !== '' && textWidth(piece + char, size, weight) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += char;
  }
  return [...pieces, piece];
}

function widthMap(runs: readonly (readonly number[])[]): ReadonlyMap<number, number> {
  const map = new Map<number, number>();
  for (const [first = 0, ...run] of runs) for (const [i, width] of run.entries()) map.set(first + i, width);
  return map;
}
