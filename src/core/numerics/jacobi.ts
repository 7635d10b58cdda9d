export interface SymmetricEigen {
  /** Eigenvalues, largest first. */
  readonly values: Float64Array;
  /** Unit eigenvectors in the order of `values`. */
  readonly vectors: readonly Float64Array[];
}

/** Ten sweeps suffice for any matrix of this program; more would be a matrix with NaN in it. */
const MOST_SWEEPS = 60;

/**
 * All eigenvalues and vectors of a small dense symmetric matrix by cyclic Jacobi rotations.
 * Cost about 50·n³ operations: meant for n up to a few hundred.
 * @param matrix row-major, n·n, symmetric and finite; not changed
 * @source parlett-1998, chapter 9
 */
export function symmetricEigen(matrix: Float64Array, n: number): SymmetricEigen {
  if (!matrix.every(Number.isFinite)) throw new RangeError('a matrix to be diagonalized must be finite');
  const a = matrix.slice();
  // Rows of v are the vectors, so that a rotation touches memory in order.
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  const scale = Math.sqrt(a.reduce((sum, x) => sum + x * x, 0));
  for (let sweep = 0; offDiagonal(a, n) > 1e-15 * scale; sweep++) {
    if (sweep === MOST_SWEEPS) throw new Error('the rotations do not converge');
    for (let p = 0; p < n - 1; p++) for (let q = p + 1; q < n; q++) rotate(a, v, n, p, q);
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => a[j * n + j]! - a[i * n + i]!);
  return {
    values: Float64Array.from(order, (i) => a[i * n + i]!),
    vectors: order.map((i) => v.slice(i * n, (i + 1) * n)),
  };
}

function offDiagonal(a: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) sum += 2 * a[i * n + j]! ** 2;
  return Math.sqrt(sum);
}

/** Turns the plane (p, q) so that entry (p, q) becomes zero. */
function rotate(a: Float64Array, v: Float64Array, n: number, p: number, q: number): void {
  const apq = a[p * n + q]!;
  if (apq === 0) return;
  const ratio = (a[q * n + q]! - a[p * n + p]!) / (2 * apq);
  const t = (ratio < 0 ? -1 : 1) / (Math.abs(ratio) + Math.hypot(ratio, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  turnRows(a, n, p, q, c, s);
  for (let k = 0; k < n; k++) {
    const x = a[k * n + p]!;
    const y = a[k * n + q]!;
    a[k * n + p] = c * x - s * y;
    a[k * n + q] = s * x + c * y;
  }
  turnRows(v, n, p, q, c, s);
}

function turnRows(a: Float64Array, n: number, p: number, q: number, c: number, s: number): void {
  for (let k = 0; k < n; k++) {
    const x = a[p * n + k]!;
    const y = a[q * n + k]!;
    a[p * n + k] = c * x - s * y;
    a[q * n + k] = s * x + c * y;
  }
}
