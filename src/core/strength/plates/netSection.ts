import { type Point, segmentHeading } from '../../geometry/index.ts';
import { type Crossing, type CutLine, crossings } from './crossings.ts';
import { type CuttingPlate, reachAlong } from './flatPlate.ts';
import { gapToSeams } from './seams.ts';

/** A stretch of metal in a cut, between edges of outline and openings. */
export interface Ligament {
  /** From the section's centroid along the cut [m]. */
  readonly from: number;
  readonly to: number;
  /** Share of the shear in the plane that it takes [-]; all shares of a section sum to 1. */
  readonly shearShare: number;
  /** From the middle of the opening beside it, across the cut: the lever that bends it by its shear [m]. */
  readonly lever: number;
}

/**
 * One straight cut from edge to edge of a plate. It parts the plate in two even where the line meets the plate again
 * elsewhere: those places stay whole. Openings on the way leave ligaments that act together.
 */
export interface NetSection {
  readonly line: CutLine;
  /** Middle of the metal's area [m]. */
  readonly centroid: Point;
  readonly ligaments: readonly Ligament[];
  /** Σb [m] */
  readonly width: number;
  /** A = t·Σb [m²] */
  readonly area: number;
  /** I = Σ(b³·t/12 + b·t·e²), bending in the plane [m⁴] */
  readonly secondMoment: number;
  /** Largest over mean shear in the plane [-]: 1.5 square across, as in a beam, falling to 1 where the cut runs askew. */
  readonly shearPeak: number;
  /** Ends of the cut [m]. */
  readonly ends: readonly [Point, Point];
  /** Where the part ahead of the cut begins and ends on the outline; none where the line cuts the plate once. */
  readonly walk: readonly [from: number, to: number] | undefined;
  /** Within reach of a weld. */
  readonly isAtWeld: boolean;
}

const TURN = 2 * Math.PI;
/** Cuts as much askew as this have even shear [rad]. */
const ASKEW = Math.PI / 9;
/** A cut this near to a seam crosses it; seams round a saddle come as chords [m]. */
const ON_SEAM = 2.5e-4;
/** Stretches thinner than this are no metal [m]. */
const NOTHING = 1e-7;
/** 1.2·E/G of steel and aluminum: how much more a stout ligament gives by shear. */
const SHEAR_GIVE = 3.12;

interface Gap {
  readonly from: number;
  readonly to: number;
  /** Reach of the opening across the cut [m]. */
  readonly reach: readonly [number, number];
}

/**
 * Adds the net sections of a plate along a line, one for each place where the line crosses it from edge to edge. A cut
 * that leaves less metal than the plate is thick is none: what happens in a corner that small is no bending of a plate;
 * nor is one through a seam, since what the plate is welded to bends with it there.
 */
export function addSections(
  plate: CuttingPlate,
  line: CutLine,
  reaches: OpeningReaches,
  sections: NetSection[],
): void {
  const edges = crossings(plate.outline, line);
  const gaps: Gap[] = [];
  for (let i = 0; i < reaches.length; i++) {
    const reach = reaches[i]!;
    if (line.offset <= reach[0] || line.offset >= reach[1]) continue;
    const meets = crossings(plate.openings[i]!, line);
    for (let k = 1; k < meets.length; k += 2) gaps.push({ from: meets[k - 1]!.v, to: meets[k]!.v, reach });
  }
  for (let k = 1; k < edges.length; k += 2) {
    const section = sectionOf(plate, line, [edges[k - 1]!, edges[k]!], gaps, edges.length > 2);
    if (section) sections.push(section);
  }
}

/** How far each opening reaches across the cuts of one direction [m]. */
export type OpeningReaches = readonly (readonly [number, number])[];

export const openingReaches = ({ openings }: CuttingPlate, angle: number): OpeningReaches =>
  openings.map((pieces) => reachAlong(pieces, angle));

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly before: Gap | undefined;
  readonly after: Gap | undefined;
}

