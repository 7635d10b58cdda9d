import { z } from 'zod';
import {
  angleField,
  bad,
  derived,
  type Figure,
  good,
  inertiaField,
  lengthField,
  massField,
  type Outcome,
  type QuantityKind,
  ratioField,
  resultField,
  stiffnessField,
} from '../quantity/index.ts';
import {
  bouncePitch,
  dropOn,
  forkLoad,
  forkWheelRate,
  heightForFactor,
  naturalFrequency,
  type SpringEnd,
  STANDARD_GRAVITY,
  springEnd,
  wheelRate,
} from '../ride/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const carried = massField('Sprung mass that this end carries at rest.', { above: 0, max: 1000 });
const travel = (doc: string) => lengthField(doc, { above: 0, max: 500 }).optional();
const preload = (doc: string) => lengthField(doc, { min: 0, max: 300 }).optional();

const fork = z.strictObject({
  kind: z.literal('fork'),
  mass: carried,
  rate: stiffnessField('Spring rate of both legs together, along the legs.', { above: 0, max: 10000 }),
  rake: angleField('Rake, from vertical; left out: 0.', { min: 0, max: 60 }).optional(),
  preload: preload('Compression of the springs at full length, along the legs.'),
  travel: travel('Full travel, along the legs.'),
});
const shock = z.strictObject({
  kind: z.literal('shock'),
  mass: carried,
  rate: stiffnessField('Spring rate of the shocks together.', { above: 0, max: 10000 }),
  motionRatio: ratioField('Travel of the shock over travel of the wheel; left out: 1.', {
    above: 0,
    max: 5,
  }).optional(),
  preload: preload('Compression of the spring at full length of the shock.'),
  travel: travel('Full travel of the wheel.'),
});
const end = z.discriminatedUnion('kind', [fork, shock]);

const input = z.strictObject({
  front: end.meta({ description: 'Front springs.' }).optional(),
  rear: end.meta({ description: 'Rear springs.' }).optional(),
  body: z
    .strictObject({
      mass: massField('Sprung mass.', { above: 0, max: 1000 }),
      inertia: inertiaField('In pitch, about its center.', { above: 0, max: 1000 }),
      toFront: lengthField('Center to front wheel.', { above: 0, max: 3000 }),
      toRear: lengthField('Center to rear wheel.', { above: 0, max: 3000 }),
      frontRate: stiffnessField('At the front wheel, where no front springs are given.', {
        above: 0,
        max: 10000,
      }).optional(),
      rearRate: stiffnessField(
        'At the rear wheel, where no rear springs are given: a tire has 80 to 150 N/mm.',
        { above: 0, max: 10000 },
      ).optional(),
    })
    .meta({ description: 'For bounce and pitch.' })
    .optional(),
  seat: z
    .strictObject({
      mass: massField('Rider on the seat.', { above: 0, max: 300 }),
      rate: stiffnessField('All seat springs together.', { above: 0, max: 1000 }),
    })
    .meta({ description: 'Seat springs.' })
    .optional(),
  drop: z
    .strictObject({
      mass: massField('Mass that falls.', { above: 0, max: 1000 }),
      rate: stiffnessField('All springs together.', { above: 0, max: 10000 }),
      height: lengthField('Height of the free fall.', { min: 0, max: 2000 }),
    })
    .meta({ description: 'A drop onto springs.' })
    .optional(),
});

const hertz = (doc: string) => z.number().meta({ description: `${doc} [Hz]` });
const endResult = z.object({
  wheelRate: resultField('stiffness', 'At the wheel, upright.'),
  axialLoad: resultField('force', 'Along the legs of a fork.').optional(),
  sag: resultField('length', 'Of the wheel, upright, with the load on.'),
  springSag: resultField('length', 'Of the spring itself, beyond its preload.'),
  sagShare: resultField('ratio', 'Sag over travel.').optional(),
  frequency: hertz('Natural frequency; preload does not change it'),
  bottomsAt: resultField('ratio', 'Load over rest load that uses up the travel.').optional(),
});
const output = z.object({
  front: endResult.optional(),
  rear: endResult.optional(),
  bouncePitch: z.object({ slow: hertz('Slower frequency'), fast: hertz('Faster frequency') }).optional(),
  seat: z.object({ sag: resultField('length', 'Sag.'), frequency: hertz('Natural frequency') }).optional(),
  drop: z
    .object({
      compression: resultField('length', 'From the free spring.'),
      force: resultField('force', 'Largest force.'),
      factor: resultField('ratio', 'Force over weight.'),
      heightOfThree: resultField('length', 'Height of the fall that makes three times the weight.'),
    })
    .optional(),
});

