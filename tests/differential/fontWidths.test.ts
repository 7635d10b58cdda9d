import fontkit from '@cantoo/fontkit';
import { expect, test } from 'vitest';
import { textWidth } from '../../src/core/drawings/index.ts';
import { sheetFonts } from '../support/samplePlate.ts';

/** The widths that layout uses against the font files themselves, read by a font library. */
const SAMPLES = [
  '214.3',
  '8\u2009⁷⁄₁₆ in (17\u2009⁶³⁄₆₄)',
  'Ø 34.5 – R6, 24°, 4 × M8, ±0.25 µm',
  'Outboard bearing support “left”, fit-up & tack',
  'Größe, længde, délka, Öse, ширина, μήκος',
  '☐ ✓ → ▲',
];

test.each(['regular', 'bold'] as const)('%s: width is the sum of the advances in the font', (weight) => {
  const font = fontkit.create(Buffer.from(sheetFonts()[weight]));
  if (font === null || !('unitsPerEm' in font)) throw new Error('not one font');
  for (const sample of SAMPLES) {
    const units = [...sample].reduce(
      (sum, c) => sum + (font.glyphForCodePoint(c.codePointAt(0) ?? 0)?.advanceWidth ?? Number.NaN),
      0,
    );
    // The same integers are added; only the last product may round.
    expect(textWidth(sample, 7, weight)).toBeCloseTo((units / font.unitsPerEm) * 7, 9);
  }
});
