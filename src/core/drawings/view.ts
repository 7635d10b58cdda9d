import type { Bounds, Loop, Point } from '../geometry/index.ts';
import { circle, openPath, type PaperRect, polygon, type TextStyle, text } from './shapes.ts';
import type { CircleItem, FillRole, PaperPoint, PathItem, PenRole, TextItem } from './sheet.ts';

/** A scale that a drawing may have: `ratio` = paper / real. */
export interface DrawingScale {
  readonly ratio: number;
  /** As written on the sheet: `1 : 5`. */
  readonly label: string;
}

/** A map from a plane of the model [m] to paper [mm]. */
export interface View {
  readonly scale: DrawingScale;
  /** Where the model's (0, 0) lands. */
  readonly origin: PaperPoint;
  /** True when model x runs to the left on paper, as forward does seen from the rider's left. */
  readonly flipX: boolean;
}

export interface FitViewInput {
  /** Box around what is drawn, in its plane of the model [m]. */
  readonly bounds: Bounds;
  readonly area: PaperRect;
  /** Default {@link preferredScales}. */
  readonly scales?: readonly DrawingScale[];
  readonly flipX?: boolean;
}

const MM_PER_METER = 1000;

/** 1 : n, or n : 1 for an enlargement when n < 1. */
export const scaleOf = (n: number): DrawingScale => ({
  ratio: 1 / n,
  label: n >= 1 ? `1 : ${n}` : `${Math.round(1e6 / n) / 1e6} : 1`,
});

/** Preferred scales from largest to smallest. @source iso-5455, table 1 */
export const preferredScales: readonly DrawingScale[] = [
  0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200,
].map(scaleOf);

/** With the steps between, for a bike on a small sheet (the standard allows them where a preferred one serves badly). */
export const fineScales: readonly DrawingScale[] = [
  0.02, 0.05, 0.1, 0.2, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100, 200,
].map(scaleOf);

/** The largest scale of the list at which `bounds` fits `area`, centered; `undefined` when none does. */
export function fitView(input: FitViewInput): View | undefined {
  const { bounds, area, scales = preferredScales, flipX = false } = input;
  const wide = (bounds.maxX - bounds.minX) * MM_PER_METER;
  const high = (bounds.maxY - bounds.minY) * MM_PER_METER;
  const scale = [...scales]
    .sort((a, b) => b.ratio - a.ratio)
    .find(
      (s) =>
        wide * s.ratio <= area.right - area.left + 1e-9 && high * s.ratio <= area.top - area.bottom + 1e-9,
    );
  if (scale === undefined) return undefined;
  const factor = scale.ratio * MM_PER_METER;
  const middle = ((bounds.minX + bounds.maxX) / 2) * factor;
  return {
    scale,
    flipX,
    origin: {
      x: (area.left + area.right) / 2 + (flipX ? middle : -middle),
      y: (area.bottom + area.top) / 2 - ((bounds.minY + bounds.maxY) / 2) * factor,
    },
  };
}

/** A length of the model [m] on paper [mm]. */
export const viewLength = (view: View, length: number): number => length * view.scale.ratio * MM_PER_METER;

export function viewPoint(view: View, point: Point): PaperPoint {
  const x = viewLength(view, point.x);
  return { x: view.origin.x + (view.flipX ? -x : x), y: view.origin.y + viewLength(view, point.y) };
}

/** A closed outline; a flipped view turns each arc the other way. */
export function viewLoop(view: View, loop: Loop, pen: PenRole | 'none', fill: FillRole = 'none'): PathItem {
  const vertices = loop.map((v) => ({ ...viewPoint(view, v), bulge: view.flipX ? -v.bulge : v.bulge }));
  return { type: 'path', vertices, closed: true, pen, fill };
}

export function viewLine(view: View, points: readonly Point[], pen: PenRole): PathItem {
  return openPath(
    points.map((p) => viewPoint(view, p)),
    pen,
  );
}

export function viewPolygon(
  view: View,
  points: readonly Point[],
  pen: PenRole | 'none',
  fill: FillRole = 'none',
): PathItem {
  return polygon(
    points.map((p) => viewPoint(view, p)),
    pen,
    fill,
  );
}

/** `radius` in model meters. */
export function viewCircle(
  view: View,
  center: Point,
  radius: number,
  pen: PenRole | 'none',
  fill: FillRole = 'none',
): CircleItem {
  return circle(viewPoint(view, center), viewLength(view, radius), pen, fill);
}

/** Text at a model point; its size stays in paper mm. */
export function viewText(view: View, at: Point, content: string, style: TextStyle = {}): TextItem {
  return text(viewPoint(view, at), content, style);
}
