import type { Loop, LoopVertex, Point } from '../geometry/index.ts';
import type { Angle, Length } from '../quantity/index.ts';
import type { Chain } from '../standards/index.ts';
import { outsideDiameter, pitchDiameter } from './sprocket.ts';

export type ToothChain = Pick<Chain, 'pitch' | 'rollerDiameter'>;

/** The standard's construction of one tooth gap, in its own symbols. */
export interface ToothForm {
  /** R, radius of the seating curve [m]. */
  readonly seatingRadius: Length;
  /** A, half angle at which the seating curve ends, from the tangent [rad]. */
  readonly seatingAngle: Angle;
  /** B, angle of the working curve [rad]. */
  readonly workingAngle: Angle;
  /** M and T, center of the working curve beside and above the roller center [m]. */
  readonly workingOffset: { readonly m: Length; readonly t: Length };
  /** E, radius of the working curve [m]. */
  readonly workingRadius: Length;
  /** xy, chord of the working curve [m]. */
  readonly workingChord: Length;
  /** yz, straight between working and topping curve [m]. */
  readonly flat: Length;
  /** W and V, center of the topping curve beside and below the roller center [m]. */
  readonly toppingOffset: { readonly w: Length; readonly v: Length };
  /** F, radius of the topping curve [m]. */
  readonly toppingRadius: Length;
  /** H, height of the untrimmed tooth point above the chord line of the pitch polygon [m]. */
  readonly pointHeight: Length;
  /** S, height of the untrimmed tooth point above the roller-center tangent, along the gap's center line [m]. */
  readonly pointRise: Length;
  /** Diameter over untrimmed points, P·cot(180°/N) + 2·H [m]. */
  readonly pointDiameter: Length;
}

const INCH = 0.0254;
const DEGREE = Math.PI / 180;

/**
 * The Type II tooth of the roller chain standard: Ds = 1.005·Dr + 0.003 in, A = 35° + 60°/N, B = 18° − 56°/N,
 * ac = 0.8·Dr, E = 1.3025·Dr + 0.0015 in, ab = 1.4·Dr,
 * yz = Dr·(1.4·sin(17° − 64°/N) − 0.8·sin(18° − 56°/N)),
 * F = Dr·(0.8·cos(18° − 56°/N) + 1.4·cos(17° − 64°/N) − 1.3025) − 0.0015 in, H = √(F² − (1.4·Dr − P/2)²).
 * @source asme-b29-1, tooth form construction (coefficients from memory; the closure of the curve is checked by test)
 */
export function toothForm(chain: ToothChain, teeth: number): ToothForm {
  const { pitch: p, rollerDiameter: dr } = chain;
  const a = (35 + 60 / teeth) * DEGREE;
  const b = (18 - 56 / teeth) * DEGREE;
  const pressure = (17 - 64 / teeth) * DEGREE;
  const half = Math.PI / teeth;
  const topping = dr * (0.8 * Math.cos(b) + 1.4 * Math.cos(pressure) - 1.3025) - 0.0015 * INCH;
  const height = Math.sqrt(topping ** 2 - (1.4 * dr - p / 2) ** 2);
  if (!(height > 0)) throw new RangeError('the tooth form needs a roller of about five eighths of the pitch');
  return {
    seatingRadius: ((1.005 * dr + 0.003 * INCH) / 2) as Length,
    seatingAngle: a as Angle,
    workingAngle: b as Angle,
    workingOffset: { m: (0.8 * dr * Math.cos(a)) as Length, t: (0.8 * dr * Math.sin(a)) as Length },
    workingRadius: (1.3025 * dr + 0.0015 * INCH) as Length,
    workingChord: ((2.605 * dr + 0.003 * INCH) * Math.sin(b / 2)) as Length,
    flat: (dr * (1.4 * Math.sin(pressure) - 0.8 * Math.sin(b))) as Length,
    toppingOffset: { w: (1.4 * dr * Math.cos(half)) as Length, v: (1.4 * dr * Math.sin(half)) as Length },
    toppingRadius: topping as Length,
    pointHeight: height as Length,
    pointRise: ((p / 2) * Math.cos(half) + height * Math.sin(half)) as Length,
    pointDiameter: (p / Math.tan(half) + 2 * height) as Length,
  };
}

/**
 * Centers of the seated rollers, counterclockwise, the first on the +x axis; neighbors are exactly P apart.
 * @returns N points about the sprocket's center [m]
 * @source derived, regular polygon of side P
 */
