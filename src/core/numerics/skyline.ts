/**
 * A symmetric matrix kept by columns of its upper triangle, each from its first entry that may not be zero down
 * to the diagonal. Factors fill in below that skyline only.
 */
export interface SkylineMatrix {
  readonly size: number;
  /** First row kept of each column; length `size`, `top[j]` ≤ j. */
  readonly top: Int32Array;
  /** Place of entry (top[j], j) in `values`; length `size` + 1. */
  readonly start: Int32Array;
  /** Columns one after the other. */
  readonly values: Float64Array;
}

/**
 * A matrix of zeros with the given skyline.
 * @param top first row kept of each column [-]
 * @source bathe-1996, section 8.2.3
 */
export function emptySkyline(top: Int32Array): SkylineMatrix {
  const size = top.length;
  const start = new Int32Array(size + 1);
  for (let j = 0; j < size; j++) start[j + 1] = start[j]! + (j - top[j]! + 1);
  return { size, top, start, values: new Float64Array(start[size]!) };
}

/** Entries under a skyline [-]; what a matrix costs in memory, known before it is made. */
export function skylineEntries(top: Int32Array): number {
  return top.reduce((sum, row, j) => sum + (j - row + 1), 0);
}

/** Adds `value` at (i, j) and, by symmetry, at (j, i). The place must lie under the skyline. */
export function addToSkyline(matrix: SkylineMatrix, i: number, j: number, value: number): void {
  const row = Math.min(i, j);
  const column = Math.max(i, j);
  const above = row - matrix.top[column]!;
  if (!(above >= 0)) throw new RangeError(`entry (${i}, ${j}) lies above the skyline`);
  const place = matrix.start[column]! + above;
  matrix.values[place] = matrix.values[place]! + value;
}

/**
 * Adds a small symmetric matrix at given rows and columns; entries of rows below 0 are left out. A row given twice
 * takes both. The places must lie under the skyline.
 * @param rows row of each line of `small`
 * @param small row by row; its two halves are taken as alike
 */
export function addMatrix(
  { top, start, values }: SkylineMatrix,
  rows: Int32Array,
  small: Float64Array,
): void {
  const size = rows.length;
  for (let j = 0; j < size; j++) {
    const column = rows[j]!;
    if (column < 0) continue;
    const first = top[column]!;
    const offset = start[column]! - first;
    for (let i = 0; i < size; i++) {
      // Entries (a, b) and (b, a) both occur; only one of them is kept.
      const row = rows[i]!;
      if (row < 0 || row > column) continue;
      if (row < first) throw new RangeError(`entry (${row}, ${column}) lies above the skyline`);
      values[offset + row] = values[offset + row]! + small[i * size + j]!;
    }
  }
}

/** A·x. @source derived, definition */
export function multiplySkyline(matrix: SkylineMatrix, x: Float64Array): Float64Array {
  const { size, top, start, values } = matrix;
  const product = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    const first = top[j]!;
    const offset = start[j]! - first;
    const xj = x[j]!;
    let sum = values[offset + j]! * xj;
    for (let i = first; i < j; i++) {
      const entry = values[offset + i]!;
      sum += entry * x[i]!;
      product[i] = product[i]! + entry * xj;
    }
    product[j] = product[j]! + sum;
  }
  return product;
}

/** a + `factor`·b, both under one skyline. @source derived, definition */
export function combineSkylines(a: SkylineMatrix, factor: number, b: SkylineMatrix): SkylineMatrix {
  if (a.values.length !== b.values.length) throw new RangeError('the matrices have different skylines');
  const values = a.values.map((value, place) => value + factor * b.values[place]!);
  return { ...a, values };
}

/** The diagonal. */
export function skylineDiagonal({ size, start, values }: SkylineMatrix): Float64Array {
  return Float64Array.from({ length: size }, (_, j) => values[start[j + 1]! - 1]!);
}
