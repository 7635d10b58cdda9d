import type { Build } from '../../../../build/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { JointInput } from './jointInput.ts';

type DiscBrake = Extract<NonNullable<Build['brakes']['front']>, { kind: 'disc' }>;

/** A disc brake at the limit of its wheel: what the pads drag with, and how far from the axle. */
export interface PadDrag {
  readonly one: LoadCase;
  readonly brake: DiscBrake;
  /** From the axle to the middle of the pads [m], and on the bracket there, square to that [N]. */
  readonly reach: number;
  readonly drag: number;
}

/** Height of a pad whose file does not say, by the diameter of its disc. @source practice */
const PAD_SHARE = 0.2;

/**
 * The wheel's torque while it brakes, F·R, at the middle of the pads, which reach to the rim of the disc.
 * @returns undefined without a disc brake or a case of its own
 * @source derived, moments about the axle
 */
export function padDrag({ build, bike, cases }: JointInput, wheel: 'front' | 'rear'): PadDrag | undefined {
  const brake = build.brakes[wheel];
  const one = cases.find(({ id }) => id === `braking-${wheel}`);
  const push = one?.applied.find(({ what }) => what === `${wheel} wheel on the ground`);
  if (brake?.kind !== 'disc' || !one || !push) return undefined;
  const { disc, caliper } = brake;
  const reach = disc.diameter / 2 - (caliper.padHeight ?? PAD_SHARE * disc.diameter) / 2;
  const torque = Math.abs(push.force.x) * bike.layout.fitted[wheel].radius;
  return { one, brake, reach, drag: torque / reach };
}
