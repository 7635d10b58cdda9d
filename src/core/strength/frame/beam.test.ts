import { describe, expect, test } from 'vitest';
import { SECTION } from '../../../../tests/support/frames.ts';
import { beamGeometricStiffness, beamStiffness, shearRatios } from './beam.ts';
import { beamMass } from './beamMass.ts';
import { fixedEndForces } from './endForces.ts';
import type { FrameMember } from './model.ts';
import { condense, condenseForces, condenseMatrix } from './release.ts';

const L = 0.37;
const member: FrameMember = { ...SECTION, id: 'm', from: 'a', to: 'b', density: 7850 };
const short: FrameMember = { ...member, shearAreas: [3e-6, 1e-6] };

/** Points and weights of Gauss on 0 to 1, exact to degree 9; the shapes are cubic. */
const GAUSS = [
  [-0.906179845938664, 0.23692688505618908],
  [-0.538469310105683, 0.47862867049936647],
  [0, 0.5688888888888889],
  [0.538469310105683, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
].map(([x, w]) => [(1 + x!) / 2, w! / 2] as const);

/**
 * Displacement v and turn of the section ψ at x = ξ·L of an unloaded Timoshenko beam for unit end movements
 * [v1 ψ1 v2 ψ2]: from EI·ψ''' = 0 and v' = ψ - EI·ψ''/(G·As).
 */
function shapes(xi: number, phi: number) {
  const c = 1 / (1 + phi);
  const [x2, x3] = [xi ** 2, xi ** 3];
  return {
    v: [
      c * (1 - 3 * x2 + 2 * x3 + phi * (1 - xi)),
      c * L * (xi - 2 * x2 + x3 + (phi / 2) * (xi - x2)),
      c * (3 * x2 - 2 * x3 + phi * xi),
      c * L * (x3 - x2 - (phi / 2) * (xi - x2)),
    ],
    slope: [
      (c / L) * (-6 * xi + 6 * x2 - phi),
      c * (1 - 4 * xi + 3 * x2 + (phi / 2) * (1 - 2 * xi)),
      (c / L) * (6 * xi - 6 * x2 + phi),
      c * (3 * x2 - 2 * xi - (phi / 2) * (1 - 2 * xi)),
    ],
    turn: [
      (c / L) * 6 * (x2 - xi),
      c * (1 - 4 * xi + 3 * x2 + phi * (1 - xi)),
      (c / L) * 6 * (xi - x2),
      c * (3 * x2 - 2 * xi + phi * xi),
    ],
    curvature: [
      (c / L ** 2) * (12 * xi - 6),
      (c / L) * (6 * xi - 4 - phi),
      (c / L ** 2) * (6 - 12 * xi),
      (c / L) * (6 * xi - 2 + phi),
    ],
  };
}

type Shapes = ReturnType<typeof shapes>;

/** ∫ f(i, j) dx over the member, 4 × 4. */
const integral = (phi: number, f: (s: Shapes, i: number, j: number) => number): number[][] =>
  [0, 1, 2, 3].map((i) =>
    [0, 1, 2, 3].map((j) => GAUSS.reduce((sum, [xi, w]) => sum + w * L * f(shapes(xi, phi), i, j), 0)),
  );

const planes = [
  { rows: [1, 5, 7, 11], signs: [1, 1, 1, 1], secondMoment: member.secondMomentZ, index: 0 },
  { rows: [2, 4, 8, 10], signs: [1, -1, 1, -1], secondMoment: member.secondMomentY, index: 1 },
];

function expectPlane(k: Float64Array, plane: (typeof planes)[number], wanted: number[][]): void {
  const scale = Math.max(...wanted.flat().map(Math.abs));
  plane.rows.forEach((row, i) => {
    plane.rows.forEach((column, j) => {
      const found = k[row * 12 + column]! * plane.signs[i]! * plane.signs[j]!;
      // Rounding of the quadrature constants.
      expect(Math.abs(found - wanted[i]![j]!), `entry ${i}, ${j}`).toBeLessThan(1e-13 * scale);
    });
  });
}

describe.each([
  ['slender', member],
  ['short', short],
] as const)('matrices of a %s member against integrals of its shapes', (_, one) => {
  test.each(planes)('[FRAME-3] [FRAME-4] stiffness, plane $index', (plane) => {
    const phi = shearRatios(one, L)[plane.index]!;
    const shearStiffness = one.shearAreas ? one.shearModulus * one.shearAreas[plane.index]! : 0;
    const wanted = integral(
      phi,
      (s, i, j) =>
        one.youngsModulus * plane.secondMoment * s.curvature[i]! * s.curvature[j]! +
        shearStiffness * (s.slope[i]! - s.turn[i]!) * (s.slope[j]! - s.turn[j]!),
    );
    expectPlane(beamStiffness(one, L), plane, wanted);
  });

  test.each(planes)('[FRAME-19] mass, plane $index', (plane) => {
    const phi = shearRatios(one, L)[plane.index]!;
    const wanted = integral(
      phi,
      (s, i, j) => 7850 * one.area * s.v[i]! * s.v[j]! + 7850 * plane.secondMoment * s.turn[i]! * s.turn[j]!,
    );
    expectPlane(beamMass(one, L), plane, wanted);
  });

  test.each(planes)('[FRAME-18] geometric stiffness, plane $index', (plane) => {
    const phi = shearRatios(one, L)[plane.index]!;
    const wanted = integral(phi, (s, i, j) => 1234 * s.slope[i]! * s.slope[j]!);
    expectPlane(beamGeometricStiffness(one, L, 1234), plane, wanted);
  });

  test('[FRAME-6] held ends carry the load of the shapes', () => {
    const phi = shearRatios(one, L)[0];
    const ends = fixedEndForces(L, [0, 50, 0]);
    [1, 5, 7, 11].forEach((row, i) => {
      const wanted = -GAUSS.reduce((sum, [xi, w]) => sum + w * L * 50 * shapes(xi, phi).v[i]!, 0);
      expect(ends[row]).toBeCloseTo(wanted, 12);
    });
  });

  test('moving as a stiff body costs no force and weighs its mass', () => {
    const k = beamStiffness(one, L);
    const m = beamMass(one, L);
    const up = Float64Array.from({ length: 12 }, (_, i) => (i === 2 || i === 8 ? 1 : 0));
    const spin = Float64Array.from({ length: 12 }, (_, i) => (i === 4 || i === 10 ? 1 : i === 8 ? -L : 0));
    const times = (a: Float64Array, x: Float64Array) =>
      Float64Array.from({ length: 12 }, (_, i) => x.reduce((sum, xj, j) => sum + a[i * 12 + j]! * xj, 0));
    const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
    const scale = Math.max(...k);
    for (const x of [up, spin]) for (const f of times(k, x)) expect(Math.abs(f)).toBeLessThan(1e-14 * scale);
    const mass = 7850 * one.area * L;
    expect(dot(up, times(m, up)) / mass).toBeCloseTo(1, 12);
    const about = (mass * L ** 2) / 3 + 7850 * one.secondMomentY * L;
    expect(dot(spin, times(m, spin)) / about).toBeCloseTo(1, 12);
  });
});

describe('condensation of released ends', () => {
  const k = beamStiffness(short, L);

  test('[FRAME-5] in any order, the same; the released rows carry nothing', () => {
    const a = condense(k, [4, 5, 11]);
    const b = condense(k, [11, 4, 5]);
    if (!a.ok || !b.ok) throw new Error('refused');
    a.value.stiffness.forEach((value, i) => {
      expect(Math.abs(value - b.value.stiffness[i]!)).toBeLessThan(1e-9 * Math.max(...k));
    });
    for (const row of [4, 5, 11])
      for (let j = 0; j < 12; j++) expect(a.value.stiffness[row * 12 + j]).toBe(0);
  });

  test('[FRAME-5] is the same as Cᵀ·k·C, and forces follow the same C', () => {
    const released = condense(k, [4, 11]);
    if (!released.ok) throw new Error('refused');
    const { follow, stiffness } = released.value;
    condenseMatrix(follow, k).forEach((value, i) => {
      expect(Math.abs(value - stiffness[i]!)).toBeLessThan(1e-9 * Math.max(...k));
    });
    const ends = condenseForces(follow, fixedEndForces(L, [0, 80, 60]));
    expect(ends[4]).toBe(0);
    expect(ends[11]).toBe(0);
    // All of the load still arrives.
    expect(ends[1]! + ends[7]!).toBeCloseTo(-80 * L, 12);
    expect(ends[2]! + ends[8]!).toBeCloseTo(-60 * L, 12);
  });
});