function sectionOf(
  plate: CuttingPlate,
  line: CutLine,
  chord: readonly [Crossing, Crossing],
  gaps: readonly Gap[],
  isOneOfMany: boolean,
): NetSection | undefined {
  const { thickness } = plate;
  const [low, high] = chord;
  const ends = [pointOn(line, low.v), pointOn(line, high.v)] as const;
  const toSeam = gapToSeams(ends[0], ends[1], plate.welds);
  if (toSeam < ON_SEAM) return undefined;
  const stretches = stretchesOf(low.v, high.v, gaps);
  let width = 0;
  let first = 0;
  for (const { from, to } of stretches) {
    width += to - from;
    first += (to * to - from * from) / 2;
  }
  if (!(width >= thickness)) return undefined;
  const middle = first / width;
  let second = 0;
  for (const { from, to } of stretches) second += ((to - middle) ** 3 - (from - middle) ** 3) / 3;
  return {
    line,
    centroid: pointOn(line, middle),
    ligaments: ligamentsOf(stretches, middle, line.offset),
    width,
    area: width * thickness,
    secondMoment: second * thickness,
    shearPeak: 1 + 0.5 * Math.max(0, 1 - skewOf(plate, line, chord) / ASKEW),
    ends,
    walk: isOneOfMany ? [low.key, high.key] : undefined,
    isAtWeld: toSeam <= plate.weldReach,
  };
}

/**
 * Angle between the cut's normal and the mean course of the edges that it meets [rad]. A strip under even pull, cut askew,
 * has even shear; a parabola there would find 41 % too much.
 */
function skewOf(plate: CuttingPlate, line: CutLine, [low, high]: readonly [Crossing, Crossing]): number {
  return Math.abs(leanAt(plate, line, low, 0) + leanAt(plate, line, high, Math.PI)) / 2;
}

function leanAt({ outline }: CuttingPlate, { angle }: CutLine, { key }: Crossing, turn: number): number {
  const i = Math.min(Math.floor(key), outline.length - 1);
  const lean = segmentHeading(outline[i]!, key - i) + turn - angle;
  return lean - TURN * Math.round(lean / TURN);
}

const pointOn = ({ nx, ny, offset }: CutLine, v: number): Point => ({
  x: nx * offset - ny * v,
  y: ny * offset + nx * v,
});

function stretchesOf(low: number, high: number, gaps: readonly Gap[]): Stretch[] {
  if (gaps.length === 0) return [{ from: low, to: high, before: undefined, after: undefined }];
  const within = gaps.filter(({ from, to }) => to > low && from < high).sort((a, b) => a.from - b.from);
  const stretches: Stretch[] = [];
  let at = low;
  let before: Gap | undefined;
  for (const gap of within) {
    if (gap.from - at > NOTHING) stretches.push({ from: at, to: gap.from, before, after: gap });
    if (gap.to <= at) continue;
    at = gap.to;
    before = gap;
  }
  if (high - at > NOTHING) stretches.push({ from: at, to: high, before, after: undefined });
  return stretches;
}

/**
 * Shear splits by the stiffness of posts clamped at both ends of the opening between them, k = b³/(l² + 1.2·E/G·b²).
 * @source derived, Timoshenko beam with ends that do not turn
 */
function ligamentsOf(stretches: readonly Stretch[], middle: number, offset: number): Ligament[] {
  if (stretches.length === 1) {
    const { from, to } = stretches[0]!;
    return [{ from: from - middle, to: to - middle, shearShare: 1, lever: 0 }];
  }
  const stiffness = stretches.map(({ from, to, before, after }) => {
    const length = Math.max(lengthOf(before), lengthOf(after));
    const b = to - from;
    return b ** 3 / (length ** 2 + SHEAR_GIVE * b ** 2);
  });
  const whole = stiffness.reduce((sum, k) => sum + k, 0);
  return stretches.map(({ from, to, before, after }, i) => ({
    from: from - middle,
    to: to - middle,
    shearShare: stiffness[i]! / whole,
    lever: Math.max(leverOf(before, offset), leverOf(after, offset)),
  }));
}

const lengthOf = (gap: Gap | undefined): number => (gap ? gap.reach[1] - gap.reach[0] : 0);

const leverOf = (gap: Gap | undefined, offset: number): number =>
  gap ? Math.abs(offset - (gap.reach[0] + gap.reach[1]) / 2) : 0;
