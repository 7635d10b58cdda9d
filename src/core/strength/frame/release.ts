import { DIRECTIONS, type Direction, type FrameMember } from './model.ts';

/** How the released ends of a member follow its joints, and the stiffness that is left. */
export interface Released {
  /** Stiffness felt by the joints, local axes; rows of released ends are zero. */
  readonly stiffness: Float64Array;
  /** End movements of the member from those of its joints: u_end = C·u_joint, 12 × 12 row by row. */
  readonly follow: Float64Array;
}

export type ReleaseOutcome =
  | { readonly ok: true; readonly value: Released }
  /** The releases let the member move by itself; `row` (0 to 11) is one of those it moves in. */
  | { readonly ok: false; readonly row: number };

/** A pivot this much below its first value is rounding: nothing holds that end any more. */
const FREE = 1e-10;

/** Released rows of the member, 0 to 5 at its start and 6 to 11 at its end. */
export function releasedRows({ releases }: FrameMember): readonly number[] {
  if (releases === undefined) return [];
  const rows = (names: readonly Direction[] | undefined, shift: number) =>
    (names ?? []).map((name) => DIRECTIONS.indexOf(name) + shift);
  return [...new Set([...rows(releases?.from, 0), ...rows(releases?.to, 6)])].sort((a, b) => a - b);
}

/**
 * Takes released end movements out of a member's stiffness by static condensation, one row after the other:
 * the end moves until its force is zero.
 * @param stiffness of the member without releases, local axes; not changed
 * @source derived, Gauss elimination of rows without force
 */
export function condense(stiffness: Float64Array, rows: readonly number[]): ReleaseOutcome {
  const k = stiffness.slice();
  const follow = new Float64Array(144);
  for (let i = 0; i < 12; i++) follow[i * 12 + i] = 1;
  for (const row of rows) {
    const pivot = k[row * 12 + row]!;
    if (!(pivot > FREE * stiffness[row * 12 + row]!)) return { ok: false, row };
    const share = Float64Array.from({ length: 12 }, (_, j) => (j === row ? 0 : -k[row * 12 + j]! / pivot));
    eliminate(k, row);
    // Where the end took part so far, what it does now takes its place.
    for (let i = 0; i < 12; i++) {
      const part = follow[i * 12 + row]!;
      follow[i * 12 + row] = 0;
      for (let j = 0; j < 12; j++) follow[i * 12 + j] = follow[i * 12 + j]! + part * share[j]!;
    }
  }
  return { ok: true, value: { stiffness: k, follow } };
}

function eliminate(k: Float64Array, row: number): void {
  const pivot = k[row * 12 + row]!;
  for (let i = 0; i < 12; i++) {
    if (i === row) continue;
    const factor = k[i * 12 + row]! / pivot;
    for (let j = 0; j < 12; j++) k[i * 12 + j] = k[i * 12 + j]! - factor * k[row * 12 + j]!;
  }
  for (let i = 0; i < 12; i++) {
    k[row * 12 + i] = 0;
    k[i * 12 + row] = 0;
  }
}

/** Cᵀ·m·C: a mass or geometric stiffness felt by the joints. */
export function condenseMatrix(follow: Float64Array, m: Float64Array): Float64Array {
  const half = new Float64Array(144);
  const out = new Float64Array(144);
  for (let i = 0; i < 12; i++)
    for (let j = 0; j < 12; j++)
      for (let n = 0; n < 12; n++)
        half[i * 12 + j] = half[i * 12 + j]! + m[i * 12 + n]! * follow[n * 12 + j]!;
  for (let i = 0; i < 12; i++)
    for (let j = 0; j < 12; j++)
      for (let n = 0; n < 12; n++)
        out[i * 12 + j] = out[i * 12 + j]! + follow[n * 12 + i]! * half[n * 12 + j]!;
  return out;
}

/** Cᵀ·f: end forces that hold the joints still while the released ends move. */
export function condenseForces(follow: Float64Array, f: Float64Array): Float64Array {
  return Float64Array.from({ length: 12 }, (_, j) =>
    f.reduce((sum, one, i) => sum + follow[i * 12 + j]! * one, 0),
  );
}
