export { adjustmentSteps, orderProblems, possibleOrders } from './adjustmentOrder.ts';
export {
  type BeltWraps,
  beltCenter,
  beltLength,
  beltWraps,
  type CoupledSheaves,
  coupledDiameters,
  coupledDrivenDiameter,
  pitchRadiusPerTravel,
  type SheavePair,
  type VariableBelt,
} from './belt.ts';
export { type ChainCaution, type ChainCautionCode, chainCautions } from './chainCautions.ts';
export {
  type ChainDriveInput,
  type ChainDrivePlan,
  type ChainLengthChoice,
  chainLengthChoice,
  chainSpeed,
  chordalVariation,
  planChainDrive,
  type SlotLength,
} from './chainDrive.ts';
export {
  centerForLinks,
  linksForCenter,
  type SprocketPair,
  touchingCenter,
  type Wraps,
  wrapAngles,
} from './chainLength.ts';
export { drivelineFigures } from './drivelineFigures.ts';
export { drivePaths, type StraightRun, straightRuns } from './drivePath.ts';
export { beltFigures, chainDriveFigures, sprocketFigures } from './figures.ts';
export { type LinkCountQuestion, linkCountsAround } from './linkCounts.ts';
export {
  looseLengthOfPlay,
  playOfLooseLength,
  type SlackQuestion,
  type SlackSetting,
  slackSetting,
} from './slack.ts';
export {
  type BeltEnd,
  type DrivelineSolution,
  type SlotSpan,
  type SolvedBelt,
  type SolvedChain,
  solveDriveline,
} from './solveDriveline.ts';
export {
  outsideDiameter,
  pitchDiameter,
  type SprocketChain,
  type SprocketDimensions,
  sprocketDimensions,
} from './sprocket.ts';
export { solveTension } from './tension.ts';
export { tensionFigures } from './tensionFigures.ts';
export type {
  Adjustment,
  AdjustmentStep,
  BeltRun,
  ChainRun,
  DriveRun,
  DriveShaft,
  DriveTension,
  LengthChoice,
  ShaftSlide,
  ShaftTension,
  SidePoint,
  SlideStates,
  SlotNeed,
  TensionInput,
  TensionProblem,
  TensionSolution,
} from './tensionTypes.ts';
export { rollerSeats, sprocketOutline, type ToothChain, type ToothForm, toothForm } from './toothForm.ts';
export { type WearLimit, type WearQuestion, wearLimit } from './wear.ts';
