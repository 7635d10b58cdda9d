import { describe, expect, test } from 'vitest';
import { enginePlateJob } from '../../../tests/support/samplePlate.ts';
import { circleLoop, rectangleLoop } from '../geometry/index.ts';
import { type PaperName, paper, printableArea } from './paper.ts';
import { penStyles } from './pens.ts';
import type { PaperPoint, PathItem, Sheet, SheetItem, TextItem } from './sheet.ts';
import { stretchPoint } from './stretch.ts';
import { templateContent } from './templateContent.ts';
import { templateWindow } from './templateFrame.ts';
import type { TemplateJob } from './templateJob.ts';
import { templateSheets } from './templates.ts';
import { boxesOverlap, textBox } from './textMetrics.ts';
import { registerMarks, tileGrid } from './tileGrid.ts';

const base = { bike: 'Invented bike', date: '2026-01-02' };

function made(
  job: TemplateJob,
  name: PaperName = 'letter',
  printer?: { across: number; down: number },
): readonly Sheet[] {
  const result = templateSheets(job, { ...base, paper: paper(name), ...(printer ? { printer } : {}) });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const blank = (width: number, height: number, extra: Partial<TemplateJob> = {}): TemplateJob => ({
  id: 'template-blank',
  title: 'Blank',
  hand: 'none',
  pieces: [
    {
      name: 'blank',
      loops: [{ loop: rectangleLoop({ x: 0.3, y: -0.1 }, width, height), pen: 'cut' }],
      circles: [],
      lines: [],
      labels: [],
      arrows: [],
    },
  ],
  checks: [],
  notes: [],
  ...extra,
});

const tiles = (sheets: readonly Sheet[]): readonly Sheet[] =>
  sheets.filter((s) => !s.title.endsWith('check card'));
const texts = (sheet: Sheet): readonly TextItem[] => sheet.items.filter((i) => i.type === 'text');
const named = (sheet: Sheet, part: string): PathItem => {
  const item = sheet.items.find((i) => i.part === part);
  if (item?.type !== 'path') throw new Error(`${part} is not on ${sheet.id}`);
  return item;
};
const length = (path: PathItem): number =>
  Math.hypot(path.vertices[1]!.x - path.vertices[0]!.x, path.vertices[1]!.y - path.vertices[0]!.y);
const middle = (path: PathItem): PaperPoint => ({
  x: (path.vertices[0]!.x + path.vertices[1]!.x) / 2,
  y: (path.vertices[0]!.y + path.vertices[1]!.y) / 2,
});

describe('pages', () => {
  const all = [
    ...made(enginePlateJob()),
    ...made(enginePlateJob(), 'a4'),
    ...made(enginePlateJob(0.5, 0.6)),
    ...made(blank(0.06, 0.03, { hand: 'mirror' })),
  ];
  const compensated = made(enginePlateJob(0.5, 0.6), 'a4', { across: 99.1, down: 100.6 });

  test('every page carries 100 mm and 4 in in both axes', () => {
    for (const sheet of all) {
      for (const axis of ['across', 'down']) {
        expect(length(named(sheet, `bar:${axis}:100mm`))).toBeCloseTo(100, 9);
        expect(length(named(sheet, `bar:${axis}:4in`))).toBeCloseTo(101.6, 9);
      }
    }
  });

  test('nothing is drawn outside what a printer can print', () => {
    for (const sheet of [...all, ...compensated]) {
      const area = printableArea(paper(sheet.height === 297 ? 'a4' : 'letter'));
      for (const item of sheet.items) {
        const edge = item.type === 'text' || item.pen === 'none' ? 0 : penStyles[item.pen].width / 2;
        for (const p of cornersOf(item)) {
          const where = `${sheet.id}: ${item.type === 'text' ? item.text : (item.part ?? item.type)}`;
          expect(p.x - edge, where).toBeGreaterThanOrEqual(area.left - 0.5);
          expect(p.x + edge, where).toBeLessThanOrEqual(area.right + 0.5);
          expect(p.y - edge, where).toBeGreaterThanOrEqual(area.bottom - 0.5);
          expect(p.y + edge, where).toBeLessThanOrEqual(area.top + 0.5);
        }
      }
    }
  });

  test('no two texts of a page overlap', () => {
    for (const sheet of [...all, ...compensated]) {
      // The names on the small map of sheets lie over its outlines, not over texts.
      const list = texts(sheet);
      list.forEach((a, i) => {
        for (const b of list.slice(i + 1)) {
          expect(boxesOverlap(textBox(a), textBox(b)), `${sheet.id}: "${a.text}" over "${b.text}"`).toBe(
            false,
          );
        }
      });
    }
  });
});

describe('correction', () => {
  test('at 0.996 across the bar is drawn 100 / 0.996 long', () => {
    const [sheet] = made(enginePlateJob(), 'letter', { across: 99.6, down: 100 });
    expect(length(named(sheet!, 'bar:across:100mm'))).toBeCloseTo(100 / 0.996, 9);
    expect(length(named(sheet!, 'bar:down:100mm'))).toBeCloseTo(100, 9);
  });

  test('a hole becomes the ellipse that prints round', () => {
    const job = blank(0.1, 0.1, {
      pieces: [
        {
          name: 'hole',
          loops: [{ loop: circleLoop({ x: 0, y: 0 }, 0.04), pen: 'cut' }],
          circles: [],
          lines: [],
          labels: [],
          arrows: [],
        },
      ],
    });
    const [sheet] = made(job, 'a4', { across: 99.6, down: 100.4 });
    const drawn = sheet!.items.filter((i): i is PathItem => i.type === 'path' && i.pen === 'cut');
    const points = drawn.flatMap((p) => p.vertices);
    const printed = points.map((p) => ({ x: p.x * 0.996, y: p.y * 1.004 }));
    const center = {
      x: (Math.min(...printed.map((p) => p.x)) + Math.max(...printed.map((p) => p.x))) / 2,
      y: (Math.min(...printed.map((p) => p.y)) + Math.max(...printed.map((p) => p.y))) / 2,
    };
    // Chords lie within 0.001 mm of the arc, and every vertex on it.
    for (const p of printed) expect(Math.hypot(p.x - center.x, p.y - center.y)).toBeCloseTo(40, 5);
    expect(points.length).toBeGreaterThan(100);
  });

  test('a passing printer is left alone; a fitted page is refused with the reason', () => {
    expect(
      length(named(made(enginePlateJob(), 'a4', { across: 99.8, down: 100.1 })[0]!, 'bar:across:100mm')),
    ).toBe(100);
    const refused = templateSheets(enginePlateJob(), {
      ...base,
      paper: paper('a4'),
      printer: { across: 96.8, down: 96.7 },
    });
    expect(refused.ok).toBe(false);
    expect(refused.ok ? '' : JSON.stringify(refused.issues)).toContain('fit to page');
  });
});

describe('joined sheets', () => {
  const sheets = tiles(made(enginePlateJob(0.5, 0.6), 'a4', { across: 99.6, down: 100.4 }));

  test('a register mark and what lies beside it have the same place on both neighbors', () => {
    const content = templateContent(enginePlateJob(0.5, 0.6), false)!;
    const correction = { across: 1 / 0.996, down: 1 / 1.004 };
    const grid = tileGrid(content, templateWindow(paper('a4')), correction);
    const marks = registerMarks(grid, () => 10);
    // 12 seams or more between 3 × 3 sheets, two marks each.
    expect(marks.length).toBe(2 * (grid.rows * (grid.columns - 1) + grid.columns * (grid.rows - 1)));
    for (const mark of marks) {
      const point = { x: mark.at.x + 31, y: mark.at.y - 17 };
      const [a, b] = mark.tiles.map((t) => {
        const [p, m] = [stretchPoint(t.stretch, point), stretchPoint(t.stretch, mark.at)];
        // As the printer prints it, seen from the mark.
        return { x: (p.x - m.x) * 0.996, y: (p.y - m.y) * 1.004 };
      });
      expect(a!.x).toBeCloseTo(31, 9);
      expect(a!.y).toBeCloseTo(-17, 9);
      expect(b!.x).toBeCloseTo(a!.x, 9);
      expect(b!.y).toBeCloseTo(a!.y, 9);
    }
  });

  test('on the sheets themselves: crosses come in pairs, and the outline meets itself over each seam', () => {
    const crosses = sheets.flatMap((s) =>
      s.items.flatMap((i) =>
        i.part?.startsWith('register:') ? [{ id: i.part, sheet: s, item: i as PathItem }] : [],
      ),
    );
    const ids = [...new Set(crosses.map((c) => c.id))];
    expect(ids.length).toBeGreaterThan(10);
    let met = 0;
    for (const id of ids) {
      const pair = crosses.filter((c) => c.id === id);
      expect(pair.length).toBe(2);
      const [a, b] = pair.map(({ sheet, item }) => outlineAcross(sheet, middle(item), /(\d)-.\1/.test(id)));
      met += a!.length;
      expect(b!.length).toBe(a!.length);
      a!.forEach((place, i) => {
        expect(b![i]).toBeCloseTo(place, 9);
      });
    }
    // The outline crosses most seams of a plate that reaches to the outer sheets.
    expect(met).toBeGreaterThan(4);
  });

  test('neighbors name each other at their crosses, and seam checks cross every seam', () => {
    const a1 = sheets.find((s) => s.title.endsWith('A1'))!;
    expect(texts(a1).map((t) => t.text)).toEqual(expect.arrayContaining(['A1', 'on B1', 'on A2']));
    for (const sheet of sheets)
      expect(
        sheet.items.some((i) => i.part?.startsWith('seam:')),
        sheet.id,
      ).toBe(true);
  });

  test('seam checks and their lengths are listed', () => {
    const words = made(enginePlateJob(0.5, 0.6), 'a4').flatMap((s) => texts(s).map((t) => t.text));
    expect(words.filter((w) => /^across the seams? [A-Z]\d, [A-Z]\d/.test(w)).length).toBeGreaterThanOrEqual(
      2,
    );
  });
});

describe('number of sheets', () => {
  const window = templateWindow(paper('a4'));
  const [wide, high] = [window.right - window.left, window.top - window.bottom];

  test.each([
    ['fills one', wide - 0.5, high - 0.5, 1],
    ['one, turned', high - 0.5, wide - 0.5, 1],
    ['a little too wide', wide - 0.4, high - 10, 2],
    // 2 · W − 10 covers two sheets.
    ['two side by side', 2 * wide - 10 - 0.5, high - 0.5, 2],
    ['long and low: turned it needs fewer', 3 * high - 20 - 0.5, wide - 0.5, 3],
  ])('%s', (_, w, h, count) => {
    expect(tiles(made(blank(w / 1000, h / 1000), 'a4')).length).toBe(count);
  });

  test('a frame of a large job leaves its empty middle out', () => {
    const count = tiles(made(blank(0.7, 0.9), 'a4')).length;
    expect(count).toBeLessThan(4 * 4);
  });

  test('too large and nothing at all are issues', () => {
    const large = templateSheets(blank(3, 3), { ...base, paper: paper('a4') });
    const none = templateSheets({ ...blank(1, 1), pieces: [] }, { ...base, paper: paper('a4') });
    expect(large.ok ? '' : large.issues[0].code).toBe('too-large');
    expect(none.ok ? '' : none.issues[0].code).toBe('conflict');
  });
});

test('small parts carry their check list, a large hand mark and one page', () => {
  const sheets = made(blank(0.06, 0.03, { hand: 'mirror' }));
  expect(sheets.length).toBe(1);
  expect(sheets[0]!.id).toBe('template-blank');
  const hand = texts(sheets[0]!).find((t) => t.text === 'MIRROR PAIR');
  expect(hand!.size).toBeGreaterThan(6);
  // A diagonal is listed though none was asked for: 60 × 30.
  expect(texts(sheets[0]!).map((t) => t.text)).toContain(`${Math.hypot(60, 30).toFixed(1)} mm`);
});

/** Where straight outline lines cross an upright (or level) seam, measured along it from a cross, in order. */
function outlineAcross(sheet: Sheet, cross: PaperPoint, upright: boolean): readonly number[] {
  const reaches = (p: number, q: number, at: number): boolean =>
    Math.min(p, q) < at - 4 && Math.max(p, q) > at + 4;
  return sheet.items
    .filter((i): i is PathItem => i.type === 'path' && i.pen === 'cut')
    .flatMap((i) => {
      const ends = i.closed ? [...i.vertices, i.vertices[0]!] : i.vertices;
      return ends.slice(1).flatMap((q, k) => {
        const p = ends[k]!;
        if (upright) return Math.abs(p.y - q.y) < 1e-9 && reaches(p.x, q.x, cross.x) ? [p.y - cross.y] : [];
        return Math.abs(p.x - q.x) < 1e-9 && reaches(p.y, q.y, cross.y) ? [p.x - cross.x] : [];
      });
    })
    .sort((m, n) => m - n);
}

function cornersOf(item: SheetItem): readonly PaperPoint[] {
  if (item.type === 'text') return textBox(item);
  if (item.type === 'circle') {
    const { center, radius } = item;
    return [
      { x: center.x - radius, y: center.y - radius },
      { x: center.x + radius, y: center.y + radius },
    ];
  }
  return item.vertices;
}
