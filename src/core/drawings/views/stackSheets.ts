import type { PlacedItem, PlacedStack } from '../../bike/index.ts';
import type { Bounds } from '../../geometry/index.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../bookPages.ts';
import { balloon, balloonRadius } from '../callouts.ts';
import { hatch } from '../hatch.ts';
import { spreadLabels } from '../labelSpread.ts';
import { linearDimension } from '../linearDimension.ts';
import { paper } from '../paper.ts';
import { circle, line, openPath, type PaperRect, polygon, rectangle, text, widthOf } from '../shapes.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import type { TableCell } from '../table.ts';
import { textWidth } from '../textMetrics.ts';
import { fitView, scaleOf, type View, viewLength } from '../view.ts';
import {
  asDrawing,
  type DrawingContext,
  dimensionOf,
  inLine,
  lengthCells,
  lengthColumns,
  words,
} from './context.ts';
import { fitted } from './sheetFit.ts';

const BALLOON = 2.8;
const LABEL = 2.6;
/** Over the drawing balloons; under it rows of dimensions, then the planes' names [mm]. */
const BALLOON_ROOM = 12;
const DIMENSION_ROW = 9;
const MOST_ROWS = 3;
const PLANE_ROOM = 13;
/** Tallest and lowest that the turned parts are drawn; what is larger is broken off [mm]. */
const MOST_HEIGHT = 58;
const LEAST_HEIGHT = 14;
const HATCH_SPACING = 1.5;
/** Ends of the drawing, with the names of the two sides [mm]. */
const END_ROOM = 18;
/** Air between a shaft and a bore that is its size is not drawn; a larger bore shows [m]. */
const AIR = 2e-4;

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
      text: 'Faces are distances from the center plane in mm, + to the rider’s left. The upper half of the drawing is cut, the lower is seen from behind.',
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

/** Paper x runs to the rider's right, so the model's x is −Y. */
function boundsOf(bar: Bar | undefined, { items }: PlacedStack): Bounds {
  const left = Math.max(bar?.left ?? Number.NEGATIVE_INFINITY, ...items.map((item) => item.left));
  const right = Math.min(bar?.right ?? Number.POSITIVE_INFINITY, ...items.map((item) => item.right));
  const half = Math.max(bar?.diameter ?? 0, ...items.map((item) => item.outside)) / 2;
  return { minX: -left, maxX: -right, minY: -half, maxY: half };
}

/** The axle or shaft that all sits on, with its threads [m]. */
interface Bar {
  readonly diameter: number;
  readonly left: number;
  readonly right: number;
  readonly threadLeft: number;
  readonly threadRight: number;
}

/** The stack's own axle, or what stands out of the engine. */
function barOf({ scene }: DrawingContext, { axle, shaft }: PlacedStack): Bar | undefined {
  if (axle || shaft !== 'engine') return axle;
  const { faceY, shaftEndY } = scene.bike.engine;
  return {
    diameter: scene.build.engine.shaft.diameter,
    left: Math.max(faceY, shaftEndY),
    right: Math.min(faceY, shaftEndY),
    threadLeft: 0,
    threadRight: 0,
  };
}

