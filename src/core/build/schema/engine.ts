import { z } from 'zod';
import {
  angleField,
  angularSpeedField,
  inertiaField,
  lengthField,
  massField,
  ratioField,
  torqueField,
} from '../../quantity/index.ts';
import { motorSchema } from './motor.ts';
import { textField } from './name.ts';
import { placementSchema } from './placement.ts';

export const engineSchema = z
  .strictObject({
    class: textField('Class in plain words, e.g. "196 cc class, 3/4 in shaft". No brands.', 80),
    place: placementSchema.meta({ description: 'Center of the mounting pattern, on the plane of the base.' }),
    tilt: angleField('Base tilted nose up.', { min: -90, max: 90 }).optional(),
    envelope: z.strictObject({
      length: lengthField('Fore and aft.', { above: 0, max: 1000 }),
      width: lengthField('Across.', { above: 0, max: 1000 }),
      height: lengthField('From the base up.', { above: 0, max: 1000 }),
      forward: lengthField('Middle of the envelope ahead of the mounting pattern center.', {
        min: -500,
        max: 500,
      }).optional(),
      left: lengthField('Middle of the envelope left of the mounting pattern center.', {
        min: -500,
        max: 500,
      }).optional(),
    }),
    mount: z.strictObject({
      alongBike: lengthField('Hole spacing fore and aft.', { above: 0, max: 600 }),
      acrossBike: lengthField('Hole spacing across.', { above: 0, max: 600 }),
      bolt: textField('Bolt, e.g. M8 or 5/16 in.', 16),
    }),
    shaft: z.strictObject({
      side: z.enum(['left', 'right']).meta({ description: 'Side the shaft points to.' }),
      diameter: lengthField('Diameter.', { above: 0, max: 80 }),
      length: lengthField('From the engine face to the end.', { above: 0, max: 300 }),
      key: lengthField('Width of the key.', { above: 0, max: 20 }).optional(),
      height: lengthField('Center above the base.', { min: 0, max: 600 }),
      forward: lengthField('Center ahead of the mounting pattern center.', { min: -400, max: 400 }),
      face: lengthField("Engine face out from the mounting pattern center, on the shaft's side.", {
        min: -400,
        max: 400,
      }),
    }),
    mass: massField('Ready to run.', { above: 0, max: 200 }),
    massCenter: z
      .strictObject({
        forward: lengthField('Ahead of the mounting pattern center.', { min: -500, max: 500 }),
        left: lengthField('Left of it.', { min: -500, max: 500 }).optional(),
        up: lengthField('Above the base.', { min: -500, max: 800 }),
      })
      .optional(),
    governed: angularSpeedField('Governed speed.', { above: 0, max: 20000 }).optional(),
    idle: angularSpeedField('Idle speed; left out: 0.4 of the governed speed.', {
      above: 0,
      max: 10000,
    }).optional(),
    droop: ratioField('Share of the governed speed over which the governor takes the torque away.', {
      min: 0,
      max: 0.5,
    }).optional(),
    inertia: inertiaField('Crank, flywheel and what turns with them.', { min: 0, max: 10 }).optional(),
    motor: motorSchema.optional(),
    torque: z
      .array(
        z.strictObject({
          at: angularSpeedField('Speed.', { min: 0, max: 20000 }),
          torque: torqueField('Torque.', { min: 0, max: 1000 }),
        }),
      )
      .min(1)
      .max(200)
      .meta({ description: 'Torque curve, by rising speed.' })
      .optional(),
  })
  .refine(({ idle, governed }) => idle === undefined || governed === undefined || idle < governed, {
    message: 'the engine idles below its governed speed',
    path: ['idle'],
  })
  .meta({ description: 'The engine, by class.' });
export type EngineEntry = z.output<typeof engineSchema>;
