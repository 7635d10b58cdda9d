import type { Force, Length, Pressure, Torque } from '../../quantity/index.ts';

/** How the shear yield follows from yield; books differ. */
export type ShearYieldRule = 'distortion-energy' | 'max-shear';

/** Ssy/Sy: 0.577 by distortion energy (Shigley), 0.5 by maximum shear (Mott). @source shigley-9, section 7-7; mott, section 11-4 */
export const shearYieldShare = (rule: ShearYieldRule): number => (rule === 'distortion-energy' ? 0.577 : 0.5);

export interface KeyInput {
  /** D, shaft [m]. */
  readonly shaft: Length;
  /** T [N·m], ≥ 0. */
  readonly torque: Torque;
  /** W [m]. */
  readonly width: Length;
  /** H [m]. */
  readonly height: Length;
  /** L, key in contact [m]. */
  readonly length: Length;
}

export interface KeyStress {
  /** F = 2T/D [N]. */
  readonly force: Force;
  /** τ = F/(W·L) [Pa]. */
  readonly shear: Pressure;
  /** σ = F/(L·H/2) [Pa]: on key, shaft and hub alike. */
  readonly bearing: Pressure;
}

/** Shear and bearing of a parallel key half in the shaft. @source shigley-9, section 7-7; mott, equations 11-1 to 11-4 */
export function keyStress({ shaft, torque, width, height, length }: KeyInput): KeyStress {
  const force = (2 * torque) / shaft;
  return {
    force: force as Force,
    shear: (force / (width * length)) as Pressure,
    bearing: (force / (length * (height / 2))) as Pressure,
  };
}

/** Length for a factor n: the longer of shear and bearing [m]. @source shigley-9, example 7-6 */
export function keyLength(
  { shaft, torque, width, height }: Omit<KeyInput, 'length'>,
  keyYield: Pressure,
  factor: number,
  rule: ShearYieldRule,
): { readonly shear: Length; readonly bearing: Length } {
  const force = (2 * torque) / shaft;
  return {
    shear: ((force * factor) / (width * shearYieldShare(rule) * keyYield)) as Length,
    bearing: ((2 * force * factor) / (height * keyYield)) as Length,
  };
}

/** A key longer than 1.5 times the shaft does not carry evenly. @source shigley-9, section 7-7 */
export const longestKey = (shaft: Length): Length => (1.5 * shaft) as Length;
