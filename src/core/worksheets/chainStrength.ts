import { z } from 'zod';
import type { Outcome, Power, Quantity, Torque } from '../quantity/index.ts';
import {
  angularSpeedField,
  bad,
  countField,
  good,
  powerField,
  ratioField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import { type Chain, findChain, serviceFactors, strandFactor, tensionShares } from '../standards/index.ts';
import {
  type ChainRating,
  centrifugalTension,
  chainRating,
  chainSpeed,
  chainStrengthFigures,
  chainTension,
  jointPressure,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  chain: z.string().max(20).meta({ description: 'Chain size, for example #40 or 428.' }),
  teeth: countField('Teeth of the small sprocket.', { min: 6, max: 300 }),
  speed: angularSpeedField('Speed of the small sprocket.', { above: 0, max: 30_000 }),
  power: powerField('Power carried; instead of torque.', { above: 0, max: 1e6 }).optional(),
  torque: torqueField('Torque on the small sprocket; instead of power.', { above: 0, max: 1e5 }).optional(),
  peakTorque: torqueField('Largest torque on the small sprocket: starting, a shock.', {
    above: 0,
    max: 1e5,
  }).optional(),
  strands: countField('Strands; left out: 1.', { min: 1, max: 6 }).optional(),
  load: oneOf('Driven load; left out: some-impact.', ['smooth', 'some-impact', 'high-impact']).optional(),
  driver: oneOf('What drives: motor, engine with hydraulic or with mechanical drive; left out: engine.', [
    'electric',
    'hydraulic',
    'engine',
  ]).optional(),
  serviceFactor: ratioField('Own service factor; instead of load and driver.', { min: 1, max: 5 }).optional(),
  joiningLink: oneOf('Fit of the pins in the joining link; left out: slip-fit.', [
    'press-fit',
    'slip-fit',
  ]).optional(),
});

