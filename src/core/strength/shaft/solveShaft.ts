import { polynomialAt } from '../../numerics/index.ts';
import type { Angle, Force, Issue, Length, Outcome, Pressure, Torque } from '../../quantity/index.ts';
import { bad, good } from '../../quantity/index.ts';
import { largestResultant } from './curves.ts';
import { meshOf, type ShaftMesh } from './mesh.ts';
import {
  type PlaneCurves,
  type PlaneSolution,
  type SupportSystem,
  solvePlane,
  supportSystem,
} from './planeSolution.ts';
import type { Across, Shaft, ShaftSection } from './shaft.ts';
import { shaftIssues } from './shaftIssues.ts';
import { type TorsionPiece, torqueBetween, torsionPieces } from './torsion.ts';

/** A value and where along the shaft it is. */
export interface Located<Q extends number> {
  readonly value: Q;
  /** x [m]. */
  readonly at: Length;
}

/** What a support does and how the shaft lies in it. */
export interface SupportResult {
  /** x [m]. */
  readonly at: Length;
  /** Force of the support on the shaft along y and z [N]. */
  readonly force: Across<Force>;
  /** Moment of a clamped support on the shaft about y and z [N·m]; 0 for a bearing. */
  readonly moment: Across<Torque>;
  /** dy/dx and dz/dx of the section [rad]. */
  readonly slopes: Across<Angle>;
  /** √(dy/dx² + dz/dx²) [rad], ≥ 0: what a bearing's limit is compared with. */
  readonly slope: Angle;
}

/** All at one place of the shaft; at a station, that of the piece left or right of it. */
export interface ShaftState {
  readonly at: Length;
  readonly section: ShaftSection;
  /** Sum of the forces on the part left of the cut, along y and z [N]. */
  readonly shear: Across<Force>;
  /** Bending moment on the left part's face about y and z [N·m]: M_z = EI·y'', M_y = −EI·z''. */
  readonly moment: Across<Torque>;
  /** Torque on the left part's face about x [N·m]. */
  readonly torque: Torque;
  readonly deflection: Across<Length>;
  readonly slope: Across<Angle>;
}

export interface ShaftSolution {
  readonly supports: readonly SupportResult[];
  /** Largest resultant bending moment √(My² + Mz²) [N·m]. */
  readonly maxMoment: Located<Torque>;
  /** Largest resultant deflection [m]. */
  readonly maxDeflection: Located<Length>;
  /** Largest nominal equivalent stress √(σ² + 3τ²) of bending and torsion, no notch [Pa]. */
  readonly maxStress: Located<Pressure>;
  readonly torsion: readonly TorsionPiece[];
  /** Sum of all torques [N·m]: what is missing for the shaft to turn evenly. */
  readonly torqueSum: Torque;
  readonly mesh: ShaftMesh;
  /** Curves of each piece in the x-y and the x-z plane. */
  readonly curves: readonly (readonly [PlaneCurves, PlaneCurves])[];
}

/**
 * A shaft as a straight beam of stepped sections on any number of supports, bending in two planes at once, with torsion.
 * Each span between supports is one beam element whose flexibility is integrated over its pieces, exact for any steps;
 * Bernoulli beam, or Timoshenko with `shearDeflection`. Small slopes; the bearings give the same stiffness all round.
 * @returns reactions, slopes, maxima with their places, torsion
 * @issue conflict — gaps or overlaps, a bore as large as the shaft, a shaft that is not held
 * @issue out-of-range — a place off the shaft
 * @source derived, virtual work and statics of continuous beams
 */
export function solveShaft(shaft: Shaft): Outcome<ShaftSolution> {
  const [first, ...rest] = shaftIssues(shaft);
  if (first) return bad(first, ...rest);
  const mesh = meshOf(shaft);
  const system = supportSystem(shaft, mesh);
  if (system.factor.nullModes.length > 0) return bad(loose());
  const planes = [solvePlane(shaft, mesh, system, 0), solvePlane(shaft, mesh, system, 1)] as const;
  const curves = mesh.pieces.map((_, n) => [planes[0].curves[n]!, planes[1].curves[n]!] as const);
  return good({
    supports: supportResults(shaft, system, planes),
    maxMoment: largest(mesh, curves, 'moment') as Located<Torque>,
    maxDeflection: largest(mesh, curves, 'deflection') as Located<Length>,
    maxStress: largestStress(shaft, mesh, curves),
    torsion: torsionPieces(shaft, mesh),
    torqueSum: shaft.loads.reduce((sum, load) => sum + (load.torque ?? 0), 0) as Torque,
    mesh,
    curves,
  });
}

