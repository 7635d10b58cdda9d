import type { AngularSpeed, Figure, Force, Power, Speed } from '../../quantity/index.ts';
import type { Chain } from '../../standards/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import type { BeltTensionInput, BeltTensions } from './beltTension.ts';
import { type ChainRating, jointArea } from './chainRating.ts';

export interface ChainFiguresInput {
  readonly chain: Chain;
  readonly teeth: number;
  readonly shaftSpeed: AngularSpeed;
  readonly power: Power;
  readonly speed: Speed;
  /** Working tension with the centrifugal part [N]. */
  readonly tension: Force;
  /** Without it [N]. */
  readonly pull: Force;
  readonly strands: number;
  readonly rating: ChainRating | undefined;
  readonly serviceFactor: number;
}

/** The working of a chain's strength. */
export function chainStrengthFigures(of: ChainFiguresInput, names: PartNames): readonly Figure[] {
  const { chain, speed, strands } = of;
  return figuresOf(names, [
    {
      id: 'tension',
      symbol: 'F',
      name: 'working tension',
      value: of.tension,
      kind: 'force',
      formula: 'F = P/v + m·v²',
      inputs: { P: [of.power, 'power'], v: [speed, 'speed'], m: [chain.lineMass * strands, 'lineMass'] },
      source: { key: 'shigley-9', where: 'section 17-5' },
    },
    {
      id: 'strengthFactor',
      symbol: 'n',
      name: 'minimum breaking load over working tension',
      value: (chain.minimumTensileStrength * strands) / of.tension,
      kind: 'ratio',
      formula: 'n = Fu/F',
      inputs: {
        Fu: [chain.minimumTensileStrength * strands, 'force'],
        F: [of.tension, 'force'],
      },
      source: chain.sources.minimumTensileStrength,
    },
    {
      id: 'jointPressure',
      symbol: 'p',
      name: 'bearing pressure in the joint',
      value: of.tension / (jointArea(chain) * strands),
      kind: 'pressure',
      formula: 'p = F/(Dp·(W + 2·t))',
      inputs: {
        F: [of.tension, 'force'],
        Dp: [chain.pinDiameter, 'length'],
        W: [chain.innerWidth, 'length'],
        t: [chain.plateThickness, 'length'],
      },
      source: { key: 'derived', where: 'projected area of the pin' },
    },
    ...(of.rating ? ratingWorkings(of, of.rating) : []),
  ]);
}

function ratingWorkings(of: ChainFiguresInput, rating: ChainRating): readonly Working[] {
  const inputs = {
    N: [of.teeth, 'count'],
    P: [of.chain.pitch, 'length'],
    n: [of.shaftSpeed, 'angularSpeed'],
  } as const;
  const source = { key: 'roller-chain-sheet', where: 'power formula; P in inches, n in rpm, horsepower' };
  return [
    {
      id: 'plateFatigue',
      symbol: 'HP1',
      name: 'rated power by plate fatigue',
      value: rating.plateFatigue,
      kind: 'power',
      formula: 'HP1 = K1·N^1.08·n^0.9·P^(3 − 0.07·P)',
      inputs,
      source,
    },
    {
      id: 'rollerImpact',
      symbol: 'HP2',
      name: 'rated power by roller impact',
      value: rating.rollerImpact,
      kind: 'power',
      formula: 'HP2 = 1000·K2·N^1.5·P^0.8/n^1.5',
      inputs,
      source,
    },
    {
      id: 'powerFactor',
      symbol: 'n',
      name: 'rated power over design power',
      value: rating.rating / (of.power * of.serviceFactor),
      kind: 'ratio',
      formula: 'n = min(HP1, HP2)/(P·f)',
      inputs: {
        rating: [rating.rating, 'power'],
        P: [of.power, 'power'],
        f: [of.serviceFactor, 'ratio'],
      },
      source: { key: 'chain-guide', where: 'service factors' },
    },
  ];
}

/** The working of a belt's tensions. */
export function beltTensionFigures(
  input: BeltTensionInput,
  tensions: BeltTensions,
  names: PartNames,
): readonly Figure[] {
  const source = { key: 'shigley-9', where: 'section 17-2' };
  return figuresOf(names, [
    {
      id: 'ratio',
      symbol: 'e^(fθ)',
      name: 'tension ratio at slip',
      value: tensions.ratio,
      kind: 'ratio',
      formula: '(F1 − Fc)/(F2 − Fc) = e^(f·θ)',
      inputs: { f: [input.friction, 'ratio'], θ: [input.wrap, 'angle'] },
      source,
    },
    {
      id: 'tight',
      symbol: 'F1',
      name: 'tight side at slip',
      value: tensions.tight,
      kind: 'force',
      formula: 'F1 = F2 + 2·T/d',
      inputs: {
        F2: [tensions.slack, 'force'],
        T: [input.torque, 'torque'],
        d: [input.diameter, 'length'],
      },
      source,
    },
    {
      id: 'slack',
      symbol: 'F2',
      name: 'slack side at slip',
      value: tensions.slack,
      kind: 'force',
      formula: 'F2 = 2·T/(d·(e^(f·θ) − 1)) + Fc',
      inputs: {
        T: [input.torque, 'torque'],
        d: [input.diameter, 'length'],
        Fc: [tensions.centrifugal, 'force'],
      },
      source,
    },
  ]);
}
