import type { Angle, Force, Length, Torque } from '../../quantity/index.ts';
import {
  type ChordWall,
  chordPrestress,
  faceUnit,
  gapFactor,
  shearUnit,
  TUBE_JOINT_FACTOR,
  wallRatio,
} from './chordWall.ts';
import { braceLimits, chordLimits, type OutsideRule, outsideOf, shareOutside } from './validity.ts';

/** T and Y: one brace; X: another straight across; K: two braces on the same side whose pull and push balance. */
export type TubeJointKind = 'T' | 'Y' | 'X' | 'K';

/** A tube welded all round to another. */
export interface BraceJoint {
  readonly kind: TubeJointKind;
  readonly chord: ChordWall;
  /** d1, t1 [m] and θ, between the center lines [rad], 0 to π/2. */
  readonly brace: { readonly outside: Length; readonly wall: Length; readonly angle: Angle };
  /** g between the toes of both braces [m], K joints only; left out: the brace counts by itself. */
  readonly gap?: Length;
  /** γM5 or another factor that the resistance is divided by; left out: 1. */
  readonly partialFactor?: number;
}

/** A pair of limits: the chord's face gives way, or the brace shears out of its wall. */
export interface FaceAndPunching {
  readonly face: number;
  /** Absent where the brace is as wide as the chord's bore: nothing is left to punch through. */
  readonly punching?: number;
}

/** What the wall of the chord takes from a brace. */
export interface BraceResistance {
  /** β, γ, kp [-]. */
  readonly beta: number;
  readonly gamma: number;
  readonly prestress: number;
  /** [N], [N·m] and [N·m], each divided by the partial factor and reduced where limits are not kept. */
  readonly normal: FaceAndPunching;
  readonly inPlane: FaceAndPunching;
  readonly outOfPlane: FaceAndPunching;
  readonly outside: readonly OutsideRule[];
  /** 1, or less where a limit of the rules is not kept [-]. */
  readonly share: number;
}

/** What the brace brings to the surface of the chord; signs do not matter. */
export interface BraceLoad {
  readonly normal: Force;
  readonly inPlane: Torque;
  readonly outOfPlane: Torque;
}

/**
 * Resistance of the chord's wall to a brace: face and punching shear under normal force and both moments.
 * @source en-1993-1-8, tables 7.2 and 7.5; K joints and kg as in tube-joint-sheets, the rest from memory
 */
export function braceResistance(joint: BraceJoint): BraceResistance {
  const { chord, brace, kind, partialFactor = TUBE_JOINT_FACTOR } = joint;
  const outside = outsideOf([...chordLimits(chord, kind === 'X'), ...braceLimits(chord, brace)]);
  const share = shareOutside(outside);
  const prestress = chordPrestress(chord, partialFactor);
  const [beta, gamma] = [brace.outside / chord.outside, wallRatio(chord)];
  const sin = Math.sin(brace.angle);
  const unit = (share * faceUnit(chord) * prestress) / sin / partialFactor;
  const shear = ((share * shearUnit(chord)) / partialFactor) * brace.outside;
  const canPunch = brace.outside <= chord.outside - 2 * chord.wall;
  const pair = (face: number, punching: number): FaceAndPunching =>
    canPunch ? { face, punching } : { face };
  return {
    beta,
    gamma,
    prestress,
    normal: pair(unit * normalFactor(joint, beta, gamma), (shear * Math.PI * (1 + sin)) / (2 * sin ** 2)),
    inPlane: pair(
      unit * brace.outside * 4.85 * Math.sqrt(gamma) * beta,
      (shear * brace.outside * (1 + 3 * sin)) / (4 * sin ** 2),
    ),
    outOfPlane: pair(
      (unit * brace.outside * 2.7) / (1 - 0.81 * beta),
      (shear * brace.outside * (3 + sin)) / (4 * sin ** 2),
    ),
    outside,
    share,
  };
}

function normalFactor({ kind, chord, gap }: BraceJoint, beta: number, gamma: number): number {
  if (kind === 'X') return 5.2 / (1 - 0.81 * beta);
  if (kind === 'K' && gap !== undefined) return gapFactor(chord, gap) * (1.8 + 10.2 * beta);
  return gamma ** 0.2 * (2.8 + 14.2 * beta ** 2);
}

/** The same with another push along the chord: its face weakens, punching does not. @param prestress kp [-] */
export function underPrestress(resistance: BraceResistance, prestress: number): BraceResistance {
  const share = prestress / resistance.prestress;
  const pushed = (one: FaceAndPunching): FaceAndPunching => ({ ...one, face: one.face * share });
  return {
    ...resistance,
    prestress,
    normal: pushed(resistance.normal),
    inPlane: pushed(resistance.inPlane),
    outOfPlane: pushed(resistance.outOfPlane),
  };
}

/** The smaller of both. */
export const weakest = ({ face, punching }: FaceAndPunching): number =>
  punching === undefined ? face : Math.min(face, punching);

/**
 * N/NRd + (Mip/Mip,Rd)² + |Mop|/Mop,Rd: over 1 the wall gives way by the rule [-].
 * @source en-1993-1-8, section 7.4.2, expression 7.3
 */
export function braceInteraction(resistance: BraceResistance, load: BraceLoad): number {
  return (
    Math.abs(load.normal) / weakest(resistance.normal) +
    (load.inPlane / weakest(resistance.inPlane)) ** 2 +
    Math.abs(load.outOfPlane) / weakest(resistance.outOfPlane)
  );
}
