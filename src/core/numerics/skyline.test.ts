import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addMatrix,
  addToSkyline,
  combineSkylines,
  emptySkyline,
  factorLdlt,
  largestEigenpairs,
  largestOfPencil,
  multiplySkyline,
  reverseCuthillMckee,
  type SkylineMatrix,
  skylineDiagonal,
  skylineEntries,
  solveLdlt,
  solveLdltAll,
  symmetricEigen,
} from './index.ts';

/** A symmetric matrix under a full skyline. */
function dense(rows: readonly (readonly number[])[]): SkylineMatrix {
  const matrix = emptySkyline(new Int32Array(rows.length));
  rows.forEach((row, i) => {
    row.slice(i).forEach((value, j) => {
      addToSkyline(matrix, i, i + j, value);
    });
  });
  return matrix;
}

/** Second differences: 2 on the diagonal, -1 beside it; eigenvalues 2 - 2·cos(kπ/(n+1)). */
function differences(n: number): SkylineMatrix {
  const matrix = emptySkyline(Int32Array.from({ length: n }, (_, j) => Math.max(0, j - 1)));
  for (let j = 0; j < n; j++) {
    addToSkyline(matrix, j, j, 2);
    if (j > 0) addToSkyline(matrix, j, j - 1, -1);
  }
  return matrix;
}

const difference = (n: number, k: number) => 2 - 2 * Math.cos((k * Math.PI) / (n + 1));

