import { z } from 'zod';
import { lengthField, massField } from '../../quantity/index.ts';
import { textField } from './name.ts';

export const tireSchema = z
  .strictObject({
    size: textField(
      'Size marking as molded on the tire, e.g. 4.80/4.00-8, 90/90-10, 13x5.00-6.',
      40,
    ).optional(),
    diameter: lengthField('Measured diameter under load; wins over the size marking.', {
      min: 100,
      max: 1000,
    }).optional(),
    rollout: lengthField('Measured distance of one turn with the rider on; wins over the diameter.', {
      min: 300,
      max: 3200,
    }).optional(),
    width: lengthField('Measured width; wins over the size marking.', { min: 20, max: 400 }).optional(),
  })
  .meta({ description: 'A tire by its marking or, better, measured.' });
export type TireEntry = z.output<typeof tireSchema>;

export const wheelSchema = z
  .strictObject({
    tire: tireSchema,
    fitted: tireSchema
      .meta({ description: 'The tire that is on now, where it is not the one the frame was jigged for.' })
      .optional(),
    growth: lengthField('How much wider the tire grows a side at speed and load.', {
      min: 0,
      max: 30,
    }).optional(),
    rimDiameter: lengthField('Rim diameter at the bead, for the picture.', { min: 50, max: 700 }).optional(),
    hub: z.strictObject({
      width: lengthField('Over the faces that the spacers bear on.', { above: 0, max: 400 }),
      bore: lengthField('Bearing bore.', { above: 0, max: 60 }),
      bearing: textField('Bearing designation, e.g. 6203.', 24).optional(),
      flange: lengthField('Largest diameter of the hub shell.', { above: 0, max: 300 }).optional(),
      rimOffset: lengthField(
        'Rim center plane, left (+) of the middle of the hub; from two rim-edge readings.',
        { min: -100, max: 100 },
      ).optional(),
    }),
    mass: massField('Wheel with tire and hub.', { above: 0, max: 60 }),
  })
  .meta({ description: 'One wheel.' });
export type WheelEntry = z.output<typeof wheelSchema>;

export const wheelsSchema = z.strictObject({ rear: wheelSchema, front: wheelSchema });