/** State at `x`; at a station `side` says of which piece. */
export function shaftStateAt(
  shaft: Shaft,
  solution: ShaftSolution,
  x: number,
  side: 'left' | 'right' = 'right',
): ShaftState {
  const { mesh, curves } = solution;
  const last = mesh.pieces.length - 1;
  const found = mesh.pieces.findIndex(({ start, length }) =>
    side === 'right' ? x < start + length - 1e-12 : x <= start + length + 1e-12,
  );
  const n = found < 0 ? last : found;
  const piece = mesh.pieces[n]!;
  const s = x - piece.start;
  const [y, z] = curves[n]!;
  const pair = <Q extends number>(of: keyof PlaneCurves): Across<Q> => [
    polynomialAt(y[of], s) as Q,
    polynomialAt(z[of], s) as Q,
  ];
  return {
    at: x as Length,
    section: piece.section,
    shear: pair('shear'),
    moment: [-polynomialAt(z.moment, s) as Torque, polynomialAt(y.moment, s) as Torque],
    torque: torqueBetween(shaft, piece.start + piece.length / 2) as Torque,
    deflection: pair('deflection'),
    slope: pair('slope'),
  };
}

/** √(σ² + 3τ²) on the surface, σ = 32·M·D/(π(D⁴ − d⁴)), τ = 16·T·D/(π(D⁴ − d⁴)) [Pa]. @source shigley-9, section 7-4 */
export function nominalStress(section: ShaftSection, moment: number, torque: number): Pressure {
  const radius = section.diameter / 2;
  const bending = (moment * radius) / section.secondMoment;
  const torsion = (torque * radius) / (2 * section.secondMoment);
  return Math.hypot(bending, Math.sqrt(3) * torsion) as Pressure;
}

/** In the order of the input. */
function supportResults(
  shaft: Shaft,
  system: SupportSystem,
  [inY, inZ]: readonly [PlaneSolution, PlaneSolution],
): readonly SupportResult[] {
  return shaft.supports.map((support) => {
    const n = system.supports.indexOf(support);
    const [y, z] = [inY.reactions[n]!, inZ.reactions[n]!];
    const clamped = support.clamped === true;
    const slopes: Across<Angle> = [y.slope as Angle, z.slope as Angle];
    return {
      at: support.at,
      force: [y.force as Force, z.force as Force],
      moment: [(clamped ? -z.couple : 0) as Torque, (clamped ? y.couple : 0) as Torque],
      slopes,
      slope: Math.hypot(...slopes) as Angle,
    };
  });
}

function largest(
  mesh: ShaftMesh,
  curves: ShaftSolution['curves'],
  of: 'moment' | 'deflection',
): Located<number> {
  let best = { value: -1, at: 0 as Length };
  mesh.pieces.forEach((piece, n) => {
    const [y, z] = curves[n]!;
    const found = largestResultant(y[of], z[of], piece.length);
    if (found.value > best.value) best = { value: found.value, at: (piece.start + found.s) as Length };
  });
  return best;
}

function largestStress(shaft: Shaft, mesh: ShaftMesh, curves: ShaftSolution['curves']): Located<Pressure> {
  let best = { value: -1 as Pressure, at: 0 as Length };
  mesh.pieces.forEach((piece, n) => {
    const [y, z] = curves[n]!;
    const moment = largestResultant(y.moment, z.moment, piece.length);
    const torque = torqueBetween(shaft, piece.start + piece.length / 2);
    const value = nominalStress(piece.section, moment.value, torque);
    if (value > best.value) best = { value, at: (piece.start + moment.s) as Length };
  });
  return best;
}

const loose = (): Issue => ({
  code: 'conflict',
  path: 'supports',
  reason: 'the shaft is not held: its supports are too soft or too near each other',
});
