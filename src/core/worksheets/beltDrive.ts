import { z } from 'zod';
import type { SheavePair } from '../driveline/index.ts';
import {
  beltCenter,
  beltFigures,
  beltLength,
  beltWraps,
  coupledDiameters,
  pitchRadiusPerTravel,
} from '../driveline/index.ts';
import type { Length, Outcome } from '../quantity/index.ts';
import { angleField, bad, derived, good, lengthField, ratioField, resultField } from '../quantity/index.ts';
import { atPath } from './atPath.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  diameters: z
    .tuple([
      lengthField('Pitch diameter of the driver.', { above: 0, max: 5000 }),
      lengthField('Pitch diameter of the driven sheave.', { above: 0, max: 5000 }),
    ])
    .meta({ description: 'Pitch diameters of driver and driven sheave.' }),
  length: lengthField('Pitch length of the belt; instead of centerDistance.', {
    above: 0,
    max: 100000,
  }).optional(),
  centerDistance: lengthField('Center distance; instead of length.', { above: 0, max: 50000 }).optional(),
  ratios: z
    .array(ratioField('Driven over driver diameter.', { min: 0.05, max: 20 }))
    .max(200)
    .meta({
      description: 'Variable sheaves: ratios at which both diameters are wanted, length and centers fixed.',
    })
    .optional(),
  grooveAngle: angleField('Angle between the faces of a sheave.', { min: 5, max: 60 }).optional(),
});

const output = z.object({
  length: resultField('length', 'Pitch length of the belt.'),
  centerDistance: resultField('length', 'Center distance.'),
  wraps: z
    .tuple([resultField('angle', 'Wrap on the driver.'), resultField('angle', 'Wrap on the driven sheave.')])
    .meta({ description: 'Wrap on driver and driven sheave.' }),
  ratio: resultField('ratio', 'Driven over driver pitch diameter.'),
  coupled: z
    .array(
      z.object({
        ratio: resultField('ratio', 'Driven over driver diameter.'),
        diameters: z
          .tuple([resultField('length', 'Driver.'), resultField('length', 'Driven sheave.')])
          .meta({ description: 'Pitch diameters that keep this belt taut.' }),
      }),
    )
    .meta({ description: 'Both pitch diameters at each ratio asked for.' })
    .optional(),
  radiusPerTravel: resultField('ratio', 'Climb of the belt per closing of one face.').optional(),
});

type Result = z.output<typeof output>;

export const beltDriveWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'belt-drive',
  title: 'Belt drive',
  summary:
    'Length of an open belt from its center distance or the reverse, wraps, and the coupled pitch diameters of variable sheaves.',
  input,
  output,
  run,
  formulas: [
    'L = √(4C² − (d2 − d1)²) + ½·(d2·θ2 + d1·θ1)',
    'θ = π ∓ 2·asin((d2 − d1)/2C)',
    'dr/dx = 1/(2·tan(β/2))',
  ],
  sources: [
    { key: 'shigley-9', where: 'flat belts, open drive' },
    derived('variable sheaves at fixed length and center distance'),
  ],
  example: {
    title: 'Open belt, 6 in and 18 in sheaves, 96 in centers',
    input: { diameters: ['6 in', '18 in'], centerDistance: '96 in' },
    expected: [
      { path: 'length', value: 230.0742341 * 25.4, tolerance: 0.0001 },
      { path: 'wraps.0', value: (3.01651113 * 180) / Math.PI, tolerance: 0.000001 },
      { path: 'wraps.1', value: (3.266674177 * 180) / Math.PI, tolerance: 0.000001 },
    ],
    source: { key: 'shigley-9', where: 'chapter 17 solutions: θd 3.0165, θD 3.2667, L 230.074 in' },
  },
};

function run(given: z.output<typeof input>): Outcome<WorksheetRun<Result>> {
  const pair: SheavePair = { driverDiameter: given.diameters[0], drivenDiameter: given.diameters[1] };
  const drive = lengthAndCenter(given, pair);
  if (!drive.ok) return drive;
  const { length, center } = drive.value;
  const wraps = beltWraps(pair, center);
  if (!wraps.ok) return wraps;
  const coupled: { ratio: number; diameters: [number, number] }[] = [];
  for (const [index, ratio] of (given.ratios ?? []).entries()) {
    const sheaves = atPath(coupledDiameters({ length, center }, ratio), `ratios[${index}]`);
    if (!sheaves.ok) return sheaves;
    coupled.push({ ratio, diameters: [sheaves.value.driverDiameter, sheaves.value.drivenDiameter] });
  }
  const result: Result = {
    length,
    centerDistance: center,
    wraps: [wraps.value.driver, wraps.value.driven],
    ratio: pair.drivenDiameter / pair.driverDiameter,
    ...(given.ratios === undefined ? {} : { coupled }),
    ...(given.grooveAngle === undefined ? {} : { radiusPerTravel: pitchRadiusPerTravel(given.grooveAngle) }),
  };
  return good({ result, figures: beltFigures(pair, center, { id: 'beltDrive', of: 'belt drive' }) });
}

function lengthAndCenter(
  given: z.output<typeof input>,
  pair: SheavePair,
): Outcome<{ readonly length: Length; readonly center: Length }> {
  const { length, centerDistance } = given;
  if (length !== undefined && centerDistance !== undefined) {
    const reason = 'length and centerDistance are both given; one follows from the other, give one';
    return bad({ code: 'conflict', path: 'centerDistance', reason });
  }
  if (length !== undefined) {
    const center = beltCenter(pair, length);
    return center.ok ? good({ length, center: center.value }) : center;
  }
  if (centerDistance === undefined) {
    return bad({ code: 'missing', path: 'length', wanted: 'length or centerDistance' });
  }
  const found = beltLength(pair, centerDistance);
  return found.ok ? good({ length: found.value, center: centerDistance }) : found;
}
