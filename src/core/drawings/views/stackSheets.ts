import type { PlacedItem, PlacedStack } from '../../bike/index.ts';
import type { Bounds } from '../../geometry/index.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../bookPages.ts';
import { paper } from '../paper.ts';
import { line, type PaperRect, text, widthOf } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import type { TableCell } from '../table.ts';
import { fitView, scaleOf, type View, viewLength } from '../view.ts';
import {
  asDrawing,
  type DrawingContext,
  inLine,
  lengthCells,
  lengthColumns,
  singleCell,
  singleColumn,
  words,
} from './context.ts';
import { fitted } from './sheetFit.ts';
import { axleBody, barOf, boundsOf, itemBody, type StackDrawing, xOf } from './stackBody.ts';
import {
  BALLOON_ROOM,
  balloons,
  DIMENSION_ROW,
  dimensionRows,
  madeDimensions,
  planeLabels,
} from './stackMarks.ts';

const PLANE_ROOM = 13;
/** Tallest and lowest that the turned parts are drawn; what is larger is broken off [mm]. */
const MOST_HEIGHT = 58;
const LEAST_HEIGHT = 14;
/** Ends of the drawing, with the names of the two sides [mm]. */
const END_ROOM = 18;

/** One drawing for each axle and shaft: what sits on it from the rider's left to right, and a table of it. */
export const stackSheets = (context: DrawingContext): readonly DraftSheet[] =>
  Object.values(context.scene.bike.stacks).flatMap((stack) => stackPages(context, stack));

function stackPages(context: DrawingContext, stack: PlacedStack): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'landscape');
  const bar = barOf(context, stack);
  const bounds = boundsOf(bar, stack);
  const wide = widthOf(contentArea(sheet));
  const room = { left: END_ROOM, right: wide - END_ROOM, bottom: 0, top: MOST_HEIGHT };
  const view = stackView(bounds, room);
  const tall = Math.min(MOST_HEIGHT, Math.max(viewLength(view, bounds.maxY - bounds.minY), LEAST_HEIGHT));
  const rows = dimensionRows(context, stack, view);
  const height = BALLOON_ROOM + tall + rows.length * DIMENSION_ROW + PLANE_ROOM;
  const draw = (area: PaperRect): readonly SheetItem[] => {
    const axis = area.top - BALLOON_ROOM - tall / 2;
    const origin = { x: view.origin.x + area.left, y: axis };
    const box = { ...area, top: axis + tall / 2, bottom: axis - tall / 2 };
    return drawStack(context, { stack, bar, view: { ...view, origin }, room: box, rows });
  };
  const blocks: readonly Block[] = [
    { kind: 'drawing', height, draw },
    ...axleBlocks(context, stack),
    ...flawBlocks(context, stack),
    stackTable(context, stack),
    {
      kind: 'paragraph',
      text: 'Faces are distances from the center plane, + to the rider’s left. The upper half of the drawing is cut, the lower is seen from behind.',
      size: 2.6,
      tone: 'muted',
    },
  ];
  const title = `Stack, ${words(stack.id)}`;
  const pages = flowPages({ id: `stack-${stack.id}`, title, paper: sheet, blocks });
  return asDrawing(pages, { scale: view.scale.label, projection: 'third-angle' });
}

/** By its length where that is what counts, up to full size; a part that is then too tall is broken off. */
function stackView(bounds: Bounds, room: PaperRect): View {
  const whole = fitted(bounds, room);
  const long = fitted({ ...bounds, minY: 0, maxY: 0 }, room);
  if (whole.scale.ratio >= 1) return whole;
  return long.scale.ratio <= 1
    ? long
    : fitView({ bounds: { ...bounds, minY: 0, maxY: 0 }, area: room, scales: [scaleOf(1)] })!;
}

function drawStack(context: DrawingContext, drawing: StackDrawing): readonly SheetItem[] {
  const { stack, bar, view, room } = drawing;
  const axis = view.origin.y;
  const { minX, maxX } = boundsOf(bar, stack);
  return [
    ...stack.items.flatMap((item, i) => itemBody(drawing, item, i)),
    ...axleBody(view, stack, bar),
    line({ x: xOf(view, -minX) - 5, y: axis }, { x: xOf(view, -maxX) + 5, y: axis }, 'center'),
    ...planeLabels(context, drawing),
    ...balloons(drawing),
    ...madeDimensions(context, drawing),
    ...sides(room, axis),
  ];
}

