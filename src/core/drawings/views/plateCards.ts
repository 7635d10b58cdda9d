import { type Bounds, flatten, loopBounds, type Point } from '../../geometry/index.ts';
import { type FlatPattern, openingEnds, openingLoop } from '../../plates/index.ts';
import { printQuantity } from '../../quantity/index.ts';
import type { DrillRow } from '../../shop/index.ts';
import { arrowhead } from '../arrow.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../bookPages.ts';
import { placeLabels } from '../labelPlace.ts';
import { centerMark } from '../leader.ts';
import { ordinateDimensions } from '../ordinate.ts';
import { paper } from '../paper.ts';
import { line, type PaperRect, text, widthOf } from '../shapes.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import {
  fineScales,
  fitView,
  type View,
  viewCircle,
  viewLength,
  viewLine,
  viewLoop,
  viewPoint,
} from '../view.ts';
import { asDrawing, type DrawingContext, dimensionOf, inLine, words } from './context.ts';
import { letterOf } from './letters.ts';
import { bendTable, checkTable, holeTable } from './plateTables.ts';
import { handText, makingText } from './plateWords.ts';
import { fitted } from './sheetFit.ts';

/** Room for figures left of the plate and under it, and free edges [mm]. */
const LEFT_ROOM = 34;
const FOOT_ROOM = 30;
const EDGE_ROOM = 12;
const MOST_HEIGHT = 116;
/** Centers nearer than this share one figure [m]. */
const SAME = 5e-5;
const FIGURE = 2.7;
const MARK = 3.2;
/** Chords of edges that labels keep clear of [m]. */
const EDGE_CHORD = 2e-4;

/** One card for each plate: outline and holes with their places, steps, bends and check lengths; not to full size. */
export const plateCards = (context: DrawingContext, drilling: readonly DrillRow[]): readonly DraftSheet[] =>
  context.scene.patterns.flatMap((pattern) =>
    platePages(
      context,
      pattern,
      drilling.filter((row) => row.plate === pattern.id),
    ),
  );

function platePages(
  context: DrawingContext,
  pattern: FlatPattern,
  drilling: readonly DrillRow[],
): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'portrait');
  const wide = widthOf(contentArea(sheet));
  const bounds = loopBounds(pattern.outline);
  const room = { left: LEFT_ROOM, right: wide - EDGE_ROOM, bottom: 0, top: MOST_HEIGHT };
  const scales = fineScales.filter((scale) => scale.ratio <= 2);
  const view = fitView({ bounds, area: room, scales }) ?? fitted(bounds, room);
  const tall = viewLength(view, bounds.maxY - bounds.minY);
  const kg = printQuantity(pattern.mass, 'mass', context.system, { resolution: 0.01 });
  const blocks: readonly Block[] = [
    {
      kind: 'paragraph',
      size: 3.4,
      weight: 'bold',
      text: `${handText(pattern)} · ${words(pattern.material)} ${inLine(context, pattern.thickness)} · ${makingText(pattern)} · ${kg} each`,
    },
    { kind: 'paragraph', text: pattern.title },
    {
      kind: 'drawing',
      height: EDGE_ROOM + tall + FOOT_ROOM,
      draw: (area) => {
        const bottom = area.bottom + FOOT_ROOM;
        const origin = {
          x: view.origin.x + area.left,
          y: bottom - viewLength(view, bounds.minY),
        };
        return drawPlate(context, pattern, drilling, { view: { ...view, origin }, bounds, area });
      },
    },
    ...holeTable(context, drilling),
    ...bendTable(context, pattern),
    ...checkTable(context, pattern),
    ...(pattern.notes.length > 0
      ? [{ kind: 'list' as const, marker: 'bullet' as const, items: pattern.notes }]
      : []),
  ];
  const pages = flowPages({
    id: `plate-${pattern.id}`,
    title: `Plate, ${words(pattern.id)}`,
    paper: sheet,
    blocks,
  });
  return asDrawing(pages, { scale: view.scale.label, projection: 'none' });
}

interface PlateDrawing {
  readonly view: View;
  readonly bounds: Bounds;
  readonly area: PaperRect;
}

function drawPlate(
  context: DrawingContext,
  pattern: FlatPattern,
  drilling: readonly DrillRow[],
  drawing: PlateDrawing,
): readonly SheetItem[] {
  const { view } = drawing;
  const openings = pattern.openings.flatMap((opening) => [
    viewLoop(view, openingLoop(opening), 'outline', 'paper'),
    ...openingEnds(opening).flatMap((end) =>
      centerMark(viewPoint(view, end), viewLength(view, opening.diameter) / 2, 1.2),
    ),
  ]);
  const punches = pattern.punches.flatMap((punch) => centerMark(viewPoint(view, punch.at), 1.2, 0.8));
  return [
    viewLoop(view, pattern.outline, 'outline', 'light'),
    ...pattern.windows.map((window) => viewLoop(view, window, 'outline', 'paper')),
    ...pattern.oldHoles.map((hole) => viewCircle(view, hole.center, hole.diameter / 2, 'hidden')),
    ...pattern.bends.map((bend) => viewLine(view, [bend.from, bend.to], 'bend')),
    ...openings,
    ...punches,
    ...ordinates(context, pattern, drawing),
    ...upArrow(pattern, drawing),
    ...marks(pattern, drilling, drawing),
  ];
}

