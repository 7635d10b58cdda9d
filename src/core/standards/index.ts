export {
  type Bearing,
  bearings,
  findBearing,
  type RatingRange,
} from './bearing.ts';
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
export { type Chain, chains, findChain } from './chain.ts';
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
  bearingRingLimits,
  type FitLimits,
  fitLimits,
  type Interference,
  interferenceOf,
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
