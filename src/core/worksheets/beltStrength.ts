import { z } from 'zod';
import type { Outcome } from '../quantity/index.ts';
import {
  angleField,
  derived,
  forceField,
  good,
  lengthField,
  lineMassField,
  ratioField,
  resultField,
  speedField,
  torqueField,
} from '../quantity/index.ts';
import {
  type BeltTensionInput,
  beltTensionFigures,
  beltTensions,
  grooveFriction,
} from '../strength/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  torque: torqueField('Torque on the sheave.', { min: 0, max: 1e6 }),
  diameter: lengthField('Pitch diameter of the sheave.', { above: 0, max: 5000 }),
  wrap: angleField('Angle over which the belt lies on it.', { above: 0, max: 360 }),
  friction: ratioField('f of belt on sheave; with grooveAngle that of the faces.', { above: 0, max: 5 }),
  grooveAngle: angleField('Angle between the faces; left out: flat, or friction is that of the groove.', {
    min: 5,
    max: 120,
  }).optional(),
  lineMass: lineMassField('Of the belt, for the centrifugal part.', { min: 0, max: 50 }).optional(),
  speed: speedField('Of the belt, for the centrifugal part.', { min: 0, max: 150 }).optional(),
  tight: forceField('Tension that the belt may have on the tight side.', { above: 0, max: 1e7 }).optional(),
});

const output = z.object({
  friction: resultField('ratio', 'f used, wedging counted.'),
  ratio: resultField('ratio', 'Largest ratio of the tensions before it slips.'),
  tight: resultField('force', 'Tight side at the point of slipping.'),
  slack: resultField('force', 'Slack side then: the least to keep.'),
  centrifugal: resultField('force', 'Part that presses on no sheave.'),
  initial: resultField('force', 'Least tension to set at rest.'),
  tightFactor: resultField('ratio', 'Tension allowed over tight side.').optional(),
});

type Result = z.output<typeof output>;

export const beltStrengthWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'belt-strength',
  title: 'Belt tensions and slip',
  summary: 'Tensions at which a flat or V-belt is about to slip under a torque, and the tension to set.',
  input,
  output,
  run,
  formulas: ['(F1 − Fc)/(F2 − Fc) = e^(f·θ)', 'F1 − F2 = 2·T/d', 'f = µ/sin(β/2)', 'Fc = m·v²'],
  sources: [{ key: 'shigley-9', where: 'sections 17-2 and 17-3' }],
  example: {
    title: 'V-belt on 100 mm, 20 N·m, wrap 150°',
    input: { torque: 20, diameter: 100, wrap: 150, friction: 0.5123 },
    expected: [
      { path: 'ratio', value: 3.823622, tolerance: 6e-7 },
      { path: 'tight', value: 541.662, tolerance: 0.0006 },
      { path: 'slack', value: 141.662, tolerance: 0.0006 },
    ],
    source: derived('capstan equation, by a general numeric library; effective friction 0.5123 as printed'),
  },
};

function run(given: z.output<typeof input>): Outcome<WorksheetRun<Result>> {
  const { torque, diameter, wrap, lineMass, speed, grooveAngle } = given;
  const friction = grooveAngle === undefined ? given.friction : grooveFriction(given.friction, grooveAngle);
  const belt: BeltTensionInput = {
    torque,
    diameter,
    wrap,
    friction,
    ...(lineMass === undefined ? {} : { lineMass }),
    ...(speed === undefined ? {} : { speed }),
  };
  const tensions = beltTensions(belt);
  const result: Result = {
    friction,
    ...tensions,
    ...(given.tight === undefined || tensions.tight === 0
      ? {}
      : { tightFactor: given.tight / tensions.tight }),
  };
  return good({ result, figures: beltTensionFigures(belt, tensions, { id: 'belt', of: 'belt' }) });
}
