/** The public face of the core: a build file goes in, a placed bike with its figures and findings comes out. */

export { type AsBuilt, solveAsBuilt, solveMeasured } from './asBuilt.ts';
export {
  BUILD_VERSION,
  type Build,
  buildJsonSchema,
  type ReadOptions,
} from './build/index.ts';
export type { Finding, Severity } from './findings/index.ts';
export type { Change, Reading } from './fit/index.ts';
export { openBuild as readBuild, openBuildValue as readBuildValue } from './open.ts';
export {
  bookFiles,
  bookSheets,
  cautions,
  modelParts,
  notChecked,
  type PackInput,
  packFiles,
  shopFiles,
} from './pack/index.ts';
export { packOf } from './packOf.ts';
export { type Proof, prove } from './prove.ts';
export {
  describeIssue,
  type EdgeFigure,
  edgeUnit,
  type Figure,
  type FigureInput,
  type Issue,
  type Outcome,
  printQuantity,
  type QuantityKind,
  readQuantity,
  type SourceRef,
  type TextPosition,
  toEdgeFigure,
  type UnitSystem,
} from './quantity/index.ts';
export { type Solution, solve } from './solve.ts';
export {
  describeWorksheet,
  runWorksheet,
  type Worksheet,
  type WorksheetAnswer,
  type WorksheetDescription,
  worksheetNamed,
  worksheets,
} from './worksheets/index.ts';
