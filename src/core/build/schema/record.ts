import { z } from 'zod';
import { countField, lengthField } from '../../quantity/index.ts';
import { namedTable, nameField, textField } from './name.ts';

export const aboutSchema = z.strictObject({
  name: textField('Name of the build, on every sheet.', 80),
  summary: textField('A sentence or two.', 600).optional(),
  invented: z
    .boolean()
    .meta({ description: 'The build is invented, for show; every sheet says so.' })
    .optional(),
  units: z.enum(['in', 'mm', 'both']).meta({ description: 'What the sheets print.' }).optional(),
});

export const fastenerSchema = z.strictObject({
  size: textField('Thread and length, e.g. M8 x 35 or 5/16-18 x 1 1/4 in.', 40),
  grade: textField('Class or grade, e.g. 8.8 or grade 5.', 24).optional(),
  count: countField('How many.', { min: 1, max: 500 }),
  use: textField('Where it goes.', 120),
});

export const purchaseSchema = z.strictObject({
  what: textField('Generic class of the part; no brands.', 120),
  count: countField('How many.', { min: 1, max: 500 }).optional(),
  matters: textField('The dimensions that matter: bore, key, pitch, bolt circle, offset.', 300),
  instead: textField('An equivalent to look for.', 300).optional(),
});

/** Where a part stands. Made and welded parts are frozen: a change elsewhere is reported against them. */
export const madeSchema = z.strictObject({
  state: z.enum(['planned', 'bought', 'made', 'welded']),
  asDrawn: z
    .record(z.string().min(1).max(120), lengthField('Value it was made to.', { min: -5000, max: 5000 }))
    .meta({ description: 'Figures that the part was made to, by figure id, as the pack printed them.' })
    .optional(),
  note: textField('Note.', 200).optional(),
});

export const measuredSchema = z.strictObject({
  path: textField('Path of the number in this file, e.g. wheels.rear.hub.width.', 200),
  value: z
    .union([z.number(), z.string().max(64)])
    .meta({ description: 'What it measured, as you would write it there.' }),
  with: z
    .enum(['tape', 'caliper', 'micrometer', 'angle-finder', 'scale', 'rollout'])
    .meta({ description: 'Instrument.' }),
  accuracy: lengthField("Plus or minus, where it is not the instrument's usual.", {
    min: 0,
    max: 100,
  }).optional(),
  note: textField('How it was measured: edge, center, rim.', 200).optional(),
});

export const variantSchema = z.strictObject({
  note: textField('What it is.', 300).optional(),
  changes: z.record(z.string(), z.unknown()).meta({
    description:
      'JSON Merge Patch (RFC 7396) on this file: objects merge, null removes, anything else replaces.',
  }),
});

export const recordSchemas = {
  fasteners: namedTable(fastenerSchema, 'Bolts, nuts and the like.'),
  purchases: namedTable(purchaseSchema, 'Parts to buy.'),
  made: z
    .record(z.string().min(1).max(80), madeSchema)
    .meta({ description: 'State of parts, by part name.' }),
  measured: z
    .array(measuredSchema)
    .max(500)
    .meta({ description: 'As-built readings; they win over what is typed, which stays as it is.' }),
  variants: namedTable(variantSchema, 'Named patches: another engine, another wheel.'),
  name: nameField,
};
