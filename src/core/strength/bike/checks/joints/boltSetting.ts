import type { SourceRef } from '../../../../quantity/index.ts';
import { boltClass, findThread, slipFrictions } from '../../../../standards/index.ts';
import { preloadOfTorque } from '../../../bolts/boltJoint.ts';
import type { JointInput } from './jointInput.ts';

export interface BoltSetting {
  readonly preload: number;
  readonly friction: number;
  readonly shearArea: number;
  readonly yield: number;
  readonly diameter: number;
  readonly source: SourceRef;
}

/** Preload left out of the file: torque for 75 % of proof, plated threads. @source shigley-9, section 8-9 */
const PROOF_SHARE = 0.75;

const TORQUE_FACTOR = 0.2;
const PAINTED = slipFrictions.find(({ name }) => name === 'painted-or-oily')!.value;

/** Preload and strength of a bolt that a plate names; the file may say grade, torque and faces. */
export function boltOf({ build }: JointInput, plate: string, size: string): BoltSetting | undefined {
  const thread = findThread(size);
  if (!thread.ok) return undefined;
  const given = build.loads?.bolts?.[plate];
  const inch = thread.value.system === 'inch';
  const grade = boltClass(given?.grade ?? (inch ? 'grade 5' : '8.8'), thread.value.major);
  if (!grade.ok) return undefined;
  const { major, stressArea } = thread.value;
  const preload = given?.torque
    ? preloadOfTorque(given.torque, TORQUE_FACTOR, major)
    : PROOF_SHARE * grade.value.proof * stressArea;
  const friction = given?.friction ?? PAINTED;
  return {
    preload,
    friction,
    shearArea: stressArea,
    yield: grade.value.yield,
    diameter: major,
    source: grade.value.source,
  };
}
