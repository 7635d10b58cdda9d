import { symmetricEigen } from './jacobi.ts';

/** A symmetric matrix given by what it does to a vector. */
export interface SymmetricOperator {
  readonly size: number;
  readonly apply: (x: Float64Array) => Float64Array;
}

export interface EigenPair {
  readonly value: number;
  /** Of unit length. */
  readonly vector: Float64Array;
}

export type EigenOutcome =
  | {
      readonly ok: true;
      /** Largest first. */
      readonly pairs: readonly EigenPair[];
    }
  | { readonly ok: false; readonly reason: 'not-finite' | 'too-many-steps' };

/** |A·x - θ·x| against θ; the error of θ is of the order of its square. */
const TOLERANCE = 1e-8;
/** Vectors more than wanted in a block, so that the last one wanted still converges fast. */
const GUARD_VECTORS = 5;
/** Blocks kept before a restart. */
const BLOCKS = 8;
/** The space is looked at first with this many vectors a wanted pair, then whenever it has grown by a quarter. */
const FIRST_LOOK = 2.5;
const NEXT_LOOK = 1.25;
const MOST_RESTARTS = 100;
/** A direction that keeps less than this of its length against those before it is rounding. */
const DEPENDENT = 1e-10;
/** Eigenvalues below this share of the largest size are rounding of zero. */
const ZERO = 1e-13;

/**
 * The largest eigenvalues above zero of a symmetric matrix: block Lanczos with full orthogonalization and
 * restarts. Equal eigenvalues are found as often as they occur, up to the size of a block.
 * @param count pairs wanted [-], ≥ 1; fewer come back where there are no more above zero
 * @param block size of a block [-]; left out: `count` + 5. A smaller one is faster, but where more values are equal
 * than it has vectors some are missed: count them by a Sturm sequence
 * @source parlett-1998, chapter 13
 */
export function largestEigenpairs(
  operator: SymmetricOperator,
  count: number,
  block = count + GUARD_VECTORS,
): EigenOutcome {
  const guarded = Math.min(operator.size, count + GUARD_VECTORS);
  const most = Math.min(operator.size, guarded * BLOCKS);
  let starts = startVectors(operator.size, Math.min(block, guarded));
  for (let restart = 0; restart < MOST_RESTARTS; restart++) {
    const found = searchSpace(operator, starts, { count, guarded, most });
    if ('ok' in found) return found;
    starts = found.starts;
  }
  return { ok: false, reason: 'too-many-steps' };
}

/** One Krylov space, looked at as it grows. @returns the outcome, or where to start anew */
function searchSpace(
  operator: SymmetricOperator,
  starts: readonly Float64Array[],
  { count, guarded, most }: { readonly count: number; readonly guarded: number; readonly most: number },
): EigenOutcome | { readonly starts: Float64Array[] } {
  const space: KrylovSpace = { basis: [], images: [], rows: [] };
  let from = starts;
  let look = FIRST_LOOK * count;
  for (;;) {
    from = extend(space, operator, from, most);
    const size = space.basis.length;
    const isFull = size === most || from.length === 0;
    if (!isFull && size < look) continue;
    look = NEXT_LOOK * size;
    if (!space.images.every((image) => image.every(Number.isFinite)))
      return { ok: false, reason: 'not-finite' };
    const ritz = rayleighRitz(space, guarded);
    const wanted = ritz.slice(0, count).filter(({ value, largest }) => value > ZERO * largest);
    // Fewer than wanted may be no more than a space that is still too small.
    const isSettled =
      (isFull || wanted.length === count) &&
      wanted.every(({ value, residual }) => residual <= TOLERANCE * value);
    if (size === operator.size || isSettled)
      return { ok: true, pairs: wanted.map(({ value, vector }) => ({ value, vector })) };
    if (isFull) return { starts: ritz.map(({ vector }) => vector) };
  }
}

/** Fixed pseudo-random vectors: the same problem gives the same answer to the last digit. */
function startVectors(size: number, block: number): Float64Array[] {
  let state = 12345;
  // Constants of the "minimal standard" generator; products stay below 2^53.
  const next = () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647 - 0.5;
  };
  return Array.from({ length: block }, () => Float64Array.from({ length: size }, next));
}

/** Orthonormal basis of the blocks S, A·S, A²·S …, and A times each of its vectors. */
interface KrylovSpace {
  readonly basis: Float64Array[];
  readonly images: Float64Array[];
  /** Row i of basisᵀ·A·basis as far as the diagonal. */
  readonly rows: Float64Array[];
}

/** Adds what a block has that is new, up to `most` vectors. @returns A times each vector added */
function extend(
  { basis, images, rows }: KrylovSpace,
  { apply }: SymmetricOperator,
  from: readonly Float64Array[],
  most: number,
): readonly Float64Array[] {
  const added: Float64Array[] = [];
  for (const given of from) {
    if (basis.length === most) break;
    const direction = orthonormal(given, basis);
    if (direction === undefined) continue;
    const image = apply(direction);
    basis.push(direction);
    images.push(image);
    rows.push(Float64Array.from(images, (other) => dot(direction, other)));
    added.push(image);
  }
  return added;
}

function orthonormal(given: Float64Array, basis: readonly Float64Array[]): Float64Array | undefined {
  const x = given.slice();
  const before = Math.sqrt(dot(x, x));
  // Twice is enough to lose all that rounding of the first pass left.
  for (let pass = 0; pass < 2; pass++) for (const other of basis) addScaled(x, -dot(other, x), other);
  const after = Math.sqrt(dot(x, x));
  if (!(after > DEPENDENT * before)) return undefined;
  return x.map((one) => one / after);
}

interface Ritz extends EigenPair {
  /** |A·x - θ·x|. */
  readonly residual: number;
  /** Largest size of all. */
  readonly largest: number;
}

function rayleighRitz({ basis, images, rows }: KrylovSpace, count: number): Ritz[] {
  const m = basis.length;
  const projected = new Float64Array(m * m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      projected[i * m + j] = rows[i]![j]!;
      projected[j * m + i] = rows[i]![j]!;
    }
  const { values, vectors } = symmetricEigen(projected, m);
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return vectors.slice(0, count).map((y, k) => {
    const value = values[k]!;
    const vector = combined(basis, y);
    const off = combined(images, y);
    addScaled(off, -value, vector);
    return { value, vector, residual: Math.sqrt(dot(off, off)), largest };
  });
}

function combined(vectors: readonly Float64Array[], y: Float64Array): Float64Array {
  const sum = new Float64Array(vectors[0]?.length ?? 0);
  vectors.forEach((vector, i) => {
    addScaled(sum, y[i]!, vector);
  });
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** a += factor·b, in place. */
function addScaled(a: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = a[i]! + factor * b[i]!;
}
