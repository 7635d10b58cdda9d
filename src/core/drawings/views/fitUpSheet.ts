import { boundsOfPoints, joinBounds, type Point3 } from '../../geometry/index.ts';
import type { FitUpSheet, JigStation } from '../../shop/index.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../bookPages.ts';
import { balloon, balloonRadius } from '../callouts.ts';
import { spreadLabels } from '../labelSpread.ts';
import { angleDimension } from '../leader.ts';
import { ordinateDimensions } from '../ordinate.ts';
import { paper } from '../paper.ts';
import { circle, line, openPath, type PaperRect, polygon, rectangle, text, widthOf } from '../shapes.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import { type View, viewLength, viewLine, viewPoint } from '../view.ts';
import { tubePath } from './bands.ts';
import { asDrawing, type DrawingContext, degreesText, dimensionOf } from './context.ts';
import { fitUpNotes, numbered, stationTable, tramTable } from './fitUpTables.ts';
import { frameLayers } from './frameShapes.ts';
import { letterOf } from './letters.ts';
import { paintOrder, projector } from './scene.ts';
import { fitted } from './sheetFit.ts';

const BALLOON = 2.8;
/** Under the bench: figures of the plumb marks; over the frame: balloons [mm]. */
const ORDINATE_ROOM = 24;
const BALLOON_ROOM = 12;
const MOST_ELEVATION = 95;
const MOST_PLAN = 46;
const BLOCK_WIDTH = 5;
/** Steering axis drawn past the neck [m]. */
const OVERRUN = 0.1;

/** The bare frame on the bench: heights, blocks and plumb marks, then from above with the lengths to tram. */
export function fitUpSheets(context: DrawingContext, fitUp: FitUpSheet): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'landscape');
  const wide = widthOf(contentArea(sheet));
  const bench = fitUp.restsAt - fitUp.propHeight;
  const elevation = elevationView(context, fitUp, wide);
  const tall = viewLength(elevation, frameTop(context) - bench);
  const plan = planView(context, elevation, wide);
  const half = viewLength(plan, halfWidth(context));
  const blocks: readonly Block[] = [
    {
      kind: 'drawing',
      height: BALLOON_ROOM + tall + ORDINATE_ROOM,
      draw: (area) => drawElevation(context, fitUp, elevation, area),
    },
    {
      kind: 'drawing',
      height: 2 * half + 6,
      draw: (area) => drawPlan(context, fitUp, plan, area),
    },
    ...fitUpNotes(context, fitUp),
    stationTable(context, fitUp),
    tramTable(context, fitUp),
  ];
  const pages = flowPages({ id: 'fit-up', title: 'Fit-up on the bench', paper: sheet, blocks });
  return asDrawing(pages, { scale: elevation.scale.label, projection: 'third-angle' });
}

const frameTop = ({ scene }: DrawingContext): number =>
  Math.max(
    scene.bike.layout.points.neckTop!.z + OVERRUN,
    ...scene.bike.tubes.flatMap((tube) => tubePath(tube.centerline).map((q) => q.z + tube.outside / 2)),
  );

const halfWidth = ({ scene }: DrawingContext): number =>
  Math.max(
    0.05,
    ...scene.bike.tubes.flatMap((tube) => tubePath(tube.centerline).map((q) => Math.abs(q.y) + tube.outside)),
  );

function along({ scene }: DrawingContext, fitUp: FitUpSheet): { readonly min: number; readonly max: number } {
  const box = joinBounds([
    boundsOfPoints(fitUp.stations.map((one) => ({ x: one.forward, y: 0 }))),
    ...scene.bike.tubes.map((tube) =>
      boundsOfPoints(tubePath(tube.centerline).map((q) => ({ x: q.x, y: 0 }))),
    ),
  ]);
  return { min: box.minX, max: box.maxX };
}