type End = z.output<typeof end>;
type Given = z.output<typeof input>;
type Result = z.output<typeof output>;
type EndResult = z.output<typeof endResult>;

export const suspensionWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'suspension',
  title: 'Springs: sag, travel and natural frequencies',
  summary:
    'Wheel rate, sag with preload, natural frequencies, the load that uses up the travel, bounce and pitch of the whole bike, seat springs and a drop.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<Result>> => {
    if (Object.values(given).every((value) => value === undefined))
      return bad({ code: 'missing', path: 'front', wanted: 'one of front, rear, body, seat and drop' });
    for (const [wheel, rate] of [
      ['front', 'frontRate'],
      ['rear', 'rearRate'],
    ] as const) {
      if (given.body && !given[wheel] && given.body[rate] === undefined)
        return bad({
          code: 'missing',
          path: `body.${rate}`,
          wanted: `a rate at the ${wheel} wheel, or ${wheel} springs`,
        });
    }
    const result = resultOf(given);
    return good({ result, figures: figuresOf(result) });
  },
  formulas: [
    'shock: k_w = k·MR², preload at the wheel = preload/MR',
    'fork: k_w = k/cos²ε, axial load W·cos ε',
    'sag = W/k_w − preload; f = √(k_w/m)/(2π)',
    'bottoms at k_w·(travel + preload)/W',
    'm·I·ω⁴ − (m·K_θθ + I·K_zz)·ω² + K_zz·K_θθ − K_zθ² = 0',
    'drop: n = 1 + √(1 + 2·h/δ), δ = W/k',
  ],
  sources: [{ key: 'derived', where: 'mass on linear springs, energy' }],
  example: {
    title: 'A fork with two springs of 6 N/mm and 15 mm preload under 45 kg, a swing arm, a body and a drop',
    input: {
      front: { kind: 'fork', mass: 45, rate: 12, preload: 15 },
      rear: { kind: 'shock', mass: 70, rate: 40, motionRatio: 0.6, preload: 8 },
      body: { mass: 110, inertia: 14, toFront: 550, toRear: 450 },
      seat: { mass: 60, rate: 24 },
      drop: { mass: 110, rate: 28, height: 100 },
    },
    expected: [
      { path: 'front.sag', value: 21.775, tolerance: 5e-4 },
      { path: 'front.frequency', value: 2.598989, tolerance: 5e-7 },
      { path: 'rear.sag', value: 34.338, tolerance: 5e-4 },
      { path: 'rear.frequency', value: 2.282718, tolerance: 5e-7 },
      { path: 'seat.sag', value: 24.517, tolerance: 5e-4 },
      { path: 'drop.force', value: 3762.862, tolerance: 5e-4 },
    ],
    source: { key: 'derived', where: 'worked out independently, printed to the digits of the tolerances' },
  },
};

function resultOf(given: Given): Result {
  const front = given.front && endOf(given.front);
  const rear = given.rear && endOf(given.rear);
  const { body, seat, drop } = given;
  const modes =
    body &&
    bouncePitch({
      ...body,
      frontRate: front?.wheelRate ?? body.frontRate!,
      rearRate: rear?.wheelRate ?? body.rearRate!,
    }).frequencies;
  return {
    ...(front ? { front } : {}),
    ...(rear ? { rear } : {}),
    ...(modes ? { bouncePitch: { slow: modes[0], fast: modes[1] } } : {}),
    ...(seat
      ? {
          seat: {
            sag: (seat.mass * STANDARD_GRAVITY) / seat.rate,
            frequency: naturalFrequency(seat.rate, seat.mass),
          },
        }
      : {}),
    ...(drop
      ? {
          drop: {
            ...dropOn(drop.mass, drop.rate, drop.height),
            heightOfThree: heightForFactor(drop.mass, drop.rate, 3),
          },
        }
      : {}),
  };
}

