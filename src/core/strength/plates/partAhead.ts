import { between2, type Point } from '../../geometry/index.ts';
import type { CuttingPlate, WalkPoint } from './flatPlate.ts';
import { aheadOf, type NetSection } from './netSection.ts';
import { type PlateLoads, WrenchSum } from './plateLoads.ts';

/** Loads that sit on the cut itself, as at a hole that is cut through its middle, belong to either part [m]. */
const ON_THE_CUT = 1e-7;

/**
 * Sum of the loads on the part ahead of a cut, about the middle of its metal. Loads at points of the cut itself are
 * taken with that part and without: `withOnes` and `without`, alike where there are none.
 */
export function loadsAhead(
  plate: CuttingPlate,
  section: NetSection,
  { points, lines }: PlateLoads,
): { readonly without: Float64Array; readonly withOnes?: Float64Array } {
  const { line, centroid } = section;
  const sum = new WrenchSum(centroid);
  const isIn = section.walk ? partTest(plate, section) : undefined;
  let onCut: number[] | undefined;
  for (let i = 0; i < points.length; i++) {
    const load = points[i]!;
    const ahead = aheadOf(line, load.at);
    if (Math.abs(ahead) < ON_THE_CUT && (!isIn || isBetween(section, load.at))) {
      onCut = onCut ?? [];
      onCut.push(i);
    } else if (isIn ? isIn(load.at) : ahead > 0) sum.addPoint(load);
  }
  for (const load of lines) {
    const [a, b] = [aheadOf(line, load.from), aheadOf(line, load.to)];
    const add = (start: number, end: number): void => {
      // Its middle tells where a stretch lies; its ends may be corners.
      const middle = between2(load.from, load.to, (start + end) / 2);
      if (isIn ? isIn(middle) : aheadOf(line, middle) > 0) sum.addLine(load, start, end);
    };
    if (a > 0 === b > 0) add(0, 1);
    else {
      add(0, a / (a - b));
      add(a / (a - b), 1);
    }
  }
  if (!onCut) return { without: sum.sum };
  const without = sum.sum.slice();
  for (const i of onCut) sum.addPoint(points[i]!);
  return { without, withOnes: sum.sum };
}

function isBetween({ ends: [a, b] }: NetSection, p: Point): boolean {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const along = (p.x - a.x) * ux + (p.y - a.y) * uy;
  return along >= 0 && along <= ux * ux + uy * uy;
}

/** Round edges are cut into chords; loads on an edge are looked for this far inside [m]. */
const INSIDE = 1e-4;

/**
 * Whether a point lies on the part ahead of a cut that leaves other crossings of its line whole: inside the stretch of
 * outline from one end of the cut to the other. A point in neither part, beside the plate, goes by its side of the line.
 */
function partTest({ walk }: CuttingPlate, { walk: span, ends, line }: NetSection): (p: Point) => boolean {
  const [from, to] = span!;
  const after = walk.filter(({ key }) => (from < to ? key > from && key < to : key > from));
  const before = from < to ? [] : walk.filter(({ key }) => key < to);
  const part = [ends[0], ...after, ...before, ends[1]];
  const rest = [
    ends[1],
    ...walk.filter(({ key }) => (from < to ? key > to : key > to && key < from)),
    ...(from < to ? walk.filter(({ key }) => key < from) : []),
    ends[0],
  ];
  return (p) => {
    const inner = inward(walk, p);
    if (contains(part, inner)) return true;
    if (contains(rest, inner)) return false;
    return aheadOf(line, p) > 0;
  };
}

function contains(polygon: readonly Point[], { x, y }: Point): boolean {
  let isInside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [p, q] = [polygon[i]!, polygon[j]!];
    if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) isInside = !isInside;
  }
  return isInside;
}

/** A point on the edge or beside it moved a little inside, away from the nearest chord of the outline. */
function inward(walk: readonly WalkPoint[], p: Point): Point {
  let least = contains(walk, p) ? INSIDE : Number.POSITIVE_INFINITY;
  let moved = p;
  for (let i = 0; i < walk.length; i++) {
    const [a, b] = [walk[i]!, walk[(i + 1) % walk.length]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const length = Math.hypot(dx, dy);
    const along = Math.min(Math.max(((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0), length);
    const foot = { x: a.x + (dx / length) * along, y: a.y + (dy / length) * along };
    const distance = Math.hypot(p.x - foot.x, p.y - foot.y);
    if (distance >= least) continue;
    least = distance;
    moved = { x: foot.x - (dy / length) * INSIDE, y: foot.y + (dx / length) * INSIDE };
  }
  return moved;
}
