import { largestWave } from './largestWave.ts';

/** A round section for stress: R and its bore [m], A [m²], I [m⁴]. */
export interface StressSection {
  readonly radius: number;
  readonly area: number;
  readonly secondMoment: number;
  /** Largest shear on the surface by a force V: factor·V/A [-]. */
  readonly shearFactor: number;
}

export function stressSection(outside: number, wall: number): StressSection {
  const [R, r] = [outside / 2, outside / 2 - wall];
  return {
    radius: R,
    area: Math.PI * (R * R - r * r),
    secondMoment: (Math.PI / 4) * (R ** 4 - r ** 4),
    shearFactor: ((4 / 3) * (R * R + R * r + r * r)) / (R * R + r * r),
  };
}

/**
 * Largest equivalent stress on the surface of a tube: σ = N/A + M·R/I·cos φ, τ = T·R/J and of the shear forces, σv =
 * √(σ² + 3τ²), the largest of all angles φ from the place of the largest pull by bending [Pa].
 * @param normal, shearY, shearZ, torque, momentY, momentZ in the section [N], [N·m]
 * @source derived, distortion energy; shear of a hollow round section as its mean over the wall, shigley-9, table 3-2
 */
export function tubeStress(
  { radius, area, secondMoment, shearFactor }: StressSection,
  normal: number,
  shearY: number,
  shearZ: number,
  torque: number,
  momentY: number,
  momentZ: number,
): number {
  const moment = Math.sqrt(momentY * momentY + momentZ * momentZ);
  // The largest pull by bending lies at y along −Mz, z along My.
  const y = moment > 0 ? -momentZ / moment : 1;
  const z = moment > 0 ? momentY / moment : 0;
  const axial = normal / area;
  const bending = (moment * radius) / secondMoment;
  const twist = (torque * radius) / (2 * secondMoment);
  const across = shearFactor / area;
  // τ = twist + u·cos φ + v·sin φ.
  const u = across * (shearZ * y - shearY * z);
  const v = -across * (shearZ * z + shearY * y);
  // σ² + 3τ², sorted by cos φ, sin φ, cos 2φ and sin 2φ.
  return Math.sqrt(
    largestWave(
      axial * axial + 3 * twist * twist + (bending * bending + 3 * (u * u + v * v)) / 2,
      2 * axial * bending + 6 * twist * u,
      6 * twist * v,
      (bending * bending + 3 * (u * u - v * v)) / 2,
      3 * u * v,
    ),
  );
}

/** Places around a weld at which its stress range is followed. */
export const WELD_PLACES = 12;

/** σ along the tube at fixed places around it, in the member's own axes [Pa]. */
export function normalStressAround(
  { radius, area, secondMoment }: StressSection,
  normal: number,
  momentY: number,
  momentZ: number,
): readonly number[] {
  return Array.from({ length: WELD_PLACES }, (_, k) => {
    const angle = (2 * Math.PI * k) / WELD_PLACES;
    const [y, z] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    return normal / area + (momentY * z - momentZ * y) / secondMoment;
  });
}
