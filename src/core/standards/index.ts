export {
  type Bearing,
  bearings,
  findBearing,
  type RatingRange,
} from './bearing.ts';
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
export { findThread, type Thread, threads } from './thread.ts';
export {
  readTire,
  type TireDimensions,
  type TireMarking,
  type TireReadings,
  type TireRule,
  tireDimensions,
} from './tire.ts';
