export { buildJsonSchema } from './jsonSchema.ts';
export { type JsonText, readJsonText } from './jsonText.ts';
export { mergePatch } from './mergePatch.ts';
export { unknownName } from './nameIssues.ts';
export { type Names, namesOf } from './names.ts';
export { originalName, type PlacementStep, placementOrder } from './placementOrder.ts';
export { issuesOfVariant, type ReadOptions, readBuild, readBuildValue, withVariant } from './read.ts';
export {
  type BearingSeat,
  type BeltStage,
  type BrakeEntry,
  BUILD_VERSION,
  type Build,
  buildSchema,
  type ChainStage,
  type ClutchStage,
  type DiscBrakeEntry,
  datumNames,
  type EngineEntry,
  type LoadCaseName,
  type MaterialName,
  materialNames,
  type OperationName,
  operationNames,
  type Placement,
  type PlateCorner,
  type PlateEntry,
  type PlateFoot,
  type PlateHole,
  type PlateOf,
  type PlateRecipe,
  type ShaftEntry,
  type Shop,
  type StackEntry,
  type StackItem,
  type StackItemKind,
  type Stage,
  type Steering,
  type TireEntry,
  type TubeEntry,
  type Tubing,
  type Use,
  type WheelEntry,
} from './schema/index.ts';