function elevationView(context: DrawingContext, fitUp: FitUpSheet, wide: number): View {
  const { min, max } = along(context, fitUp);
  const bounds = {
    minX: min - 0.03,
    maxX: max + 0.03,
    minY: fitUp.restsAt - fitUp.propHeight,
    maxY: frameTop(context),
  };
  return fitted(bounds, { left: 8, right: wide - 8, bottom: 0, top: MOST_ELEVATION }, true);
}

/** From above at the scale of the elevation where it fits. */
function planView(context: DrawingContext, elevation: View, wide: number): View {
  const half = halfWidth(context);
  if (2 * viewLength(elevation, half) <= MOST_PLAN) return elevation;
  return fitted(
    {
      minX: -elevationSpan(elevation, wide) / 2,
      maxX: elevationSpan(elevation, wide) / 2,
      minY: -half,
      maxY: half,
    },
    { left: 0, right: wide, bottom: 0, top: MOST_PLAN },
    true,
  );
}

const elevationSpan = (view: View, wide: number): number => wide / viewLength(view, 1);

function drawElevation(
  context: DrawingContext,
  fitUp: FitUpSheet,
  fit: View,
  area: PaperRect,
): readonly SheetItem[] {
  const bench = fitUp.restsAt - fitUp.propHeight;
  const floor = area.bottom + ORDINATE_ROOM;
  const view: View = {
    ...fit,
    origin: { x: fit.origin.x + area.left, y: floor - viewLength(fit, bench) },
  };
  const stations = numbered(fitUp);
  return [
    line({ x: area.left, y: floor }, { x: area.right, y: floor }, 'ground'),
    ...stations.flatMap((station) => blockItems(view, station, floor)),
    ...paintOrder(frameLayers(projector(view, 'side'), context.scene)),
    ...axis(context, fitUp, view, floor),
    ...stationMarks(stations, view, bench, area),
    ...plumbMarks(context, stations, view, floor, area),
  ];
}

/** Block under the part with its blocks and shims; what is held instead of blocked is plumbed down to the bench. */
function blockItems(view: View, station: JigStation, floor: number): readonly SheetItem[] {
  const x = viewPoint(view, { x: station.forward, y: 0 }).x;
  const center = floor + viewLength(view, station.center);
  if (station.block === undefined) return [line({ x, y: floor }, { x, y: center }, 'hidden')];
  const top = floor + viewLength(view, station.block);
  const box = { left: x - BLOCK_WIDTH / 2, right: x + BLOCK_WIDTH / 2, bottom: floor, top };
  const pieces = [...(station.made?.blocks ?? []), ...(station.made?.shims ?? [])];
  let y = floor;
  const joints = pieces.flatMap((piece) => {
    y += viewLength(view, piece);
    return y < top - 0.05 ? [line({ x: box.left, y }, { x: box.right, y }, 'dimension')] : [];
  });
  return [rectangle(box, 'thin', 'light'), ...joints];
}

/** Neck axis and its angle from the bench. */
function axis(context: DrawingContext, fitUp: FitUpSheet, view: View, floor: number): readonly SheetItem[] {
  const { neckBottom, neckTop } = context.scene.bike.layout.points as { neckBottom: Point3; neckTop: Point3 };
  const turn = fitUp.headAngle;
  const point = (from: Point3, by: number) => ({
    x: from.x - by * Math.cos(turn),
    y: from.z + by * Math.sin(turn),
  });
  const reach = 22;
  const foot = point(neckBottom, -OVERRUN);
  const at = viewPoint(view, foot);
  const level = line(at, { x: at.x + reach + 4, y: at.y }, 'dimension');
  return [
    viewLine(view, [foot, point(neckTop, OVERRUN)], 'center'),
    ...(at.y > floor + 4
      ? [
          level,
          ...angleDimension({
            vertex: at,
            radius: reach,
            from: 0,
            to: (turn * 180) / Math.PI,
            text: degreesText(turn),
          }),
        ]
      : []),
  ];
}

