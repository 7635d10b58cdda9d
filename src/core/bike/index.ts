export type {
  Bike,
  BodyMesh,
  ChainLine,
  Ladder,
  LadderStep,
  Layout,
  LayoutPlaces,
  MassPart,
  MassSummary,
  PlacedBrake,
  PlacedEngine,
  PlacedItem,
  PlacedPlane,
  PlacedStack,
  PlacedTube,
  PlacedTubeEnd,
  RiderFigure,
  SpacerOption,
  StackGap,
  StackMisfit,
  Stance,
  TireGap,
  TireSize,
} from './bike.ts';
export { layOut, resolveLayout, resolvePlacements } from './layout.ts';
export { enginePoint, mirrored, namedPoint, placePoint } from './placePoint.ts';
export { placeStacks } from './stacks.ts';
export {
  axisForward,
  axisUp,
  type StanceChange,
  type SteeringGeometry,
  type SteeringNumbers,
  standOn,
  steeringNumbers,
} from './stance.ts';
