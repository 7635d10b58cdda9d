import type { NetSection } from './netSection.ts';

/** Forces on the part ahead of a cut, about the middle of its metal. */
export interface CutForces {
  /** N, pull across the cut [N] */
  readonly normal: number;
  /** V, shear in the plane along the cut, and out of the plane [N] */
  readonly shear: number;
  readonly shearOut: number;
  /** Mz, bends in the plane [N·m] */
  readonly moment: number;
  /** Mu about the cut's own line: bends the plate out of its plane [N·m] */
  readonly momentOut: number;
  /** T about the normal of the cut [N·m] */
  readonly torque: number;
}

/** Largest von Mises stress of a cut [Pa]. */
export interface CutStress {
  readonly equivalent: number;
  readonly at: 'edge' | 'middle' | 'ligament edge';
}

/** Places of `forcesOf` in its six numbers. */
const [NORMAL, SHEAR, SHEAR_OUT, MOMENT, MOMENT_OUT, TORQUE] = [0, 1, 2, 3, 4, 5] as const;

/** Parts of a sum of forces and moments, six numbers from `at`, along the axes of a cut: N, V, Vz, Mz, Mu, T into `out`. */
export function forcesOf(
  { line: { nx, ny } }: NetSection,
  sum: Float64Array,
  at: number,
  out: Float64Array,
): void {
  const fx = sum[at]!;
  const fy = sum[at + 1]!;
  const mx = sum[at + 3]!;
  const my = sum[at + 4]!;
  out[NORMAL] = fx * nx + fy * ny;
  out[SHEAR] = fy * nx - fx * ny;
  out[SHEAR_OUT] = sum[at + 2]!;
  out[MOMENT] = sum[at + 5]!;
  out[MOMENT_OUT] = my * nx - mx * ny;
  out[TORQUE] = mx * nx + my * ny;
}

/** The six numbers by name. */
export const namedForces = (of: Float64Array): CutForces => ({
  normal: of[NORMAL]!,
  shear: of[SHEAR]!,
  shearOut: of[SHEAR_OUT]!,
  moment: of[MOMENT]!,
  momentOut: of[MOMENT_OUT]!,
  torque: of[TORQUE]!,
});

/** Numbers that are written again at every cut, so that a sweep makes no garbage. */
export interface StressScratch {
  /** N/A, Mz/I, bending out of the plane, twist, 1.5·Vz/A, |V| */
  readonly terms: Float64Array;
  /** σ² + 3·τ² at both edges of a ligament and in its core. */
  readonly squares: Float64Array;
}

export const stressScratch = (): StressScratch => ({
  terms: new Float64Array(6),
  squares: new Float64Array(3),
});

/**
 * Beam stress in a cut: at the edges σ = |N/A − Mz·e/I| + 6·Mu/(b·t²) + 6·Vi·s/(t·bi²), τ = 3·T/(b·t²); in the middle of
 * each ligament σ = |N/A − Mz·e/I| + 6·Mu/(b·t²), τ = k·Vi/Ai + 3·T/(b·t²), k = 1.5 in a cut square across, and at half
 * thickness τ = √((k·Vi/Ai)² + (1.5·Vz/A)²) without bending out of the plane; σv = √(σ² + 3·τ²). Vi·s bends a ligament
 * beside an opening by its share of the shear, s from the opening's middle.
 * @param forces as `forcesOf` gives them
 * @returns largest σ² + 3·τ² [Pa²]
 * @source shigley-9, sections 3-10 to 3-12 and 5-5; derived, posts beside an opening
 */
export function largestSquare(
  section: NetSection,
  forces: Float64Array,
  thickness: number,
  work: StressScratch,
): number {
  const { squares } = work;
  termsOf(section, forces, thickness, work.terms);
  let most = 0;
  for (let i = 0; i < section.ligaments.length; i++) {
    squaresOf(section, i, thickness, work);
    most = Math.max(most, squares[0]!, squares[1]!, squares[2]!);
  }
  return most;
}

/** The same with where it is. */
export function cutStress(section: NetSection, forces: Float64Array, thickness: number): CutStress {
  const work = stressScratch();
  termsOf(section, forces, thickness, work.terms);
  const last = section.ligaments.length - 1;
  let most = -1;
  let at: CutStress['at'] = 'edge';
  for (let i = 0; i <= last; i++) {
    squaresOf(section, i, thickness, work);
    const [start, end, core] = work.squares as unknown as readonly [number, number, number];
    if (start > most) [most, at] = [start, i === 0 ? 'edge' : 'ligament edge'];
    if (end > most) [most, at] = [end, i === last ? 'edge' : 'ligament edge'];
    if (core > most) [most, at] = [core, 'middle'];
  }
  return { equivalent: Math.sqrt(most), at };
}

function termsOf(section: NetSection, forces: Float64Array, t: number, terms: Float64Array): void {
  const { area, secondMoment, width } = section;
  const plate = width * t * t;
  terms[0] = forces[NORMAL]! / area;
  terms[1] = forces[MOMENT]! / secondMoment;
  terms[2] = (6 * Math.abs(forces[MOMENT_OUT]!)) / plate;
  terms[3] = (3 * Math.abs(forces[TORQUE]!)) / plate;
  terms[4] = (1.5 * forces[SHEAR_OUT]!) / area;
  terms[5] = Math.abs(forces[SHEAR]!);
}

function squaresOf({ ligaments, shearPeak }: NetSection, i: number, t: number, work: StressScratch): void {
  const { terms, squares } = work;
  const { from, to, shearShare, lever } = ligaments[i]!;
  const pull = terms[0]!;
  const slope = terms[1]!;
  const bend = terms[2]!;
  const twist = terms[3]!;
  const out = terms[4]!;
  const b = to - from;
  const shear = terms[5]! * shearShare;
  const edge = bend + (6 * shear * lever) / (t * b * b);
  const middle = Math.abs(pull - (slope * (from + to)) / 2);
  const peak = (shearPeak * shear) / (b * t);
  squares[0] = square(Math.abs(pull - slope * from) + edge, twist);
  squares[1] = square(Math.abs(pull - slope * to) + edge, twist);
  squares[2] = Math.max(square(middle + bend, peak + twist), middle * middle + 3 * (peak * peak + out * out));
}

/** σ² + 3·τ² */
const square = (sigma: number, tau: number): number => sigma * sigma + 3 * tau * tau;
