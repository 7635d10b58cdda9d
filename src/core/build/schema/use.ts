import { z } from 'zod';
import { areaField, lengthField, ratioField, speedField } from '../../quantity/index.ts';

/** Where and how the bike is ridden. Every field has a default that the report names. */
export const useSchema = z
  .strictObject({
    speed: speedField('Speed it is mostly ridden at.', { above: 0, max: 40 }).optional(),
    grade: ratioField('Steepest hill to start on, rise over run, e.g. 15 %.', { min: 0, max: 1 }).optional(),
    ground: z
      .enum(['road', 'path', 'grass', 'sand'])
      .meta({ description: 'Ground, for rolling resistance and grip where they are not given.' })
      .optional(),
    rollingCoefficient: ratioField('Rolling resistance as a share of the load.', {
      min: 0,
      max: 0.5,
    }).optional(),
    grip: ratioField('Friction of the rear tire on the ground.', { above: 0, max: 2 }).optional(),
    dragArea: areaField('Drag coefficient times frontal area, e.g. 0.55 m².', {
      min: 0,
      max: 3e6,
    }).optional(),
    altitude: lengthField('Height above the sea, e.g. 1500 m.', { min: -500_000, max: 6_000_000 }).optional(),
    temperature: z
      .number()
      .min(-40)
      .max(60)
      .meta({ description: 'Temperature of the air.', unit: '°C' })
      .optional(),
  })
  .meta({ description: 'Where and how it is ridden.' });
export type Use = z.output<typeof useSchema>;