const sides = (room: PaperRect, axis: number): readonly SheetItem[] => [
  text({ x: room.left + 1, y: axis - 1.2 }, 'LEFT', { size: 2.8, weight: 'bold' }),
  text({ x: room.right - 1, y: axis - 1.2 }, 'RIGHT', { size: 2.8, weight: 'bold', anchor: 'end' }),
];

function axleBlocks(context: DrawingContext, stack: PlacedStack): readonly Block[] {
  const { axle } = stack;
  if (!axle) return [];
  const out = (length: number): string =>
    length < 0 ? `${inLine(context, -length)} too short` : inLine(context, length);
  const threads = axle.threadLeft > 0 || axle.threadRight > 0;
  const ends = threads ? 'Thread out' : 'Shaft out';
  const sleeves = stack.sleeves.map(
    (sleeve) =>
      `Sleeve in ${words(sleeve.item)}: inside ${inLine(context, sleeve.inside)}, outside ${inLine(context, sleeve.outside)}, ${inLine(context, sleeve.length)} long, full width, no split.`,
  );
  return [
    {
      kind: 'paragraph',
      text: `${threads ? 'Axle' : 'Shaft'} Ø ${inLine(context, axle.diameter)} × ${inLine(context, axle.length)} long. ${ends}: left ${out(axle.outLeft)}, right ${out(axle.outRight)}.`,
      weight: 'bold',
      size: 2.8,
    },
    ...sleeves.map((one): Block => ({ kind: 'paragraph', text: one, weight: 'bold', size: 2.8 })),
  ];
}

function flawBlocks(context: DrawingContext, stack: PlacedStack): readonly Block[] {
  const misfits = stack.misfits.map(
    ({ between, excess }) =>
      `Between ${words(between[0])} and ${words(between[1])} the parts are ${inLine(context, Math.abs(excess))} ${excess > 0 ? 'longer than the room' : 'shorter than the room'}.`,
  );
  const gaps = stack.gaps.map((gap) => {
    const parts = gap.items.map(words).join(', ');
    const long = gap.length === undefined ? '' : ` (${inLine(context, gap.length)})`;
    return `Not solved: ${gap.reason.replaceAll('-', ' ')}, ${parts}${long}.`;
  });
  return [...misfits, ...gaps].map(
    (one): Block => ({ kind: 'paragraph', text: one, weight: 'bold', tone: 'accent' }),
  );
}

function stackTable(context: DrawingContext, stack: PlacedStack): Block {
  return {
    kind: 'table',
    size: 2.6,
    columns: [
      { title: 'No.', align: 'right' },
      { title: 'Item' },
      ...lengthColumns(context, 'Length'),
      ...['Outside', 'Bore', 'Left face', 'Right face'].map((title) => singleColumn(context, title)),
      { title: 'Note' },
    ],
    rows: stack.items.map((item, i) => stackRow(context, item, i)),
  };
}

function stackRow(context: DrawingContext, item: PlacedItem, index: number): readonly TableCell[] {
  const air = item.kind === 'clearance';
  const make = item.solved && !air;
  const bold = (cell: string): TableCell => (make ? { text: cell, weight: 'bold' } : cell);
  const size = (value: number): string =>
    air || item.kind === 'face' || !(value > 0) ? '' : singleCell(context, value);
  const face = (y: number): string => singleCell(context, Math.abs(y) < 5e-5 ? 0 : y);
  const note = [make ? 'MAKE' : '', item.note ?? ''].filter((part) => part !== '').join(', ');
  return [
    String(index + 1),
    bold(words(item.id)),
    ...lengthCells(context, item.length).map(bold),
    size(item.outside),
    size(item.bore),
    face(item.left),
    face(item.right),
    make ? { text: note, weight: 'bold' } : note,
  ];
}
