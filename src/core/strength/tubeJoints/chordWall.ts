import type { Length, Pressure } from '../../quantity/index.ts';

/** The tube that others are welded to. */
export interface ChordWall {
  /** d0 [m], > 0. */
  readonly outside: Length;
  /** t0 [m], > 0, < d0/2. */
  readonly wall: Length;
  /** fy0, of the wall beside the weld [Pa], > 0. */
  readonly yield: Pressure;
  /** σ: largest push along the chord at the joint, of its normal force and bending [Pa]; ≤ 0: all pulled. */
  readonly push: Pressure;
}

/** γM5 of EN 1993-1-8, section 2.2. */
export const TUBE_JOINT_FACTOR = 1;

/**
 * kp: what a push along the chord leaves of its face, 1 − 0.3·n·(1 + n) with n = γM5·σ/fy0; 1 where it is pulled [-].
 * The rule ends at n = 1, where the chord itself yields: what is over counts there, by its own check, and kp stays 0.4.
 * @param partialFactor a factor wanted against yield counts for the push as for all else; γM5 of the standard is 1
 * @source en-1993-1-8, table 7.2; from memory
 */
export function chordPrestress({ push, yield: fy }: ChordWall, partialFactor = TUBE_JOINT_FACTOR): number {
  const n = Math.min(1, (partialFactor * push) / fy);
  return n > 0 ? 1 - 0.3 * n * (1 + n) : 1;
}

/** γ = d0/(2·t0) [-]. @source en-1993-1-8, section 1.5; tube-joint-sheets, both K joints */
export const wallRatio = ({ outside, wall }: ChordWall): number => outside / (2 * wall);

/**
 * kg of a K joint: γ^0.2·(1 + 0.024·γ^1.2/(1 + e^(0.5·g/t0 − 1.33))) [-].
 * @param gap g between the toes of the braces, negative where they overlap [m]
 * @source en-1993-1-8, table 7.2; tube-joint-sheets
 */
export function gapFactor(chord: ChordWall, gap: Length): number {
  const gamma = wallRatio(chord);
  return gamma ** 0.2 * (1 + (0.024 * gamma ** 1.2) / (1 + Math.exp((0.5 * gap) / chord.wall - 1.33)));
}

/** Steel over 355 MPa counts for nine tenths [-]. @source en-1993-1-8, section 7.1.1; from memory */
export const steelFactor = (fy: Pressure): number => (fy > 355e6 ? 0.9 : 1);

/** fy0·t0², fy0 with its factor [N]. */
export const faceUnit = ({ wall, yield: fy }: ChordWall): number => steelFactor(fy) * fy * wall ** 2;

/** fy0·t0/√3, what a length of wall carries in shear [N/m]. */
export const shearUnit = ({ wall, yield: fy }: ChordWall): number =>
  (steelFactor(fy) * fy * wall) / Math.sqrt(3);
