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

/** Parts of a sum of forces and moments along the axes of a cut. */
export function cutForces({ line: { nx, ny } }: NetSection, sum: Float64Array): CutForces {
  const [fx, fy, fz, mx, my, mz] = sum as unknown as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    normal: fx * nx + fy * ny,
    shear: fy * nx - fx * ny,
    shearOut: fz,
    moment: mz,
    momentOut: my * nx - mx * ny,
    torque: mx * nx + my * ny,
  };
}

/**
 * Beam stress in a cut: at the edges σ = |N/A − Mz·e/I| + 6·Mu/(b·t²) + 6·Vi·s/(t·bi²), τ = 3·T/(b·t²); in the middle of
 * each ligament σ = |N/A − Mz·e/I| + 6·Mu/(b·t²), τ = k·Vi/Ai + 3·T/(b·t²), k = 1.5 in a cut square across, and at half thickness
 * τ = √((k·Vi/Ai)² + (1.5·Vz/A)²) without bending out of the plane; σv = √(σ² + 3·τ²). Vi·s bends a ligament beside an opening by its share of
 * the shear, s from the opening's middle.
 * @source shigley-9, sections 3-10 to 3-12 and 5-5; derived, posts beside an opening
 */
export function cutStress(section: NetSection, forces: CutForces, thickness: number): CutStress {
  const { area, secondMoment, width, ligaments, shearPeak } = section;
  const plate = width * thickness * thickness;
  const pull = forces.normal / area;
  const slope = forces.moment / secondMoment;
  const bend = (6 * Math.abs(forces.momentOut)) / plate;
  const twist = (3 * Math.abs(forces.torque)) / plate;
  const out = Math.abs(forces.shearOut) / area;
  let [equivalent, at] = [-1, 'edge' as CutStress['at']];
  const see = (sigma: number, tau: number, where: CutStress['at']): void => {
    const value = Math.sqrt(sigma * sigma + 3 * tau * tau);
    if (value > equivalent) [equivalent, at] = [value, where];
  };
  const last = ligaments.length - 1;
  for (let i = 0; i <= last; i++) {
    const { from, to, shearShare, lever } = ligaments[i]!;
    const b = to - from;
    const shear = Math.abs(forces.shear) * shearShare;
    const local = (6 * shear * lever) / (thickness * b * b);
    see(Math.abs(pull - slope * from) + bend + local, twist, i === 0 ? 'edge' : 'ligament edge');
    see(Math.abs(pull - slope * to) + bend + local, twist, i === last ? 'edge' : 'ligament edge');
    const middle = Math.abs(pull - (slope * (from + to)) / 2);
    const inPlane = shear / (b * thickness);
    see(middle + bend, shearPeak * inPlane + twist, 'middle');
    see(middle, Math.hypot(shearPeak * inPlane, 1.5 * out), 'middle');
  }
  return { equivalent, at };
}
