import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type SheetFonts, sheetFont, type TemplateJob } from '../../src/core/drawings/index.ts';
import { roundedRectangleLoop, slotLoop } from '../../src/core/geometry/index.ts';

/** The font files of the sheets, from the package that carries them. */
export function sheetFonts(): SheetFonts {
  const folder = join(
    dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')),
    'ttf',
  );
  const read = (name: string): Uint8Array => new Uint8Array(readFileSync(join(folder, name)));
  return { regular: read(sheetFont.files.regular), bold: read(sheetFont.files.bold) };
}

/** Hole centers of the sample plate [m]: 162 × 120 mm. */
export const plateHoles = [
  { x: -0.081, y: -0.06 },
  { x: 0.081, y: -0.06 },
  { x: 0.081, y: 0.06 },
  { x: -0.081, y: 0.06 },
] as const;

/** An engine plate of 240 × 190 mm with holes 162 mm apart. */
export function enginePlateJob(width = 0.24, height = 0.19): TemplateJob {
  const outline = roundedRectangleLoop({ x: 0, y: 0 }, width, height, 0.012);
  if (!outline.ok) throw new Error('sample plate outline');
  return {
    id: 'template-plate-engine',
    title: 'Engine plate',
    hand: 'left',
    pieces: [
      {
        name: 'engine plate',
        loops: [
          { loop: outline.value, pen: 'cut' },
          { loop: slotLoop({ x: -0.05, y: 0.03 }, { x: -0.02, y: 0.03 }, 0.0085), pen: 'cut' },
        ],
        circles: [
          ...plateHoles.map((center) => ({
            center,
            diameter: 0.0085,
            pen: 'cut' as const,
            label: 'drill 8.5',
          })),
          { center: { x: 0.02, y: 0 }, diameter: 0.0345, pen: 'cut', label: 'Ø 34.5, then bore 35' },
        ],
        lines: [
          {
            from: { x: -width / 2, y: 0.08 },
            to: { x: width / 2, y: 0.08 },
            pen: 'bend',
            label: 'bend up 90°',
          },
        ],
        labels: [{ at: { x: -0.02, y: -0.045 }, text: '1/4 in plate' }],
        arrows: [{ at: { x: 0.06, y: -0.03 }, direction: 0, text: 'forward' }],
      },
    ],
    checks: [
      { name: 'hole to hole, lower row', from: plateHoles[0], to: plateHoles[1] },
      { name: 'hole to hole, front', from: plateHoles[1], to: plateHoles[2] },
    ],
    notes: ['Glue on and punch through the paper.'],
  };
}