/** Numbers over the frame, each led down to the place it names. */
function stationMarks(
  stations: readonly JigStation[],
  view: View,
  bench: number,
  area: PaperRect,
): readonly SheetItem[] {
  const radius = balloonRadius(BALLOON);
  const spots = stations.map((one) => viewPoint(view, { x: one.forward, y: bench + one.center }));
  const places = spreadLabels(
    spots.map((spot) => ({ wanted: spot.x, size: 2 * radius })),
    1,
    { min: area.left, max: area.right },
  );
  const y = area.top - radius - 0.5;
  return spots.flatMap((spot, i) => [
    openPath([spot, { x: places[i]!, y: y - radius }], 'dimension'),
    circle(spot, 0.6, 'dimension', 'ink'),
    ...balloon({ x: places[i]!, y }, String(i + 1), BALLOON),
  ]);
}

/** Where a plumb bob hangs, by its distance from under the rear axle. */
function plumbMarks(
  context: DrawingContext,
  stations: readonly JigStation[],
  view: View,
  floor: number,
  area: PaperRect,
): readonly SheetItem[] {
  const places = new Map<string, number>();
  for (const one of stations) {
    const key = (one.forward * 1e3).toFixed(1);
    if (!places.has(key)) places.set(key, one.forward);
  }
  const spots = [...places.values()].map((forward) => ({
    at: { x: viewPoint(view, { x: forward, y: 0 }).x, y: floor },
    forward,
  }));
  const mark = (at: PaperPoint): SheetItem =>
    polygon([at, { x: at.x - 0.9, y: at.y - 2 }, { x: at.x + 0.9, y: at.y - 2 }], 'thin', 'ink');
  return [
    ...spots.map(({ at }) => mark(at)),
    ...ordinateDimensions({
      axis: 'x',
      features: spots.map(({ at, forward }) => ({
        at: { x: at.x, y: floor - 1.5 },
        text: dimensionOf(context, forward),
      })),
      labelsAt: floor - 9,
      size: 2.6,
      range: { min: area.left, max: area.right },
    }),
  ];
}

function drawPlan(
  context: DrawingContext,
  fitUp: FitUpSheet,
  fit: View,
  area: PaperRect,
): readonly SheetItem[] {
  const middle = (area.top + area.bottom) / 2;
  const view: View = { ...fit, origin: { x: fit.origin.x + area.left, y: middle } };
  const p = projector(view, 'top');
  const crossing = fitUp.diagonals.flatMap(({ from, to }, i) => {
    if (from.y * to.y >= 0) return [];
    const [a, b] = [p.point(from), p.point(to)];
    return [{ a, b, letter: letterOf(i) }];
  });
  return [
    line({ x: area.left, y: middle }, { x: area.right, y: middle }, 'center'),
    ...paintOrder(frameLayers(p, context.scene)),
    ...crossing.flatMap(({ a, b }) => [
      line(a, b, 'hidden'),
      line(mirroredOn(a, middle), mirroredOn(b, middle), 'hidden'),
    ]),
    ...letters(crossing, middle, area),
    text({ x: area.left, y: area.top - 3 }, 'From above', { size: 2.8, weight: 'bold' }),
  ];
}

const mirroredOn = (q: PaperPoint, y: number): PaperPoint => ({ x: q.x, y: 2 * y - q.y });

/** Two mirrored diagonals cross on the center line; their letter stands there, moved along it where two would meet. */
function letters(
  crossing: readonly { readonly a: PaperPoint; readonly b: PaperPoint; readonly letter: string }[],
  middle: number,
  area: PaperRect,
): readonly SheetItem[] {
  const spots = crossing.map(({ a, b }) => a.x + ((middle - a.y) / (b.y - a.y)) * (b.x - a.x));
  const places = spreadLabels(
    spots.map((wanted) => ({ wanted, size: 2 * balloonRadius(BALLOON) })),
    0.6,
    { min: area.left, max: area.right },
  );
  return crossing.flatMap(({ letter }, i) => balloon({ x: places[i]!, y: middle }, letter, BALLOON));
}
