import type { Block } from './bookPages.ts';
import { lengthInLine } from './dimensionText.ts';
import type { SeamCheck } from './seamCheck.ts';
import { moved, type PaperRect, widthOf } from './shapes.ts';
import type { SheetItem } from './sheet.ts';
import type { Strip } from './table.ts';
import type { TemplateContent } from './templateContent.ts';
import { tileMap } from './templateFrame.ts';
import type { TemplateJob } from './templateJob.ts';
import type { TileGrid } from './tileGrid.ts';

/** The list of check lengths and the notes of a job. */
export function cardBlocks(
  job: TemplateJob,
  content: TemplateContent,
  seams: readonly SeamCheck[],
): readonly Block[] {
  const listed = [
    ...content.checks.map((c) => ({ ...c, where: c.name })),
    ...seams.map((s) => ({
      mark: s.mark,
      where: `across the seam${s.tiles.length > 2 ? 's' : ''} ${s.tiles.map((t) => t.name).join(', ')}`,
      length: s.length / 1000,
    })),
  ];
  const rows = listed.map((c) => {
    const [metric, inch] = [
      lengthInLine(c.length, { system: 'mm' }),
      lengthInLine(c.length, { system: 'in' }),
    ];
    return ['☐', c.mark, c.where, metric, inch];
  });
  return [
    { kind: 'heading', text: `Check lengths, ${job.title}`, level: 3 },
    {
      kind: 'table',
      size: 2.5,
      columns: [
        { title: '', width: 6 },
        { title: 'Mark' },
        { title: 'Measure' },
        { title: 'mm', align: 'right' },
        { title: 'in (nearest 1/64)', align: 'right' },
      ],
      rows,
    },
    { kind: 'list', marker: 'bullet', items: cardNotes(job, content, seams), size: 2.6 },
  ];
}

/** The list on pages of its own, under a picture of how the sheets lie. */
export function cardPages(
  strips: readonly Strip[],
  window: PaperRect,
  map: { grid: TileGrid; content: TemplateContent },
): readonly (readonly SheetItem[])[] {
  const mapHeight = map.grid.tiles.length > 1 ? 80 : 0;
  const pages: SheetItem[][] = [[]];
  if (mapHeight > 0) {
    const rect = {
      ...window,
      bottom: window.top - mapHeight + 6,
      right: window.left + widthOf(window) * 0.75,
      left: window.left + widthOf(window) * 0.25,
    };
    pages[0]?.push(...tileMap(map, rect));
  }
  let y = window.top - mapHeight;
  for (const strip of strips) {
    if (y - strip.height < window.bottom && y < window.top) {
      pages.push([]);
      y = window.top;
    }
    pages.at(-1)?.push(...strip.items.map((item) => moved(item, window.left, y)));
    y -= strip.height;
  }
  return pages;
}

/** Strips from the top of a rectangle down. */
export function stack(strips: readonly Strip[], rect: PaperRect): readonly SheetItem[] {
  let y = rect.top;
  return strips.flatMap((strip) => {
    const top = y;
    y -= strip.height;
    return strip.items.map((item) => moved(item, rect.left, top));
  });
}

/** What to know before cutting: hand, joining, how it lies, then the job's own notes. */
function cardNotes(
  job: TemplateJob,
  content: TemplateContent,
  seams: readonly SeamCheck[],
): readonly string[] {
  const hand = {
    left: 'LEFT hand part as drawn.',
    right: 'RIGHT hand part as drawn.',
    mirror: 'MIRROR PAIR: cut one as drawn and one with the sheet turned face down.',
    none: '',
  }[job.hand];
  const join =
    seams.length === 0
      ? ''
      : 'Trim each sheet along its dashed line, lay it on its neighbor so that the crosses fall on each other, tape, then measure the S lines.';
  const turned = content.turned ? 'The part is turned a quarter on the paper to save sheets.' : '';
  return [hand, join, turned, ...job.notes].filter((n) => n !== '');
}
