import { z } from 'zod';
import { beltFigures } from '../driveline/index.ts';
import {
  angularSpeedField,
  bad,
  countField,
  derived,
  good,
  type Length,
  lengthField,
  type Outcome,
  resultField,
} from '../quantity/index.ts';
import {
  type BeltPosition,
  beltPositions,
  beltRoadSpeeds,
  type VariableBeltDrive,
  variableBeltDrive,
} from '../ride/index.ts';
import { bikeFields } from './launchFields.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const limits = (description: string) =>
  z
    .strictObject({
      smallest: lengthField('Smallest pitch diameter.', { above: 0, max: 5000 }),
      largest: lengthField('Largest pitch diameter.', { above: 0, max: 5000 }),
    })
    .meta({ description });

const input = z.strictObject({
  beltLength: lengthField('Pitch length of the belt.', { above: 0, max: 100_000 }),
  centerDistance: lengthField(
    'Center distance; that of the belt with the driver smallest and the driven sheave largest if left out.',
    { above: 0, max: 50_000 },
  ).optional(),
  driver: limits('Driver, on the engine side.'),
  driven: limits('Driven sheave.'),
  lengthTolerance: lengthField('Plus or minus on the length of the belt.', { min: 0, max: 1000 }).optional(),
  positions: countField('How many positions to list from launch to top.', { min: 2, max: 500 }).optional(),
  road: z
    .strictObject({
      ratio: bikeFields.ratio,
      wheelRadius: bikeFields.wheelRadius,
      engages: angularSpeedField('Engine speed of first bite.', { above: 0, max: 200_000 }).optional(),
      shiftsAt: angularSpeedField('Engine speed held while it shifts.', { above: 0, max: 200_000 }),
      governed: bikeFields.governed,
    })
    .meta({ description: 'The other stages and speeds, for road speeds.' })
    .optional(),
});

const position = z.object({
  ratio: resultField('ratio', 'Driven over driver diameter.'),
  diameters: z
    .tuple([resultField('length', 'Driver.'), resultField('length', 'Driven sheave.')])
    .meta({ description: 'Pitch diameters.' }),
  wraps: z
    .tuple([resultField('angle', 'Driver.'), resultField('angle', 'Driven sheave.')])
    .meta({ description: 'Wrap.' }),
});

const endsAt = z.enum(['driver', 'driven']).meta({ description: 'Sheave that is at its limit there.' });

const output = z.object({
  centerDistance: resultField('length', 'Center distance.'),
  low: position.meta({ description: 'Launch.' }),
  high: position.meta({ description: 'Top.' }),
  lowEndsAt: endsAt,
  highEndsAt: endsAt,
  lowUnused: resultField('length', "Diameter left to the other sheave's limit at launch."),
  highUnused: resultField('length', "Diameter left to the other sheave's limit at the top."),
  ratioSpan: resultField('ratio', 'Launch ratio over top ratio.'),
  centerRange: z.object({
    shortest: resultField('length', 'Center distance of the shortest belt of the tolerance, at launch.'),
    longest: resultField('length', 'Of the longest.'),
  }),
  positions: z.array(position).meta({ description: 'From launch to top.' }),
  road: z
    .object({
      bite: resultField('speed', 'At first bite.').optional(),
      shiftFrom: resultField('speed', 'Shift begins.'),
      shiftTo: resultField('speed', 'Shift ends.'),
      governed: resultField('speed', 'At the governed speed in the top ratio.'),
      beltSpeed: resultField('speed', 'Of the belt at the governed speed in the top ratio.'),
    })
    .meta({ description: 'Road speeds.' })
    .optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const variableBeltWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'variable-belt',
  title: 'Variable belt drive',
  summary:
    'Whole ratio range of a variable belt drive at fixed belt length and center distance, which sheave ends it, road speeds of bite, shift and governor, belt speed and wrap.',
  input,
  output,
  run,
  formulas: [
    'L = √(4C² − (d2 − d1)²) + ½·(d2·θ2 + d1·θ1), θ = π ∓ 2·asin((d2 − d1)/2C)',
    'v = ω·R/(i·G)',
    'belt speed = ω·d1/2',
  ],
  sources: [
    { key: 'shigley-9', where: 'flat belts, open drive' },
    derived('both sheaves on one length equation'),
  ],
  example: {
    title: 'Belt of 913.17572 mm on 245 mm centers, driver 70 to 150 mm',
    input: {
      beltLength: 913.17572,
      centerDistance: 245,
      driver: { smallest: 70, largest: 150 },
      driven: { smallest: 110, largest: 190.001 },
      road: { ratio: 3.5, wheelRadius: 200, shiftsAt: 3400, governed: 3600 },
    },
    expected: [
      { path: 'low.diameters.1', value: 190, tolerance: 0.0006 },
      { path: 'high.diameters.1', value: 118.768, tolerance: 0.0006 },
      { path: 'high.ratio', value: 0.7918, tolerance: 0.00006 },
    ],
    source: derived('open-belt equation, solved with a general numeric library'),
  },
};

const DEFAULT_POSITIONS = 9;

function run(given: Input): Outcome<WorksheetRun<Result>> {
  for (const sheave of ['driver', 'driven'] as const) {
    if (given[sheave].largest >= given[sheave].smallest) continue;
    const reason = 'the largest diameter is at least the smallest';
    return bad({ code: 'conflict', path: `${sheave}.largest`, reason });
  }
  const drive = variableBeltDrive({
    length: given.beltLength,
    driver: given.driver,
    driven: given.driven,
    ...(given.centerDistance === undefined ? {} : { center: given.centerDistance }),
    ...(given.lengthTolerance === undefined ? {} : { lengthTolerance: given.lengthTolerance }),
  });
  if (!drive.ok) return drive;
  const positions = beltPositions(
    { length: given.beltLength },
    drive.value,
    given.positions ?? DEFAULT_POSITIONS,
  );
  if (!positions.ok) return positions;
  const { low, high } = drive.value;
  return good({
    result: resultOf(given, drive.value, positions.value),
    figures: [
      ...beltFigures(low, drive.value.center as Length, { id: 'variableBelt.low', of: 'launch' }),
      ...beltFigures(high, drive.value.center as Length, { id: 'variableBelt.high', of: 'top' }),
    ],
  });
}

function resultOf(given: Input, drive: VariableBeltDrive, positions: readonly BeltPosition[]): Result {
  const { center, low, high, lowEndsAt, highEndsAt, lowUnused, highUnused, centerRange } = drive;
  return {
    centerDistance: center,
    low: positionResult(low),
    high: positionResult(high),
    lowEndsAt,
    highEndsAt,
    lowUnused,
    highUnused,
    ratioSpan: low.ratio / high.ratio,
    centerRange,
    positions: positions.map(positionResult),
    ...(given.road ? { road: roadOf(drive, given.road) } : {}),
  };
}

function roadOf(drive: VariableBeltDrive, road: NonNullable<Input['road']>): NonNullable<Result['road']> {
  const { engages, ...rest } = road;
  return beltRoadSpeeds(drive, { ...rest, ...(engages === undefined ? {} : { engages }) });
}

const positionResult = (one: BeltPosition): z.output<typeof position> => ({
  ratio: one.ratio,
  diameters: [one.driverDiameter, one.drivenDiameter],
  wraps: [one.wraps.driver, one.wraps.driven],
});