/** Places that are measured: both edges, centers of holes and of slot ends, punch marks and bends. */
function places(pattern: FlatPattern): readonly Point[] {
  return [
    ...pattern.openings.flatMap((opening) => openingEnds(opening)),
    ...pattern.punches.map((punch) => punch.at),
  ];
}

function ordinates(
  context: DrawingContext,
  pattern: FlatPattern,
  { view, bounds, area }: PlateDrawing,
): readonly SheetItem[] {
  const spots = places(pattern);
  const bendsAlong = (axis: 'x' | 'y'): readonly Point[] =>
    pattern.bends.flatMap(({ from, to }) => (Math.abs(from[axis] - to[axis]) < SAME ? [from] : []));
  const corner = { x: bounds.minX, y: bounds.minY };
  const far = { x: bounds.maxX, y: bounds.maxY };
  const feature = (axis: 'x' | 'y') => (at: Point) => ({
    at: edgePoint(viewPoint(view, at), viewPoint(view, corner), axis),
    text: dimensionOf(context, at[axis] - corner[axis]),
  });
  const along = (axis: 'x' | 'y') =>
    distinct([corner, ...spots, ...bendsAlong(axis), far], axis).map(feature(axis));
  return [
    ...ordinateDimensions({
      axis: 'x',
      features: along('x'),
      labelsAt: viewPoint(view, corner).y - 10,
      size: FIGURE,
      range: { min: area.left, max: area.right },
    }),
    ...ordinateDimensions({
      axis: 'y',
      features: along('y'),
      labelsAt: viewPoint(view, corner).x - 12,
      size: FIGURE,
      range: { min: area.bottom, max: area.top },
    }),
  ];
}

/** Extension lines begin at the plate's edge line, so that they don't run through other holes. */
const edgePoint = (at: PaperPoint, corner: PaperPoint, axis: 'x' | 'y'): PaperPoint =>
  axis === 'x' ? { x: at.x, y: corner.y } : { x: corner.x, y: at.y };

function distinct(points: readonly Point[], axis: 'x' | 'y'): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[axis] - b[axis]);
  return sorted.filter((p, i) => i === 0 || p[axis] - sorted[i - 1]![axis] > SAME);
}

function upArrow(pattern: FlatPattern, { view, bounds, area }: PlateDrawing): readonly SheetItem[] {
  const { up } = pattern;
  if (!up) return [];
  const turn = (Math.atan2(up.direction.y, up.direction.x) * 180) / Math.PI;
  const at = { x: area.right - 8, y: viewPoint(view, { x: 0, y: bounds.maxY }).y + 5 };
  const way = { x: Math.cos((turn * Math.PI) / 180), y: Math.sin((turn * Math.PI) / 180) };
  const tip = { x: at.x + 4 * way.x, y: at.y + 4 * way.y };
  return [
    line({ x: at.x - 4 * way.x, y: at.y - 4 * way.y }, tip, 'outline'),
    arrowhead(tip, turn, 'outline', 3.5),
    text({ x: at.x - 6, y: at.y - 1 }, up.says, { size: 2.8, weight: 'bold', anchor: 'end' }),
  ];
}

/** Letters of the rows of the table beside their holes, and of the bends. */
function marks(
  pattern: FlatPattern,
  drilling: readonly DrillRow[],
  { view, area }: PlateDrawing,
): readonly SheetItem[] {
  const letterFor = (id: string): string =>
    letterOf(
      Math.max(
        0,
        drilling.findIndex((row) => row.holes.includes(id)),
      ),
    );
  const style = { size: MARK, weight: 'bold' as const };
  const holes = pattern.openings.map((opening) => ({
    at: viewPoint(view, opening.center),
    clear: viewLength(view, opening.diameter) / 2 + 0.6,
    text: letterFor(opening.id),
    style,
  }));
  const bends = pattern.bends.map((bend, i) => ({
    at: viewPoint(view, { x: (bend.from.x + bend.to.x) / 2, y: (bend.from.y + bend.to.y) / 2 }),
    clear: 1,
    text: `bend ${i + 1}`,
    style: { size: 2.8, weight: 'bold' as const },
  }));
  const crosses = places(pattern).flatMap((spot) => {
    const at = viewPoint(view, spot);
    const reach = 3;
    return [
      [
        { x: at.x - reach, y: at.y },
        { x: at.x + reach, y: at.y },
      ],
      [
        { x: at.x, y: at.y - reach },
        { x: at.x, y: at.y + reach },
      ],
    ] as const;
  });
  const edges = [
    pattern.outline,
    ...pattern.windows,
    ...pattern.openings.map((opening) => openingLoop(opening)),
  ].flatMap((loop) => {
    const corners = flatten(loop, EDGE_CHORD).map((q) => viewPoint(view, q));
    return corners.map((q, i) => [q, corners[(i + 1) % corners.length]!] as const);
  });
  return placeLabels([...holes, ...bends], [...crosses, ...edges], {
    ...area,
    left: area.left + LEFT_ROOM - 8,
  });
}
