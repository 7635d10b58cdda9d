import type { PaperRect } from './shapes.ts';
import { line, maskedText, type TextStyle } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { textDrop, textRise, textWidth } from './textMetrics.ts';

/** A straight piece that a label must not cover. */
export type Obstacle = readonly [PaperPoint, PaperPoint];

export interface LabelRequest {
  /** What the label belongs to. */
  readonly at: PaperPoint;
  /** Other places that it may stand by as well: points along a curve. */
  readonly or?: readonly PaperPoint[];
  /** Radius round it that stays free [mm]. */
  readonly clear: number;
  readonly text: string;
  readonly style?: Pick<TextStyle, 'size' | 'weight' | 'tone'>;
}

const DIRECTIONS = 16;
const DISTANCES = [0, 1.5, 3, 5, 8, 12, 17, 23, 30];
const GAP = 0.8;
/** A label that had to move further than this gets a line back to its place [mm]. */
const LEADER_FROM = 4;

/**
 * Sets labels one after another beside what they belong to, in the nearest place inside `area` where they cover no
 * obstacle and no earlier label; a label that finds none is set nearest, on blank paper, over no label if it can.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  obstacles: readonly Obstacle[],
  area: PaperRect,
): readonly SheetItem[] {
  const taken: PaperRect[] = [];
  return requests.flatMap((request) => {
    const { size = 2.6, weight = 'regular' } = request.style ?? {};
    const wide = textWidth(request.text, size, weight) + 2 * GAP;
    const high = (textRise + textDrop) * size + 2 * GAP;
    const free = (box: PaperRect): boolean =>
      inside(box, area) &&
      !taken.some((t) => rectsMeet(t, box)) &&
      !obstacles.some((o) => segmentMeetsRect(o, box));
    const options = candidates(request, wide, high);
    const choice =
      options.find((o) => free(o.box)) ??
      options.find((o) => inside(o.box, area) && !taken.some((t) => rectsMeet(t, o.box))) ??
      options.find((o) => inside(o.box, area));
    if (choice === undefined) return [];
    taken.push(choice.box);
    const middle = {
      x: (choice.box.left + choice.box.right) / 2,
      y: (choice.box.bottom + choice.box.top) / 2,
    };
    const base = { x: middle.x, y: middle.y - ((textRise - textDrop) / 2) * size };
    return [
      ...leaderTo(request, choice),
      ...maskedText(base, request.text, { ...request.style, size, anchor: 'middle' }),
    ];
  });
}

interface Candidate {
  readonly at: PaperPoint;
  readonly box: PaperRect;
  readonly distance: number;
  readonly direction: number;
}

/** The nearest first; of places equally near, in the order given. */
function candidates(request: LabelRequest, wide: number, high: number): readonly Candidate[] {
  const { at, or = [], clear } = request;
  const all = [at, ...or].flatMap((place) => candidatesAt(place, clear, wide, high));
  return or.length > 0 ? all.sort((a, b) => a.distance - b.distance) : all;
}

function candidatesAt(at: PaperPoint, clear: number, wide: number, high: number): Candidate[] {
  const onIt = {
    left: at.x - wide / 2,
    right: at.x + wide / 2,
    bottom: at.y - high / 2,
    top: at.y + high / 2,
  };
  // A label of a place, not of a thing, stands right on its place when it can.
  const first: readonly Candidate[] = clear === 0 ? [{ at, box: onIt, distance: 0, direction: 0 }] : [];
  const around = DISTANCES.flatMap((distance) =>
    Array.from({ length: DIRECTIONS }, (_, i) => {
      // Starts up and to the right, where a reader looks first, and fans out from there.
      const turn = (i % 2 === 0 ? i / 2 : -(i + 1) / 2) * ((2 * Math.PI) / DIRECTIONS) + Math.PI / 4;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const reach = clear + distance;
      // The box touches the circle of radius `reach` from outside along this direction.
      const support = Math.min(
        wide / 2 / Math.max(Math.abs(c), 1e-9),
        high / 2 / Math.max(Math.abs(s), 1e-9),
      );
      const middle = { x: at.x + c * (reach + support), y: at.y + s * (reach + support) };
      const box = {
        left: middle.x - wide / 2,
        right: middle.x + wide / 2,
        bottom: middle.y - high / 2,
        top: middle.y + high / 2,
      };
      return { at, box, distance, direction: turn };
    }),
  );
  return [...first, ...around];
}

function leaderTo(request: LabelRequest, choice: Candidate): readonly SheetItem[] {
  if (choice.distance < LEADER_FROM) return [];
  const along = (r: number): PaperPoint => ({
    x: choice.at.x + r * Math.cos(choice.direction),
    y: choice.at.y + r * Math.sin(choice.direction),
  });
  return [line(along(request.clear), along(request.clear + choice.distance), 'dimension')];
}

const inside = (a: PaperRect, b: PaperRect): boolean =>
  a.left >= b.left && a.right <= b.right && a.bottom >= b.bottom && a.top <= b.top;

const rectsMeet = (a: PaperRect, b: PaperRect): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

/** Clips the piece to the rectangle by its parameter (slab by slab); something left means that they meet. */
function segmentMeetsRect([p, q]: Obstacle, rect: PaperRect): boolean {
  let [from, to] = [0, 1];
  for (const [a, d, low, high] of [
    [p.x, q.x - p.x, rect.left, rect.right],
    [p.y, q.y - p.y, rect.bottom, rect.top],
  ] as const) {
    if (d === 0) {
      if (a <= low || a >= high) return false;
      continue;
    }
    const [t1, t2] = [(low - a) / d, (high - a) / d];
    from = Math.max(from, Math.min(t1, t2));
    to = Math.min(to, Math.max(t1, t2));
    if (from >= to) return false;
  }
  return true;
}
