import type { ShaftMesh } from './mesh.ts';
import { acrossPiece, acrossStation, type Cut, resultant, type StationLoads } from './statics.ts';

/**
 * The shaft between two neighboring supports as one beam element, however many steps and loads lie within. Its
 * stiffness comes from its flexibility, an integral over the pieces, so that short pieces cost no digits.
 */
export interface Span {
  /** Stations of its ends. */
  readonly first: number;
  readonly last: number;
  readonly length: number;
  /** Couples at the ends by rotations of the ends against the chord; row by row. */
  readonly stiffness: readonly [number, number, number, number];
}

/** What the loads within do to a span on two hinges. */
export interface SpanLoads {
  /** V at the start, equal to the force of the left hinge [N]. */
  readonly shear: number;
  /** Force of the right hinge [N]. */
  readonly right: number;
  /** Rotations of the ends against the chord [rad]. */
  readonly rotations: readonly [number, number];
}

/** Two points are exact for cubics: the moment times a straight line. */
const GAUSS = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)] as const;

/** @source derived, virtual work on a span of pieces with bending and shear */
export function spanOf(mesh: ShaftMesh, first: number, last: number): Span {
  const start = mesh.stations[first]!;
  const length = mesh.stations[last]! - start;
  let [left, cross, right] = [0, 0, 0];
  for (const piece of mesh.pieces.slice(first, last)) {
    const soft = piece.length / piece.shear / length ** 2;
    for (const point of GAUSS) {
      const far = (piece.start + point * piece.length - start) / length;
      const weight = piece.length / 2 / piece.bending;
      left += (1 - far) ** 2 * weight + soft / 2;
      cross += (1 - far) * far * weight - soft / 2;
      right += far ** 2 * weight + soft / 2;
    }
  }
  const determinant = left * right - cross * cross;
  return {
    first,
    last,
    length,
    stiffness: [right / determinant, cross / determinant, cross / determinant, left / determinant],
  };
}

/** @source derived, virtual work on a span of pieces with bending and shear */
export function spanLoads(mesh: ShaftMesh, span: Span, loads: StationLoads, plane: 0 | 1): SpanLoads {
  const { first, last, length } = span;
  const start = mesh.stations[first]!;
  const { force, couple } = resultant(mesh, loads, plane, {
    from: start,
    firstStation: first + 1,
    lastStation: last - 1,
    firstPiece: first,
    lastPiece: last - 1,
  });
  const right = -couple / length;
  const shear = -force - right;
  let cut: Cut = { shear, moment: 0 };
  let [near, far] = [0, 0];
  for (let n = first; n < last; n += 1) {
    const piece = mesh.pieces[n]!;
    for (const point of GAUSS) {
      const s = point * piece.length;
      const share = (piece.start + s - start) / length;
      const inside = acrossPiece(cut, { length: s }, piece.q[plane]);
      const curved = (inside.moment * piece.length) / 2 / piece.bending;
      const sheared = (inside.shear * piece.length) / 2 / piece.shear / length;
      near += -curved * (1 - share) + sheared;
      far += curved * share + sheared;
    }
    cut = acrossPiece(cut, piece, piece.q[plane]);
    if (n + 1 < last) cut = acrossStation(cut, loads, n + 1);
  }
  return { shear, right, rotations: [near, far] };
}

/** Stiffness for [v1, ψ1, v2, ψ2], row by row: Tᵀ·S·T with the rotations against the chord T·d. */
export function spanMatrix({ length, stiffness }: Span): readonly number[] {
  const rows = chordRows(length);
  return Array.from({ length: 16 }, (_, k) => {
    const [i, j] = [Math.floor(k / 4), k % 4];
    let sum = 0;
    for (const a of [0, 1] as const)
      for (const b of [0, 1] as const) sum += rows[a][i]! * stiffness[2 * a + b]! * rows[b][j]!;
    return sum;
  });
}

/** Loads on the end freedoms that do the same as those within the span. */
export function endLoads(span: Span, loads: SpanLoads): readonly number[] {
  const rows = chordRows(span.length);
  const [near, far] = loads.rotations;
  const [a, b, c, d] = span.stiffness;
  const couples = [a * near + b * far, c * near + d * far] as const;
  const hinge = [loads.shear, 0, loads.right, 0];
  return hinge.map((force, i) => rows[0][i]! * couples[0] + rows[1][i]! * couples[1] - force);
}

/** The cut at the start of the span once the displacements of its ends are known. */
export function startOfSpan(span: Span, loads: SpanLoads, ends: ArrayLike<number>): Cut {
  const { length, stiffness } = span;
  const chord = (ends[2]! - ends[0]!) / length;
  const near = ends[1]! - chord - loads.rotations[0];
  const far = ends[3]! - chord - loads.rotations[1];
  const first = stiffness[0] * near + stiffness[1] * far;
  const second = stiffness[2] * near + stiffness[3] * far;
  return { shear: loads.shear + (first + second) / length, moment: -first };
}

const chordRows = (length: number): readonly [readonly number[], readonly number[]] => [
  [1 / length, 1, -1 / length, 0],
  [1 / length, 0, -1 / length, 1],
];
