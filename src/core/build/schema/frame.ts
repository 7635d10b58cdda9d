import { z } from 'zod';
import { angleField, lengthField } from '../../quantity/index.ts';
import { namedTable, nameField, referenceField, textField } from './name.ts';
import { placementSchema } from './placement.ts';

/** Kinds of steel and aluminum the mass and gauge tables know. */
export const materialNames = [
  'mild-steel',
  'drawn-tube-1020',
  'chromoly-4130',
  'aluminum-6061',
  'stainless-304',
] as const;
export const materialField = z.enum(materialNames).meta({ description: 'Material.' });
export type MaterialName = z.output<typeof materialField>;

export const tubingSchema = z
  .strictObject({
    outside: lengthField('Outside diameter.', { above: 0, max: 200 }),
    wall: lengthField('Wall; a gauge is a tube-wall gauge.', { above: 0, max: 30, gauge: 'tube-wall' }),
    material: materialField.optional(),
    centerlineRadius: lengthField("Bend radius of the centerline, where it is not the bender's.", {
      above: 0,
      max: 1000,
    }).optional(),
  })
  .meta({ description: 'A size of tube.' });
export type Tubing = z.output<typeof tubingSchema>;

const tubeEndSchema = z.strictObject({
  joint: z.enum(['cope', 'square', 'flattened', 'plugged']).meta({
    description:
      'cope: fitted round another tube; square: cut square; flattened: for a tab; plugged: closed by a disc.',
  }),
  onto: referenceField('Tube that the cope fits round, or `neck`.').optional(),
  leaveLong: lengthField('Length left on to be trimmed at fit-up.', { min: 0, max: 500 }).optional(),
  clock: angleField('Turn of this cope against the plane of the first bend, where the file says it.', {
    min: -360,
    max: 360,
  }).optional(),
});

export const tubeSchema = z
  .strictObject({
    tubing: nameField('Which tubing.'),
    through: z.array(referenceField('Node or datum.')).min(2).max(24).meta({
      description: 'Nodes or datums that the centerline passes, in order; bends are at the inner ones.',
    }),
    mirror: z
      .boolean()
      .meta({ description: 'A pair: this one on the left and its mirror image on the right.' })
      .optional(),
    centerlineRadius: lengthField('Bend radius of this tube alone.', { above: 0, max: 1000 }).optional(),
    start: tubeEndSchema.optional(),
    end: tubeEndSchema.optional(),
    purpose: textField('What it is for, in a few words.', 80).optional(),
  })
  .meta({ description: 'One tube, or a mirrored pair.' });
export type TubeEntry = z.output<typeof tubeSchema>;

export const frameSchema = z
  .strictObject({
    tubing: namedTable(tubingSchema, 'Sizes of tube in use.'),
    nodes: namedTable(placementSchema, 'Points of the frame, each given from a datum or another node.'),
    tubes: namedTable(tubeSchema, 'The tubes.'),
  })
  .meta({ description: 'The welded frame.' });
