import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Block, contentArea, finishBook, flowPages } from './bookPages.ts';
import { paper, printableArea } from './paper.ts';
import { rectangle } from './shapes.ts';
import type { Sheet, TextItem } from './sheet.ts';
import { boxesOverlap, textBox } from './textMetrics.ts';

const sheet = paper('a4');
const book = (blocks: readonly Block[]): readonly Sheet[] =>
  finishBook(flowPages({ id: 'book-cutlist', title: 'Cut list', paper: sheet, blocks }), {
    bike: 'Invented bike',
    date: '2026-01-02',
    units: 'mm over in',
  });
const texts = (page: Sheet): readonly TextItem[] => page.items.filter((i) => i.type === 'text');
const table = (count: number): Block => ({
  kind: 'table',
  columns: [{ title: 'No.', align: 'right' }, { title: 'Part' }, { title: 'Length', align: 'right' }],
  rows: Array.from({ length: count }, (_, i) => [
    String(i + 1),
    `tube ${i} with a long name that says where it goes and what it carries`,
    '214.3 mm',
  ]),
});

describe('flow', () => {
  test('a long table goes on with its header; every row is there once, in order', () => {
    const pages = book([table(150)]);
    expect(pages.length).toBeGreaterThan(2);
    for (const page of pages) expect(texts(page).filter((t) => t.text === 'Length').length).toBe(1);
    const rows = pages
      .flatMap((p) => texts(p))
      .filter((t) => /^\d+$/.test(t.text))
      .map((t) => Number(t.text));
    expect(rows).toEqual(Array.from({ length: 150 }, (_, i) => i + 1));
    expect(pages.map((p) => p.id).slice(0, 2)).toEqual(['book-cutlist', 'book-cutlist-2']);
    expect(texts(pages[1]!).map((t) => t.text)).toContain(`2 of ${pages.length}`);
  });

  test('a heading is never last on a page', () => {
    for (let fill = 40; fill < 75; fill += 1) {
      const pages = book([
        { kind: 'list', marker: 'none', items: new Array(fill).fill('line') },
        { kind: 'heading', text: 'HEAD' },
        { kind: 'paragraph', text: 'after' },
      ]);
      const at = pages.findIndex((p) => texts(p).some((t) => t.text === 'HEAD'));
      expect(texts(pages[at]!).some((t) => t.text === 'after')).toBe(true);
    }
  });

  test('whatever the blocks: texts stay inside and apart', () => {
    const words = fc.lorem({ maxCount: 30 });
    const block: fc.Arbitrary<Block> = fc.oneof(
      fc.record({
        kind: fc.constant('heading' as const),
        text: words,
        level: fc.constantFrom(1 as const, 2 as const, 3 as const),
      }),
      fc.record({ kind: fc.constant('paragraph' as const), text: words }),
      fc.record({
        kind: fc.constant('list' as const),
        items: fc.array(words, { maxLength: 6 }),
        marker: fc.constantFrom('bullet' as const, 'number' as const, 'box' as const),
      }),
      fc.integer({ min: 1, max: 30 }).map(table),
      fc.constant({
        kind: 'drawing' as const,
        height: 60,
        draw: (area: Parameters<typeof rectangle>[0]) => [rectangle(area, 'thin')],
      }),
      fc.constant({ kind: 'pageBreak' as const }),
    );
    fc.assert(
      fc.property(fc.array(block, { maxLength: 12 }), (blocks) => {
        for (const page of book(blocks)) {
          const area = printableArea(sheet);
          const boxes = texts(page).map(textBox);
          boxes.forEach((box, i) => {
            for (const p of box) {
              expect(p.x).toBeGreaterThanOrEqual(area.left - 1e-6);
              expect(p.x).toBeLessThanOrEqual(area.right + 1e-6);
              expect(p.y).toBeGreaterThanOrEqual(area.bottom - 1e-6);
              expect(p.y).toBeLessThanOrEqual(area.top + 1e-6);
            }
            for (const other of boxes.slice(i + 1)) expect(boxesOverlap(box, other)).toBe(false);
          });
        }
      }),
      { numRuns: 30 },
    );
  });
});

test('the content area leaves room for the title block', () => {
  expect(contentArea(sheet).bottom).toBeGreaterThan(printableArea(sheet).bottom + 12);
});
