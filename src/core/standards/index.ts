export {
  type AngleRange,
  anthropometrySources,
  type BodyGroup,
  type BodyMeasure,
  bodyGroups,
  bodySize,
  bodySpread,
  comfort,
  limbRadius,
  type Percentile,
  percentileLinks,
  percentiles,
  SHOES,
} from './anthropometry.ts';
export {
  type Bearing,
  bearings,
  findBearing,
  type RatingRange,
} from './bearing.ts';
export { type AxialFactorRow, type AxialRule, axialFactorTable, bearingConstants } from './bearingLoad.ts';
export { type BendingFacts, bendingOf } from './bending.ts';
export {
  type BodyLinks,
  type BodySegment,
  bodyLinks,
  bodySources,
  type RestPosture,
  restPosture,
  type SegmentMass,
  segmentMasses,
} from './bodyLinks.ts';
export {
  type BoltClass,
  type BoltFactor,
  boltClass,
  boltClassNames,
  findBoltClassName,
  slipFrictions,
  slipHoles,
  torqueFactors,
} from './boltClass.ts';
export { boreMethods } from './boreMaking.ts';
export {
  allowedDistance,
  brakeFacts,
  brakeSources,
  type PadKind,
  padFriction,
  type StoppingFigure,
  stoppingFigures,
  type UsualRange,
} from './brakeFigures.ts';
export { type Chain, chains, findChain } from './chain.ts';
export {
  type ChainRatingRow,
  chainRatingRow,
  type JointPressureLimit,
  jointPressureLimit,
  onceShare,
  type ServiceFactor,
  serviceFactors,
  strandFactor,
  tensionShares,
} from './chainRating.ts';
export {
  categorySteps,
  type DetailCategory,
  detailCategories,
  fatiguePartialFactors,
} from './detailCategory.ts';
export {
  type Drill,
  type DrillSet,
  drillAtLeast,
  drillAtMost,
  drills,
  drillWeb,
  findDrill,
} from './drill.ts';
export {
  type Notch,
  notches,
  reliabilities,
  type SurfaceFinish,
  surfaceFinishes,
} from './endurance.ts';
export {
  bearingRingLimits,
  type FitLimits,
  fitLimits,
  type Interference,
  interferenceOf,
  internalClearance,
  toleranceGrade,
} from './fit.ts';
export {
  boltNames,
  type ClearanceHole,
  clearanceHole,
  type HoleFit,
  plainBolt,
} from './hole.ts';
export { type Key, type KeyseatDepths, keyForShaft, keys, keyseatDepths } from './key.ts';
export { type Material, materialNamed } from './material.ts';
export { type MaterialStrength, materialStrength } from './materialStrength.ts';
export { findThread, type Thread, threads } from './thread.ts';
export {
  readTire,
  type TireDimensions,
  type TireMarking,
  type TireReadings,
  type TireRule,
  tireDimensions,
} from './tire.ts';
export { solidBar, type TubeSection, tubeSection } from './tubeSection.ts';
export {
  allowableWeldShare,
  type FillerMetal,
  fillerMetals,
  findFiller,
  leastFillet,
  weldCorrelations,
} from './weldMetal.ts';
