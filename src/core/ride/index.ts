export {
  type EigenvaluesAtSpeed,
  eigenvaluesOver,
  type Handling,
  type HandlingChange,
  handlingChanges,
  handlingOf,
} from './handling.ts';
export { handlingFigures } from './handlingFigures.ts';
export {
  type Matrix2,
  WHIPPLE_LIMITS,
  type WhippleMatrices,
  type WhippleParameters,
  type WhippleSums,
  whippleMatrices,
  whippleSums,
} from './whipple.ts';
export {
  type Asymmetry,
  forkSag,
  STANDARD_GRAVITY,
  type WhippleOfBuild,
  type WhippleOfBuildInput,
  whippleFromBuild,
  whippleIssues,
} from './whippleFromBuild.ts';
export {
  characteristic,
  type WhippleModes,
  type WhippleSpeeds,
  whippleEigenvalues,
  whippleModes,
  whippleSpeeds,
} from './whippleModes.ts';
