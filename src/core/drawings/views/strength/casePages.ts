import { largestMovement, type Strength } from '../../../strength/index.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import { heightOf, type PaperRect, text } from '../../shapes.ts';
import type { SheetItem } from '../../sheet.ts';
import { wrapText } from '../../textMetrics.ts';
import { type DrawingContext, fineInLine } from '../context.ts';
import { fitted } from '../sheetFit.ts';
import { caseBounds, caseDrawing, LONGEST_ARROW, movementScale } from './caseView.ts';
import { percentCell, recast } from './strengthWords.ts';

/** Cases that are drawn, in the order of the book; the others say nothing new as pictures and are in the table. */
const PICTURED: readonly string[] = [
  'drop',
  'bump-front',
  'bump-rear',
  'pothole',
  'braking-front',
  'braking-rear',
  'chain-pull',
  'cornering',
  'peg',
  'side-drop',
  'bar-pull',
  'stand',
];
const SIZE = 2.6;
const PITCH = 3.2;
const BASIS_LINES = 4;
const GAP = 5;

/** The table of load cases, then a picture of each that loads the frame, four to a page. */
export function casePages(context: DrawingContext, strength: Strength): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'portrait');
  const tables = flowPages({
    id: 'strength-cases',
    title: 'Load cases',
    paper: sheet,
    blocks: [{ kind: 'heading', text: 'Load cases', level: 1 }, ...caseTable(context, strength)],
  });
  const ids = PICTURED.filter((id) => strength.cases.some((one) => one.id === id));
  if (!strength.results || ids.length === 0) return tables;
  return [...tables, ...picturePages(context, strength, ids)];
}

function caseTable(context: DrawingContext, { cases, results }: Strength): readonly Block[] {
  return [
    {
      kind: 'paragraph',
      text: 'Each case is balanced by the accelerations of what the bike carries, so that nothing holds it from outside.',
      size: 2.8,
    },
    {
      kind: 'table',
      columns: [
        { title: 'Load case' },
        { title: 'What it is made of' },
        { title: 'From' },
        { title: 'Frame used', align: 'right' },
      ],
      rows: cases.map(({ name, basis, source }, c) => [
        { text: name, weight: 'bold' as const },
        recast(context, basis),
        source.where,
        results ? percentCell(Math.max(0, ...results.utilization[c]!)) : '–',
      ]),
      size: 2.6,
    },
  ];
}

function picturePages(
  context: DrawingContext,
  strength: Strength,
  ids: readonly string[],
): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'portrait');
  const area = contentArea(sheet);
  const high = (heightOf(area) - 26) / 2;
  const wide = (area.right - area.left - GAP) / 2;
  const picture = { left: 0, right: wide, bottom: -(high - captionHeight()), top: 0 };
  const bounds = caseBounds(context, strength);
  const room = bikeRoom(picture);
  const { scale } = fitted(bounds, room, true);
  const rows = Array.from({ length: Math.ceil(ids.length / 2) }, (_, k) => ids.slice(2 * k, 2 * k + 2));
  const blocks = rows.flatMap((row, k): Block[] => [
    ...(k % 2 === 0 ? [{ kind: 'pageBreak' as const }, ...pictureHead] : []),
    {
      kind: 'drawing',
      height: high,
      draw: (whole) =>
        row.flatMap((id, i) => {
          const left = whole.left + i * (wide + GAP);
          return caseCell(context, strength, id, { ...whole, left, right: left + wide });
        }),
    },
  ]);
  return flowPages({ id: 'strength-loads', title: 'Loads on the frame', paper: sheet, blocks }).map(
    (page) => ({
      ...page,
      scale: scale.label,
    }),
  );
}

const pictureHead: readonly Block[] = [
  {
    kind: 'paragraph',
    text: 'Faint: the frame as it stands. Black: as it gives, drawn larger; the thicker, the more of the limit is used there. The three most used parts carry their percentage. Arrows end where a force acts; a ring with a dot is a force toward the reader, one with a cross away. Weights and accelerations of the parts act as well and are not drawn.',
    size: 2.6,
  },
];

/** Of a picture, less the room for arrows and their labels. */
const bikeRoom = (picture: PaperRect): PaperRect => ({
  left: picture.left + 1.5,
  right: picture.right - 1.5,
  bottom: picture.bottom + LONGEST_ARROW + 2,
  top: picture.top - 8,
});

const captionHeight = (): number => (BASIS_LINES + 2) * PITCH + 3;

function caseCell(
  context: DrawingContext,
  strength: Strength,
  id: string,
  area: PaperRect,
): readonly SheetItem[] {
  const one = strength.cases.find((each) => each.id === id)!;
  const { bike } = context.scene;
  const times = movementScale(strength, id, bike.shafts.frontAxle!.x - bike.shafts.rearAxle!.x);
  const picture = { ...area, bottom: area.bottom + captionHeight() };
  const room = bikeRoom(picture);
  const view = fitted(caseBounds(context, strength), room, true);
  const moves = `Gives ${fineInLine(context, largestMovement(strength, id))} at most, drawn ${times} times that.`;
  const basis = wrapText(recast(context, one.basis), area.right - area.left, SIZE);
  const shown =
    basis.length > BASIS_LINES
      ? [...basis.slice(0, BASIS_LINES - 1), `${basis[BASIS_LINES - 1]!.replace(/\s+\S*$/, '')} …`]
      : basis;
  const top = picture.bottom - PITCH;
  const put = (content: string, row: number, bold = false): SheetItem =>
    text({ x: area.left, y: top - row * PITCH }, content, { size: SIZE, weight: bold ? 'bold' : 'regular' });
  return [
    ...caseDrawing(context, strength, id, { view, area: picture, times }),
    put(`${one.name[0]!.toUpperCase()}${one.name.slice(1)}`, 0, true),
    ...wrapText(moves, area.right - area.left, SIZE).map((content, k) => put(content, 1 + k)),
    ...shown.map((content, k) => put(content, 2 + k)),
  ];
}
