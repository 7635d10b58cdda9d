import { PLANES, setSymmetric, shearRatios } from './beam.ts';
import type { FrameMember } from './model.ts';

/**
 * Consistent mass of a Timoshenko beam in local axes with the rotary inertia of its sections; 12 × 12, row by
 * row, order as in the stiffness. Twist carries the polar inertia ρ·(Iy + Iz) per length.
 * @param length L [m], > 0
 * @source przemieniecki-1968, section 11.4, from memory; checked by integrating the shapes
 */
export function beamMass(member: FrameMember, length: number): Float64Array {
  const { area, secondMomentY, secondMomentZ } = member;
  const density = member.density ?? 0;
  const mass = new Float64Array(144);
  addBar(mass, 0, 6, density * area * length);
  addBar(mass, 3, 9, density * (secondMomentY + secondMomentZ) * length);
  const ratios = shearRatios(member, length);
  PLANES.forEach(({ rows, sign }, p) => {
    const entries = planeMass({
      phi: ratios[p]!,
      length,
      perLength: density * area,
      rotary: density * (p === 0 ? secondMomentZ : secondMomentY),
    });
    // Rotation rows change sign with the plane.
    const signs = [1, sign, 1, sign];
    setSymmetric(
      mass,
      rows,
      entries.map((row, i) => row.map((value, j) => value * signs[i]! * signs[j]!)),
    );
  });
  return mass;
}

function addBar(m: Float64Array, a: number, b: number, whole: number): void {
  m[a * 12 + a] = whole / 3;
  m[b * 12 + b] = whole / 3;
  m[a * 12 + b] = whole / 6;
  m[b * 12 + a] = whole / 6;
}

interface PlaneMassInput {
  readonly phi: number;
  readonly length: number;
  /** ρ·A [kg/m]. */
  readonly perLength: number;
  /** ρ·I [kg·m]. */
  readonly rotary: number;
}

function planeMass({ phi, length: l, perLength, rotary }: PlaneMassInput): number[][] {
  const t = (perLength * l) / (1 + phi) ** 2;
  const r = rotary / (l * (1 + phi) ** 2);
  const p2 = phi ** 2;
  const near = t * (13 / 35 + 0.7 * phi + p2 / 3) + r * (6 / 5);
  const far = t * (9 / 70 + 0.3 * phi + p2 / 6) - r * (6 / 5);
  const lever = l * (1 / 10 - phi / 2);
  const own = t * l * (11 / 210 + (11 / 120) * phi + p2 / 24) + r * lever;
  const other = t * l * (13 / 420 + (3 / 40) * phi + p2 / 24) - r * lever;
  const spin = t * l ** 2 * (1 / 105 + phi / 60 + p2 / 120) + r * l ** 2 * (2 / 15 + phi / 6 + p2 / 3);
  const cross = -t * l ** 2 * (1 / 140 + phi / 60 + p2 / 120) - r * l ** 2 * (1 / 30 + phi / 6 - p2 / 6);
  return [
    [near, own, far, -other],
    [own, spin, other, cross],
    [far, other, near, -own],
    [-other, cross, -own, spin],
  ];
}
