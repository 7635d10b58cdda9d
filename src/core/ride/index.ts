export type { Assumption } from './assumptions.ts';
export { brakeDiveOfBuild } from './brakeDiveOfBuild.ts';
export {
  type BandBrake,
  bandTorque,
  discTorque,
  type EffectiveRadius,
  effectiveRadius,
  type HydraulicChain,
  type HydraulicForces,
  hydraulicForces,
  newSectorForces,
  type SectorForces,
  type SectorPad,
  sectorForces,
} from './brakeForce.ts';
export {
  type BrakeChain,
  type BrakeOfWheel,
  brakeGain,
  brakeOfWheel,
  USUAL_WRAP,
} from './brakeGain.ts';
export { type DiscHeat, discHeat, type FaceHeat, facePeak, type RepeatedStops } from './brakeHeat.ts';
export {
  type BrakeLimit,
  type BrakeSide,
  type Braking,
  type BrakingInput,
  brakedBy,
  brakingOf,
  type DistributionPoint,
  idealDistribution,
  meanDeveloped,
  type ReferenceRow,
  realDistribution,
  type Stop,
  stoppingDistance,
} from './braking.ts';
export { brakingFigures } from './brakingFigures.ts';
export {
  type BrakingOfBuild,
  type BrakingQuestion,
  brakingOfBuild,
  longitudinalBike,
} from './brakingOfBuild.ts';
export {
  type ClutchModel,
  type ClutchShoes,
  clutchCapacity,
  clutchOf,
  type SlipBand,
  shoeConstant,
  shoeMass,
  slipBands,
  slipSpeed,
} from './clutch.ts';
export {
  AMBIENT,
  BLUE_TEMPERATURE,
  type ClutchDrive,
  type ClutchDuty,
  type ClutchSpeeds,
  clutchDuty,
  clutchSpeeds,
  DRUM_SHARE,
  drumRise,
  launchesToBlue,
  STEEL_HEAT_CAPACITY,
} from './clutchUse.ts';
export { contactName } from './contactName.ts';
export {
  type BeltShift,
  type Drive,
  type DrivePath,
  type DrivePhase,
  type DriveSegment,
  drivePath,
  forceAt,
  segmentAt,
} from './drivePath.ts';
export {
  type Battery,
  type ElectricMotor,
  type MotorLimit,
  type MotorPoint,
  motorPoint,
  motorPoints,
  type RideEnergy,
  type RideStretch,
  rideEnergy,
} from './electricMotor.ts';
export {
  type EngineCurve,
  type EngineInput,
  engineCurve,
  greatestPower,
  meanEffectivePressure,
  pointsOfPower,
  pointsOfRating,
  type RatedShape,
  type TorquePoint,
  torqueAt,
} from './engine.ts';
export { type Ride, rideOf } from './fromBuild.ts';
export {
  type CenterRange,
  type GearingChain,
  type GearingFit,
  type GearingInput,
  type GearingPlace,
  type GearingRow,
  gearingTable,
} from './gearing.ts';
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
  gradeOfForce,
  type HillLaunch,
  hillLaunch,
  type SteepestHill,
  steepestHill,
  torqueForGrade,
} from './hill.ts';
export { simulateLaunch } from './launch.ts';
export type {
  Launch,
  LaunchEnergy,
  LaunchInput,
  LaunchMark,
  LaunchPoint,
  LaunchSwitch,
} from './launchTypes.ts';
export { contactLean, crownLean, type LowPart, turnLean } from './lean.ts';
export { type ContactPoint, type LeanContact, leanContacts } from './leanContact.ts';
export { type LockContact, lockContacts } from './lockContact.ts';
export {
  airDensity,
  correctionFactor,
  derate,
  type RatingPractice,
  ratingPractices,
  standardPressure,
} from './rating.ts';
export { type ClutchAnswers, type RideAnswers, rideAnswers } from './rideAnswers.ts';
export { launchFigures } from './rideFigures.ts';
export {
  comfortAngles,
  type FittedRider,
  type Joint,
  type LegClearance,
  type Obstacle,
  type RiderFit,
  type RiderFitInput,
  riderFit,
  type SeatTriangle,
  seatTriangle,
} from './riderFit.ts';
export { riderFitFigures } from './riderFitFigures.ts';
export { type RiderFitOfBuild, riderFitOfBuild, surveyRiders } from './riderFitOfBuild.ts';
export { type GearingChoice, type Riding, type RidingInput, ridingOf } from './riding.ts';
export {
  type AccelerationLimit,
  accelerationLimits,
  coastDown,
  type RideStance,
  type RoadForces,
  type RoadLoad,
  roadForces,
} from './roadLoad.ts';
export {
  type AirForce,
  centerByWeighing,
  frontGripShare,
  idealFrontShare,
  type Limit,
  type LockPoints,
  type LongitudinalBike,
  type LongitudinalLimits,
  lockPoints,
  longitudinalLimits,
  tractionShare,
  type Weighing,
  type WheelLoads,
  wheelLoads,
} from './statics.ts';
export {
  brakeDive,
  type Dive,
  type DiveInput,
  groundSteer,
  type HeadDropInput,
  headDrop,
  type TurningCircle,
  turningCircle,
} from './steering.ts';
export { steeringLimitFigures } from './steeringLimitFigures.ts';
export {
  type BouncePitch,
  type BouncePitchInput,
  bouncePitch,
  type Drop,
  dropOn,
  forkLoad,
  forkWheelRate,
  heightForFactor,
  inSeries,
  naturalFrequency,
  type SpringEnd,
  type SpringEndResult,
  springEnd,
  transmissibility,
  wheelRate,
} from './suspension.ts';
export { suspensionFigures } from './suspensionFigures.ts';
export {
  BUMP_FACTOR,
  DROP_HEIGHT,
  type SprungEnd,
  type SuspensionOfBuild,
  suspensionOfBuild,
  TIRE_RATE,
} from './suspensionOfBuild.ts';
export { netAt, type SpeedLimit, type TopSpeed, topSpeed } from './topSpeed.ts';
export {
  type BeltPosition,
  type BeltRoadSpeeds,
  beltPositions,
  beltRoadSpeeds,
  type SheaveLimits,
  type VariableBeltDrive,
  type VariableBeltInput,
  variableBeltDrive,
} from './variableBelt.ts';
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
