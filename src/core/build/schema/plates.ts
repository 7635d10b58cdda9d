import { z } from 'zod';
import { countField, lengthField } from '../../quantity/index.ts';
import { materialField } from './frame.ts';
import { textField } from './name.ts';
import { operationField } from './shop.ts';

/** What every plate has, whatever its recipe. */
export const plateCommon = {
  thickness: lengthField('Plate thickness.', { above: 0, max: 30 }),
  material: materialField.optional(),
  make: operationField,
  count: countField('How many of it, beside the mirrored pair.', { min: 1, max: 50 }).optional(),
  pair: z.boolean().meta({ description: 'A left one and its mirror image.' }).optional(),
  purpose: textField('What it is for, in a few words.', 80).optional(),
};

export const plateSchema = z.discriminatedUnion('recipe', [z.strictObject({ recipe: z.literal('free'), ...plateCommon })]);
export type PlateEntry = z.output<typeof plateSchema>;
