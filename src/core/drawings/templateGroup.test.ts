import { expect, test } from 'vitest';
import { distance2, rectangleLoop } from '../geometry/index.ts';
import { paper } from './paper.ts';
import { templateContent } from './templateContent.ts';
import { groupTemplates } from './templateGroup.ts';
import type { HandMark, TemplateJob } from './templateJob.ts';
import { templateSheets } from './templates.ts';
import { boxesOverlap, textBox } from './textMetrics.ts';

const tab = (i: number, width: number, height: number, hand: HandMark): TemplateJob => ({
  id: `template-tab-${i}`,
  title: `Tab ${i}`,
  hand,
  pieces: [
    {
      name: `tab ${i}`,
      loops: [{ loop: rectangleLoop({ x: i, y: -i }, width, height), pen: 'cut' }],
      circles: [-1, 1].map((s) => ({
        center: { x: i + (s * width) / 4, y: -i },
        diameter: 0.0085,
        pen: 'cut' as const,
        label: 'drill 8.5',
      })),
      lines: [],
      labels: [],
      arrows: [],
    },
  ],
  checks: [{ name: 'hole to hole', from: { x: i - width / 4, y: -i }, to: { x: i + width / 4, y: -i } }],
  notes: ['Deburr.'],
});

const hands: readonly HandMark[] = ['left', 'right', 'mirror', 'none'];
const tabs = Array.from({ length: 10 }, (_, i) =>
  tab(i, 0.04 + 0.006 * i, 0.03 + 0.003 * (i % 4), hands[i % 4]!),
);

test('ten tabs share two or three pages; each keeps its size, title, hand and checks', () => {
  const grouped = groupTemplates(tabs, paper('letter'));
  expect(grouped.length).toBeLessThanOrEqual(3);
  const labels = grouped.flatMap((j) => j.pieces.flatMap((p) => p.labels.map((l) => l.text)));
  const alone = grouped.filter((j) => tabs.includes(j));
  expect(alone.length).toBeLessThanOrEqual(1);
  expect(labels.filter((l) => l.startsWith('Tab ')).length + alone.length).toBe(10);
  expect(labels).toContain('Tab 1 · RIGHT');
  expect(labels).toContain('Tab 2 · MIRROR PAIR');
  const checks = grouped.flatMap((j) => j.checks);
  for (const job of tabs.filter((t) => !alone.includes(t))) {
    const check = checks.find((c) => c.name === `${job.title}: hole to hole`)!;
    expect(distance2(check.from, check.to)).toBeCloseTo(
      distance2(job.checks[0]!.from, job.checks[0]!.to),
      12,
    );
  }
  for (const job of grouped) {
    // Parts do not overlap: outlines' boxes keep apart.
    const boxes = job.pieces.map((p) => templateContent({ ...job, pieces: [p] }, false)!.box);
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1))
        expect(a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY).toBe(true);
    });
    const made = templateSheets(job, { paper: paper('letter'), bike: 'Invented bike', date: '2026-01-02' });
    expect(made.ok && made.value.length).toBe(1);
    if (!made.ok) continue;
    const texts = made.value[0]!.items.filter((i) => i.type === 'text').map((t) => textBox(t));
    texts.forEach((a, i) => {
      for (const b of texts.slice(i + 1)) expect(boxesOverlap(a, b)).toBe(false);
    });
  }
});

test('a large part and a part alone stay as they are, in order', () => {
  const large = tab(50, 0.24, 0.19, 'left');
  expect(groupTemplates([large, tabs[0]!], paper('a4'))).toEqual([large, tabs[0]]);
  const mixed = groupTemplates([tabs[0]!, large, tabs[1]!], paper('a4'));
  expect(mixed.map((j) => j.id)).toEqual(['template-small-parts-1', large.id]);
});
