export { type AssembledFrame, type AssemblyOutcome, assembleFrame } from './assemble.ts';
export { type BucklingMode, buckleFrame, lostStiffness, normalForces } from './buckling.ts';
export { type DividedFrame, divideFrame } from './divide.ts';
export { type SectionForces, sectionForces } from './internal.ts';
export { describeMechanism, type Mechanism } from './mechanism.ts';
export {
  type ByDirection,
  DIRECTIONS,
  type Direction,
  type FrameLoads,
  type FrameMass,
  type FrameMember,
  type FrameModel,
  type FrameSupport,
  type MemberLoad,
  type NodeLoad,
  type RigidLink,
  type Settlement,
} from './model.ts';
export { frequenciesBelow, massMatrix, type VibrationMode, vibrateFrame } from './modes.ts';
export type { FrameSolution } from './solution.ts';
export { solveFrame } from './solve.ts';
