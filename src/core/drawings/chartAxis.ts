import { line, type PaperRect, polygon, text } from './shapes.ts';
import type { SheetItem } from './sheet.ts';
import { textWidth } from './textMetrics.ts';

/** A unit that an axis is marked in. */
export interface AxisScale {
  readonly symbol: string;
  /** The axis's own values in one of this unit. */
  readonly unit: number;
}

/** An axis of a chart; values are in one unit, marks in one or two. */
export interface ChartAxis {
  /** `Speed`; the units are added. */
  readonly name: string;
  /** The second is marked on the far side. */
  readonly scales: readonly [AxisScale, ...AxisScale[]];
  readonly from: number;
  readonly to: number;
}

/** Where a value of an axis lies on paper [mm]. */
export type AxisMap = (value: number) => number;

const SIZE = 2.6;
const TICK = 1.2;
/** Room that a mark takes along its axis [mm]. */
const ACROSS_PITCH = 17;
const UP_PITCH = 10;
const ROW = 4.4;
/** Width of a grid line [mm]: a filled strip, which prints lighter than any pen. */
const GRID = 0.12;

/** Round values from `from` to `to`, no more than `most` steps: 1, 2 or 5 by tens. */
export function niceTicks(from: number, to: number, most: number): readonly number[] {
  const span = to - from;
  if (!(span > 0 && Number.isFinite(span)))
    throw new RangeError(`an axis must run upward, not ${from} to ${to}`);
  const step = niceStep(span / Math.max(1, most));
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step + 0);
}

/** The least of 1, 2 and 5 by tens that is no less. */
export function niceStep(least: number): number {
  const tens = 10 ** Math.floor(Math.log10(least));
  const share = least / tens;
  return tens * (share <= 1 + 1e-9 ? 1 : share <= 2 + 1e-9 ? 2 : share <= 5 + 1e-9 ? 5 : 10);
}

/** An end for an axis that covers `value` and lies on a mark of its first scale; one unit for 0, where there is nothing to show. */
export function niceEnd(value: number, scale: AxisScale, most = 8): number {
  if (value === 0) return scale.unit;
  const step = niceStep(Math.abs(value) / scale.unit / most);
  return Math.sign(value) * Math.ceil(Math.abs(value) / scale.unit / step - 1e-9) * step * scale.unit;
}

/** The plot inside an area, less the room for marks and names. */
export function plotArea(area: PaperRect, x: ChartAxis, y: ChartAxis): PaperRect {
  const high = area.top - area.bottom - 3 * ROW;
  const wide = (scale: AxisScale | undefined): number =>
    scale === undefined
      ? 0
      : Math.max(...ticksOf(y, scale, high, UP_PITCH).map(({ label }) => textWidth(label, SIZE)));
  const [, xSecond] = x.scales;
  const [yFirst, ySecond] = y.scales;
  // Half of the last mark along the bottom stands past the plot.
  return {
    left: area.left + wide(yFirst) + TICK + 1.5,
    right: area.right - Math.max(4, wide(ySecond) + TICK + 1.5),
    bottom: area.bottom + 2 * ROW,
    top: area.top - (xSecond ? 2.2 : 1.2) * ROW,
  };
}

/** Grid, frame, marks and names of both axes. */
export function axisItems(
  plot: PaperRect,
  area: PaperRect,
  axes: { readonly x: ChartAxis; readonly y: ChartAxis },
): readonly SheetItem[] {
  const { x, y } = axes;
  const [xMap, yMap] = [axisMap(x, plot.left, plot.right), axisMap(y, plot.bottom, plot.top)];
  const wide = plot.right - plot.left;
  const high = plot.top - plot.bottom;
  const strip = (left: number, bottom: number, right: number, top: number): SheetItem =>
    polygon(
      [
        { x: left, y: bottom },
        { x: right, y: bottom },
        { x: right, y: top },
        { x: left, y: top },
      ],
      'none',
      'medium',
    );
  const below = ticksOf(x, x.scales[0], wide, ACROSS_PITCH).flatMap(({ value, label }) => {
    const at = xMap(value);
    return [
      strip(at - GRID / 2, plot.bottom, at + GRID / 2, plot.top),
      line({ x: at, y: plot.bottom }, { x: at, y: plot.bottom - TICK }, 'dimension'),
      text({ x: at, y: plot.bottom - TICK - 0.9 * SIZE }, label, { size: SIZE, anchor: 'middle' }),
    ];
  });
  const left = ticksOf(y, y.scales[0], high, UP_PITCH).flatMap(({ value, label }) => {
    const at = yMap(value);
    return [
      strip(plot.left, at - GRID / 2, plot.right, at + GRID / 2),
      line({ x: plot.left, y: at }, { x: plot.left - TICK, y: at }, 'dimension'),
      text({ x: plot.left - TICK - 0.6, y: at - 0.36 * SIZE }, label, { size: SIZE, anchor: 'end' }),
    ];
  });
  return [...below, ...left, ...farMarks(plot, axes), ...frame(plot, axes), ...names(plot, area, axes)];
}

