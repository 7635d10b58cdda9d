import type { Angle, Force, Length, Quantity, Speed, Torque } from '../../quantity/index.ts';

/** f/sin(β/2), friction of a belt wedged in a groove of angle β. @source shigley-9, section 17-3 */
export const grooveFriction = (friction: number, grooveAngle: Angle): number =>
  friction / Math.sin(grooveAngle / 2);

export interface BeltTensions {
  /** e^(f·θ), largest (F1 − Fc)/(F2 − Fc) before the belt slips [-]. */
  readonly ratio: number;
  /** F1, tight side at the point of slipping [N]. */
  readonly tight: Force;
  /** F2, slack side then: the least that must be kept [N]. */
  readonly slack: Force;
  /** Fc = m·v² [N]. */
  readonly centrifugal: Force;
  /** (F1 + F2)/2, the least to set at rest between fixed sheaves, where a belt keeps its length and so its sum [N]. */
  readonly initial: Force;
}

export interface BeltTensionInput {
  /** T on this sheave [N·m], ≥ 0. */
  readonly torque: Torque;
  /** d, pitch diameter [m]. */
  readonly diameter: Length;
  /** θ, wrap [rad]. */
  readonly wrap: Angle;
  /** f, or that of the groove [-]. */
  readonly friction: number;
  /** m [kg/m] and v [m/s]; left out: slow. */
  readonly lineMass?: Quantity<'kg/m'>;
  readonly speed?: Speed;
}

/**
 * Tensions of a belt that is about to slip: (F1 − Fc)/(F2 − Fc) = e^(f·θ), F1 − F2 = 2T/d.
 * @source shigley-9, section 17-2, which sets a belt m·v² looser at rest than this
 */
export function beltTensions(input: BeltTensionInput): BeltTensions {
  const ratio = Math.exp(input.friction * input.wrap);
  const pull = (2 * input.torque) / input.diameter;
  const centrifugal = (input.lineMass ?? 0) * (input.speed ?? 0) ** 2;
  const slack = pull / (ratio - 1) + centrifugal;
  const tight = slack + pull;
  return {
    ratio,
    tight: tight as Force,
    slack: slack as Force,
    centrifugal: centrifugal as Force,
    initial: ((tight + slack) / 2) as Force,
  };
}

/**
 * Force that must press the faces of a sheave together, each against the belt, for a pull F1 − F2 without slip:
 * S = (F1 − F2)·cos(β/2)/(2·f), the friction all along the rim.
 * @returns S [N]
 * @source derived, normal force of a V in its groove; the rule of clamped pulleys T = 2·f·S·R/cos(β/2)
 */
export const clampForce = (pull: Force, friction: number, grooveAngle: Angle): Force =>
  ((pull * Math.cos(grooveAngle / 2)) / (2 * friction)) as Force;
