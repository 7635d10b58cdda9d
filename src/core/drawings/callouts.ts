import { spreadLabels } from './labelSpread.ts';
import { leader } from './leader.ts';
import { circle, openPath, text } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { textDrop, textRise, textWidth, wrapText } from './textMetrics.ts';

export interface Callout {
  /** What the note is about, on paper. */
  readonly at: PaperPoint;
  readonly text: string;
  /** In a balloon before the text: `3`. */
  readonly number?: string;
}

export interface CalloutColumnInput {
  readonly callouts: readonly Callout[];
  /** The edge of the column that faces the drawing [mm]. */
  readonly x: number;
  /** On which side of the drawing the column stands. */
  readonly side: 'left' | 'right';
  /** Room for the text away from the drawing [mm]. */
  readonly width: number;
  /** Room for the labels, bottom and top [mm]. */
  readonly range: { readonly min: number; readonly max: number };
  readonly size?: number;
}

const LABEL_GAP = 1.4;
const TEXT_INDENT = 1;

/** Radius of a balloon for numbers of this size [mm]. */
export const balloonRadius = (size: number): number => 0.85 * size;

/** A number in a circle on blank paper. */
export function balloon(center: PaperPoint, number: string, size = 2.6): readonly SheetItem[] {
  const radius = balloonRadius(size);
  const fit = Math.min(size, (size * 1.5 * radius) / Math.max(textWidth(number, size, 'bold'), 1e-9));
  const base = { x: center.x, y: center.y - ((textRise - textDrop) / 2) * fit };
  return [
    circle(center, radius, 'thin', 'paper'),
    text(base, number, { size: fit, anchor: 'middle', weight: 'bold' }),
  ];
}

/**
 * Notes in a column beside a drawing, each joined to its place by one straight line with a dot. Labels keep
 * clear of each other, and two leaders that would cross trade their places.
 */
export function calloutColumn(input: CalloutColumnInput): readonly SheetItem[] {
  const { callouts, x, side, range, size = 2.6 } = input;
  const out = side === 'right' ? 1 : -1;
  const pitch = (textRise + textDrop) * size;
  const indent = callouts.some((c) => c.number !== undefined)
    ? 2 * balloonRadius(size) + TEXT_INDENT
    : TEXT_INDENT;
  const wrapped = callouts.map((c) => wrapText(c.text, input.width - indent, size));
  const heights = callouts.map((c, i) =>
    Math.max(
      (wrapped[i] as readonly string[]).length * pitch,
      c.number === undefined ? 0 : 2 * balloonRadius(size),
    ),
  );
  const places = uncrossed(callouts, heights, x, range);
  return callouts.flatMap((callout, i) => {
    const y = places[i] as number;
    const lines = wrapped[i] as readonly string[];
    const radius = balloonRadius(size);
    const joint = { x, y };
    return [
      openPath([callout.at, joint], 'dimension'),
      circle(callout.at, 0.5, 'dimension', 'ink'),
      ...(callout.number === undefined ? [] : balloon({ x: x + out * radius, y }, callout.number, size)),
      ...lines.map((content, k) => {
        const foot = (k - (lines.length - 1) / 2) * pitch + ((textRise - textDrop) / 2) * size;
        return text({ x: x + out * indent, y: y - foot }, content, {
          size,
          anchor: out > 0 ? 'start' : 'end',
        });
      }),
    ];
  });
}

/** One note with a leader, for a place that needs no column. */
export function note(
  tip: PaperPoint,
  elbow: PaperPoint,
  content: string,
  width: number,
  size = 2.6,
): readonly SheetItem[] {
  return leader({ tip, elbow, lines: wrapText(content, width, size), size, end: 'dot' });
}

function uncrossed(
  callouts: readonly Callout[],
  heights: readonly number[],
  x: number,
  range: { readonly min: number; readonly max: number },
): readonly number[] {
  const order = callouts.map((_, i) => i).sort((a, b) => callouts[a]!.at.y - callouts[b]!.at.y || a - b);
  const spread = (): readonly number[] => {
    // The order is what counts: wishes are made to rise along it, so that the spread keeps it.
    let floor = Number.NEGATIVE_INFINITY;
    const labels = order.map((i) => {
      floor = Math.max(floor, callouts[i]!.at.y);
      return { wanted: floor, size: heights[i]! };
    });
    const middles = spreadLabels(labels, LABEL_GAP, range);
    const byCallout = new Array<number>(callouts.length).fill(0);
    order.forEach((i, place) => {
      byCallout[i] = middles[place]!;
    });
    return byCallout;
  };
  let places = spread();
  // Each trade of two crossing leaders shortens their sum; the bound only guards against ties.
  for (let round = 0; round < callouts.length ** 2; round += 1) {
    const pair = crossingNeighbors(callouts, order, places, x);
    if (pair === undefined) return places;
    [order[pair], order[pair + 1]] = [order[pair + 1]!, order[pair]!];
    places = spread();
  }
  return places;
}

function crossingNeighbors(
  callouts: readonly Callout[],
  order: readonly number[],
  places: readonly number[],
  x: number,
): number | undefined {
  for (let k = 0; k + 1 < order.length; k += 1) {
    const [i, j] = [order[k]!, order[k + 1]!];
    if (cross(callouts[i]!.at, { x, y: places[i]! }, callouts[j]!.at, { x, y: places[j]! })) return k;
  }
  return undefined;
}

function cross(a: PaperPoint, b: PaperPoint, c: PaperPoint, d: PaperPoint): boolean {
  const side = (p: PaperPoint, q: PaperPoint, r: PaperPoint): number =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
