import { beforeAll, describe, expect, test } from 'vitest';
import {
  type PathItem,
  paper,
  pdfOfSheets,
  type Sheet,
  type TextItem,
  templateSheets,
  textBox,
} from '../../src/core/drawings/index.ts';
import { darkMiddle, grayAt, type Raster, rasterPages } from '../support/raster.ts';
import { enginePlateJob, plateHoles, sheetFonts } from '../support/samplePlate.ts';

/** Printed pages measured by drawing them with poppler at 300 dpi: a print at actual size is true to 0.1 mm. */
const DPI = 300;
const MM = DPI / 25.4;
const meta = { title: 'Templates', date: '2026-01-02T00:00:00Z' };
const options = { paper: paper('letter'), bike: 'Invented bike', date: '2026-01-02' };

function sheetsOf(job = enginePlateJob(), printer?: { across: number; down: number }): readonly Sheet[] {
  const made = templateSheets(job, printer ? { ...options, printer } : options);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return made.value;
}

const bar = (sheet: Sheet, part: string): PathItem => {
  const found = sheet.items.find((i) => i.part === part);
  if (found?.type !== 'path') throw new Error(`${part} is not drawn`);
  return found;
};

/** Distance of a bar's end marks on the picture [mm], scanned where the marks stand out beyond the bar. */
function measuredBar(raster: Raster, sheet: Sheet, axis: 'across' | 'down', kind: '100mm' | '4in'): number {
  const [a, b] = bar(sheet, `bar:${axis}:${kind}`).vertices as [
    PathItem['vertices'][0],
    PathItem['vertices'][0],
  ];
  if (axis === 'across') {
    const row = (sheet.height - (a.y - 0.35)) * MM;
    return (
      (darkMiddle(raster, 'x', row, (b.x - 1) * MM, (b.x + 1) * MM) -
        darkMiddle(raster, 'x', row, (a.x - 1) * MM, (a.x + 1) * MM)) /
      MM
    );
  }
  const column = (a.x + 0.35) * MM;
  const at = (y: number): number =>
    darkMiddle(raster, 'y', column, (sheet.height - y - 1) * MM, (sheet.height - y + 1) * MM);
  return (at(a.y) - at(b.y)) / MM;
}

