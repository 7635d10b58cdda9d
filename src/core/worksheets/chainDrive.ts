import { z } from 'zod';
import type { ChainDriveInput, ChainDrivePlan, ChainLengthChoice } from '../driveline/index.ts';
import { centerForLinks, chainDriveFigures, planChainDrive } from '../driveline/index.ts';
import type { Issue, Length, Outcome } from '../quantity/index.ts';
import {
  angleField,
  angularSpeedField,
  bad,
  countField,
  derived,
  edgeUnit,
  good,
  lengthField,
  practice,
  ratioField,
  resultField,
  toEdgeValue,
} from '../quantity/index.ts';
import { findChain } from '../standards/index.ts';
import { atPath } from './atPath.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const MAX_TEETH = 300;

const input = z.strictObject({
  chain: z
    .string()
    .max(20)
    .meta({ description: 'Chain size, for example #40 or 428; instead of pitch.' })
    .optional(),
  pitch: lengthField('Chain pitch; instead of chain.', { above: 0, max: 100 }).optional(),
  driverTeeth: countField('Teeth of the driving sprocket.', { min: 6, max: MAX_TEETH }),
  drivenTeeth: countField('Teeth of the driven sprocket.', { min: 6, max: MAX_TEETH }),
  links: ratioField('Number of links (pitches); instead of centerDistance. Need not be whole.', {
    above: 0,
    max: 10000,
  }).optional(),
  centerDistance: lengthField('Center distance that is wanted; instead of links.', {
    above: 0,
    max: 10000,
  }).optional(),
  offsetLinks: z
    .boolean()
    .meta({ description: 'Offer odd counts too, closed with an offset link.' })
    .optional(),
  fixedCenters: z.boolean().meta({ description: 'The center distance can not be set again.' }).optional(),
  wearLimit: ratioField('Own wear limit as a fraction, for example 0.015.', { min: 0, max: 0.1 }).optional(),
  fitting: lengthField(
    'How much closer the shafts must come to put the chain on; half a pitch if not given.',
    {
      min: 0,
      max: 1000,
    },
  ).optional(),
  inclination: angleField('Line of centers above the horizontal.', { min: -90, max: 90 }).optional(),
  steep: z
    .boolean()
    .meta({ description: 'Steep run, heavy starts or reversing: half the usual play.' })
    .optional(),
  pusherPitch: lengthField('Thread pitch of the pusher screw.', { min: 0.1, max: 20 }).optional(),
  driverSpeed: angularSpeedField('Speed of the driving sprocket.', { min: 0, max: 100000 }).optional(),
});

const choice = z.object({
  links: resultField('ratio', 'Number of links.'),
  offsetLink: z.boolean().meta({ description: 'Needs an offset link.' }),
  centerDistance: resultField('length', 'Center distance, new and taut.'),
  fromWanted: resultField('length', 'Adjuster position from the wanted center, positive apart.'),
  wornCenterDistance: resultField('length', 'Center distance at the wear limit.'),
  fittingCenterDistance: resultField('length', 'Center distance at which the chain is put on.'),
});

const output = z.object({
  links: resultField('ratio', 'Number of links: as given, or what the wanted center asks for, not rounded.'),
  centerDistance: resultField(
    'length',
    'Center distance: as wanted, or exact for the links given, new and taut.',
  ),
  chosen: choice.meta({
    description: 'The length to make up: the one given, or the whole count nearest the wanted center.',
  }),
  alternatives: z.array(choice).meta({ description: 'Lengths that can be made up around it.' }),
  wraps: z
    .tuple([
      resultField('angle', 'Wrap on the driver.'),
      resultField('angle', 'Wrap on the driven sprocket.'),
    ])
    .meta({ description: 'Wrap on driver and driven sprocket.' }),
  ratio: resultField('ratio', 'Driven teeth per driver tooth.'),
  wearLimit: resultField('ratio', 'Elongation at which the chain is worn out.'),
  takeUp: resultField('length', 'Center distance still needed to the wear limit.'),
  slot: z.object({
    linkRounding: resultField('length', 'Between the two lengths on either side of the wanted center.'),
    wear: resultField('length', 'New to worn.'),
    fitting: resultField('length', 'Put on to taut.'),
    total: resultField('length', 'Sum; bolt or axle diameter comes on top.'),
  }),
  slack: z.object({
    span: resultField('length', 'Straight run.'),
    play: resultField('length', 'Whole mid-span movement to set by hand.'),
    centerChange: resultField('length', 'Center distance that this play is.'),
    centerChangeOfHalfInch: resultField('length', 'Center distance that 1/2 in of play is on this run.'),
    screwTurns: resultField('ratio', 'Turns of the pusher screw for this play.').optional(),
  }),
  chainSpeed: resultField('speed', 'Mean chain speed.').optional(),
  chordalVariation: resultField('ratio', 'Chain speed variation by the smaller sprocket, as a fraction.'),
  cautions: z
    .array(
      z.object({
        code: z.string(),
        value: z.number(),
        limit: z.number(),
        bound: z.enum(['min', 'max']),
        unit: z.string(),
      }),
    )
    .meta({ description: 'Layout rules the drive is outside of; value and limit in the unit beside them.' }),
});