/** Marks of the second scales: above and on the right. */
function farMarks(
  plot: PaperRect,
  { x, y }: { readonly x: ChartAxis; readonly y: ChartAxis },
): readonly SheetItem[] {
  const [xMap, yMap] = [axisMap(x, plot.left, plot.right), axisMap(y, plot.bottom, plot.top)];
  const [xSecond, ySecond] = [x.scales[1], y.scales[1]];
  const above = xSecond ? ticksOf(x, xSecond, plot.right - plot.left, ACROSS_PITCH) : [];
  const right = ySecond ? ticksOf(y, ySecond, plot.top - plot.bottom, UP_PITCH) : [];
  return [
    ...above.flatMap(({ value, label }) => {
      const at = xMap(value);
      return [
        line({ x: at, y: plot.top }, { x: at, y: plot.top + TICK }, 'dimension'),
        text({ x: at, y: plot.top + TICK + 0.5 }, label, { size: SIZE, anchor: 'middle', tone: 'muted' }),
      ];
    }),
    ...right.flatMap(({ value, label }) => {
      const at = yMap(value);
      return [
        line({ x: plot.right, y: at }, { x: plot.right + TICK, y: at }, 'dimension'),
        text({ x: plot.right + TICK + 0.6, y: at - 0.36 * SIZE }, label, { size: SIZE, tone: 'muted' }),
      ];
    }),
  ];
}

function frame(
  plot: PaperRect,
  { x, y }: { readonly x: ChartAxis; readonly y: ChartAxis },
): readonly SheetItem[] {
  const [xMap, yMap] = [axisMap(x, plot.left, plot.right), axisMap(y, plot.bottom, plot.top)];
  const across = (at: number): SheetItem => line({ x: plot.left, y: at }, { x: plot.right, y: at }, 'thin');
  const upward = (at: number, pen: 'thin' | 'dimension'): SheetItem =>
    line({ x: at, y: plot.bottom }, { x: at, y: plot.top }, pen);
  return [
    across(plot.bottom),
    upward(plot.left, 'thin'),
    ...(y.scales[1] ? [upward(plot.right, 'dimension')] : []),
    ...(x.scales[1]
      ? [line({ x: plot.left, y: plot.top }, { x: plot.right, y: plot.top }, 'dimension')]
      : []),
    ...(y.from < 0 && y.to > 0 ? [across(yMap(0))] : []),
    ...(x.from < 0 && x.to > 0 ? [upward(xMap(0), 'thin')] : []),
  ];
}

function names(
  plot: PaperRect,
  area: PaperRect,
  { x, y }: { readonly x: ChartAxis; readonly y: ChartAxis },
): readonly SheetItem[] {
  return [
    text({ x: (plot.left + plot.right) / 2, y: area.bottom + 0.3 * ROW }, axisName(x, 'below', 'above'), {
      size: SIZE,
      anchor: 'middle',
      weight: 'bold',
    }),
    text({ x: area.left, y: area.top - SIZE }, axisName(y, 'left', 'right'), { size: SIZE, weight: 'bold' }),
  ];
}

function axisName({ name, scales }: ChartAxis, near: string, far: string): string {
  const [first, second] = scales;
  if (second) return `${name}, ${first.symbol} (${near}) and ${second.symbol} (${far})`;
  return first.symbol === '' ? name : `${name}, ${first.symbol}`;
}

/** Straight from the ends of the axis to the ends on paper. */
export const axisMap =
  ({ from, to }: ChartAxis, start: number, end: number): AxisMap =>
  (value) =>
    start + ((value - from) / (to - from)) * (end - start);

interface Tick {
  readonly value: number;
  readonly label: string;
}

function ticksOf(
  { from, to }: ChartAxis,
  { unit }: AxisScale,
  length: number,
  pitch: number,
): readonly Tick[] {
  const ticks = niceTicks(from / unit, to / unit, Math.max(2, Math.floor(length / pitch)));
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return ticks.map((value) => ({
    value: value * unit,
    label: value.toFixed(decimals).replace(/^-(0(\.0+)?)$/, '$1'),
  }));
}
