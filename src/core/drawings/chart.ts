import type { Point } from '../geometry/index.ts';
import { type AxisMap, axisItems, axisMap, type ChartAxis, plotArea } from './chartAxis.ts';
import { clipStroke } from './clipPath.ts';
import { type LabelRequest, type Obstacle, placeLabels } from './labelPlace.ts';
import { circle, line, openPath, type PaperRect, rectangle } from './shapes.ts';
import type { PaperPoint, PathItem, PenRole, SheetItem } from './sheet.ts';

/** Lines that a black print tells apart. */
export type ChartLine = 'solid' | 'dashed' | 'dash-dot' | 'dash-dot-dot' | 'fine' | 'faint';

/** A curve with its name right beside it; values are those of the axes. */
export interface ChartCurve {
  readonly points: readonly Point[];
  readonly line: ChartLine;
  readonly label?: string;
  /** Where along the curve its name is wanted, 0 at the start to 1 at the end; left out: 1. */
  readonly labelAt?: number;
}

/** A point to see. */
export interface ChartPoint {
  readonly at: Point;
  readonly label: string;
  /** What the reader should see first. */
  readonly accent?: boolean;
}

/** A range of x, shaded from bottom to top. */
export interface ChartBand {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

export interface ChartInput {
  /** Marks and names of the axes lie inside it too. */
  readonly area: PaperRect;
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly curves: readonly ChartCurve[];
  readonly points?: readonly ChartPoint[];
  readonly bands?: readonly ChartBand[];
}

const PENS: Readonly<Record<ChartLine, PenRole>> = {
  solid: 'outline',
  dashed: 'hidden',
  'dash-dot': 'center',
  'dash-dot-dot': 'bend',
  fine: 'thin',
  faint: 'dimension',
};
const SIZE = 2.6;
/** From a curve to its name [mm]. */
const BESIDE = 0.6;
const SPOT = 1;
/** Places along a curve where its name is tried. */
const TRIED = 24;

/**
 * A line chart: round marks on both axes, one curve told from the other by its dash and by its name beside it, marked points
 * and shaded bands. Curves are cut at the plot; names avoid curves, points and each other.
 */
export function chart(input: ChartInput): readonly SheetItem[] {
  const { area, x, y, curves, points = [], bands = [] } = input;
  const plot = plotArea(area, x, y);
  const map = { x: axisMap(x, plot.left, plot.right), y: axisMap(y, plot.bottom, plot.top) };
  const shades = bands.flatMap((band) => bandShade(band, x, map.x, plot));
  const drawn = curves.map((curve) => clipCurve(curve, map, plot));
  const marks = points.map((point) => ({ point, at: { x: map.x(point.at.x), y: map.y(point.at.y) } }));
  const shown = marks.filter(({ at }) => isInside(at, plot));
  const requests: readonly LabelRequest[] = [
    ...shown.map(
      ({ point, at }): LabelRequest => ({
        at,
        clear: SPOT + BESIDE,
        text: point.label,
        style: { size: SIZE, weight: 'bold', ...(point.accent ? { tone: 'accent' } : {}) },
      }),
    ),
    ...bands.flatMap((band) => bandLabel(band, x, map.x, plot)),
    ...curves.flatMap((curve, i) => curveLabel(curve, drawn[i]!)),
  ];
  return [
    ...shades,
    ...axisItems(plot, area, { x, y }),
    ...drawn.flat(),
    ...shown.map(({ point, at }) =>
      circle(at, SPOT, point.accent ? 'accent' : 'thin', point.accent ? 'accent' : 'ink'),
    ),
    ...placeLabels(
      requests,
      [...drawn.flatMap(piecesOf), ...zeroLines(input, map, plot), ...shown.flatMap(({ at }) => crossAt(at))],
      plot,
    ),
  ];
}

interface ChartMap {
  readonly x: AxisMap;
  readonly y: AxisMap;
}

function clipCurve({ points, line: look }: ChartCurve, map: ChartMap, plot: PaperRect): readonly PathItem[] {
  if (points.length < 2) return [];
  const path = openPath(
    points.map((p) => ({ x: map.x(p.x), y: map.y(p.y) })),
    PENS[look],
  );
  return clipStroke(path, plot).flatMap((item) => (item.type === 'path' ? [item] : []));
}

/** A band that reaches past the axis is cut at its end; one wholly outside is left out. */
function bandSpan(
  band: ChartBand,
  axis: ChartAxis,
): { readonly from: number; readonly to: number } | undefined {
  const span = { from: Math.max(band.from, axis.from), to: Math.min(band.to, axis.to) };
  return span.to > span.from ? span : undefined;
}

function bandShade(band: ChartBand, axis: ChartAxis, map: AxisMap, plot: PaperRect): readonly SheetItem[] {
  const span = bandSpan(band, axis);
  if (!span) return [];
  const [left, right] = [map(span.from), map(span.to)];
  const edge = (at: number): SheetItem =>
    line({ x: at, y: plot.bottom }, { x: at, y: plot.top }, 'dimension');
  return [
    rectangle({ left, right, bottom: plot.bottom, top: plot.top }, 'none', 'light'),
    ...(band.from > axis.from ? [edge(left)] : []),
    ...(band.to < axis.to ? [edge(right)] : []),
  ];
}

function bandLabel(band: ChartBand, axis: ChartAxis, map: AxisMap, plot: PaperRect): readonly LabelRequest[] {
  const span = bandSpan(band, axis);
  if (!span) return [];
  const x = map((span.from + span.to) / 2);
  const high = plot.top - plot.bottom;
  const down = (k: number): PaperPoint => ({ x, y: plot.top - 2.5 - (k / TRIED) * (high - 5) });
  return [
    {
      at: down(0),
      or: Array.from({ length: TRIED }, (_, k) => down(k + 1)),
      clear: 0,
      text: band.label,
      style: { size: SIZE },
    },
  ];
}

/** Tried at the wanted place first, then ever further from it along the curve. */
function curveLabel({ label, labelAt = 1 }: ChartCurve, drawn: readonly PathItem[]): readonly LabelRequest[] {
  const pieces = drawn.flatMap((item) => piecesOf([item]));
  if (label === undefined || pieces.length === 0) return [];
  const places = Array.from({ length: TRIED + 1 }, (_, k) => k / TRIED)
    .sort((a, b) => Math.abs(a - labelAt) - Math.abs(b - labelAt))
    .map((share) => pointAlong(pieces, share));
  return [{ at: places[0]!, or: places.slice(1), clear: BESIDE, text: label, style: { size: SIZE } }];
}

function pointAlong(pieces: readonly Obstacle[], share: number): PaperPoint {
  const lengths = pieces.map(([a, b]) => Math.hypot(b.x - a.x, b.y - a.y));
  let left = share * lengths.reduce((sum, one) => sum + one, 0);
  for (const [i, [a, b]] of pieces.entries()) {
    const length = lengths[i]!;
    if (left <= length && length > 0) {
      const t = left / length;
      return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
    }
    left -= length;
  }
  return pieces.at(-1)![1];
}

const piecesOf = (items: readonly PathItem[]): readonly Obstacle[] =>
  items.flatMap(({ vertices }) => vertices.slice(1).map((to, i): Obstacle => [vertices[i]!, to]));

/** Axes through zero, where they run inside the plot. */
function zeroLines({ x, y }: ChartInput, map: ChartMap, plot: PaperRect): readonly Obstacle[] {
  const [across, upward] = [map.y(0), map.x(0)];
  return [
    ...(y.from < 0 && y.to > 0
      ? [
          [
            { x: plot.left, y: across },
            { x: plot.right, y: across },
          ] as const,
        ]
      : []),
    ...(x.from < 0 && x.to > 0
      ? [
          [
            { x: upward, y: plot.bottom },
            { x: upward, y: plot.top },
          ] as const,
        ]
      : []),
  ];
}

const crossAt = ({ x, y }: PaperPoint): readonly Obstacle[] => [
  [
    { x: x - SPOT, y },
    { x: x + SPOT, y },
  ],
  [
    { x, y: y - SPOT },
    { x, y: y + SPOT },
  ],
];

const isInside = (p: PaperPoint, rect: PaperRect): boolean =>
  p.x >= rect.left - 1e-9 && p.x <= rect.right + 1e-9 && p.y >= rect.bottom - 1e-9 && p.y <= rect.top + 1e-9;