describe('a matrix under a skyline', () => {
  test('takes entries on either side of the diagonal and refuses those above the skyline', () => {
    const matrix = differences(4);
    expect(skylineEntries(matrix.top)).toBe(7);
    expect([...skylineDiagonal(matrix)]).toEqual([2, 2, 2, 2]);
    expect([...multiplySkyline(matrix, Float64Array.of(1, 2, 3, 5))]).toEqual([0, 0, -1, 7]);
    expect(() => addToSkyline(matrix, 0, 2, 1)).toThrow(/skyline/);
    expect([...combineSkylines(matrix, 2, matrix).values]).toEqual([...matrix.values].map((x) => 3 * x));
    expect(() => combineSkylines(matrix, 1, differences(5))).toThrow();
  });

  test('solves a system with a known answer', () => {
    // By hand: [4 2 -2; 2 5 1; -2 1 6]·[1 2 3] = [2 15 18].
    const factor = factorLdlt(
      dense([
        [4, 2, -2],
        [2, 5, 1],
        [-2, 1, 6],
      ]),
    );
    [...solveLdlt(factor, Float64Array.of(2, 15, 18))].forEach((x, i) => {
      expect(x).toBeCloseTo(i + 1, 14);
    });
    expect(factor.negativePivots).toBe(0);
    expect(factor.nullModes).toEqual([]);
  });

  test('takes small matrices: rows left out, a row given twice', () => {
    const matrix = differences(4);
    const small = Float64Array.of(1, 10, 100, 10, 2, 20, 100, 20, 3);
    // By hand: row 1 stands for the first and the last line, so that it takes 1 + 100 + 100 + 3.
    addMatrix(matrix, Int32Array.of(1, -1, 1), small);
    expect([...skylineDiagonal(matrix)]).toEqual([2, 206, 2, 2]);
    addMatrix(matrix, Int32Array.of(3, 2, -1), small);
    expect([...skylineDiagonal(matrix)]).toEqual([2, 206, 4, 3]);
    expect([...multiplySkyline(matrix, Float64Array.of(0, 0, 1, 0))]).toEqual([0, -1, 4, 9]);
    expect(() => addMatrix(matrix, Int32Array.of(3, 1, 0), small)).toThrow(/skyline/);
  });

  test.each([1, 2, 4, 5, 9])('solves %i systems together, each as it does alone', (count) => {
    const matrix = differences(7);
    const factor = factorLdlt(matrix);
    // Known answers x, so that b = A·x comes from the definition of a product.
    const wanted = Array.from({ length: count }, (_, k) =>
      Float64Array.from({ length: 7 }, (_, i) => Math.sin(3 * k + i)),
    );
    const columns = wanted.map((x) => multiplySkyline(matrix, x));
    const solved = solveLdltAll(factor, columns);
    expect(solved).toHaveLength(count);
    solved.forEach((x, k) => {
      expect(solveLdltAll(factor, [columns[k]!])[0]).toEqual(x);
      x.forEach((value, i) => {
        expect(value).toBeCloseTo(wanted[k]![i]!, 13);
      });
    });
  });

  test('solves any well-conditioned system: A·x gives b back', () => {
    const entry = fc.double({ min: -1, max: 1, noNaN: true });
    const system = fc.integer({ min: 1, max: 12 }).chain((n) =>
      fc.record({
        n: fc.constant(n),
        a: fc.array(entry, { minLength: n * n, maxLength: n * n }),
        b: fc.array(entry, { minLength: n, maxLength: n }),
      }),
    );
    fc.assert(
      fc.property(system, ({ n, a, b }) => {
        // Diagonally dominant.
        const rows = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (_, j) =>
            i === j ? n + 1 : (a[Math.min(i, j) * n + Math.max(i, j)] ?? 0),
          ),
        );
        const matrix = dense(rows);
        const x = solveLdlt(factorLdlt(matrix), Float64Array.from(b));
        multiplySkyline(matrix, x).forEach((value, i) => {
          expect(Math.abs(value - b[i]!)).toBeLessThan(1e-13);
        });
      }),
    );
  });

  test('finds every direction without resistance, and only those', () => {
    // Three equal masses on two springs, and one apart: both can move freely.
    const factor = factorLdlt(
      dense([
        [1, -1, 0, 0],
        [-1, 2, -1, 0],
        [0, -1, 1, 0],
        [0, 0, 0, 0],
      ]),
    );
    expect(factor.nullModes.map(({ index, vector }) => [index, [...vector]])).toEqual([
      [2, [1, 1, 1, 0]],
      [3, [0, 0, 0, 1]],
    ]);
    expect(factorLdlt(differences(2000)).nullModes).toEqual([]);
  });

  test('finds the mode of a chain of 500 springs that nothing holds', () => {
    const n = 500;
    const matrix = differences(n);
    addToSkyline(matrix, 0, 0, -1);
    addToSkyline(matrix, n - 1, n - 1, -1);
    const { nullModes } = factorLdlt(matrix);
    expect(nullModes).toHaveLength(1);
    for (const x of nullModes[0]?.vector ?? []) expect(x).toBeCloseTo(1, 9);
  });

  test('counts eigenvalues below a limit by the signs of pivots', () => {
    const n = 40;
    const identity = emptySkyline(differences(n).top);
    for (let j = 0; j < n; j++) addToSkyline(identity, j, j, 1);
    for (const k of [0, 1, 7, 39]) {
      const limit = (difference(n, k) + difference(n, k + 1)) / 2;
      const shifted = combineSkylines(differences(n), -limit, identity);
      expect(factorLdlt(shifted, { indefinite: true }).negativePivots).toBe(k);
    }
  });
});

