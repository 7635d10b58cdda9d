import type { Figure } from '../../quantity/index.ts';
import { derived } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import type { EnduranceLimit } from './enduranceLimit.ts';
import type { Shaft } from './shaft.ts';
import type { SectionFactors, SectionLoad, SectionStrength } from './shaftFatigue.ts';
import { equivalentMoments } from './shaftFatigue.ts';
import { type ShaftSolution, shaftStateAt } from './solveShaft.ts';

const BEAM = { key: 'bathe-1996', where: 'section 5.4.1, beam elements exact between stations' };

/** The working of a solved shaft. */
export function shaftFigures(shaft: Shaft, solution: ShaftSolution, names: PartNames): readonly Figure[] {
  const { maxMoment, maxDeflection, maxStress } = solution;
  const reactions = solution.supports.map(({ force, at, slope }, i): readonly Working[] => [
    {
      id: `reaction${i + 1}`,
      symbol: `R${i + 1}`,
      name: `reaction at support ${i + 1}`,
      value: Math.hypot(...force),
      kind: 'force',
      formula: 'R = √(Ry² + Rz²), from equilibrium of the beam on all supports',
      inputs: { x: [at, 'length'], Ry: [force[0], 'force'], Rz: [force[1], 'force'] },
      source: BEAM,
    },
    {
      id: `slope${i + 1}`,
      symbol: `θ${i + 1}`,
      name: `slope in support ${i + 1}, rad`,
      value: slope,
      kind: 'ratio',
      formula: "θ = √(y'² + z'²)",
      inputs: { x: [at, 'length'] },
      source: BEAM,
    },
  ]);
  const state = shaftStateAt(shaft, solution, maxStress.at);
  return figuresOf(names, [
    ...reactions.flat(),
    {
      id: 'maxMoment',
      symbol: 'M',
      name: 'largest bending moment',
      value: maxMoment.value,
      kind: 'torque',
      formula: 'M = √(My² + Mz²), its largest along the shaft',
      inputs: { x: [maxMoment.at, 'length'] },
      source: derived('extreme of the squared moment, a polynomial between stations'),
    },
    {
      id: 'maxDeflection',
      symbol: 'δ',
      name: 'largest deflection',
      value: maxDeflection.value,
      kind: 'length',
      formula: 'δ = √(y² + z²), its largest along the shaft',
      inputs: { x: [maxDeflection.at, 'length'] },
      source: BEAM,
    },
    {
      id: 'maxStress',
      symbol: 'σ',
      name: 'largest nominal equivalent stress, no notch',
      value: maxStress.value,
      kind: 'pressure',
      formula: 'σ = √((32·M·d/(π(d⁴ − di⁴)))² + 3·(16·T·d/(π(d⁴ − di⁴)))²)',
      inputs: {
        x: [maxStress.at, 'length'],
        d: [state.section.diameter, 'length'],
        di: [state.section.bore, 'length'],
        M: [Math.hypot(...state.moment), 'torque'],
        T: [state.torque, 'torque'],
      },
      source: { key: 'shigley-9', where: 'section 7-4' },
    },
  ]);
}

/** The working of a section's fatigue factors; the formulas are those of a solid round. */
export function sectionFigures(
  of: {
    readonly load: SectionLoad;
    readonly strength: SectionStrength;
    readonly diameter: number;
    readonly factors: SectionFactors;
    readonly endurance?: EnduranceLimit;
  },
  names: PartNames,
): readonly Figure[] {
  const { load, strength, factors, endurance } = of;
  const { amplitude, mean } = equivalentMoments(load);
  const loads: Working['inputs'] = {
    Kf: [load.bendingFactor, 'ratio'],
    Kfs: [load.torsionFactor, 'ratio'],
    Ma: [load.bendingAmplitude, 'torque'],
    Mm: [load.bendingMean, 'torque'],
    Ta: [load.torqueAmplitude, 'torque'],
    Tm: [load.torqueMean, 'torque'],
  };
  const strengths: Working['inputs'] = {
    A: [amplitude, 'torque'],
    B: [mean, 'torque'],
    d: [of.diameter, 'length'],
    Se: [strength.endurance, 'pressure'],
    Sut: [strength.tensile, 'pressure'],
    Sy: [strength.yield, 'pressure'],
  };
  const formulas = {
    goodman: '1/n = 16/(π·d³)·(A/Se + B/Sut)',
    gerber: '1/n = 8/(π·d³)·(A/Se + √((A/Se)² + (2B/Sut)²))',
    'asme-elliptic': '1/n = 16/(π·d³)·√((A/Se)² + (B/Sy)²)',
    soderberg: '1/n = 16/(π·d³)·(A/Se + B/Sy)',
  } as const;
  const criteria = (Object.keys(formulas) as (keyof typeof formulas)[]).map(
    (criterion): Working => ({
      id: `factor.${criterion}`,
      symbol: 'n',
      name: `fatigue factor by ${criterion}`,
      value: factors.fatigue[criterion],
      kind: 'ratio',
      formula: formulas[criterion],
      inputs: strengths,
      source: { key: 'shigley-9', where: 'section 7-4, distortion energy' },
    }),
  );
  return figuresOf(names, [
    ...(endurance ? [enduranceWorking(endurance)] : []),
    equivalentWorking('amplitude', 'A', amplitude, 'A = √(4(Kf·Ma)² + 3(Kfs·Ta)²)', loads),
    equivalentWorking('mean', 'B', mean, 'B = √(4(Kf·Mm)² + 3(Kfs·Tm)²)', loads),
    ...criteria,
    {
      id: 'factor.yield',
      symbol: 'ny',
      name: 'factor against first-cycle yield',
      value: factors.yield,
      kind: 'ratio',
      formula: '1/ny = 16/(π·d³·Sy)·√(4(Kf·(Ma + Mm))² + 3(Kfs·(Ta + Tm))²)',
      inputs: { ...loads, d: [of.diameter, 'length'], Sy: [strength.yield, 'pressure'] },
      source: { key: 'shigley-9', where: 'equation 7-16' },
    },
  ]);
}

const equivalentWorking = (
  id: string,
  symbol: string,
  value: number,
  formula: string,
  inputs: Working['inputs'],
): Working => ({
  id: `equivalent.${id}`,
  symbol,
  name: `equivalent moment, ${id}`,
  value,
  kind: 'torque',
  formula,
  inputs,
  source: { key: 'shigley-9', where: 'section 7-4' },
});

const enduranceWorking = (endurance: EnduranceLimit): Working => ({
  id: 'enduranceLimit',
  symbol: 'Se',
  name: 'endurance limit of the part',
  value: endurance.limit,
  kind: 'pressure',
  formula: "Se = ka·kb·ke·Se', Se' = 0.5·Sut up to 700 MPa",
  inputs: {
    ka: [endurance.surface, 'ratio'],
    kb: [endurance.size, 'ratio'],
    ke: [endurance.reliability, 'ratio'],
    "Se'": [endurance.specimen, 'pressure'],
  },
  source: { key: 'shigley-9', where: 'section 6-9' },
});
