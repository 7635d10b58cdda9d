import type { Paper } from './paper.ts';
import { heightOf, widthOf } from './shapes.ts';
import { addedDiagonal, templateContent } from './templateContent.ts';
import { handWords, templateWindow } from './templateFrame.ts';
import type { TemplateJob, TemplatePiece } from './templateJob.ts';

interface Cell {
  readonly job: TemplateJob;
  /** Lower left corner of the part in its own plane, and its size [mm]. */
  readonly left: number;
  readonly bottom: number;
  readonly wide: number;
  readonly high: number;
}

interface PlacedCell {
  readonly cell: Cell;
  /** Where that corner goes on the shared page [mm]. */
  readonly x: number;
  readonly y: number;
}

/** Room round a part for its labels, and under it for its title [mm]. */
const BORDER = 6;
const TITLE = 8;
/** Height that the list under the drawings takes: heading, then each line [mm]. */
const LIST_HEAD = 18;
const LIST_LINE = 4;
const MM = 1000;

/**
 * Puts small jobs together on shared pages, so that ten tabs do not take ten sheets: each keeps its own title and
 * hand beside it and its own lines in the list. A job wider than the window or over half as high, or alone on its page, is
 * left as it is. Order: shared pages stand where the first of their jobs stood.
 */
export function groupTemplates(jobs: readonly TemplateJob[], paper: Paper): readonly TemplateJob[] {
  const window = templateWindow(paper);
  const [wide, high] = [widthOf(window) - 4, heightOf(window) - 4];
  const cells = jobs.flatMap((job) => cellOf(job) ?? []).filter((c) => c.wide <= wide && c.high <= high / 2);
  const pages = packPages(
    [...cells].sort((a, b) => b.high - a.high),
    wide,
    high,
  ).filter((page) => page.length > 1);
  const shared = pages.map((page, i) => ({
    members: page.map((p) => p.cell.job),
    job: sharedJob(page, i + 1),
  }));
  const done = new Set<TemplateJob>();
  return jobs.flatMap((job) => {
    const group = shared.find((s) => s.members.includes(job));
    if (group === undefined) return [job];
    if (done.has(group.job)) return [];
    done.add(group.job);
    return [group.job];
  });
}

function cellOf(job: TemplateJob): Cell | undefined {
  const box = templateContent(job, false)?.box;
  return (
    box && {
      job,
      left: box.minX,
      bottom: box.minY,
      wide: box.maxX - box.minX + 2 * BORDER,
      high: box.maxY - box.minY + 2 * BORDER + TITLE,
    }
  );
}

/** Rows from the top, tallest first; a part that fits no row of any page opens a new one. */
function packPages(cells: readonly Cell[], wide: number, high: number): readonly (readonly PlacedCell[])[] {
  const pages: {
    rows: { y: number; x: number; high: number }[];
    low: number;
    list: number;
    cells: PlacedCell[];
  }[] = [];
  for (const cell of cells) {
    const lines =
      (checksOf(cell.job).length + cell.job.notes.length + (cell.job.hand === 'mirror' ? 1 : 0)) * LIST_LINE;
    const put = pages.some((page) => {
      const row = page.rows.find((r) => r.x + cell.wide <= wide && r.high >= cell.high);
      const room = high - page.list - lines;
      if (row && -page.low <= room) {
        page.cells.push({ cell, x: row.x, y: row.y - cell.high });
        row.x += cell.wide;
      } else if (cell.high - page.low <= room) {
        page.rows.push({ y: page.low, x: cell.wide, high: cell.high });
        page.cells.push({ cell, x: 0, y: page.low - cell.high });
        page.low -= cell.high;
      } else return false;
      page.list += lines;
      return true;
    });
    if (put) continue;
    pages.push({
      rows: [{ y: 0, x: cell.wide, high: cell.high }],
      low: -cell.high,
      list: LIST_HEAD + lines,
      cells: [{ cell, x: 0, y: -cell.high }],
    });
  }
  return pages.map((page) => page.cells);
}

function sharedJob(page: readonly PlacedCell[], number: number): TemplateJob {
  const jobs = page.map((p) => p.cell.job);
  const mirrored = jobs.filter((job) => job.hand === 'mirror').map((job) => job.title);
  const each = [...new Set(jobs.flatMap((job) => job.notes))].map((n) => {
    const of = jobs.filter((job) => job.notes.includes(n)).map((job) => job.title);
    return of.length === jobs.length ? n : `${of.join(', ')}: ${n}`;
  });
  const pairs = `${mirrored.join(', ')}: mirror pair, cut one as drawn and one with the sheet turned face down.`;
  return {
    id: `template-small-parts-${number}`,
    title: `Small parts ${number}`,
    hand: 'none',
    pieces: page.flatMap(movedPieces),
    checks: page.flatMap((placed) =>
      checksOf(placed.cell.job).map((c) => ({
        name: `${placed.cell.job.title}: ${c.name}`,
        from: moveBy(placed)(c.from),
        to: moveBy(placed)(c.to),
      })),
    ),
    notes: mirrored.length === 0 ? each : [pairs, ...each],
  };
}

/** With the diagonal that the job would get on a page of its own. */
const checksOf = (job: TemplateJob): TemplateJob['checks'] => [...job.checks, ...addedDiagonal(job)];

type Move = (p: { readonly x: number; readonly y: number }) => { x: number; y: number };

function moveBy({ cell, x, y }: PlacedCell): Move {
  const [dx, dy] = [(x + BORDER - cell.left) / MM, (y + BORDER + TITLE - cell.bottom) / MM];
  return (p) => ({ x: p.x + dx, y: p.y + dy });
}

function movedPieces(placed: PlacedCell): readonly TemplatePiece[] {
  const { cell, x, y } = placed;
  const move = moveBy(placed);
  const hand = handWords[cell.job.hand];
  const title = {
    text: hand === '' ? cell.job.title : `${cell.job.title} · ${hand}`,
    size: 3.6,
    at: { x: (x + cell.wide / 2) / MM, y: (y + TITLE - 1) / MM },
  };
  return cell.job.pieces.map((piece, i) => ({
    name: piece.name,
    loops: piece.loops.map((l) => ({ ...l, loop: l.loop.map((v) => ({ ...move(v), bulge: v.bulge })) })),
    circles: piece.circles.map((c) => ({ ...c, center: move(c.center) })),
    lines: piece.lines.map((l) => ({ ...l, from: move(l.from), to: move(l.to) })),
    labels: [...piece.labels.map((l) => ({ ...l, at: move(l.at) })), ...(i === 0 ? [title] : [])],
    arrows: piece.arrows.map((a) => ({ ...a, at: move(a.at) })),
  }));
}
