export {
  bendAllowance,
  type FlatPattern,
  flatPattern,
  overbentAngle,
  type PlateBend,
  type PlateBendLengths,
  plateBend,
  sprungBack,
} from './bendAllowance.ts';
export {
  type Bend,
  type BendPiece,
  buildCenterline,
  type Centerline,
  type CenterlineInput,
  type CenterlinePiece,
  type CenterlinePlace,
  centerlineAt,
  centerlinePlaces,
  type StraightPiece,
} from './centerline.ts';
export {
  type CopeJoint,
  type CopeOrdinate,
  type CopeProfile,
  controllingPosition,
  copeIssues,
  copePosition,
  copeProfile,
} from './cope.ts';
export {
  type Axis,
  type CopePlace,
  clockingOf,
  copeBothEnds,
  copePlace,
  type TwoCopes,
  type TwoCopesProfile,
  type WrapOptions,
  type WrapTemplate,
  wrapTemplate,
} from './copeTube.ts';
export {
  bikeFrame,
  composeFrames,
  directionToLocal,
  directionToWorld,
  type Frame3,
  frameFromXY,
  frameFromZ,
  rotateFrameAbout,
  rotatePointAbout,
  toLocal,
  toWorld,
  translateFrame,
} from './frame3.ts';
export type { Loop, LoopVertex } from './loop.ts';
export { clipLoop, type HalfPlane } from './loopClip.ts';
export { flatten } from './loopFlatten.ts';
export { offsetLoop } from './loopOffset.ts';
export {
  containsPoint,
  distanceToLoop,
  isSimpleLoop,
  locatePoint,
  loopInside,
  loopsMeet,
  loopsOverlap,
  nearestOfLoops,
  nearestOnLoop,
  nearestWithin,
  type Side,
} from './loopPoint.ts';
export {
  loopPerimeter,
  loopProperties,
  type RegionProperties,
  regionProperties,
  signedArea,
} from './loopProperties.ts';
export {
  type ArcSegment,
  type Bounds,
  boundsGap,
  boundsOfPoints,
  bulgeOfSweep,
  joinBounds,
  type LineSegment,
  loopOfSegments,
  type Segment,
  segmentBounds,
  segmentHeading,
  segmentLength,
  segmentOf,
  segmentPoint,
  segments,
  spanAlong,
  sweepOfBulge,
} from './loopSegment.ts';
export {
  type Circle,
  circleLoop,
  hullLoop,
  polygonLoop,
  type RoundedCorner,
  rectangleLoop,
  roundedPolygonLoop,
  roundedRectangleLoop,
  slotLoop,
} from './loopShapes.ts';
export {
  counterclockwise,
  isCounterclockwise,
  mirrorLoop,
  reverseLoop,
  rotateLoop,
  scaleLoop,
  translateLoop,
} from './loopTransform.ts';
export { joinMeshes, type Mesh, meshOf, meshPoint, meshVolume } from './mesh.ts';
export {
  boxMesh,
  cylinderMesh,
  DEFAULT_SIDES,
  type Extrusion,
  extrudedMesh,
  latheMesh,
  sweptTubeMesh,
  torusMesh,
} from './meshSolids.ts';
export { loopBounds, type Outline, outlineOf, type Shape } from './outline.ts';
export type { Point, Point3 } from './point.ts';
export {
  type Nearest,
  nearestOfSegments,
  nearestOnSegment,
  SAME_POINT,
  segmentMeetings,
} from './segmentMeet.ts';
export { pointsOfLegs, type TubeBend } from './tubeLegs.ts';
export {
  add2,
  between2,
  cross2,
  distance2,
  dot2,
  left2,
  length2,
  polar2,
  rotate2,
  scale2,
  subtract2,
  unit2,
} from './vec2.ts';
export {
  add3,
  along3,
  angleAbout3,
  angleBetween3,
  anyAcross3,
  between3,
  cross3,
  distance3,
  dot3,
  length3,
  rotate3,
  scale3,
  subtract3,
  unit3,
} from './vec3.ts';