function endOf(given: End): EndResult {
  const load = given.mass * STANDARD_GRAVITY;
  const rake = given.kind === 'fork' ? (given.rake ?? 0) : 0;
  const motion = given.kind === 'fork' ? Math.cos(rake) : 1 / (given.motionRatio ?? 1);
  const rate =
    given.kind === 'fork' ? forkWheelRate(given.rate, rake) : wheelRate(given.rate, given.motionRatio ?? 1);
  const wheelTravel =
    given.travel === undefined ? undefined : given.kind === 'fork' ? given.travel * motion : given.travel;
  const spring: SpringEnd = {
    load,
    wheelRate: rate,
    preload: (given.preload ?? 0) * motion,
    ...(wheelTravel === undefined ? {} : { travel: wheelTravel }),
  };
  const result = springEnd(spring);
  return {
    wheelRate: rate,
    ...(given.kind === 'fork' ? { axialLoad: forkLoad(load, rake) } : {}),
    ...result,
    springSag: result.sag / motion,
  };
}

function figuresOf(result: Result): Figure[] {
  const source = derived('mass on linear springs');
  const figure = (
    id: string,
    symbol: string,
    name: string,
    value: number | undefined,
    kind: QuantityKind,
    formula: string,
  ): Figure[] =>
    value === undefined
      ? []
      : [{ id: `suspension.${id}`, symbol, name, value, kind, formula, inputs: [], source }];
  const ends = (['front', 'rear'] as const).flatMap((wheel) => {
    const one = result[wheel];
    return one
      ? [
          ...figure(
            `${wheel}.rate`,
            'k_w',
            `rate at the ${wheel} wheel`,
            one.wheelRate,
            'stiffness',
            'k_w = k/cos²ε for a fork, k·MR² for a shock',
          ),
          ...figure(
            `${wheel}.sag`,
            'δ',
            `sag of the ${wheel} wheel`,
            one.sag,
            'length',
            'δ = W/k_w − preload',
          ),
          ...figure(
            `${wheel}.frequency`,
            'f',
            `natural frequency, ${wheel} [Hz]`,
            one.frequency,
            'ratio',
            'f = √(k_w/m)/(2π)',
          ),
          ...figure(
            `${wheel}.bottomsAt`,
            'n_b',
            `load over rest load that uses up the travel, ${wheel}`,
            one.bottomsAt,
            'ratio',
            'n_b = k_w·(travel + preload)/W',
          ),
        ]
      : [];
  });
  return [
    ...ends,
    ...figure(
      'slow',
      'f₁',
      'slower frequency of bounce and pitch [Hz]',
      result.bouncePitch?.slow,
      'ratio',
      'm·I·ω⁴ − (m·K_θθ + I·K_zz)·ω² + K_zz·K_θθ − K_zθ² = 0',
    ),
    ...figure(
      'fast',
      'f₂',
      'faster frequency of bounce and pitch [Hz]',
      result.bouncePitch?.fast,
      'ratio',
      'm·I·ω⁴ − (m·K_θθ + I·K_zz)·ω² + K_zz·K_θθ − K_zθ² = 0',
    ),
    ...figure('seat.sag', 'δ', 'sag of the seat springs', result.seat?.sag, 'length', 'δ = W/k'),
    ...figure(
      'seat.frequency',
      'f',
      'frequency of rider on seat springs [Hz]',
      result.seat?.frequency,
      'ratio',
      'f = √(k/m)/(2π)',
    ),
    ...figure(
      'drop.factor',
      'n',
      'load over weight in the drop',
      result.drop?.factor,
      'ratio',
      'n = 1 + √(1 + 2·h/δ)',
    ),
  ];
}
