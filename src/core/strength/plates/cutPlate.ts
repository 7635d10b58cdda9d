import type { Point } from '../../geometry/index.ts';
import type { CutLine } from './crossings.ts';
import { type CuttingPlate, cuttingPlate, type FlatPlate, reachAlong } from './flatPlate.ts';
import { type NetSection, netSections } from './netSection.ts';

/** A plate with the cuts that are looked at. */
export interface CutPlate {
  readonly plate: CuttingPlate;
  readonly sections: readonly PlateSection[];
}

export interface PlateSection extends NetSection {
  /** Within reach of a weld. */
  readonly isAtWeld: boolean;
}

/** A weld on the plate: a seam at its edge or on its face. */
export interface PlateWeld {
  readonly from: Point;
  readonly to: Point;
}

/** Where to look beside the even sweep. */
export interface CutOptions {
  /** Places through which, and just beside which, cuts go in every direction: where loads enter. */
  readonly spots?: readonly Point[];
  readonly welds?: readonly PlateWeld[];
  /** How far from a weld metal is softened [m]. */
  readonly weldReach?: number;
}

/** Directions of the cuts, fifteen degrees apart, and places of each across the plate. */
const DIRECTIONS = 12;
const PLACES = 24;
/** Cuts go this far beside a place where a load enters or the outline turns in [m]. */
const BESIDE = 2e-5;
/** Of two cuts nearer than this, one is enough [m]. */
const SAME_CUT = 1e-5;
/** A cut this near to a seam crosses it; seams round a saddle come as chords [m]. */
const ON_WELD = 2.5e-4;
/** The first cut beside a seam lies this far from it [m]. */
const BESIDE_WELD = 3e-4;
/** Even cuts this near to a place that is cut anyway tell nothing new [m]. */
const EVEN_SKIP = 5e-4;
/** Aluminum is softened for about an inch beside a weld. @source memory, aluminum design manual */
const WELD_REACH = 0.025;

/** Makes the cuts of a plate; loads come later, so that many cases share them. */
export function cutPlate(flat: FlatPlate, options: CutOptions = {}): CutPlate {
  const plate = cuttingPlate(flat);
  const spots = [...(options.spots ?? []), ...hollows(plate), ...openingMiddles(flat)];
  const ends = (options.welds ?? []).flatMap(({ from, to }) => [from, to]);
  const sections = Array.from({ length: DIRECTIONS }, (_, k) => {
    const angle = (k * Math.PI) / DIRECTIONS;
    return offsets(plate, angle, spots, ends).flatMap((line) => netSections(plate, line));
  }).flat();
  const reach = options.weldReach ?? WELD_REACH;
  const welds = options.welds ?? [];
  return {
    plate,
    sections: sections.flatMap((section) => besideWelds(section, welds, reach)),
  };
}

/** A cut through a seam is none of the plate alone: what it is welded to bends with it there. */
function besideWelds(section: NetSection, welds: readonly PlateWeld[], reach: number): PlateSection[] {
  const gap = Math.min(
    Number.POSITIVE_INFINITY,
    ...welds.map(({ from, to }) => gapBetween(section.ends, [from, to])),
  );
  return gap < ON_WELD ? [] : [{ ...section, isAtWeld: gap <= reach }];
}

function offsets(
  plate: CuttingPlate,
  angle: number,
  spots: readonly Point[],
  beside: readonly Point[],
): CutLine[] {
  const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
  const [low, high] = reachAlong(plate.outline, nx, ny);
  const at = ({ x, y }: Point): number => x * nx + y * ny;
  const special = [
    ...spots.map(at),
    ...beside.flatMap((p) => [at(p) - BESIDE_WELD, at(p) + BESIDE_WELD]),
  ].sort((a, b) => a - b);
  const chosen = special.filter((d, i) => i === 0 || d - special[i - 1]! > SAME_CUT);
  const even = Array.from({ length: PLACES }, (_, i) => low + ((high - low) * (i + 0.5)) / PLACES);
  return [...chosen, ...even.filter((d) => !chosen.some((one) => Math.abs(one - d) < EVEN_SKIP))]
    .filter((d) => d > low && d < high)
    .map((offset) => ({ angle, nx, ny, offset }));
}

/** Corners where the outline turns in, each a little to both sides in every direction. */
function hollows({ outline }: CuttingPlate): Point[] {
  const n = outline.length;
  return outline.flatMap((piece, i): Point[] => {
    const [into, out] = [headingAtEnd(outline[(i + n - 1) % n]!), headingAtStart(piece)];
    const turn = into.x * out.y - into.y * out.x;
    if (turn > -1e-6) return [];
    const { x, y } = piece.from;
    return [
      { x: x + BESIDE, y: y + BESIDE },
      { x: x - BESIDE, y: y - BESIDE },
    ];
  });
}

type Piece = CuttingPlate['outline'][number];

function headingAtStart(piece: Piece): Point {
  if (piece.kind === 'line') return unit(piece.to.x - piece.from.x, piece.to.y - piece.from.y);
  return tangent(piece.startAngle, piece.sweep);
}

function headingAtEnd(piece: Piece): Point {
  if (piece.kind === 'line') return headingAtStart(piece);
  return tangent(piece.startAngle + piece.sweep, piece.sweep);
}

const tangent = (angle: number, sweep: number): Point => ({
  x: -Math.sin(angle) * Math.sign(sweep),
  y: Math.cos(angle) * Math.sign(sweep),
});

function unit(x: number, y: number): Point {
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

/** Middles of openings, where the metal beside them is least. */
function openingMiddles({ openings }: FlatPlate): Point[] {
  return openings.map((loop) => {
    const xs = loop.map(({ x }) => x);
    const ys = loop.map(({ y }) => y);
    return {
      x: (Math.min(...xs) + Math.max(...xs)) / 2,
      y: (Math.min(...ys) + Math.max(...ys)) / 2,
    };
  });
}

/** Distance between two straight lines [m]. */
function gapBetween([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b));
}

function toLine(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