export function rollerSeats(pitch: Length, teeth: number): readonly Point[] {
  const radius = pitchDiameter(pitch, teeth) / 2;
  return Array.from({ length: teeth }, (_, index) => {
    const angle = (2 * Math.PI * index) / teeth;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}

/**
 * Whole outline of a sprocket, counterclockwise about its center, a roller seat on the +x axis: per tooth the
 * seating, working and topping curves of {@link toothForm} with the straights between, trimmed at the
 * outside diameter P·(0.6 + cot(180°/N)). Eight vertices a tooth (seven when the flanks meet in a point below
 * that diameter), all curves exact arcs.
 * @source asme-b29-1, tooth form and outside diameter
 */
export function sprocketOutline(chain: ToothChain, teeth: number): Loop {
  const gap = gapProfile(chain, teeth);
  return rollerSeats(chain.pitch, teeth).flatMap((_, index) =>
    gap.map((vertex) => turned(vertex, index / teeth)),
  );
}

/**
 * One gap from the tip before it to the tip after it. Built with the roller center on +x: "out" is +x, and
 * the side passed first when going counterclockwise is −y.
 */
function gapProfile(chain: ToothChain, teeth: number): readonly LoopVertex[] {
  const form = toothForm(chain, teeth);
  const center = pitchDiameter(chain.pitch, teeth) / 2;
  const tip = tipOfFlank(form, chain, teeth);
  const { seatingAngle: a, workingAngle: b, workingRadius, workingOffset } = form;
  const x = { side: form.seatingRadius * Math.cos(a), out: -form.seatingRadius * Math.sin(a) };
  const y = {
    side: -workingOffset.m + workingRadius * Math.cos(a - b),
    out: workingOffset.t - workingRadius * Math.sin(a - b),
  };
  const z = { side: y.side + form.flat * Math.sin(a - b), out: y.out + form.flat * Math.cos(a - b) };
  const toppingSweep = sweepBetween(form, tip, z);
  const landSweep = 2 * (Math.PI / teeth - Math.atan2(tip.side, center + tip.out));
  const right = (p: Flank, sweep: number): LoopVertex => ({
    x: center + p.out,
    y: -p.side,
    bulge: bulgeOf(sweep),
  });
  const left = (p: Flank, sweep: number): LoopVertex => ({
    x: center + p.out,
    y: p.side,
    bulge: bulgeOf(sweep),
  });
  const flanks = [
    right(tip, toppingSweep),
    right(z, 0),
    right(y, -b),
    right(x, -(Math.PI - 2 * a)),
    left(x, -b),
    left(y, 0),
    left(z, toppingSweep),
  ];
  return isPointed(form, chain, teeth) ? flanks : [...flanks, left(tip, landSweep)];
}

/** A point of half a gap: distance from the gap's center line, and outward from the roller center [m]. */
interface Flank {
  readonly side: number;
  readonly out: number;
}

/** Where the topping curve meets the outside circle, or the tooth point when the blank is larger than that. */
function tipOfFlank(form: ToothForm, chain: ToothChain, teeth: number): Flank {
  const center = pitchDiameter(chain.pitch, teeth) / 2;
  if (isPointed(form, chain, teeth)) {
    const half = Math.PI / teeth;
    const point = form.pointDiameter / 2;
    return { side: point * Math.sin(half), out: point * Math.cos(half) - center };
  }
  const radius = outsideDiameter(chain.pitch, teeth) / 2;
  // Topping center in polar form about the sprocket's center; the tip lies on both circles.
  const bSide = form.toppingOffset.w;
  const bOut = center - form.toppingOffset.v;
  const bRadius = Math.hypot(bSide, bOut);
  const cosine = (radius ** 2 + bRadius ** 2 - form.toppingRadius ** 2) / (2 * radius * bRadius);
  const angle = Math.atan2(bSide, bOut) - Math.acos(cosine);
  return { side: radius * Math.sin(angle), out: radius * Math.cos(angle) - center };
}

/** The flanks meet before the outside circle trims them. */
function isPointed(form: ToothForm, chain: ToothChain, teeth: number): boolean {
  return form.pointDiameter <= outsideDiameter(chain.pitch, teeth);
}

function sweepBetween(form: ToothForm, from: Flank, to: Flank): number {
  const bearing = (p: Flank) => Math.atan2(p.side - form.toppingOffset.w, p.out + form.toppingOffset.v);
  return Math.abs(bearing(to) - bearing(from));
}

const bulgeOf = (sweep: number): number => Math.tan(sweep / 4);

function turned(vertex: LoopVertex, turns: number): LoopVertex {
  const cos = Math.cos(2 * Math.PI * turns);
  const sin = Math.sin(2 * Math.PI * turns);
  return { x: vertex.x * cos - vertex.y * sin, y: vertex.x * sin + vertex.y * cos, bulge: vertex.bulge };
}
