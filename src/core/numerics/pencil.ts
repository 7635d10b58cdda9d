import { symmetricEigen } from './jacobi.ts';

/** The problem B·x = θ·K·x with K symmetric positive definite and B symmetric, given by what it does to vectors. */
export interface Pencil {
  readonly size: number;
  /** K⁻¹·b. */
  readonly solveK: (b: Float64Array) => Float64Array;
  /** B·x. */
  readonly multiplyB: (x: Float64Array) => Float64Array;
}

export interface PencilPair {
  /** θ, above zero. */
  readonly value: number;
  /** x, with xᵀ·K·x = 1. */
  readonly vector: Float64Array;
}

export type PencilOutcome =
  | {
      readonly ok: true;
      /** Largest θ first; fewer than asked where B has no more positive directions. */
      readonly pairs: readonly PencilPair[];
    }
  | { readonly ok: false; readonly reason: 'not-finite' | 'too-many-steps' };

/** |K⁻¹·B·x - θ·x| in the norm of K against θ; the error of θ is of the order of its square. */
const TOLERANCE = 1e-8;
/** Vectors more than wanted in a block, so that the last one wanted still converges fast. */
const GUARD_VECTORS = 5;
/** Blocks kept before a restart. */
const BLOCKS = 8;
const MOST_RESTARTS = 60;
/** A direction that keeps less than this of its length against those before it brings nothing new. */
const DEPENDENT = 1e-9;
/** θ below this share of the largest |θ| is rounding of zero. */
const NO_DIRECTION = 1e-13;

/** A vector together with K times it, so that K itself is never multiplied. */
interface Direction {
  readonly x: Float64Array;
  readonly kx: Float64Array;
}

/**
 * The largest positive θ of B·x = θ·K·x with their vectors: block Lanczos with full orthogonalization in the
 * inner product of K and restarts. Vibration takes B = M and ω² = 1/θ; buckling B = -Kg and λ = 1/θ. Equal
 * eigenvalues are found as often as they occur, up to the size of a block (`count` + 5).
 * @param count pairs wanted [-], ≥ 1
 * @source parlett-1998, chapter 13; bathe-1996, section 11.5
 */
export function largestOfPencil(pencil: Pencil, count: number): PencilOutcome {
  const block = Math.min(pencil.size, count + GUARD_VECTORS);
  let starts = startVectors(pencil.size, block);
  for (let restart = 0; restart < MOST_RESTARTS; restart++) {
    const { basis, products } = krylovBasis(pencil, starts, block);
    const ritz = rayleighRitz(basis, products);
    if (ritz === undefined) return { ok: false, reason: 'not-finite' };
    const wanted = ritz.slice(0, count).filter(({ value, largest }) => value > NO_DIRECTION * largest);
    const isDone =
      basis.length === pencil.size || wanted.every((one) => residual(pencil, one) <= TOLERANCE * one.value);
    if (isDone) return { ok: true, pairs: wanted.map(({ value, x }) => ({ value, vector: x })) };
    starts = ritz.slice(0, block).map(({ x }) => x);
  }
  return { ok: false, reason: 'too-many-steps' };
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

/** K-orthonormal basis of the blocks A·S, A²·S … with A = K⁻¹·B, and B times each of its vectors. */
function krylovBasis(pencil: Pencil, starts: readonly Float64Array[], block: number) {
  const basis: Direction[] = [];
  const products: Float64Array[] = [];
  let from: readonly Float64Array[] = starts.map((x) => pencil.multiplyB(x));
  const most = Math.min(pencil.size, block * BLOCKS);
  while (basis.length < most && from.length > 0) {
    const added: Float64Array[] = [];
    for (const bx of from) {
      if (basis.length === most) break;
      const direction = orthonormal({ x: pencil.solveK(bx), kx: bx }, basis);
      if (direction === undefined) continue;
      basis.push(direction);
      const product = pencil.multiplyB(direction.x);
      products.push(product);
      added.push(product);
    }
    from = added;
  }
  return { basis, products };
}

function orthonormal(given: Direction, basis: readonly Direction[]): Direction | undefined {
  const x = given.x.slice();
  const kx = given.kx.slice();
  const before = dot(x, kx);
  if (!(before > 0)) return undefined;
  // Twice is enough to lose all that rounding of the first pass left.
  for (let pass = 0; pass < 2; pass++)
    for (const other of basis) {
      const share = dot(other.x, kx);
      subtract(x, share, other.x);
      subtract(kx, share, other.kx);
    }
  const after = dot(x, kx);
  if (!(after > DEPENDENT ** 2 * before)) return undefined;
  const scale = 1 / Math.sqrt(after);
  return { x: x.map((one) => one * scale), kx: kx.map((one) => one * scale) };
}

interface Ritz {
  readonly value: number;
  readonly x: Float64Array;
  readonly kx: Float64Array;
  readonly largest: number;
}

function rayleighRitz(basis: readonly Direction[], products: readonly Float64Array[]): Ritz[] | undefined {
  const m = basis.length;
  const projected = new Float64Array(m * m);
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      const entry = dot(basis[i]!.x, products[j]!);
      projected[i * m + j] = entry;
      projected[j * m + i] = entry;
    }
  if (!projected.every(Number.isFinite)) return undefined;
  const { values, vectors } = symmetricEigen(projected, m);
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return vectors.map((y, k) => ({ value: values[k]!, largest, ...combined(basis, y) }));
}

function combined(basis: readonly Direction[], y: Float64Array): Direction {
  const size = basis[0]?.x.length ?? 0;
  const x = new Float64Array(size);
  const kx = new Float64Array(size);
  basis.forEach((direction, i) => {
    subtract(x, -y[i]!, direction.x);
    subtract(kx, -y[i]!, direction.kx);
  });
  return { x, kx };
}

function residual(pencil: Pencil, { value, x, kx }: Ritz): number {
  const bx = pencil.multiplyB(x);
  const r = pencil.solveK(bx);
  subtract(r, value, x);
  subtract(bx, value, kx);
  return Math.sqrt(Math.max(0, dot(r, bx)));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** a -= factor·b, in place. */
function subtract(a: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = a[i]! - factor * b[i]!;
}
