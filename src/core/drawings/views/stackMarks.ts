import type { PlacedItem, PlacedStack } from '../../bike/index.ts';
import { balloon, balloonRadius } from '../callouts.ts';
import { spreadLabels } from '../labelSpread.ts';
import { linearDimension } from '../linearDimension.ts';
import { circle, line, openPath, text } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import { textWidth } from '../textMetrics.ts';
import { type View, viewLength } from '../view.ts';
import { type DrawingContext, dimensionOf, inLine, words } from './context.ts';
import { drawnOutside, type StackDrawing, xOf } from './stackBody.ts';

const BALLOON = 2.8;
const LABEL = 2.6;
/** Over the drawing balloons; under it rows of dimensions, then the planes' names [mm]. */
export const BALLOON_ROOM = 12;
export const DIMENSION_ROW = 9;
const MOST_ROWS = 3;

/** Rim centers, chain and belt planes and discs, named under the drawing with their Y. */
export function planeLabels(
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

export function balloons({ stack, view, room, bar }: StackDrawing): readonly SheetItem[] {
  const middles = stack.items.map((item) => xOf(view, (item.left + item.right) / 2));
  const radius = balloonRadius(BALLOON);
  const places = spreadLabels(
    middles.map((wanted) => ({ wanted, size: 2 * radius })),
    0.8,
    { min: room.left, max: room.right },
  );
  const y = room.top + BALLOON_ROOM - radius - 0.5;
  return stack.items.flatMap((item, i) => {
    const half = Math.min(viewLength(view, drawnOutside(item, bar)) / 2, room.top - view.origin.y);
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
export function dimensionRows(
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
export const madeDimensions = (
  context: DrawingContext,
  { view, room, rows, bar }: StackDrawing,
): readonly SheetItem[] =>
  // Long extension lines first, so that the figures of nearer rows stay clear of them.
  rows
    .map((row, k) => ({ row, k }))
    .toReversed()
    .flatMap(({ row, k }) =>
      row.flatMap((item) => {
        const foot =
          view.origin.y -
          Math.min(viewLength(view, drawnOutside(item, bar)) / 2, view.origin.y - room.bottom);
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
