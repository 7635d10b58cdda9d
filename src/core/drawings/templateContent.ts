import {
  type Bounds,
  boundsOfPoints,
  circleLoop,
  distance2,
  joinBounds,
  type Loop,
  loopBounds,
  type Point,
  type Segment,
  segmentHeading,
  segments,
} from '../geometry/index.ts';
import type { PrinterCorrection } from './printerCheck.ts';
import { circle, line } from './shapes.ts';
import type { CircleItem, PaperPoint, PathItem } from './sheet.ts';
import type { TemplateJob } from './templateJob.ts';

/** A drawn stroke with the piece that it belongs to. */
export interface ContentStroke {
  readonly item: PathItem | CircleItem;
  readonly piece: string;
}

/** A length that the builder checks on the print: listed with its mark, mm and inches. */
export interface ListedCheck {
  /** As on the sheet: `P1 – P4`, `S1`. */
  readonly mark: string;
  readonly name: string;
  readonly length: number;
}

/** A job in the plane of the print: true millimeters, turned as it will lie on the paper. */
export interface TemplateContent {
  readonly turned: boolean;
  readonly strokes: readonly ContentStroke[];
  /** Box around all strokes [mm]. */
  readonly box: Bounds;
  /** Where the check lengths begin and end, each once. */
  readonly points: readonly { readonly name: string; readonly at: PaperPoint }[];
  readonly checks: readonly ListedCheck[];
  readonly place: (point: Point) => PaperPoint;
}

export const noCorrection: PrinterCorrection = { across: 1, down: 1 };

const MM = 1000;
/** Length of a center mark beyond its circle [mm]. */
const MARK_OVERRUN = 2;
/** A corner of at least 20° is seen and can be measured from. */
const COS_SHARP = Math.cos(Math.PI / 9);

/** Turns a job into strokes; `turned` lays it a quarter round, which may need fewer sheets. */
export function templateContent(job: TemplateJob, turned: boolean): TemplateContent | undefined {
  const place = (p: Point): PaperPoint =>
    turned ? { x: 0 - p.y * MM, y: p.x * MM } : { x: p.x * MM, y: p.y * MM };
  const strokes = job.pieces.flatMap((piece): readonly ContentStroke[] => [
    ...piece.loops.map(({ loop, pen }) => ({
      piece: piece.name,
      item: {
        type: 'path',
        vertices: loop.map((v) => ({ ...place(v), bulge: v.bulge })),
        closed: true,
        pen,
        fill: 'none',
      } as const,
    })),
    ...piece.circles.flatMap((c) => {
      const at = place(c.center);
      const radius = (c.diameter / 2) * MM;
      const reach = radius + MARK_OVERRUN;
      const outline = radius > 0 ? [circle(at, radius, c.pen)] : [];
      // Continuous, not the dashed center line: a dash gap must not fall where the punch goes.
      const cross = [
        line({ x: at.x - reach, y: at.y }, { x: at.x + reach, y: at.y }, 'mark'),
        line({ x: at.x, y: at.y - reach }, { x: at.x, y: at.y + reach }, 'mark'),
      ];
      return [...outline, ...cross].map((item) => ({ piece: piece.name, item }));
    }),
    ...piece.lines.map((l) => ({ piece: piece.name, item: line(place(l.from), place(l.to), l.pen) })),
  ]);
  if (strokes.length === 0) return undefined;
  const checks = [...job.checks, ...addedDiagonal(job)];
  const points = namedPoints(checks.flatMap((c) => [c.from, c.to]));
  const nameOf = (p: Point): string => points.find((q) => distance2(q.at, p) < 1e-9)?.name ?? '';
  return {
    turned,
    strokes,
    box: joinBounds(strokes.map((s) => strokeBounds(s.item))),
    points: points.map((p) => ({ name: p.name, at: place(p.at) })),
    checks: checks.map((c) => ({
      mark: `${nameOf(c.from)} – ${nameOf(c.to)}`,
      name: c.name,
      length: distance2(c.from, c.to),
    })),
    place,
  };
}

export function strokeBounds(item: PathItem | CircleItem): Bounds {
  if (item.type === 'circle') return loopBounds(circleLoop(item.center, item.radius));
  return item.closed ? loopBounds(item.vertices) : boundsOfPoints(item.vertices);
}

function namedPoints(points: readonly Point[]): readonly { readonly name: string; readonly at: Point }[] {
  const named: { name: string; at: Point }[] = [];
  for (const at of points) {
    if (!named.some((n) => distance2(n.at, at) < 1e-9)) named.push({ name: `P${named.length + 1}`, at });
  }
  return named;
}

/**
 * A diagonal, when the job lists none: a print that is skewed keeps its sides and shows only there. The two holes
 * furthest apart that lie neither level nor plumb, or else holes and sharp corners (where a curve begins, no one can
 * measure); none when the part has neither.
 */
export function addedDiagonal(job: TemplateJob): TemplateJob['checks'] {
  if (job.checks.some((c) => isDiagonal(c.from, c.to))) return [];
  const centers = job.pieces.flatMap((p) => p.circles.map((c) => c.center));
  const corners = job.pieces.flatMap((p) => p.loops.flatMap((l) => sharpCorners(l.loop)));
  for (const [points, name] of [
    [centers, 'hole to hole, diagonal'],
    [[...centers, ...corners], 'hole or corner, diagonal'],
  ] as const) {
    let best: { from: Point; to: Point; length: number } | undefined;
    points.forEach((from, i) => {
      for (const to of points.slice(i + 1)) {
        const length = distance2(from, to);
        if (isDiagonal(from, to) && length > (best?.length ?? 0) + 1e-9) best = { from, to, length };
      }
    });
    if (best) return [{ name, from: best.from, to: best.to }];
  }
  return [];
}

function sharpCorners(loop: Loop): readonly Point[] {
  const pieces = segments(loop);
  return pieces.flatMap((piece, i) => {
    const before = pieces[(i + pieces.length - 1) % pieces.length] as Segment;
    const bend = segmentHeading(piece, 0) - segmentHeading(before, 1);
    return Math.cos(bend) < COS_SHARP ? [piece.from] : [];
  });
}

/** At least 15° from level and from plumb. */
function isDiagonal(a: Point, b: Point): boolean {
  const [dx, dy] = [Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
  return Math.min(dx, dy) > Math.tan(Math.PI / 12) * Math.max(dx, dy);
}