describe('templates at 300 dpi', () => {
  const sheets = sheetsOf();
  let pages: readonly Raster[] = [];
  beforeAll(async () => {
    pages = rasterPages(await pdfOfSheets(sheets, meta, sheetFonts()), DPI);
  });

  test('the page is US letter: 2550 × 3300 dots', () => {
    expect(pages.map((p) => [p.width, p.height])).toEqual(sheets.map(() => [2550, 3300]));
  });

  test.each([
    ['across', '100mm', 100],
    ['down', '100mm', 100],
    ['across', '4in', 101.6],
    ['down', '4in', 101.6],
  ] as const)('%s bar %s on every page', (axis, kind, length) => {
    sheets.forEach((sheet, i) => {
      expect(Math.abs(measuredBar(pages[i]!, sheet, axis, kind) - length)).toBeLessThan(0.1);
    });
  });

  test('three hole pitches of a plate on one page: 102, 70 and their diagonal', async () => {
    const small = enginePlateJob(0.15, 0.11);
    const centers = [
      { x: -0.051, y: -0.035 },
      { x: 0.051, y: -0.035 },
      { x: 0.051, y: 0.035 },
    ];
    const piece = {
      ...small.pieces[0]!,
      circles: centers.map((center) => ({ center, diameter: 0.0085, pen: 'cut' as const })),
      lines: [],
      labels: [],
      arrows: [],
    };
    const outline = { ...piece, loops: piece.loops.slice(0, 1) };
    const [sheet] = sheetsOf({ ...small, pieces: [outline], checks: [] });
    const [picture] = rasterPages(await pdfOfSheets([sheet!], meta, sheetFonts()), DPI);
    const circles = sheet!.items.filter((i) => i.type === 'circle' && Math.abs(i.radius - 4.25) < 1e-9);
    expect(circles.length).toBe(3);
    // Each center from the picture: middle between the left and right, lower and upper edge of the hole.
    const seen = circles.map((c) => {
      if (c.type !== 'circle') throw new Error('not a circle');
      const edge = (axis: 'x' | 'y', sign: number): number => {
        const off = 1.2;
        const chord = Math.sqrt(4.25 ** 2 - off ** 2);
        const [fixed, middle] =
          axis === 'x'
            ? [sheet!.height - c.center.y + off, c.center.x]
            : [c.center.x + off, sheet!.height - c.center.y];
        return (
          darkMiddle(
            picture!,
            axis,
            fixed * MM,
            (middle + sign * chord - 0.6) * MM,
            (middle + sign * chord + 0.6) * MM,
          ) / MM
        );
      };
      return { x: (edge('x', -1) + edge('x', 1)) / 2, y: (edge('y', -1) + edge('y', 1)) / 2 };
    });
    const pitch = (i: number, j: number): number =>
      Math.hypot(seen[i]!.x - seen[j]!.x, seen[i]!.y - seen[j]!.y);
    expect(Math.abs(pitch(0, 1) - 102)).toBeLessThan(0.1);
    expect(Math.abs(pitch(1, 2) - 70)).toBeLessThan(0.1);
    expect(Math.abs(pitch(0, 2) - Math.hypot(102, 70))).toBeLessThan(0.1);
  });

  test('text stands where the layout put it: its box has ink, the strip round it has none', () => {
    const tile = sheets.length - 1;
    const title = sheets[tile]!.items.find(
      (i): i is TextItem => i.type === 'text' && i.text === 'Engine plate',
    )!;
    const [low, , high] = textBox(title);
    const picture = pages[tile]!;
    const inkIn = (left: number, right: number): number => {
      let ink = 0;
      for (let x = Math.ceil(left * MM); x < right * MM; x += 1)
        for (
          let y = Math.ceil((sheets[tile]!.height - high.y) * MM);
          y < (sheets[tile]!.height - low.y) * MM;
          y += 1
        )
          if (grayAt(picture, x, y) < 128) ink += 1;
      return ink;
    };
    expect(inkIn(high.x - 2, high.x)).toBeGreaterThan(0);
    expect(inkIn(high.x, high.x + 3)).toBe(0);
  });

  test('a print that comes out 0.996 across is drawn longer, so that its bar measures 100', async () => {
    const corrected = sheetsOf(enginePlateJob(), { across: 99.6, down: 100.1 });
    const [picture] = rasterPages(await pdfOfSheets(corrected.slice(0, 1), meta, sheetFonts()), DPI);
    expect(Math.abs(measuredBar(picture!, corrected[0]!, 'across', '100mm') * 0.996 - 100)).toBeLessThan(0.1);
    // Pass in the other axis is corrected, too: one sheet, one printer.
    expect(Math.abs(measuredBar(picture!, corrected[0]!, 'down', '100mm') * 1.001 - 100)).toBeLessThan(0.1);
  });
});

test('the story plate needs two sheets on letter paper and says so on a card', () => {
  const sheets = sheetsOf();
  expect(sheets.map((s) => s.title)).toEqual([
    'Engine plate, check card',
    'Engine plate, tile A1',
    'Engine plate, tile B1',
  ]);
  const words = sheets[0]!.items.filter((i) => i.type === 'text').map((i) => i.text);
  expect(words).toContain('162.0 mm');
  expect(words).toContain('6\u2009⅜ in');
  // Diagonal of 162 × 120: 201.6.
  expect(words).toContain(`${Math.hypot(162, 120).toFixed(1)} mm`);
  expect(words).toContain('LEFT');
  expect(plateHoles.length).toBe(4);
});

test('same sheets, same bytes; the page is as large as its sheet; scaling by the viewer is off', async () => {
  const sheets = sheetsOf();
  const first = await pdfOfSheets(sheets, meta, sheetFonts());
  const second = await pdfOfSheets(sheetsOf(), meta, sheetFonts());
  expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  const { PDFDocument, PDFName } = await import('@cantoo/pdf-lib');
  const doc = await PDFDocument.load(first);
  expect(doc.getPages().map((p) => [p.getWidth(), p.getHeight()])).toEqual(sheets.map(() => [612, 792]));
  expect(String(doc.catalog.getViewerPreferences()?.dict.get(PDFName.of('PrintScaling')))).toBe('/None');
  expect(doc.getTitle()).toBe('Templates');
  expect(doc.getCreationDate()?.toISOString()).toBe('2026-01-02T00:00:00.000Z');
});

test('a date that is none and a point that is none are refused', async () => {
  await expect(pdfOfSheets([], { title: 't', date: 'soon' }, sheetFonts())).rejects.toThrow('not a date');
  const sheet: Sheet = {
    id: 'x',
    title: 'x',
    width: 100,
    height: 100,
    items: [{ type: 'circle', center: { x: Number.NaN, y: 0 }, radius: 1, pen: 'cut', fill: 'none' }],
  };
  await expect(pdfOfSheets([sheet], meta, sheetFonts())).rejects.toThrow('cannot draw');
});
