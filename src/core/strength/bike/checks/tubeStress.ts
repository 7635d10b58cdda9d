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

/** Angles looked at around the tube. */
const AROUND = 16;
const COS = Array.from({ length: AROUND }, (_, k) => Math.cos((2 * Math.PI * k) / AROUND));
const SIN = Array.from({ length: AROUND }, (_, k) => Math.sin((2 * Math.PI * k) / AROUND));

/**
 * Largest equivalent stress on the surface of a tube: σ = N/A + M·R/I·cos φ, τ = T·R/J and of the shear forces, σv =
 * √(σ² + 3τ²), at sixteen places counted from that of the largest bending [Pa].
 * @param six normal, shear y, shear z, torque, moment y, moment z in the section [N], [N·m]
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
  const bending = Math.hypot(momentY, momentZ);
  // The place of the largest pull by bending: y along −Mz, z along My.
  const [cy, cz] = bending > 0 ? [-momentZ / bending, momentY / bending] : [1, 0];
  const axial = normal / area;
  const peak = (bending * radius) / secondMoment;
  const twist = (torque * radius) / (2 * secondMoment);
  const across = shearFactor / area;
  let most = 0;
  for (let k = 0; k < AROUND; k++) {
    const [c, s] = [COS[k]!, SIN[k]!];
    const [y, z] = [cy * c - cz * s, cz * c + cy * s];
    const sigma = axial + peak * c;
    const tau = twist + across * (shearZ * y - shearY * z);
    most = Math.max(most, sigma * sigma + 3 * tau * tau);
  }
  return Math.sqrt(most);
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
