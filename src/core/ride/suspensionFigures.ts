import { derived, type Figure, type FigureInput, figureMaker, type SourceRef } from '../quantity/index.ts';
import type { SprungEnd, SuspensionOfBuild } from './suspensionOfBuild.ts';

const SPRING = derived('mass on a linear spring, damping left out');
const figure = figureMaker({ id: 'suspension' }, SPRING);
const TIRE: SourceRef = { key: 'memory', where: 'small tires, 80 to 150 N/mm' };

/** The working of the springs; frequencies are in Hz, for which there is no kind of their own. */
export function suspensionFigures(suspension: SuspensionOfBuild): Figure[] {
  const { front, rear, bouncePitch, seat, drop } = suspension;
  const [slow, fast] = bouncePitch.frequencies;
  const two = derived('two degrees of freedom, damping left out');
  const rates: FigureInput[] = [
    { name: 'k_f', value: front.end.wheelRate, kind: 'stiffness' },
    { name: 'k_r', value: rear.end.wheelRate, kind: 'stiffness' },
  ];
  const pair =
    'm·I·ω⁴ − (m·K_θθ + I·K_zz)·ω² + K_zz·K_θθ − K_zθ² = 0, f = ω/(2π), tires in series with springs';
  return [
    ...endFigures('front', front),
    ...endFigures('rear', rear),
    figure('slow', 'f₁', 'slower frequency of bounce and pitch [Hz]', slow, 'ratio', pair, rates, two),
    figure('fast', 'f₂', 'faster frequency of bounce and pitch [Hz]', fast, 'ratio', pair, rates, two),
    figure(
      'drop.factor',
      'n',
      'load over weight in a drop of 0.1 m onto these springs',
      drop.factor,
      'ratio',
      'n = 1 + √(1 + 2·h/δ), δ = W/k',
      rates,
      derived('energy, damping and bottoming left out'),
    ),
    ...(seat
      ? [
          figure('seat.sag', 'δ', 'sag of the seat springs', seat.sag, 'length', 'δ = m·g/k', [
            { name: 'm', value: seat.mass, kind: 'mass' },
            { name: 'k', value: seat.rate, kind: 'stiffness' },
          ]),
          figure(
            'seat.frequency',
            'f',
            'frequency of rider on seat springs [Hz]',
            seat.frequency,
            'ratio',
            'f = √(k/m)/(2π)',
            [
              { name: 'm', value: seat.mass, kind: 'mass' },
              { name: 'k', value: seat.rate, kind: 'stiffness' },
            ],
          ),
        ]
      : []),
  ];
}

const BY: Readonly<Record<SprungEnd['by'], string>> = {
  fork: 'fork springs',
  'fork-by-sag': 'fork springs as their sag tells',
  tire: 'tire alone',
};

function endFigures(end: 'front' | 'rear', { by, fork, end: spring, result }: SprungEnd): Figure[] {
  const source = by === 'tire' ? TIRE : SPRING;
  const inputs: FigureInput[] = [
    { name: 'W', value: spring.load, kind: 'force' },
    { name: 'k_w', value: spring.wheelRate, kind: 'stiffness' },
    { name: 'preload', value: spring.preload, kind: 'length' },
  ];
  const words = `${end}, ${BY[by]}`;
  return [
    figure(
      `${end}.rate`,
      'k_w',
      `rate at the wheel, ${words}`,
      spring.wheelRate,
      'stiffness',
      fork ? 'k_w = k/cos²ε' : 'usual rate of a small tire',
      fork
        ? [
            { name: 'k', value: fork.rate, kind: 'stiffness' },
            { name: 'ε', value: fork.rake, kind: 'angle' },
          ]
        : [],
      source,
    ),
    figure(
      `${end}.sag`,
      'δ',
      `sag at the wheel with rider, ${words}`,
      result.sag,
      'length',
      'δ = W/k_w − preload',
      inputs,
      source,
    ),
    figure(
      `${end}.frequency`,
      'f',
      `natural frequency [Hz], ${words}`,
      result.frequency,
      'ratio',
      'f = √(k_w·g/W)/(2π)',
      inputs,
      source,
    ),
    ...(result.bottomsAt === undefined
      ? []
      : [
          figure(
            `${end}.bottomsAt`,
            'n_b',
            `load over rest load that uses up the travel, ${words}`,
            result.bottomsAt,
            'ratio',
            'n_b = k_w·(travel + preload)/W',
            inputs,
            source,
          ),
        ]),
  ];
}
