import { type SkylineMatrix, skylineDiagonal } from './skyline.ts';

/** A = L·D·Lᵀ under the skyline of A. */
export interface LdltFactor {
  readonly size: number;
  readonly top: Int32Array;
  readonly start: Int32Array;
  /** Columns of Lᵀ above the diagonal, D on it. A pivot that was found to be zero holds Infinity. */
  readonly values: Float64Array;
  /** Pivots below zero [-]: as many as eigenvalues of A below zero (Sylvester's law). */
  readonly negativePivots: number;
  /** One for each direction in which A has no resistance; empty for a matrix that is definite. */
  readonly nullModes: readonly NullMode[];
}

/** A vector x with A·x = 0 within rounding. */
export interface NullMode {
  /** Row whose pivot was zero; x is 1 there and 0 after it. */
  readonly index: number;
  readonly vector: Float64Array;
}

export interface LdltOptions {
  /**
   * True for matrices that may have negative eigenvalues (A - σ·B): pivots below zero are counted then, instead
   * of taken for rounded zeros.
   */
  readonly indefinite?: boolean;
}

/**
 * A pivot this much smaller than its diagonal is looked at more closely. Long slender chains come down to
 * 1/(8·N³) by nature, N the number of links, so the ratio alone proves nothing.
 */
const SUSPECT_PIVOT = 1e-7;

/**
 * A mode whose energy is this share of the energy of its parts moved one at a time is one of no resistance.
 * Rounding leaves about 1e-15; a cantilever of N elements has 0.6/N⁴, which is 6e-13 for N = 1000.
 */
const ZERO_ENERGY = 1e-13;

/**
 * Factor of a symmetric matrix without exchange of rows, column by column. Where a pivot is zero the mode that
 * meets no resistance is kept and its row held still, so that all such modes are found in one run.
 * Cost: half the sum of the squared column heights.
 * @param matrix A, symmetric; positive semidefinite unless `indefinite`
 * @returns the factor with its null modes
 * @source bathe-1996, section 8.2.3, active column solution
 */
export function factorLdlt(matrix: SkylineMatrix, options: LdltOptions = {}): LdltFactor {
  const { size, top, start } = matrix;
  const values = matrix.values.slice();
  const diagonal = skylineDiagonal(matrix);
  const nullModes: NullMode[] = [];
  let negativePivots = 0;
  for (let j = 0; j < size; j++) {
    const pivot = reduceColumn(values, top, start, j);
    const place = start[j + 1]! - 1;
    values[place] = pivot;
    const isSuspect = options.indefinite ? pivot === 0 : !(pivot > SUSPECT_PIVOT * diagonal[j]!);
    if (isSuspect) {
      const vector = nullVector(values, top, start, j);
      const energy = vector.reduce((sum, x, i) => sum + Math.abs(diagonal[i]!) * x * x, 0);
      if (!(pivot > ZERO_ENERGY * energy)) {
        nullModes.push({ index: j, vector });
        values[place] = Number.POSITIVE_INFINITY;
      }
    }
    if (pivot < 0) negativePivots++;
  }
  return { size, top, start, values, negativePivots, nullModes };
}

/**
 * x with A·x = b; rows of null modes stay at 0.
 * @source bathe-1996, section 8.2.3
 */
export function solveLdlt(factor: LdltFactor, b: Float64Array): Float64Array {
  const { size, top, start, values } = factor;
  const x = forwardSubstitute(factor, b);
  for (let j = 0; j < size; j++) x[j] = x[j]! / values[start[j + 1]! - 1]!;
  backSubstitute(values, top, start, x, size - 1);
  return x;
}

/**
 * C⁻¹·b with A = C·Cᵀ, C = L·√D: the first half of a solution. A must be positive definite.
 * @source derived, Cholesky from L·D·Lᵀ
 */
export function solveLowerHalf(factor: LdltFactor, b: Float64Array): Float64Array {
  const x = forwardSubstitute(factor, b);
  return x.map((value, j) => value / Math.sqrt(factor.values[factor.start[j + 1]! - 1]!));
}

/**
 * C⁻ᵀ·y with A = C·Cᵀ: the second half of a solution. Vectors y of unit length become vectors x with xᵀ·A·x = 1.
 * @source derived, Cholesky from L·D·Lᵀ
 */
export function solveUpperHalf(factor: LdltFactor, y: Float64Array): Float64Array {
  const { size, top, start, values } = factor;
  const x = y.map((value, j) => value / Math.sqrt(values[start[j + 1]! - 1]!));
  backSubstitute(values, top, start, x, size - 1);
  return x;
}

function forwardSubstitute({ size, top, start, values }: LdltFactor, b: Float64Array): Float64Array {
  const x = b.slice();
  for (let j = 0; j < size; j++) {
    const first = top[j]!;
    const offset = start[j]! - first;
    let sum = x[j]!;
    for (let i = first; i < j; i++) sum -= values[offset + i]! * x[i]!;
    x[j] = sum;
  }
  return x;
}

/** Turns column j of A into column j of Lᵀ; returns the pivot. Columns before it are done. */
function reduceColumn(values: Float64Array, top: Int32Array, start: Int32Array, j: number): number {
  const first = top[j]!;
  const own = start[j]! - first;
  for (let i = first + 1; i < j; i++) {
    const other = start[i]! - top[i]!;
    let sum = values[own + i]!;
    for (let k = Math.max(first, top[i]!); k < i; k++) sum -= values[other + k]! * values[own + k]!;
    values[own + i] = sum;
  }
  let pivot = values[own + j]!;
  for (let i = first; i < j; i++) {
    const entry = values[own + i]!;
    const scaled = entry / values[start[i + 1]! - 1]!;
    values[own + i] = scaled;
    pivot -= scaled * entry;
  }
  return pivot;
}

/** x with Lᵀ·x = e_j. */
function nullVector(values: Float64Array, top: Int32Array, start: Int32Array, j: number): Float64Array {
  const x = new Float64Array(top.length);
  x[j] = 1;
  backSubstitute(values, top, start, x, j);
  return x;
}

function backSubstitute(
  values: Float64Array,
  top: Int32Array,
  start: Int32Array,
  x: Float64Array,
  last: number,
): void {
  for (let j = last; j > 0; j--) {
    const first = top[j]!;
    const offset = start[j]! - first;
    const xj = x[j]!;
    if (xj === 0) continue;
    for (let i = first; i < j; i++) x[i] = x[i]! - values[offset + i]! * xj;
  }
}
