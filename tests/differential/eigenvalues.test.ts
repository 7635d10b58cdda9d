import { describe, expect, test } from 'vitest';
import { type ComplexRoot, complexRoots } from '../../src/core/numerics/index.ts';
import { characteristic, whippleEigenvalues, whippleMatrices } from '../../src/core/ride/index.ts';
import { runPython } from '../support/debianPython.ts';
import { smallMotorcycle } from '../support/smallMotorcycle.ts';
import { whippleBenchmark } from '../support/whippleBenchmark.ts';

// A general numeric library solves the same equations as a first-order system of four, by QR on the matrix; here they
// are roots of the characteristic polynomial.

const NEEDS = { module: 'numpy', debianPackage: 'python3-numpy' };
const SCRIPT = `
import json, sys
import numpy as np
answers = []
for case in json.load(sys.stdin):
    M, C1, K0, K2 = (np.array(case['m'][k]) for k in ('M', 'C1', 'K0', 'K2'))
    rows = []
    for v in case['speeds']:
        K = case['m']['g'] * K0 + v * v * K2
        Mi = np.linalg.inv(M)
        A = np.block([[np.zeros((2, 2)), np.eye(2)], [-Mi @ K, -Mi @ (v * C1)]])
        rows.append([[float(x.real), float(x.imag)] for x in np.linalg.eigvals(A)])
    answers.append(rows)
print(json.dumps(answers))
`;
const POLYNOMIALS = `
import json, sys
import numpy as np
print(json.dumps([[[float(x.real), float(x.imag)] for x in np.roots(list(reversed(p)))] for p in json.load(sys.stdin)]))
`;

type Pairs = readonly (readonly [number, number])[];

/** Greatest distance when each of ours takes the nearest of theirs that is left. */
function apart(ours: readonly ComplexRoot[], theirs: Pairs): number {
  const left = [...theirs];
  let most = 0;
  for (const root of ours) {
    const distances = left.map(([re, im]) => Math.hypot(root.re - re, root.im - im));
    const least = Math.min(...distances);
    left.splice(distances.indexOf(least), 1);
    most = Math.max(most, least);
  }
  return left.length === 0 ? most : Number.POSITIVE_INFINITY;
}

describe('[WHP-5] eigenvalues against a general numeric library', () => {
  // Off the double root near 0.68 m/s, where half of the digits are lost on either side.
  const speeds = Array.from({ length: 40 }, (_, k) => 1 + k * 0.4);
  const bikes = [
    { name: 'benchmark', m: whippleMatrices(whippleBenchmark) },
    { name: 'motorcycle', m: whippleMatrices(smallMotorcycle()) },
    { name: 'geared rotor', m: whippleMatrices(smallMotorcycle(), 0.16) },
  ];
  const answers = runPython(
    SCRIPT,
    bikes.map(({ m }) => ({ m, speeds })),
    NEEDS,
  ) as readonly (readonly Pairs[])[];
  test.each(bikes.map((bike, k) => [bike.name, bike.m, answers[k]!] as const))('%s', (_, m, rows) => {
    rows.forEach((theirs, k) => {
      const ours = whippleEigenvalues(m, speeds[k]!);
      const size = Math.max(...ours.map(({ re, im }) => Math.hypot(re, im)));
      // QR is backward stable: its error is some 1e-15 of the largest entry of the first-order matrix, about size².
      expect(apart(ours, theirs), `at ${speeds[k]} m/s`).toBeLessThanOrEqual(1e-13 * size * size);
    });
  });
});

test('[WHP-6] polynomial roots against a general numeric library', () => {
  const polynomials = [
    [24, -50, 35, -10, 1],
    [1, 0, 0, 0, 1],
    [-1, 0, 0, 0, 0, 1],
    [0, 0, 6, -5, 1],
    [1e-3, -20, 4e4, 3, 2],
    [...characteristic(whippleMatrices(whippleBenchmark), 6)],
    [5, -3],
  ];
  const answers = runPython(POLYNOMIALS, polynomials, NEEDS) as readonly Pairs[];
  polynomials.forEach((polynomial, k) => {
    const ours = complexRoots(polynomial);
    expect(ours).toHaveLength(polynomial.length - 1);
    const size = Math.max(...ours.map(({ re, im }) => Math.hypot(re, im)));
    // Simple roots; the worst of these polynomials loses three of sixteen digits.
    expect(apart(ours, answers[k]!), `of ${polynomial}`).toBeLessThanOrEqual(1e-12 * size);
  });
});