interface StackDrawing {
  readonly stack: PlacedStack;
  readonly bar: Bar | undefined;
  readonly view: View;
  /** Room of the turned parts on paper. */
  readonly room: PaperRect;
  readonly rows: readonly (readonly PlacedItem[])[];
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

/** Left of the bike is left on paper. */
const xOf = (view: View, y: number): number => view.origin.x - viewLength(view, y);

const sides = (room: PaperRect, axis: number): readonly SheetItem[] => [
  text({ x: room.left + 1, y: axis - 1.2 }, 'LEFT', { size: 2.8, weight: 'bold' }),
  text({ x: room.right - 1, y: axis - 1.2 }, 'RIGHT', { size: 2.8, weight: 'bold', anchor: 'end' }),
];

/** Upper half cut, lower half from outside. Nothing is drawn of a gap that is left on purpose. */
function itemBody({ view, room }: StackDrawing, item: PlacedItem, index: number): readonly SheetItem[] {
  if (item.kind === 'face') return faceLine(view, room, item);
  if (item.kind === 'clearance' || !(item.length > 0)) return [];
  const [left, right, axis] = [xOf(view, item.left), xOf(view, item.right), view.origin.y];
  const most = (room.top - room.bottom) / 2;
  const whole = viewLength(view, item.outside) / 2;
  const outside = Math.min(whole, most);
  const bore = Math.min(viewLength(view, item.bore) / 2, outside);
  const pen = item.solved ? 'accent' : 'outline';
  const shape = (inner: number, outer: number): readonly PaperPoint[] => [
    { x: left, y: axis + inner },
    { x: right, y: axis + inner },
    { x: right, y: axis + outer },
    ...(whole > most + 1e-9 ? breakLine(right, left, axis + outer) : []),
    { x: left, y: axis + outer },
  ];
  const section = shape(bore, outside);
  const lines =
    outside - bore > 0.1 && right - left > 0.1
      ? hatch({
          loops: [section.map((q) => ({ ...q, bulge: 0 }))],
          angle: index % 2 === 0 ? 45 : 135,
          spacing: HATCH_SPACING,
          pen: item.solved ? 'accent' : 'dimension',
        })
      : [];
  return [
    polygon(section, 'none', item.solved ? 'accent' : 'paper'),
    ...lines,
    polygon(shape(0, -outside), pen, item.solved ? 'accent' : 'light'),
    polygon(section, pen),
  ];
}

/** A face or shoulder that the stack bears on. */
function faceLine(view: View, room: PaperRect, item: PlacedItem): readonly SheetItem[] {
  const half = Math.min(viewLength(view, item.outside) / 2, (room.top - room.bottom) / 2);
  const x = xOf(view, item.left);
  return [line({ x, y: view.origin.y - half }, { x, y: view.origin.y + half }, 'outline')];
}

/** A zigzag between two ends at one height: the part goes on beyond it. */
function breakLine(from: number, to: number, y: number): readonly PaperPoint[] {
  const at = (share: number, rise: number): PaperPoint => ({ x: from + share * (to - from), y: y + rise });
  return [at(0.4, 0), at(0.46, 1.4), at(0.54, -1.4), at(0.6, 0)];
}

/** The axle from end to end, its threads as a thin inner line. */
function axleBody(view: View, stack: PlacedStack, axle: Bar | undefined): readonly SheetItem[] {
  const at = (y: number): number => xOf(view, y);
  if (!axle) return [];
  const half = viewLength(view, axle.diameter) / 2;
  const axis = view.origin.y;
  const [left, right] = [at(axle.left), at(axle.right)];
  const root = half * 0.86;
  const threads = (
    [
      [left, left + viewLength(view, axle.threadLeft)],
      [right - viewLength(view, axle.threadRight), right],
    ] as const
  ).flatMap(([from, to]) =>
    to - from > 0.01
      ? [root, -root].map((y) => line({ x: from, y: axis + y }, { x: to, y: axis + y }, 'dimension'))
      : [],
  );
  const sleeves = stack.sleeves.flatMap((sleeve) => {
    const item = stack.items.find((one) => one.id === sleeve.item);
    if (!item || sleeve.outside - sleeve.inside < AIR) return [];
    const middle = (item.left + item.right) / 2;
    const [from, to] = [at(middle + sleeve.length / 2), at(middle - sleeve.length / 2)];
    const radius = viewLength(view, sleeve.outside) / 2;
    return [
      rectangle({ left: from, right: to, bottom: axis + half, top: axis + radius }, 'accent', 'accent'),
    ];
  });
  return [
    ...sleeves,
    rectangle({ left, right, bottom: axis - half, top: axis + half }, 'outline', 'paper'),
    ...threads,
  ];
}

/** Rim centers, chain and belt planes and discs, named under the drawing with their Y. */
function planeLabels(
  context: DrawingContext,
  { stack, view, room, rows }: StackDrawing,
): readonly SheetItem[] {
  const foot = room.bottom - rows.length * DIMENSION_ROW - 2;
  const planes = stack.items
    .flatMap((item) => item.planes)
    .toSorted((a, b) => b.y - a.y)
    .map((plane) => {
      const says =
        plane.runs === 'rim'
          ? 'rim center'
          : `${plane.runs} ${words(plane.drive ?? plane.brake ?? '')}`.trim();
      const lines = [says, `${inLine(context, Math.abs(plane.y))}${sideOf(plane.y)}`];
      return { x: xOf(view, plane.y), lines, wide: Math.max(...lines.map((one) => textWidth(one, LABEL))) };
    });
  const middles = spreadLabels(
    planes.map(({ x, wide }) => ({ wanted: x, size: wide })),
    4,
    { min: room.left, max: room.right },
  );
  return planes.flatMap(({ x, lines }, i) => [
    line({ x, y: foot }, { x, y: room.top + 1.5 }, 'center'),
    openPath(
      [
        { x, y: foot },
        { x: middles[i]!, y: foot - 3 },
      ],
      'dimension',
    ),
    ...lines.map((one, k) =>
      text({ x: middles[i]!, y: foot - 6 - k * 3.2 }, one, { size: LABEL, anchor: 'middle' }),
    ),
  ]);
}

const sideOf = (y: number): string => (Math.abs(y) < 5e-5 ? '' : y > 0 ? ' left' : ' right');

function balloons({ stack, view, room }: StackDrawing): readonly SheetItem[] {
  const middles = stack.items.map((item) => xOf(view, (item.left + item.right) / 2));
  const radius = balloonRadius(BALLOON);
  const places = spreadLabels(
    middles.map((wanted) => ({ wanted, size: 2 * radius })),
    0.8,
    { min: room.left, max: room.right },
  );
  const y = room.top + BALLOON_ROOM - radius - 0.5;
  return stack.items.flatMap((item, i) => {
    const half = Math.min(viewLength(view, item.outside) / 2, room.top - view.origin.y);
    return [
      openPath(
        [
          { x: middles[i]!, y: view.origin.y + Math.max(half - 1, 0) },
          { x: middles[i]!, y: room.top + 2 },
          { x: places[i]!, y: y - radius },
        ],
        'dimension',
      ),
      circle({ x: middles[i]!, y: view.origin.y + Math.max(half - 1, 0) }, 0.4, 'dimension', 'ink'),
      ...balloon({ x: places[i]!, y }, String(i + 1), BALLOON),
    ];
  });
}

/** Spacers to make, dealt to as few rows as keep their figures apart. */
function dimensionRows(
  context: DrawingContext,
  stack: PlacedStack,
  view: View,
): readonly (readonly PlacedItem[])[] {
  const made = stack.items.filter((item) => item.solved && item.kind !== 'clearance' && item.length > 0);
  const rows: { items: PlacedItem[]; end: number }[] = [];
  for (const item of made) {
    const [left, right] = [xOf(view, item.left), xOf(view, item.right)];
    const wide = Math.max(...dimensionOf(context, item.length).map((one) => textWidth(one, LABEL)));
    const fits = right - left > wide + 2;
    const start = left - (fits ? 1 : 6);
    const end = right + (fits ? 1 : wide + 8);
    const row = rows.find((one) => one.end <= start);
    if (row) {
      row.items.push(item);
      row.end = end;
    } else if (rows.length < MOST_ROWS) rows.push({ items: [item], end });
    // A spacer that finds no room has its length in the table alone.
  }
  return rows.map((row) => row.items);
}

/** Lengths of the spacers to make. */
const madeDimensions = (context: DrawingContext, { view, room, rows }: StackDrawing): readonly SheetItem[] =>
  // Long extension lines first, so that the figures of nearer rows stay clear of them.
  rows
    .map((row, k) => ({ row, k }))
    .toReversed()
    .flatMap(({ row, k }) =>
      row.flatMap((item) => {
        const foot =
          view.origin.y - Math.min(viewLength(view, item.outside) / 2, view.origin.y - room.bottom);
        return linearDimension({
          from: { x: xOf(view, item.left), y: foot },
          to: { x: xOf(view, item.right), y: foot },
          direction: 'horizontal',
          at: room.bottom - (k + 0.5) * DIMENSION_ROW,
          text: dimensionOf(context, item.length),
          size: LABEL,
        });
      }),
    );

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
      { title: 'Outside', align: 'right' },
      { title: 'Bore', align: 'right' },
      { title: 'Left face', align: 'right' },
      { title: 'Right face', align: 'right' },
      { title: 'Note' },
    ],
    rows: stack.items.map((item, i) => stackRow(context, item, i)),
  };
}

function stackRow(context: DrawingContext, item: PlacedItem, index: number): readonly TableCell[] {
  const air = item.kind === 'clearance';
  const make = item.solved && !air;
  const bold = (cell: string): TableCell => (make ? { text: cell, weight: 'bold' } : cell);
  const size = (value: number): string => (air || item.kind === 'face' ? '' : (value * 1000).toFixed(1));
  const face = (y: number): string => (Math.abs(y) < 5e-5 ? '0.0' : (y * 1000).toFixed(1));
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
