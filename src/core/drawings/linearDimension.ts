import { arrowhead, arrowLength } from './arrow.ts';
import type { DimensionText } from './dimensionText.ts';
import { line, maskedText } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { textDrop, textRise, textWidth } from './textMetrics.ts';

export interface LinearDimensionInput {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** What is measured: the x distance, the y distance, or the distance itself. */
  readonly direction: 'horizontal' | 'vertical' | 'aligned';
  /**
   * Where the dimension line lies: its y (horizontal), its x (vertical), or its distance to the left of from→to
   * (aligned), all [mm].
   */
  readonly at: number;
  readonly text: DimensionText;
  /** Text size [mm]; default 2.8. */
  readonly size?: number;
}

export interface BaselineDimensionsInput {
  readonly direction: 'horizontal' | 'vertical';
  /** The point that all are measured from. */
  readonly base: PaperPoint;
  readonly points: readonly { readonly at: PaperPoint; readonly text: DimensionText }[];
  /** Line of the shortest dimension, as `at` above; longer ones follow `step` further out. */
  readonly first: number;
  /** Distance between lines; its sign is the way out. Its size must be at least {@link baselineStep}. */
  readonly step: number;
  readonly size?: number;
}

interface Frame {
  readonly start: PaperPoint;
  readonly end: PaperPoint;
  /** Direction of the dimension line [degrees], in (−90, 90] so that text is read from below or from the right. */
  readonly turn: number;
}

export const dimensionTextSize = 2.8;
/** Clear space between a text and its dimension line, and of extension lines from the object [mm]. */
const TEXT_GAP = 0.7;
const OBJECT_GAP = 1;
const OVERRUN = 1.5;

/** Least distance between stacked two-line dimensions, so that no text meets the next line [mm]. */
export const baselineStep = (size = dimensionTextSize): number =>
  2 * (TEXT_GAP + (textRise + textDrop) * size) + 0.4;

/**
 * A dimension with extension lines, arrowheads and one or two lines of text, the first over the dimension line
 * and the second under it. Where the text or the arrowheads do not fit between, they move outside, beyond the
 * right (or upper) end. Text is on blank paper: no line runs through it.
 */
export function linearDimension(input: LinearDimensionInput): readonly SheetItem[] {
  const { text, size = dimensionTextSize } = input;
  const frame = frameOf(input);
  const span = Math.hypot(frame.end.x - frame.start.x, frame.end.y - frame.start.y);
  const width = Math.max(...text.map((t) => textWidth(t, size)));
  const arrowsInside = span >= 2 * arrowLength + 1;
  const textInside = span >= width + 1.5;
  const along = (distance: number): PaperPoint => ({
    x: frame.start.x + distance * Math.cos((frame.turn * Math.PI) / 180),
    y: frame.start.y + distance * Math.sin((frame.turn * Math.PI) / 180),
  });
  const tail = arrowsInside ? 0 : 2 * arrowLength;
  const textStart = span + Math.max(tail, 1) + 0.5;
  const lineEnd = textInside ? span + tail : textStart + width;
  return [
    ...extensionLine(
      input.from,
      input.direction === 'aligned' || onStart(frame, input) ? frame.start : frame.end,
    ),
    ...extensionLine(
      input.to,
      input.direction === 'aligned' || onStart(frame, input) ? frame.end : frame.start,
    ),
    line(along(-tail), along(lineEnd), 'dimension'),
    arrowhead(frame.start, frame.turn + (arrowsInside ? 180 : 0)),
    arrowhead(frame.end, frame.turn + (arrowsInside ? 0 : 180)),
    ...stackedText(along(textInside ? span / 2 : textStart + width / 2), frame.turn, text, size),
  ];
}

/** Dimensions from one base, stacked outward with the shortest nearest to the object. */
export function baselineDimensions(input: BaselineDimensionsInput): readonly SheetItem[] {
  const { base, direction, first, step, size = dimensionTextSize } = input;
  const reach = (p: PaperPoint): number => Math.abs(direction === 'horizontal' ? p.x - base.x : p.y - base.y);
  return [...input.points]
    .sort((a, b) => reach(a.at) - reach(b.at))
    .flatMap((point, i) =>
      linearDimension({ from: base, to: point.at, direction, at: first + i * step, text: point.text, size }),
    );
}

function frameOf(input: LinearDimensionInput): Frame {
  const { from, to, direction, at } = input;
  if (direction === 'horizontal') {
    const [left, right] = from.x <= to.x ? [from.x, to.x] : [to.x, from.x];
    return { start: { x: left, y: at }, end: { x: right, y: at }, turn: 0 };
  }
  if (direction === 'vertical') {
    const [low, high] = from.y <= to.y ? [from.y, to.y] : [to.y, from.y];
    return { start: { x: at, y: low }, end: { x: at, y: high }, turn: 90 };
  }
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return { start: from, end: to, turn: 0 };
  const normal = { x: (-(to.y - from.y) / length) * at, y: ((to.x - from.x) / length) * at };
  const start = { x: from.x + normal.x, y: from.y + normal.y };
  const end = { x: to.x + normal.x, y: to.y + normal.y };
  const turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  if (turn > -90 && turn <= 90) return { start, end, turn };
  return { start: end, end: start, turn: turn > 90 ? turn - 180 : turn + 180 };
}

/** Whether `from` belongs to the start of the frame (the frame runs left to right, or bottom to top). */
function onStart(frame: Frame, input: LinearDimensionInput): boolean {
  return input.direction === 'horizontal' ? input.from.x === frame.start.x : input.from.y === frame.start.y;
}

function extensionLine(object: PaperPoint, end: PaperPoint): readonly SheetItem[] {
  const length = Math.hypot(end.x - object.x, end.y - object.y);
  if (length <= OBJECT_GAP) return [];
  const unit = { x: (end.x - object.x) / length, y: (end.y - object.y) / length };
  const from = { x: object.x + unit.x * OBJECT_GAP, y: object.y + unit.y * OBJECT_GAP };
  return [line(from, { x: end.x + unit.x * OVERRUN, y: end.y + unit.y * OVERRUN }, 'dimension')];
}

/** One line over the point and, when there is one, another under it. */
function stackedText(
  middle: PaperPoint,
  turn: number,
  lines: DimensionText,
  size: number,
): readonly SheetItem[] {
  const radians = (turn * Math.PI) / 180;
  const rise = [TEXT_GAP + textDrop * size, -TEXT_GAP - textRise * size] as const;
  return lines.flatMap((content, i) => {
    const up = rise[i] as number;
    const at = { x: middle.x - up * Math.sin(radians), y: middle.y + up * Math.cos(radians) };
    return maskedText(at, content, { size, turn, anchor: 'middle' });
  });
}
