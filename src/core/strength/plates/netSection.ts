import { type Point, segmentHeading } from '../../geometry/index.ts';
import { alongLine, type Crossing, type CutLine, crossings } from './crossings.ts';
import { type CuttingPlate, reachAlong } from './flatPlate.ts';

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
  /** Where the part ahead of the cut begins and ends on the outline; absent where the line cuts the plate once. */
  readonly walk?: readonly [from: number, to: number];
}

const TURN = 2 * Math.PI;
/** Cuts as much askew as this have even shear [rad]. */
const ASKEW = Math.PI / 9;
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
 * Net sections of a plate along a line, one for each place where the line crosses it from edge to edge. A cut that leaves
 * less metal than the plate is thick is none: what happens in a corner that small is no bending of a plate.
 */
export function netSections(plate: CuttingPlate, line: CutLine): NetSection[] {
  const edges = crossings(plate.outline, line);
  if (edges.length < 2) return [];
  const gaps = plate.openings.flatMap((pieces): Gap[] => {
    const meets = crossings(pieces, line);
    if (meets.length === 0) return [];
    const reach = reachAlong(pieces, line.nx, line.ny);
    return pairs(meets).map(([a, b]) => ({ from: a.v, to: b.v, reach }));
  });
  const chords = pairs(edges);
  return chords.flatMap((chord): NetSection[] => {
    const section = sectionOf(plate, line, chord, gaps);
    return section ? [chords.length > 1 ? { ...section, walk: [chord[0].key, chord[1].key] } : section] : [];
  });
}

function pairs(all: readonly Crossing[]): (readonly [Crossing, Crossing])[] {
  return Array.from({ length: all.length >> 1 }, (_, k) => [all[2 * k]!, all[2 * k + 1]!] as const);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly beside: readonly Gap[];
}

function sectionOf(
  plate: CuttingPlate,
  line: CutLine,
  [low, high]: readonly [Crossing, Crossing],
  gaps: readonly Gap[],
): NetSection | undefined {
  const { thickness } = plate;
  const stretches = stretchesOf(low.v, high.v, gaps);
  let [width, first] = [0, 0];
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
    shearPeak: 1 + 0.5 * Math.max(0, 1 - skewOf(plate, line, low, high) / ASKEW),
    ends: [pointOn(line, low.v), pointOn(line, high.v)],
  };
}

/**
 * Angle between the cut's normal and the mean course of the edges that it meets [rad]. A strip under even pull, cut askew,
 * has even shear; a parabola there would find 41 % too much.
 */
function skewOf({ outline }: CuttingPlate, { angle }: CutLine, low: Crossing, high: Crossing): number {
  const lean = ({ key }: Crossing, turn: number): number => {
    const i = Math.min(Math.floor(key), outline.length - 1);
    const lean = segmentHeading(outline[i]!, key - i) + turn - angle;
    return lean - TURN * Math.round(lean / TURN);
  };
  return Math.abs(lean(low, 0) + lean(high, Math.PI)) / 2;
}

const pointOn = ({ nx, ny, offset }: CutLine, v: number): Point => ({
  x: nx * offset - ny * v,
  y: ny * offset + nx * v,
});

function stretchesOf(low: number, high: number, gaps: readonly Gap[]): Stretch[] {
  const within = gaps.filter(({ from, to }) => to > low && from < high).sort((a, b) => a.from - b.from);
  const stretches: Stretch[] = [];
  let [at, before] = [low, undefined as Gap | undefined];
  const add = (to: number, next: Gap | undefined): void => {
    if (to - at > NOTHING)
      stretches.push({ from: at, to, beside: [before, next].filter((gap) => gap !== undefined) });
  };
  for (const gap of within) {
    if (gap.from > at) add(gap.from, gap);
    if (gap.to <= at) continue;
    [at, before] = [gap.to, gap];
  }
  if (at < high) add(high, undefined);
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
  const stiffness = stretches.map(({ from, to, beside }) => {
    const length = Math.max(0, ...beside.map(({ reach }) => reach[1] - reach[0]));
    const b = to - from;
    return b ** 3 / (length ** 2 + SHEAR_GIVE * b ** 2);
  });
  const whole = stiffness.reduce((sum, k) => sum + k, 0);
  return stretches.map(({ from, to, beside }, i) => ({
    from: from - middle,
    to: to - middle,
    shearShare: stiffness[i]! / whole,
    lever: Math.max(0, ...beside.map(({ reach }) => Math.abs(offset - (reach[0] + reach[1]) / 2))),
  }));
}

/** Distance ahead of the cut, negative behind it [m]. */
export const aheadOf = ({ nx, ny, offset }: CutLine, { x, y }: Point): number => x * nx + y * ny - offset;

/** Place along the cut [m]. */
export const placeAlong = (line: CutLine, { x, y }: Point): number => alongLine(line, x, y);