type Input = z.output<typeof input>;

export const chainDriveWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'chain-drive',
  title: 'Chain drive',
  summary:
    'Center distance of a chain of so many links, or the chain lengths around a wanted center distance: the exact center of each, slot, wear take-up, wrap and slack to set.',
  input,
  output,
  run,
  formulas: [
    'L = 2·(C/p)·cos α + N1·(π − 2α)/2π + N2·(π + 2α)/2π',
    'sin α = (R2 − R1)/C, R = p/(2·sin(π/N))',
    'slot = link rounding + wear + fitting',
    'ΔC = (√(s² + play²) − s)/(dL/dC)',
    'variation = 1 − cos(180°/N)',
  ],
  sources: [
    derived('wrap counted in pitches round the teeth'),
    practice('chain wear limits, slack of 4 % and 2 % of span, layout rules'),
  ],
  example: {
    title: '#35 chain of 108 links on 10 and 60 teeth',
    input: { chain: '#35', driverTeeth: 10, drivenTeeth: 60, links: 108 },
    expected: [
      { path: 'links', value: 108, tolerance: 0 },
      { path: 'centerDistance', value: 339.1568, tolerance: 0.00006 },
      { path: 'wraps.0', value: 154.245, tolerance: 0.0006 },
    ],
    source: derived('exact wrap, solved with a general numeric library'),
  },
};

function run(given: Input): Outcome<WorksheetRun<z.output<typeof output>>> {
  const pitch = pitchOf(given);
  if (!pitch.ok) return pitch;
  const one = eitherOf(given, 'links', 'centerDistance');
  if (one) return bad(one);
  const wanted = wantedCenter(given, pitch.value);
  if (!wanted.ok) return wanted;
  const { chain: _chain, pitch: _pitch, centerDistance: _center, ...rest } = given;
  const drive = {
    ...withoutUndefined(rest),
    pitch: pitch.value,
    wantedCenter: wanted.value,
  } as ChainDriveInput;
  const plan = planChainDrive(drive);
  if (!plan.ok) return plan;
  const figures = chainDriveFigures(drive, plan.value, { id: 'chainDrive', of: 'chain drive' });
  return good({ result: resultOf(given, plan.value), figures });
}

/** What was typed comes back as typed; the length that can be made up stands beside it. */
function resultOf(given: Input, plan: ChainDrivePlan): z.output<typeof output> {
  const { slack } = plan;
  return {
    links: given.links ?? plan.exactLinks,
    centerDistance: given.centerDistance ?? plan.chosen.center,
    chosen: choiceOf(plan.chosen),
    alternatives: plan.alternatives.map(choiceOf),
    wraps: [plan.wraps.driver, plan.wraps.driven],
    ratio: plan.ratio,
    wearLimit: plan.wear.elongation,
    takeUp: plan.takeUp,
    slot: plan.slot,
    slack: {
      span: slack.span,
      play: slack.play,
      centerChange: slack.centerChange,
      centerChangeOfHalfInch: slack.centerChangeOfHalfInch,
      ...(slack.screwTurns === undefined ? {} : { screwTurns: slack.screwTurns }),
    },
    ...(plan.chainSpeed === undefined ? {} : { chainSpeed: plan.chainSpeed }),
    chordalVariation: plan.chordalVariation,
    cautions: plan.cautions.map(({ code, value, limit, bound, kind }) => ({
      code,
      value: toEdgeValue(value, kind),
      limit: toEdgeValue(limit, kind),
      bound,
      unit: edgeUnit(kind).symbol,
    })),
  };
}

function choiceOf(one: ChainLengthChoice): z.output<typeof choice> {
  return {
    links: one.links,
    offsetLink: one.offsetLink,
    centerDistance: one.center,
    fromWanted: one.fromWanted,
    wornCenterDistance: one.wornCenter,
    fittingCenterDistance: one.fittingCenter,
  };
}

function pitchOf(given: Input): Outcome<Length> {
  const one = eitherOf(given, 'chain', 'pitch');
  if (one) return bad(one);
  if (given.pitch !== undefined) return good(given.pitch);
  const chain = atPath(findChain(given.chain ?? ''), 'chain');
  return chain.ok ? good(chain.value.pitch) : chain;
}

function wantedCenter(given: Input, pitch: Length): Outcome<Length> {
  if (given.centerDistance !== undefined) return good(given.centerDistance);
  const { driverTeeth, drivenTeeth, links } = given;
  return centerForLinks({ pitch, driverTeeth, drivenTeeth }, links ?? Number.NaN);
}

function eitherOf(given: Input, a: keyof Input, b: keyof Input): Issue | undefined {
  if (given[a] === undefined && given[b] === undefined)
    return { code: 'missing', path: a, wanted: `${a} or ${b}` };
  if (given[a] === undefined || given[b] === undefined) return undefined;
  return {
    code: 'conflict',
    path: b,
    reason: `${a} and ${b} are both given; one follows from the other, give one`,
  };
}

function withoutUndefined(fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
