export { type BearingFiguresInput, bearingFigures } from './bearing/bearingFigures.ts';
export {
  axialLimit,
  type BearingLoad,
  type BearingRating,
  type DutyPart,
  type EquivalentLoad,
  type EquivalentRule,
  equivalentLoad,
  ISO_281,
  isoReliabilityFactor,
  lifeHours,
  meanDuty,
  ratingLife,
  reliabilityFactor,
  requiredRating,
  speedLimit,
  staticLoad,
} from './bearing/bearingLife.ts';
export type { AxleStrength } from './bike/checks/axleStrength.ts';
export type {
  BearingStrength,
  BeltStrength,
  ChainStrength,
  DriveShaftStrength,
  DriveStrength,
  OutboardComparison,
  ShaftDiagrams,
  ShaftSide,
} from './bike/checks/drive/driveTypes.ts';
export { type FrameResults, solveBikeFrame } from './bike/checks/frameStrength.ts';
export { lineStrengths } from './bike/checks/lineStrength.ts';
export type { MemberBuckling } from './bike/checks/memberBuckling.ts';
export { type Check, comparisonOf, isWear, type UtilizationRow } from './bike/checks/utilizationRow.ts';
export type { WeldLife } from './bike/checks/weldLife.ts';
export type { DutyShare, LoadAssumption, LoadSettings, SpectrumBlock } from './bike/loads/assumptions.ts';
export { loadSettings } from './bike/loads/assumptions.ts';
export type { AppliedLoad, BalancedCase } from './bike/loads/balance.ts';
export type { DriveLimits, LoadCase } from './bike/loads/caseTypes.ts';
export { loadCases } from './bike/loads/loadCases.ts';
export { bikeFrame } from './bike/model/bikeFrame.ts';
export type { BikeFrame, ModelFlaw } from './bike/model/frameTypes.ts';
export type { Remedy } from './bike/remedies.ts';
export type { EngineRange } from './bike/shaking/engineRange.ts';
export { shakenRange } from './bike/shaking/engineRange.ts';
export { movedText } from './bike/shaking/movedText.ts';
export { shakingFigures } from './bike/shaking/shakingFigures.ts';
export {
  type FrameBuckling,
  type FrameFrequency,
  type SlowStrength,
  slowStrength,
} from './bike/shaking/slowStrength.ts';
export type { FrameStiffness } from './bike/stiffness.ts';
export type { StrengthCore, StrengthInput } from './bike/strengthCore.ts';
export { type Strength, strengthOf } from './bike/strengthOf.ts';
export { frameView, type LoadArrow, largestMovement, loadArrows, type MemberView } from './bike/view.ts';
export { type BoltFiguresInput, boltFigures } from './bolts/boltFigures.ts';
export { areaByMaxShear, groupForces, type InPlane, tippingForces } from './bolts/boltGroup.ts';
export {
  boltStiffness,
  type Engagement,
  gripStiffness,
  type PlateBearingInput,
  pitchDiameterOf,
  plateBearing,
  preloadOfTorque,
  slipLoad,
  type TensionJoint,
  type TensionJointInput,
  type TighteningInput,
  tensionJoint,
  threadEngagement,
  tighteningTorque,
  torqueForPreload,
} from './bolts/boltJoint.ts';
export {
  type BeltTensionInput,
  type BeltTensions,
  beltTensions,
  grooveFriction,
} from './chain/beltTension.ts';
export { beltTensionFigures, type ChainFiguresInput, chainStrengthFigures } from './chain/chainFigures.ts';
export {
  type ChainRating,
  centrifugalTension,
  chainRating,
  chainSpeed,
  chainTension,
  jointArea,
  jointPressure,
  toothFactor,
} from './chain/chainRating.ts';
export { fatigueFigures } from './fatigue/fatigueFigures.ts';
export {
  cyclesToFailure,
  type FatigueEstimate,
  type FatigueRule,
  fatigueEstimate,
  minerDamage,
  neighbor,
  type StressBlock,
  type StressLife,
  stressLife,
} from './fatigue/nominalStress.ts';
export { fitFigures, pressFitFigures } from './fits/fitFigures.ts';
export {
  type BoreMethod,
  type FitPair,
  fitPair,
  type HandBore,
  handBore,
  type SideLimits,
} from './fits/fitPair.ts';
export {
  type FitBody,
  heatingForAssembly,
  outerRaceway,
  type PressFit,
  type PressFitInput,
  pressFit,
} from './fits/pressFit.ts';
export {
  type AssembledFrame,
  type AssemblyOutcome,
  assembleFrame,
  type BucklingMode,
  type ByDirection,
  buckleFrame,
  DIRECTIONS,
  type Direction,
  type DividedFrame,
  describeMechanism,
  divideFrame,
  type FrameLoads,
  type FrameMass,
  type FrameMember,
  type FrameModel,
  type FrameSolution,
  type FrameSupport,
  frequenciesBelow,
  lostStiffness,
  type Mechanism,
  type MemberLoad,
  massMatrix,
  type NodeLoad,
  normalForces,
  type RigidLink,
  type SectionForces,
  type Settlement,
  sectionForces,
  solveFrame,
  type VibrationMode,
  vibrateFrame,
} from './frame/index.ts';
export { keyFigures, keyseatFigures } from './key/keyFigures.ts';
export {
  type KeyInput,
  type KeyStress,
  keyLength,
  keyStress,
  longestKey,
  type ShearYieldRule,
  shearYieldShare,
} from './key/keyStrength.ts';
export {
  type AllowedStress,
  type CutForces,
  type CutOptions,
  type CutPlate,
  type CutStress,
  cutPlate,
  type FlatPlate,
  type Holder,
  heldBy,
  type LineLoad,
  type LoadedCut,
  loadedCut,
  type NetSection,
  type PlateLoads,
  type PlateWeld,
  type PointLoad,
  unbalance,
  worstCut,
  wrenchOf,
} from './plates/index.ts';
export { criticalSpeed, type ShaftMass } from './shaft/criticalSpeed.ts';
export {
  type EnduranceInput,
  type EnduranceLimit,
  enduranceLimit,
  fatigueFactor,
  type NotchFactors,
  notchFactors,
  notchSensitivity,
  sizeFactor,
} from './shaft/enduranceLimit.ts';
export type {
  Across,
  DistributedLoad,
  Shaft,
  ShaftLoad,
  ShaftSection,
  ShaftSegment,
  ShaftSupport,
} from './shaft/shaft.ts';
export {
  codeDiameter,
  equivalentMoments,
  type FatigueCriterion,
  type SectionFactors,
  type SectionLoad,
  type SectionStrength,
  sectionDiameter,
  sectionFactors,
} from './shaft/shaftFatigue.ts';
export { sectionFigures, shaftFigures } from './shaft/shaftFigures.ts';
export {
  type Located,
  nominalStress,
  type ShaftSolution,
  type ShaftState,
  type SupportResult,
  shaftStateAt,
  solveShaft,
} from './shaft/solveShaft.ts';
export type { TorsionPiece } from './shaft/torsion.ts';
export {
  type BraceJoint,
  type BraceLoad,
  type BraceResistance,
  braceInteraction,
  braceResistance,
  type FaceAndPunching,
  type TubeJointKind,
  weakest,
} from './tubeJoints/braceJoint.ts';
export { type ChordWall, chordPrestress, gapFactor, wallRatio } from './tubeJoints/chordWall.ts';
export {
  type PlateInteraction,
  type PlateJoint,
  type PlateLoad,
  type PlateResistance,
  plateInteraction,
  plateResistance,
} from './tubeJoints/plateJoint.ts';
export { braceFigures, plateJointFigures } from './tubeJoints/tubeJointFigures.ts';
export { OUTSIDE_SHARE, type OutsideRule } from './tubeJoints/validity.ts';
export {
  allowableBase,
  allowableThroat,
  designStrength,
  directionalFactor,
  simplifiedDesignShear,
  type WeldedGrade,
  weldedGrade,
} from './welds/weldAllowable.ts';
export { weldFigures } from './welds/weldFigures.ts';
export {
  type ThroatStress,
  throatOf,
  throatStressAt,
  unresistedMoment,
  type WeldConvention,
  type WeldLine,
  type WeldLoad,
  type WeldPoint,
  type WeldProperties,
  weldProperties,
  worstThroatStress,
} from './welds/weldGroup.ts';
export type { PartNames } from './workings.ts';
