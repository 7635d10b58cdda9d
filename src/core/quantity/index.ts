export type {
  Angle,
  AngularSpeed,
  Area,
  Density,
  Force,
  Frequency,
  Length,
  LineForce,
  Mass,
  MomentOfInertia,
  Power,
  Pressure,
  Quantity,
  QuantityKind,
  SecondMoment,
  Speed,
  Stiffness,
  Torque,
} from './brand.ts';
export { toEdge } from './edge.ts';
export { type EdgeFigure, type EdgeValue, toEdgeFigure } from './edgeFigure.ts';
export {
  angleField,
  angularSpeedField,
  areaField,
  countField,
  densityField,
  type FieldLimits,
  forceField,
  frequencyField,
  inertiaField,
  lengthField,
  lineForceField,
  lineMassField,
  massField,
  powerField,
  pressureField,
  type QuantityField,
  ratioField,
  resultField,
  secondMomentField,
  speedField,
  stiffnessField,
  toEdgeValue,
  torqueField,
} from './field.ts';
export type { Figure, FigureInput } from './figure.ts';
export { type FigureDraft, type FigureNames, figureMaker } from './figureMaker.ts';
export { type GaugeStock, readGauge } from './gauge.ts';
export { describeIssue, type Issue, type TextPosition } from './issue.ts';
export { edgeUnit } from './kinds.ts';
export { type QuantityMeta, quantityMeta } from './meta.ts';
export { nearestName } from './nearest.ts';
export { bad, good, type Outcome } from './outcome.ts';
export {
  type PrintOptions,
  printApart,
  printFineInches,
  printInches,
  printMillimeters,
  printNumber,
  printQuantity,
  type UnitSystem,
} from './print.ts';
export { type ReadOptions, readQuantity } from './read.ts';
export { knownKeys, schemaAt } from './schemaWalk.ts';
export { derived, practice, type SourceRef } from './source.ts';
export {
  degrees,
  inches,
  kilograms,
  kilometersPerHour,
  megapascals,
  meters,
  metersPerSecond,
  mm,
  newtonMeters,
  newtons,
  pounds,
  poundsForce,
  rpm,
  watts,
} from './units.ts';
export { issuesOfZod, pathText, readWith } from './zodIssues.ts';
