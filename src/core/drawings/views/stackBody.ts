import type { PlacedItem, PlacedStack } from '../../bike/index.ts';
import type { Bounds } from '../../geometry/index.ts';
import { hatch } from '../hatch.ts';
import { line, type PaperRect, polygon, rectangle } from '../shapes.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import { type View, viewLength } from '../view.ts';
import type { DrawingContext } from './context.ts';

const HATCH_SPACING = 1.5;
/** Air between a shaft and a bore that is its size is not drawn; a larger bore shows [m]. */
const AIR = 2e-4;
/** Shaft that is assumed where no size at all is given, for the picture [m]. */
const LEAST_SHAFT = 10e-3;

/** Paper x runs to the rider's right, so the model's x is −Y. */
export function boundsOf(bar: Bar | undefined, { items }: PlacedStack): Bounds {
  const left = Math.max(bar?.left ?? Number.NEGATIVE_INFINITY, ...items.map((item) => item.left));
  const right = Math.min(bar?.right ?? Number.POSITIVE_INFINITY, ...items.map((item) => item.right));
  const half = Math.max(bar?.diameter ?? 0, ...items.map((item) => drawnOutside(item, bar))) / 2;
  return { minX: -left, maxX: -right, minY: -half, maxY: half };
}

/** The axle or shaft that all sits on, with its threads [m]. */
export interface Bar {
  readonly diameter: number;
  readonly left: number;
  readonly right: number;
  readonly threadLeft: number;
  readonly threadRight: number;
}

/** The stack's own axle, or what stands out of the engine. */
export function barOf({ scene }: DrawingContext, { axle, shaft }: PlacedStack): Bar | undefined {
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

export interface StackDrawing {
  readonly stack: PlacedStack;
  readonly bar: Bar | undefined;
  readonly view: View;
  /** Room of the turned parts on paper. */
  readonly room: PaperRect;
  readonly rows: readonly (readonly PlacedItem[])[];
}

/** Left of the bike is left on paper. */
export const xOf = (view: View, y: number): number => view.origin.x - viewLength(view, y);

/** Upper half cut, lower half from outside. Nothing is drawn of a gap that is left on purpose. */
export function itemBody(
  { view, room, bar }: StackDrawing,
  item: PlacedItem,
  index: number,
): readonly SheetItem[] {
  if (item.kind === 'face') return faceLine(view, room, item);
  if (item.kind === 'clearance' || !(item.length > 0)) return [];
  const [left, right, axis] = [xOf(view, item.left), xOf(view, item.right), view.origin.y];
  const most = (room.top - room.bottom) / 2;
  const whole = viewLength(view, drawnOutside(item, bar)) / 2;
  const outside = Math.min(whole, most);
  const bore = Math.min(viewLength(view, item.bore) / 2, outside);
  const pen = item.solved ? 'accent' : item.outside > 0 ? 'outline' : 'hidden';
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

/** An item whose outside is not given is drawn, in broken lines, half as thick again as what it sits on. */
export const drawnOutside = (item: PlacedItem, bar?: Bar): number =>
  item.outside > 0 ? item.outside : 1.5 * Math.max(item.bore, bar?.diameter ?? 0, LEAST_SHAFT);

/** A face or shoulder that the stack bears on. */
function faceLine(view: View, room: PaperRect, item: PlacedItem): readonly SheetItem[] {
  const half = Math.min(viewLength(view, drawnOutside(item)) / 2, (room.top - room.bottom) / 2);
  const x = xOf(view, item.left);
  return [line({ x, y: view.origin.y - half }, { x, y: view.origin.y + half }, 'outline')];
}

/** A zigzag between two ends at one height: the part goes on beyond it. */
function breakLine(from: number, to: number, y: number): readonly PaperPoint[] {
  const at = (share: number, rise: number): PaperPoint => ({ x: from + share * (to - from), y: y + rise });
  return [at(0.4, 0), at(0.46, 1.4), at(0.54, -1.4), at(0.6, 0)];
}

/** The axle from end to end, its threads as a thin inner line. */
export function axleBody(view: View, stack: PlacedStack, axle: Bar | undefined): readonly SheetItem[] {
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
