import { between2, type Point } from '../../geometry/index.ts';
import type { ActingLoads } from './actingLoads.ts';
import type { CuttingPlate } from './flatPlate.ts';
import type { NetSection } from './netSection.ts';
import { insideOf, isAheadOf } from './partAhead.ts';
import { WrenchSum } from './plateLoads.ts';

/** Loads that sit on the cut itself, as at a hole that is cut through its middle, belong to either part [m]. */
const ON_THE_CUT = 1e-7;

/**
 * Sum of the loads on the part ahead of a cut, about the middle of its metal, into the first six of `out`; the same with
 * the loads that sit on the cut itself into the next six.
 * @returns whether loads sit on the cut, so that the two differ
 */
export function sumAhead(
  plate: CuttingPlate,
  section: NetSection,
  loads: ActingLoads,
  out: Float64Array,
): boolean {
  const { nx, ny, offset } = section.line;
  const { points, lines, places } = loads;
  const isOneOfMany = section.walk !== undefined;
  let hasOnCut = false;
  out.fill(0);
  for (let i = 0; i < points; i++) {
    const ahead = places[i * 2]! * nx + places[i * 2 + 1]! * ny - offset;
    if (
      Math.abs(ahead) < ON_THE_CUT &&
      (!isOneOfMany || isOnChord(section, places[i * 2]!, places[i * 2 + 1]!))
    ) {
      addWrench(loads, i, out, 6);
      hasOnCut = true;
    } else if (isOneOfMany ? isAheadOf(plate, section, loads.inside(i)) : ahead > 0)
      addWrench(loads, i, out, 0);
  }
  for (let k = 0; k < lines.length; k++) {
    const at = points * 2 + k * 4;
    const a = places[at]! * nx + places[at + 1]! * ny - offset;
    const b = places[at + 2]! * nx + places[at + 3]! * ny - offset;
    // A line load that only meets the cut's line beside the cut lies whole in one part.
    if (a > 0 !== b > 0 && isCrossed(section, places, at, a / (a - b)))
      addCutLine(plate, section, loads, k, a / (a - b), a > 0, out);
    else if (isOneOfMany ? isAheadOf(plate, section, loads.inside(points + k)) : a > 0)
      addWrench(loads, points + k, out, 0);
  }
  for (let i = 0; i < 6; i++) out[6 + i] = out[6 + i]! + out[i]!;
  aboutMiddle(section.centroid, out, 0);
  if (hasOnCut) aboutMiddle(section.centroid, out, 6);
  return hasOnCut;
}

function addWrench({ wrenches }: ActingLoads, load: number, out: Float64Array, to: number): void {
  const from = load * 6;
  for (let i = 0; i < 6; i++) out[to + i] = out[to + i]! + wrenches[from + i]!;
}

/** Moments about the plate's origin brought to another point. */
function aboutMiddle({ x, y }: Point, out: Float64Array, at: number): void {
  const [fx, fy, fz] = [out[at]!, out[at + 1]!, out[at + 2]!];
  out[at + 3] = out[at + 3]! - y * fz;
  out[at + 4] = out[at + 4]! + x * fz;
  out[at + 5] = out[at + 5]! - x * fy + y * fx;
}

/** A line load that the cut's line divides: the parts of it that lie ahead. */
function addCutLine(
  plate: CuttingPlate,
  section: NetSection,
  { lines }: ActingLoads,
  k: number,
  share: number,
  isStartAhead: boolean,
  out: Float64Array,
): void {
  const load = lines[k]!;
  const sum = new WrenchSum({ x: 0, y: 0 });
  for (const [start, end, isAhead] of [
    [0, share, isStartAhead],
    [share, 1, !isStartAhead],
  ] as const) {
    const isIn = section.walk
      ? isAheadOf(plate, section, insideOf(plate, between2(load.from, load.to, (start + end) / 2)))
      : isAhead;
    if (isIn) sum.addLine(load, start, end);
  }
  for (let i = 0; i < 6; i++) out[i] = out[i]! + sum.sum[i]!;
}

function isCrossed(section: NetSection, places: Float64Array, at: number, share: number): boolean {
  if (!section.walk) return true;
  const x = places[at]! + share * (places[at + 2]! - places[at]!);
  const y = places[at + 1]! + share * (places[at + 3]! - places[at + 1]!);
  return isOnChord(section, x, y);
}

function isOnChord({ ends: [a, b] }: NetSection, x: number, y: number): boolean {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const along = (x - a.x) * ux + (y - a.y) * uy;
  return along >= 0 && along <= ux * ux + uy * uy;
}
