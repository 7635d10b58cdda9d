import {
  derived,
  type Figure,
  type FigureInput,
  type QuantityKind,
  type SourceRef,
} from '../quantity/index.ts';
import type { Handling } from './handling.ts';
import type { WhippleParameters } from './whipple.ts';
import type { Asymmetry } from './whippleFromBuild.ts';

const MODEL: SourceRef = {
  key: 'whipple-2007',
  where: 'appendix A: linearized equations of the benchmark bicycle',
};

const LENGTHS = ['w', 'c', 'rR', 'xB', 'zB', 'xH', 'zH', 'rF'] as const;
const MASSES = ['mR', 'mB', 'mH', 'mF'] as const;
const INERTIAS = ['IRxx', 'IRyy', 'IBxx', 'IBzz', 'IBxz', 'IHxx', 'IHzz', 'IHxz', 'IFxx', 'IFyy'] as const;

/** The working of the handling model; a speed that the bike does not have is left out. */
export function handlingFigures(handling: Handling, asymmetry?: Asymmetry): Figure[] {
  const { parameters, matrices, speeds } = handling;
  const inputs = parameterInputs(parameters);
  const figure = (
    id: string,
    symbol: string,
    name: string,
    value: number | undefined,
    kind: QuantityKind,
    formula: string,
    source = MODEL,
  ): Figure[] =>
    value === undefined ? [] : [{ id: `handling.${id}`, symbol, name, value, kind, formula, inputs, source }];
  const [range] = speeds.selfStable;
  const routh = derived(
    'Routh-Hurwitz: every root of the characteristic polynomial lies left of the imaginary axis',
  );
  return [
    ...figure(
      'weaveSpeed',
      'v_w',
      'weave speed',
      speeds.weave,
      'speed',
      'a1·a2·a3 = a0·a3² + a4·a1², a1/a3 > 0, aᵢ of det(M·λ² + v·C1·λ + g·K0 + v²·K2)',
    ),
    ...figure(
      'capsizeSpeed',
      'v_c',
      'capsize speed',
      speeds.capsize,
      'speed',
      'v² = g·(K0₁₂² − K0₁₁·K0₂₂)/(K0₁₁·K2₂₂ − K2₁₂·K0₂₁)',
    ),
    ...figure(
      'doubleRootSpeed',
      'v_d',
      'speed at which the fall turns into an oscillation',
      speeds.doubleRoot?.speed,
      'speed',
      'discriminant of det(M·λ² + v·C1·λ + g·K0 + v²·K2) = 0',
    ),
    ...figure(
      'selfStable.from',
      'v₁',
      'self-stable from, no rider on the bars',
      range?.from,
      'speed',
      'all Re λ < 0',
      routh,
    ),
    ...figure(
      'selfStable.to',
      'v₂',
      'self-stable up to, no rider on the bars',
      range?.to,
      'speed',
      'all Re λ < 0',
      routh,
    ),
    ...figure(
      'massMatrix.lean',
      'M₁₁',
      'inertia in lean about the ground line',
      matrices.M[0][0],
      'inertia',
      'M₁₁ = ITxx',
    ),
    ...figure(
      'massMatrix.coupling',
      'M₁₂',
      'inertia that couples lean and steer',
      matrices.M[0][1],
      'inertia',
      'M₁₂ = IAλx + μ·ITxz',
    ),
    ...figure(
      'massMatrix.steer',
      'M₂₂',
      'inertia in steer',
      matrices.M[1][1],
      'inertia',
      'M₂₂ = IAλλ + 2·μ·IAλz + μ²·ITzz',
    ),
    ...(asymmetry ? asymmetryFigures(asymmetry) : []),
  ];
}

function asymmetryFigures(asymmetry: Asymmetry): Figure[] {
  const sum = derived('sums over the parts; the model takes both sides of the bike as alike');
  const row = (id: string, symbol: string, name: string, value: number, kind: QuantityKind): Figure => ({
    id: `handling.asymmetry.${id}`,
    symbol,
    name,
    value,
    kind,
    formula: 'left out by the model, which wants 0',
    inputs: [],
    source: sum,
  });
  return [
    row('y', 'y_c', 'center of mass left of the center plane', asymmetry.y, 'length'),
    row('frontY', 'y_A', 'center of the front assembly left of the center plane', asymmetry.frontY, 'length'),
    row('Ixy', 'I_xy', 'product of inertia x, y', asymmetry.Ixy, 'inertia'),
    row('Iyz', 'I_yz', 'product of inertia y, z', asymmetry.Iyz, 'inertia'),
  ];
}

function parameterInputs(p: WhippleParameters): FigureInput[] {
  const of = (names: readonly (keyof WhippleParameters)[], kind: QuantityKind): FigureInput[] =>
    names.map((name) => ({ name, value: p[name], kind }));
  return [
    ...of(LENGTHS, 'length'),
    ...of(['lam'], 'angle'),
    ...of(MASSES, 'mass'),
    ...of(INERTIAS, 'inertia'),
  ];
}
