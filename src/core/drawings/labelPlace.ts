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
    const first = (fits: (box: PaperRect) => boolean): Candidate | undefined => {
      for (const one of candidates(request, wide, high)) if (fits(one.box)) return one;
      return undefined;
    };
    const choice =
      first(free) ??
      first((box) => inside(box, area) && !taken.some((t) => rectsMeet(t, box))) ??
      first((box) => inside(box, area));
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

/**
 * The nearest first; of places equally near, in the order given. Made one by one, since the first few nearly always do
 * and a curve offers thousands.
 */
function* candidates({ at, or = [], clear }: LabelRequest, wide: number, high: number): Generator<Candidate> {
  const places = [at, ...or];
  for (const distance of DISTANCES) {
    for (const place of places) {
      // A label of a place, not of a thing, stands right on its place when it can.
      if (clear === 0 && distance === 0) {
        yield { at: place, box: boxAbout(place, wide, high), distance, direction: 0 };
      }
      for (const { turn, cos, sin } of FAN) {
        // The box touches the circle of radius `clear + distance` from outside along this direction.
        const support = Math.min(
          wide / 2 / Math.max(Math.abs(cos), 1e-9),
          high / 2 / Math.max(Math.abs(sin), 1e-9),
        );
        const reach = clear + distance + support;
        const middle = { x: place.x + cos * reach, y: place.y + sin * reach };
        yield { at: place, box: boxAbout(middle, wide, high), distance, direction: turn };
      }
    }
  }
}

/** Starts up and to the right, where a reader looks first, and fans out from there. */
const FAN = Array.from({ length: DIRECTIONS }, (_, i) => {
  const turn = (i % 2 === 0 ? i / 2 : -(i + 1) / 2) * ((2 * Math.PI) / DIRECTIONS) + Math.PI / 4;
  return { turn, cos: Math.cos(turn), sin: Math.sin(turn) };
});

const boxAbout = (middle: PaperPoint, wide: number, high: number): PaperRect => ({
  left: middle.x - wide / 2,
  right: middle.x + wide / 2,
  bottom: middle.y - high / 2,
  top: middle.y + high / 2,
});

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

/**
 * The piece passes through the rectangle: beside none of its sides, and its line not beside all four corners. Asked of
 * every place against every line of a sheet, so that no list is made here.
 */
function segmentMeetsRect(piece: Obstacle, { left, right, bottom, top }: PaperRect): boolean {
  const p = piece[0];
  const q = piece[1];
  if (Math.max(p.x, q.x) <= left || Math.min(p.x, q.x) >= right) return false;
  if (Math.max(p.y, q.y) <= bottom || Math.min(p.y, q.y) >= top) return false;
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  if (dx === 0 && dy === 0) return true;
  const a = dx * (bottom - p.y) - dy * (left - p.x);
  const b = dx * (bottom - p.y) - dy * (right - p.x);
  const c = dx * (top - p.y) - dy * (left - p.x);
  const d = dx * (top - p.y) - dy * (right - p.x);
  return Math.min(a, b, c, d) < 0 && Math.max(a, b, c, d) > 0;
}