const output = z.object({
  chainSpeed: resultField('speed', 'Mean speed of the chain.'),
  pull: resultField('force', 'Tension from the power alone.'),
  centrifugal: resultField('force', 'Tension from the moving chain itself.'),
  tension: resultField('force', 'Working tension: both.'),
  breakingLoad: resultField('force', 'Minimum breaking load, all strands.'),
  strengthFactor: resultField('ratio', 'Breaking load over working tension.'),
  wantedStrengthFactor: resultField('ratio', 'What the joining link asks for: 6 or 9.'),
  jointPressure: resultField('pressure', 'Bearing pressure of pin in bushing.'),
  serviceFactor: resultField('ratio', 'By which the power is multiplied.'),
  rating: z
    .object({
      power: resultField('power', 'Rated power, the lesser of both.'),
      plateFatigue: resultField('power', 'By fatigue of the link plates.'),
      rollerImpact: resultField('power', 'By impact of rollers and bushings.'),
      limitedBy: z.enum(['plate-fatigue', 'roller-impact']),
      crossoverSpeed: resultField('angularSpeed', 'Above it roller impact limits.'),
      powerFactor: resultField('ratio', 'Rated power over power times service factor.'),
    })
    .meta({ description: 'Left out for chains that the formula is not for: motorcycle sizes.' })
    .optional(),
  peak: z
    .object({
      tension: resultField('force', 'At the largest torque.'),
      strengthFactor: resultField('ratio', 'Breaking load over that.'),
    })
    .optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const chainStrengthWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'chain-strength',
  title: 'Strength and rating of a chain',
  summary:
    'Working tension against the minimum breaking load, power rating with service factor and crossover speed, bearing pressure in the joints.',
  input,
  output,
  run,
  formulas: [
    'v = N·P·n, F = P/v + m·v²',
    'HP1 = K1·N^1.08·n^0.9·P^(3 − 0.07·P), HP2 = 1000·K2·N^1.5·P^0.8/n^1.5 (P in, n rpm)',
    'n* = (1000·K2·N^0.42·P^(0.8 − 3 + 0.07·P)/K1)^(1/2.4)',
    'p = F/(Dp·(W + 2·t))',
  ],
  sources: [
    { key: 'roller-chain-sheet', where: 'power formula, working tension' },
    { key: 'asme-b29-1', where: 'minimum tensile strength, rating tables' },
    { key: 'chain-guide', where: 'service and strand factors' },
  ],
  example: {
    title: '#40, 17 teeth, 1800 rpm, 5 hp, smooth load',
    input: { chain: '#40', teeth: 17, speed: 1800, power: '5 hp', load: 'smooth', driver: 'electric' },
    expected: [
      // Tables print hp to two decimals: half of the last is 3.7 W.
      { path: 'rating.power', value: 8.96 * 745.699872, tolerance: 3.8 },
      { path: 'rating.crossoverSpeed', value: 1773, tolerance: 0.06 },
    ],
    source: { key: 'asme-b29-1', where: 'rating table of no. 40, reprint: 8.96 hp' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const chain = atPath(findChain(given.chain), 'chain');
  if (!chain.ok) return chain;
  const power = powerOf(given);
  if (!power.ok) return power;
  const service = serviceOf(given);
  if (!service.ok) return service;
  const strands = given.strands ?? 1;
  if (strandFactor(strands) === undefined)
    return bad({ code: 'out-of-range', path: 'strands', given: strands, min: 1, max: 6, unit: '' });
  const speed = chainSpeed(chain.value.pitch, given.teeth, given.speed);
  const pull = chainTension(power.value, speed);
  const lineMass = (chain.value.lineMass * strands) as Quantity<'kg/m'>;
  const centrifugal = centrifugalTension(lineMass, speed);
  const tension = (pull + centrifugal) as typeof pull;
  const rating = chainRating(chain.value, given.teeth, given.speed, strands);
  const breakingLoad = chain.value.minimumTensileStrength * strands;
  const link = given.joiningLink ?? 'slip-fit';
  const result: Result = {
    chainSpeed: speed,
    pull,
    centrifugal,
    tension,
    breakingLoad,
    strengthFactor: breakingLoad / tension,
    wantedStrengthFactor: tensionShares.find(({ name }) => name === link)!.share,
    jointPressure: jointPressure(chain.value, tension, strands),
    serviceFactor: service.value,
    ...(rating ? { rating: ratingResult(rating, power.value * service.value) } : {}),
    ...peakOf(given, chain.value, breakingLoad),
  };
  const figures = chainStrengthFigures(
    {
      chain: chain.value,
      teeth: given.teeth,
      shaftSpeed: given.speed,
      power: power.value,
      speed,
      tension,
      pull,
      strands,
      rating,
      serviceFactor: service.value,
    },
    { id: 'chain', of: 'chain' },
  );
  return good({ result, figures });
}

const ratingResult = (rating: ChainRating, designPower: number): NonNullable<Result['rating']> => ({
  power: rating.rating,
  plateFatigue: rating.plateFatigue,
  rollerImpact: rating.rollerImpact,
  limitedBy: rating.limitedBy,
  crossoverSpeed: rating.crossover,
  powerFactor: rating.rating / designPower,
});

function powerOf({ power, torque, speed }: Input): Outcome<Power> {
  if (power !== undefined && torque !== undefined)
    return bad({
      code: 'conflict',
      path: 'torque',
      reason: 'power and torque are both given; one follows from the other, give one',
    });
  if (power !== undefined) return good(power);
  if (torque === undefined) return bad({ code: 'missing', path: 'power', wanted: 'power or torque' });
  return good((torque * speed) as Power);
}

function serviceOf(given: Input): Outcome<number> {
  const { serviceFactor, load, driver } = given;
  if (serviceFactor === undefined) {
    const row = serviceFactors.find((one) => one.load === (load ?? 'some-impact'))!;
    return good(row[driver ?? 'engine']);
  }
  if (load === undefined && driver === undefined) return good(serviceFactor);
  const reason = 'serviceFactor stands for load and driver; give one or the others';
  return bad({ code: 'conflict', path: 'serviceFactor', reason });
}

/** Radius of the pitch circle as the mean one, N·P/2π: the tension of an even pull. */
function peakOf(given: Input, chain: Chain, breakingLoad: number): Pick<Result, 'peak'> | object {
  const peak: Torque | undefined = given.peakTorque;
  if (peak === undefined) return {};
  const tension = (2 * Math.PI * peak) / (given.teeth * chain.pitch);
  return { peak: { tension, strengthFactor: breakingLoad / tension } };
}
