import { z } from 'zod';
import {
  type StanceChange,
  type SteeringGeometry,
  standOn,
  steeringFigures,
  steeringNumbers,
} from '../bike/index.ts';
import { angleField, bad, good, lengthField, type Outcome, resultField } from '../quantity/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const radius = (doc: string) => lengthField(doc, { above: 0, max: 500 }).optional();
const diameter = (doc: string) => lengthField(doc, { above: 0, max: 1000 }).optional();

const input = z
  .strictObject({
    headAngle: angleField('Steering axis from the ground; or give rake.', { min: 40, max: 90 }).optional(),
    rake: angleField('Steering axis from vertical; or give headAngle.', { min: 0, max: 50 }).optional(),
    forkOffset: lengthField(
      'Front axle ahead of the steering axis, square to it (clamp offset plus axle lead).',
      {
        min: -200,
        max: 300,
      },
    ),
    frontRadius: radius('Front tire radius under load; or give frontDiameter.'),
    frontDiameter: diameter('Front tire diameter.'),
    rearRadius: radius('Rear tire radius; left out: that of the front.'),
    rearDiameter: diameter('Rear tire diameter.'),
    wheelbase: lengthField('Axle to axle; needed for another tire, sag or rise.', {
      min: 100,
      max: 5000,
    }).optional(),
    newFrontRadius: radius('Front tire radius with another tire.'),
    newFrontDiameter: diameter('Front tire diameter with another tire.'),
    newRearRadius: radius('Rear tire radius with another tire.'),
    newRearDiameter: diameter('Rear tire diameter with another tire.'),
    sag: lengthField('Compression of the fork along the steering axis.', { min: -300, max: 300 }).optional(),
    rearRise: lengthField('Rise of the rear axle in the frame.', { min: -300, max: 300 }).optional(),
  })
  .superRefine((given, context) => {
    const one = (names: readonly (keyof typeof given)[], needed: boolean): void => {
      const count = names.filter((name) => given[name] !== undefined).length;
      if (count > 1 || (needed && count === 0)) {
        const message = `give ${needed ? 'exactly' : 'at most'} one of ${names.join(' and ')}`;
        context.addIssue({ code: 'custom', message, path: [names[0]!] });
      }
    };
    one(['headAngle', 'rake'], true);
    one(['frontRadius', 'frontDiameter'], true);
    one(['rearRadius', 'rearDiameter'], false);
    one(['newFrontRadius', 'newFrontDiameter'], false);
    one(['newRearRadius', 'newRearDiameter'], false);
  });

const numbers = {
  rake: resultField('angle', 'Steering axis from vertical.'),
  trail: resultField('length', 'Trail on the ground.'),
  normalTrail: resultField('length', 'Trail square to the steering axis.'),
  flop: resultField('length', 'Wheel flop factor.'),
};

const output = z.object({
  headAngle: resultField('angle', 'Steering axis from the ground, after the changes.'),
  ...numbers,
  pitch: resultField('angle', 'Pitch of the frame by the changes, nose down positive.'),
  wheelbase: resultField('length', 'Axle to axle along the ground, after the changes.').optional(),
  design: z.object(numbers).meta({ description: 'Before the changes.' }),
  trailWithoutPitch: resultField('length', 'What the trail would be taken for if the pitch were forgotten.'),
});

type Given = z.output<typeof input>;

export const steeringWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'steering',
  title: 'Rake, trail and a change of tire or ride height',
  summary:
    'Trail, normal trail, rake and wheel flop of a front end, and what they become with another tire, fork sag or a raised rear axle, pitch included.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<z.output<typeof output>>> => {
    const changed = isChanged(given);
    if (changed && given.wheelbase === undefined) {
      return bad({
        code: 'missing',
        path: 'wheelbase',
        wanted: 'the wheelbase, over which the change pitches the frame',
      });
    }
    const design = designOf(given);
    const change = changeOf(given, design);
    const stance = standOn('sag', design, change);
    if (!stance.ok) return stance;
    const { headAngle, rake, trail, normalTrail, flop, pitch, wheelbase } = stance.value;
    const result = {
      headAngle,
      rake,
      trail,
      normalTrail,
      flop,
      pitch,
      ...(given.wheelbase === undefined ? {} : { wheelbase }),
      design: steeringNumbers(design.headAngle, design.forkOffset, design.frontRadius),
      trailWithoutPitch: steeringNumbers(design.headAngle, design.forkOffset, change.frontRadius).trail,
    };
    const named = changed ? stance.value : { ...stance.value, name: 'design' as const };
    const figures = steeringFigures(design, change, named).filter(
      (figure) => given.wheelbase !== undefined || !NEEDS_WHEELBASE.some((id) => figure.id.endsWith(id)),
    );
    return good({ result, figures });
  },
  formulas: [
    'ε = 90° − head angle',
    'c_n = R·sin ε − d',
    'c = c_n/cos ε',
    'f = c_n·sin ε',
    'v = (p, R_f − R_r) + s_f·u − (0, d_r), u up the steering axis',
    "θ = atan2(v_z, v_x) − asin((R_f' − R_r')/|v|), nose down positive",
    "p' = |v|·cos(atan2(v_z, v_x) − θ), ε' = ε − θ",
  ],
  sources: [
    { key: 'cossalter-notes', where: 'trail, normal trail and rake' },
    { key: 'derived', where: 'rigid frame on level ground, both tires touching' },
  ],
  example: {
    title: 'A front tire of 355 mm in place of 410 mm; wheelbase 1050 mm, rake 27°, offset 38 mm',
    input: { rake: 27, forkOffset: 38, frontDiameter: 410, wheelbase: 1050, newFrontDiameter: 355 },
    expected: [
      { path: 'design.trail', value: 61.8, tolerance: 0.05 },
      { path: 'trail', value: 42.6, tolerance: 0.05 },
      { path: 'trailWithoutPitch', value: 47.8, tolerance: 0.05 },
      { path: 'pitch', value: 1.5, tolerance: 0.05 },
    ],
    source: { key: 'derived', where: 'worked out independently, printed to a tenth' },
  },
};

/** Figures that mean nothing where no wheelbase was given. */
const NEEDS_WHEELBASE = ['.wheelbase', '.pitch'];

const isChanged = (given: Given): boolean =>
  [
    given.newFrontRadius,
    given.newFrontDiameter,
    given.newRearRadius,
    given.newRearDiameter,
    given.sag,
    given.rearRise,
  ].some((value) => value !== undefined);

function designOf(given: Given): SteeringGeometry {
  const frontRadius = radiusOf(given.frontRadius, given.frontDiameter)!;
  return {
    // Nothing pitches without a change, so any length serves where none was given.
    wheelbase: given.wheelbase ?? 1,
    headAngle: given.headAngle ?? Math.PI / 2 - given.rake!,
    forkOffset: given.forkOffset,
    frontRadius,
    rearRadius: radiusOf(given.rearRadius, given.rearDiameter) ?? frontRadius,
  };
}

const changeOf = (given: Given, design: SteeringGeometry): StanceChange => ({
  frontRadius: radiusOf(given.newFrontRadius, given.newFrontDiameter) ?? design.frontRadius,
  rearRadius: radiusOf(given.newRearRadius, given.newRearDiameter) ?? design.rearRadius,
  sag: given.sag ?? 0,
  rearRise: given.rearRise ?? 0,
});

const radiusOf = (radius: number | undefined, diameter: number | undefined): number | undefined =>
  radius ?? (diameter === undefined ? undefined : diameter / 2);
