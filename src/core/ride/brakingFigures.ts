import { derived, type Figure, type FigureInput, figureMaker } from '../quantity/index.ts';
import { brakeSources } from '../standards/index.ts';
import type { DiscHeat } from './brakeHeat.ts';
import type { Braking, BrakingInput, Stop } from './braking.ts';
import { longitudinalLimits } from './statics.ts';
import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

const figure = figureMaker({ id: 'braking' }, derived('moments about the contacts of a rigid bike'));

/** The working of a stop; decelerations are given as shares of g, for which there is no unit to mistake. */
export function brakingFigures(
  input: BrakingInput,
  braking: Braking,
  heat: { readonly front?: DiscHeat | undefined; readonly rear?: DiscHeat | undefined } = {},
): Figure[] {
  const sides = (['front', 'rear'] as const).flatMap((wheel) => gainFigures(input, wheel));
  return [
    ...limitFigures(input),
    ...sides,
    ...braking.stops.flatMap((stop) => stopFigures(input, stop)),
    ...lockFigures(input, braking),
    ...(braking.frontShare === undefined ? [] : [shareFigure(input, braking.frontShare)]),
    ...(['front', 'rear'] as const).flatMap((wheel) => heatFigures(wheel, heat[wheel])),
  ];
}

const length = (name: string, value: number): FigureInput => ({ name, value, kind: 'length' });
const ratio = (name: string, value: number): FigureInput => ({ name, value, kind: 'ratio' });
const force = (name: string, value: number): FigureInput => ({ name, value, kind: 'force' });

const geometry = ({ bike }: BrakingInput): FigureInput[] => [
  { name: 'm', value: bike.mass, kind: 'mass' },
  length('p', bike.wheelbase),
  length('b', bike.ahead),
  length('h', bike.height),
];

function limitFigures(input: BrakingInput): Figure[] {
  const limits = longitudinalLimits(input.bike, input.friction);
  const inputs = [...geometry(input), ratio('μ', input.friction)];
  const g = STANDARD_GRAVITY;
  return [
    figure(
      'limit.lift',
      'x_l',
      'deceleration over g that lifts the rear wheel',
      limits.stoppie / g,
      'ratio',
      'x_l = (p − b)/h',
      inputs,
    ),
    figure(
      'limit.front',
      'x_f',
      `most deceleration over g by the front brake alone, by ${limits.frontBrake.by}`,
      limits.frontBrake.value / g,
      'ratio',
      'x_f = least of μ·b/(p − μ·h) and x_l',
      inputs,
    ),
    figure(
      'limit.rear',
      'x_r',
      'most deceleration over g by the rear brake alone',
      limits.rearBrake.value / g,
      'ratio',
      'x_r = μ·(p − b)/(p + μ·h)',
      inputs,
    ),
    figure(
      'limit.both',
      'x_b',
      `most deceleration over g by both, ideally shared, by ${limits.bothBrakes.by}`,
      limits.bothBrakes.value / g,
      'ratio',
      'x_b = least of μ and x_l',
      inputs,
    ),
  ];
}

function gainFigures(input: BrakingInput, wheel: 'front' | 'rear'): Figure[] {
  const side = input[wheel];
  if (!side) return [];
  const formula = 'G = force at the ground / force at the lever, at the middle of the pad friction';
  const inputs = [ratio('G lowest', side.gain.low), ratio('G highest', side.gain.high)];
  return [
    figure(
      `${wheel}.gain`,
      'G',
      `gain of the ${wheel} brake`,
      side.gain.usual,
      'ratio',
      formula,
      inputs,
      brakeSources.padFriction,
    ),
    figure(
      `${wheel}.force`,
      'F',
      `force of the ${wheel} brake at the ground, wheel turning`,
      side.gain.usual * side.control,
      'force',
      'F = G·F_c',
      [ratio('G', side.gain.usual), force('F_c', side.control)],
    ),
  ];
}

const WITH: Readonly<Record<Stop['with'], string>> = {
  front: 'the front brake alone',
  rear: 'the rear brake alone',
  both: 'both brakes',
};
const BY: Readonly<Record<Stop['limitedBy'], string>> = {
  hand: "limited by the rider's force",
  'front-locks': 'front wheel locked',
  'rear-locks': 'rear wheel locked',
  'both-lock': 'both wheels locked',
  lift: 'rear wheel lifting',
};

function stopFigures(input: BrakingInput, stop: Stop): Figure[] {
  const words = `with ${WITH[stop.with]}, ${BY[stop.limitedBy]}`;
  const x = stop.deceleration / STANDARD_GRAVITY;
  const inputs = [...geometry(input), ratio('μ', input.friction)];
  const distance =
    stop.distance === undefined
      ? []
      : [
          figure(
            `${stop.with}.distance`,
            'S',
            `stopping distance ${words}`,
            stop.distance,
            'length',
            'S = v·t_r + v²/(2·x·g)',
            [
              { name: 'v', value: input.speed, kind: 'speed' },
              ratio('t_r in s', input.reaction),
              ratio('x', x),
            ],
            derived('constant deceleration after the reaction'),
          ),
        ];
  return [
    figure(
      `${stop.with}.deceleration`,
      'x',
      `deceleration over g ${words}`,
      x,
      'ratio',
      'x = Σ F/(m·g), each F at most μ·N',
      inputs,
    ),
    ...distance,
  ];
}

function lockFigures(input: BrakingInput, { frontLock, rearLock }: Braking): Figure[] {
  const inputs = [...geometry(input), ratio('μ', input.friction)];
  const front = frontLock
    ? [
        figure(
          'front.lockForce',
          'F_c',
          frontLock.by === 'locks'
            ? 'lever force that locks the front wheel'
            : 'lever force that lifts the rear wheel',
          frontLock.control,
          'force',
          'F_c = x_f·m·g/G',
          inputs,
        ),
      ]
    : [];
  const rear = rearLock
    ? [
        figure(
          'rear.lockForce',
          'F_c',
          'lever or pedal force that locks the rear wheel',
          rearLock.control,
          'force',
          'F_c = x_r·m·g/G',
          inputs,
        ),
      ]
    : [];
  return [...front, ...rear];
}

const shareFigure = (input: BrakingInput, share: number): Figure =>
  figure(
    'frontShare',
    'Φ',
    'share of the front in the braking force, wheels turning',
    share,
    'ratio',
    'Φ = F_f/(F_f + F_r)',
    [
      force('F_f', input.front!.gain.usual * input.front!.control),
      force('F_r', input.rear!.gain.usual * input.rear!.control),
    ],
  );

function heatFigures(wheel: 'front' | 'rear', heat: DiscHeat | undefined): Figure[] {
  if (!heat) return [];
  const last = heat.after.at(-1) ?? heat.rise;
  const energy: FigureInput = { name: 'E in J', value: heat.energy, kind: 'ratio' };
  return [
    figure(
      `${wheel}.heatRise`,
      'ΔT',
      `rise of the ${wheel} disc a stop [K]`,
      heat.rise,
      'ratio',
      'ΔT = E/(m_d·c)',
      [energy],
      brakeSources.disc,
    ),
    figure(
      `${wheel}.heatAfter`,
      'ΔT_n',
      `rise of the ${wheel} disc over the air after ${heat.after.length} stops [K]`,
      last,
      'ratio',
      'ΔT_n = ΔT·(1 − qⁿ)/(1 − q), q = e^(−h·A·t/(m_d·c))',
      [ratio('ΔT', heat.rise)],
      brakeSources.disc,
    ),
  ];
}
