export { type ComplexRoot, complexRoots } from './complexRoots.ts';
export { type Neighbors, reverseCuthillMckee } from './cuthillMckee.ts';
export { type SymmetricEigen, symmetricEigen } from './jacobi.ts';
export { factorLdlt, type LdltFactor, type LdltOptions, type NullMode, solveLdlt } from './ldlt.ts';
export { largestOfPencil, type Pencil, type PencilOutcome, type PencilPair } from './pencil.ts';
export {
  crossings,
  derivativeOf,
  type Polynomial,
  productOf,
  sumOf,
  valueOf,
} from './polynomial.ts';
export { type Bracket, bracketRoot, findRoot, type RootOptions, type RootOutcome } from './root.ts';
export {
  addToSkyline,
  combineSkylines,
  emptySkyline,
  multiplySkyline,
  type SkylineMatrix,
  skylineDiagonal,
  skylineEntries,
} from './skyline.ts';