describe('reverse Cuthill-McKee', () => {
  const skylineOf = (neighbors: readonly (readonly number[])[], order: Int32Array) => {
    const place = new Map([...order].map((vertex, k) => [vertex, k]));
    return [...order].reduce(
      (sum, vertex, k) => sum + k - Math.min(k, ...neighbors[vertex]!.map((other) => place.get(other)!)),
      0,
    );
  };

  test('brings a shuffled path back in line: each next to its neighbor', () => {
    const path = [3, 8, 1, 0, 6, 2, 9, 4, 7, 5];
    const neighbors = path.map((_, vertex) =>
      [-1, 1].flatMap((step) => path[path.indexOf(vertex) + step] ?? []),
    );
    expect(skylineOf(neighbors, reverseCuthillMckee(neighbors))).toBe(9);
  });

  test('orders a long strip across its short side', () => {
    const [wide, long] = [4, 60];
    const at = (x: number, y: number) => (x >= 0 && y >= 0 && x < long && y < wide ? [y * long + x] : []);
    const neighbors = Array.from({ length: wide * long }, (_, v) => {
      const [x, y] = [v % long, Math.floor(v / long)];
      return [...at(x - 1, y), ...at(x + 1, y), ...at(x, y - 1), ...at(x, y + 1)];
    });
    const order = reverseCuthillMckee(neighbors);
    // About the width of the strip a column, against its length in the order given.
    expect(skylineOf(neighbors, order)).toBeLessThan(wide * long * (wide + 1));
    expect(
      skylineOf(
        neighbors,
        Int32Array.from({ length: wide * long }, (_, v) => v),
      ),
    ).toBeGreaterThan(wide * long * 40);
  });

  test('takes each vertex of any graph once', () => {
    const graph = fc
      .integer({ min: 0, max: 20 })
      .chain((n) =>
        fc.tuple(
          fc.constant(n),
          n === 0 ? fc.constant([]) : fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1))),
        ),
      );
    fc.assert(
      fc.property(graph, ([n, edges]) => {
        const sets = Array.from({ length: n }, () => new Set<number>());
        for (const [a, b] of edges) {
          if (a === b) continue;
          sets[a]!.add(b);
          sets[b]!.add(a);
        }
        const order = reverseCuthillMckee(sets.map((set) => [...set]));
        expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
      }),
    );
  });
});

describe('eigenvalues', () => {
  test('of a small matrix: [2 1; 1 2] has 3 and 1', () => {
    const { values, vectors } = symmetricEigen(Float64Array.of(2, 1, 1, 2), 2);
    expect([...values]).toEqual([3, 1].map((x) => expect.closeTo(x, 14)));
    expect(Math.abs(vectors[0]![0]! - vectors[0]![1]!)).toBeLessThan(1e-14);
    expect(() => symmetricEigen(Float64Array.of(Number.NaN), 1)).toThrow();
  });

  test('of second differences, by rotations: 2 - 2·cos(kπ/(n+1))', () => {
    const n = 30;
    const matrix = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      matrix[i * n + i] = 2;
      if (i > 0) matrix[i * n + i - 1] = matrix[(i - 1) * n + i] = -1;
    }
    symmetricEigen(matrix, n).values.forEach((value, i) => {
      expect(Math.abs(value - difference(n, n - i))).toBeLessThan(1e-13);
    });
  });

  test('of a pencil: lowest of second differences against the unit matrix, in a problem of 1500', () => {
    const n = 1500;
    const identity = emptySkyline(differences(n).top);
    for (let j = 0; j < n; j++) addToSkyline(identity, j, j, 1);
    const outcome = largestOfPencil(factorLdlt(differences(n)), identity, 8);
    if (!outcome.ok) throw new Error(outcome.reason);
    outcome.pairs.forEach(({ value, vector }, k) => {
      expect(1 / value / difference(n, k + 1)).toBeCloseTo(1, 9);
      // xᵀ·K·x = 1.
      const image = multiplySkyline(differences(n), vector);
      expect(vector.reduce((sum, x, i) => sum + x * image[i]!, 0)).toBeCloseTo(1, 8);
    });
  });

  test('of a matrix of mixed signs: only those above zero, each as often as it occurs', () => {
    const diagonal = [5, -9, 5, 0, 2, -1, 2, 2, 0, 1e-3, 5, -4];
    const apply = (x: Float64Array) => x.map((value, i) => diagonal[i]! * value);
    const outcome = largestEigenpairs({ size: diagonal.length, apply }, 10);
    if (!outcome.ok) throw new Error(outcome.reason);
    const wanted = [5, 5, 5, 2, 2, 2, 1e-3];
    expect(outcome.pairs).toHaveLength(wanted.length);
    outcome.pairs.forEach(({ value }, i) => {
      expect(value).toBeCloseTo(wanted[i]!, 12);
    });
  });

  test('says so when the matrix is not finite', () => {
    expect(largestEigenpairs({ size: 3, apply: (x) => x.map(() => Number.NaN) }, 1)).toEqual({
      ok: false,
      reason: 'not-finite',
    });
  });
});
