import type { Point } from '../../geometry/index.ts';
import type { CutLine } from './crossings.ts';
import { type CuttingPlate, cuttingPlate, type FlatPlate, reachAlong } from './flatPlate.ts';
import { addSections, type NetSection, openingReaches } from './netSection.ts';
import { insideOf } from './partAhead.ts';
import type { PlateWeld } from './seams.ts';

/** A plate with the cuts that are looked at. */
export interface CutPlate {
  readonly plate: CuttingPlate;
  readonly sections: readonly NetSection[];
  /** A place well inside the plate for one on its edge; the same few are asked for at every cut. */
  readonly inside: (at: Point) => Point;
}

/** Where to look beside the even sweep. */
export interface CutOptions {
  /** Places through which, and just beside which, cuts go in every direction: where loads enter. */
  readonly spots?: readonly Point[];
  readonly welds?: readonly PlateWeld[];
  /** How far from a weld metal is softened [m]. */
  readonly weldReach?: number;
}

/** Directions of the cuts, fifteen degrees apart. */
const DIRECTIONS = 12;
/** Even places of each direction, a thickness apart where that is fewer. */
const MOST_PLACES = 12;
/** Cuts go this far beside a place where a load enters or the outline turns in [m]. */
const BESIDE = 2e-5;
/** Of two cuts nearer than this, one is enough [m]. */
const SAME_CUT = 1e-5;
/** The first cut beside a seam lies this far from it [m]. */
const BESIDE_WELD = 3e-4;
/** Even cuts this near to a place that is cut anyway tell nothing new [m]. */
const EVEN_SKIP = 5e-4;
/** Aluminum is softened for about an inch beside a weld. @source memory, aluminum design manual */
const WELD_REACH = 0.025;

/** Makes the cuts of a plate; loads come later, so that many cases share them. */
export function cutPlate(flat: FlatPlate, options: CutOptions = {}): CutPlate {
  const welds = options.welds ?? [];
  const plate = cuttingPlate(flat, welds, options.weldReach ?? WELD_REACH);
  const spots = [...(options.spots ?? []), ...hollows(plate), ...openingMiddles(flat)];
  const ends = welds.flatMap(({ from, to }) => [from, to]);
  const sections: NetSection[] = [];
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = (k * Math.PI) / DIRECTIONS;
    const reaches = openingReaches(plate, angle);
    for (const line of cutLines(plate, angle, spots, ends)) addSections(plate, line, reaches, sections);
  }
  return { plate, sections, inside: rememberInside(plate) };
}

function rememberInside(plate: CuttingPlate): (at: Point) => Point {
  const known: { readonly at: Point; readonly inner: Point }[] = [];
  return (at) => {
    const found = known.find((one) => one.at.x === at.x && one.at.y === at.y);
    if (found) return found.inner;
    const inner = insideOf(plate, at);
    known.push({ at, inner });
    return inner;
  };
}

function cutLines(
  plate: CuttingPlate,
  angle: number,
  spots: readonly Point[],
  beside: readonly Point[],
): CutLine[] {
  const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
  const [low, high] = reachAlong(plate.outline, angle);
  const special: number[] = [];
  for (const p of spots) special.push(p.x * nx + p.y * ny);
  for (const p of beside) {
    const at = p.x * nx + p.y * ny;
    special.push(at - BESIDE_WELD, at + BESIDE_WELD);
  }
  special.sort((a, b) => a - b);
  const chosen = special.filter((d, i) => i === 0 || d - special[i - 1]! > SAME_CUT);
  const places = Math.min(MOST_PLACES, Math.max(1, Math.round((high - low) / plate.thickness)));
  for (let i = 0; i < places; i++) {
    const d = low + ((high - low) * (i + 0.5)) / places;
    if (!chosen.some((one) => Math.abs(one - d) < EVEN_SKIP)) chosen.push(d);
  }
  return chosen.filter((d) => d > low && d < high).map((offset) => ({ angle, nx, ny, offset }));
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
