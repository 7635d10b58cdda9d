export { type ComplexRoot, complexRoots } from './complexRoots.ts';
export { type Neighbors, reverseCuthillMckee } from './cuthillMckee.ts';
export { type SymmetricEigen, symmetricEigen } from './jacobi.ts';
export {
  type EigenOutcome,
  type EigenPair,
  largestEigenpairs,
  type SymmetricOperator,
} from './lanczos.ts';
export { factorLdlt, type LdltFactor, type LdltOptions, type NullMode, solveLdlt } from './ldlt.ts';
export { solveLdltAll } from './ldltPacks.ts';
export { solveOde } from './ode.ts';
export type { OdeCrossing, OdeEvent, OdeOptions, OdeProblem, OdeSolution } from './odeTypes.ts';
export { largestOfPencil } from './pencil.ts';
export {
  crossings,
  derivativeOf,
  type Polynomial,
  polynomialAt,
  productOf,
  sumOf,
} from './polynomial.ts';
export { type Bracket, bracketRoot, findRoot, type RootOptions, type RootOutcome } from './root.ts';
export {
  addMatrix,
  addToSkyline,
  combineSkylines,
  emptySkyline,
  multiplySkyline,
  type SkylineMatrix,
  skylineDiagonal,
  skylineEntries,
} from './skyline.ts';
