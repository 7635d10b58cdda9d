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
  TubeFlaw,
} from './bike.ts';
export { layoutFigures, massFigures } from './figures.ts';
export {
  axialInertia,
  boxInertia,
  discInertia,
  type Inertia,
  type Lump,
  rodInertia,
  rodLump,
  sumLumps,
} from './inertia.ts';
export { BELT_OFFSET, CHAIN_OFFSET, layLadder, SHAFT_SLOPE } from './ladder.ts';
export { ladderFigures } from './ladderFigures.ts';
export { layOut, resolveLayout, resolvePlacements } from './layout.ts';
export { type MassLump, massOfBody, weigh } from './masses.ts';
export type { ChainPath } from './meshes/drive.ts';
export { bikeMeshes, type PlateShape } from './meshes.ts';
export { placeBike } from './place.ts';
export { enginePoint, mirrored, namedPoint, placePoint } from './placePoint.ts';
export { placeFigure, type RiderContacts, riderContacts } from './rider.ts';
export { type RimReadings, rimOffset } from './rimOffset.ts';
export { stackFigures } from './stackFigures.ts';
export type { StackFlaw } from './stackFlaw.ts';
export { stackFlaws } from './stackFlaws.ts';
export {
  AGREES_WITHIN,
  type Feature,
  featureY,
  type Row,
  type RowPin,
  type SolvedRows,
  solveRows,
} from './stackRows.ts';
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
export { stanceChanges, steeringGeometry } from './stances.ts';
export { steeringFigures } from './steeringFigures.ts';
export { TIRE_ROOM } from './tireGap.ts';
export { axisNear, referenceAt } from './tubeEnds.ts';
export { tubeFigures } from './tubeFigures.ts';
export { bendRadius, type PlacedTubes, placeTubes } from './tubes.ts';
export { placeTwoLinks, type TwoLinks, type TwoLinksPlace } from './twoLinks.ts';
