/**
 * Writes data/font-widths.json: the advance widths of the one font of all sheets, read once from the font
 * files, so that the core can lay out text with no font, screen or file at hand.
 * Run: npx tsx scripts/fontWidths.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import fontkit from '@cantoo/fontkit';

/** Latin, Greek, Cyrillic, punctuation, super- and subscripts, fractions, arrows, operators, shapes, marks. */
const RANGES: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  [0x2b0, 0x2ff],
  [0x370, 0x4ff],
  [0x1e00, 0x1eff],
  [0x2000, 0x206f],
  [0x2070, 0x209f],
  [0x20a0, 0x20bf],
  [0x2100, 0x218f],
  [0x2190, 0x22ff],
  [0x2300, 0x23ff],
  [0x25a0, 0x26ff],
  [0x2700, 0x27bf],
];

const FILES = { regular: 'DejaVuSansCondensed.ttf', bold: 'DejaVuSansCondensed-Bold.ttf' } as const;

/** Runs of neighboring code points: [first, width, width, …]. */
function runsOf(file: string): { unitsPerEm: number; missing: number; runs: number[][] } {
  const font = fontkit.create(readFileSync(`node_modules/dejavu-fonts-ttf/ttf/${file}`));
  if (!('unitsPerEm' in font)) throw new Error(`${file} is a collection`);
  const runs: number[][] = [];
  let last = Number.NaN;
  for (const [from, to] of RANGES) {
    for (let code = from; code <= to; code += 1) {
      if (!font.hasGlyphForCodePoint(code)) continue;
      if (code !== last + 1) runs.push([code]);
      runs.at(-1)?.push(font.glyphForCodePoint(code)?.advanceWidth ?? 0);
      last = code;
    }
  }
  return { unitsPerEm: font.unitsPerEm, missing: font.getGlyph(0)?.advanceWidth ?? 0, runs };
}

const table = {
  family: 'DejaVu Sans Condensed',
  source: { key: 'dejavu-fonts', where: 'hmtx table of release 2.37' },
  files: FILES,
  regular: runsOf(FILES.regular),
  bold: runsOf(FILES.bold),
};
const json = JSON.stringify(table, null, 1).replace(
  /\[\s+(\d[\d,\s]*)\]/g,
  (_, list: string) => `[${list.replace(/\s+/g, '')}]`,
);
writeFileSync('data/font-widths.json', `${json}\n`);
