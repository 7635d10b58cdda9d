import { z } from 'zod';
import { angleField, countField, lengthField } from '../../quantity/index.ts';
import { materialField } from './frame.ts';
import { nameField, textField } from './name.ts';
import { operationField } from './shop.ts';

/** A further round hole or slot, in the plate's own axes. Exactly one of bolt, diameter and thread says its size. */
export const plateHoleSchema = z
  .strictObject({
    x: lengthField('Center, along the plate.', { min: -2000, max: 2000 }),
    y: lengthField('Center, across the plate.', { min: -2000, max: 2000 }),
    bolt: textField('Bolt it clears, e.g. M8 or 5/16 in.', 16).optional(),
    fit: z
      .enum(['close', 'normal', 'loose'])
      .meta({ description: 'Clearance; left out: normal.' })
      .optional(),
    diameter: lengthField('Finished diameter.', { above: 0, max: 500 }).optional(),
    thread: textField('Thread to tap, e.g. M8 or 5/16-18.', 20).optional(),
    travel: lengthField('Makes it a slot: center to center of its ends.', { above: 0, max: 500 }).optional(),
    direction: angleField('Slot direction, counterclockwise from x.', { min: -360, max: 360 }).optional(),
    for: textField('What goes through.', 60).optional(),
  })
  .refine(
    (hole) => [hole.bolt, hole.diameter, hole.thread].filter((given) => given !== undefined).length === 1,
    {
      message: 'give exactly one of bolt, diameter and thread',
    },
  )
  .meta({ description: 'A further hole or slot.' });
export type PlateHole = z.output<typeof plateHoleSchema>;

/** A corner of an outline: rounded by `radius`, or followed by an arc of `bulge`. */
export const cornerSchema = z
  .strictObject({
    x: lengthField('x.', { min: -3000, max: 3000 }),
    y: lengthField('y.', { min: -3000, max: 3000 }),
    radius: lengthField('Corner radius.', { min: 0, max: 1000 }).optional(),
    bulge: z
      .number()
      .min(-20)
      .max(20)
      .meta({
        description:
          'tan(sweep / 4) of the arc from this corner to the next, counterclockwise positive; 0 is straight.',
      })
      .optional(),
  })
  .meta({ description: 'A corner.' });
export type PlateCorner = z.output<typeof cornerSchema>;

export const bendSchema = z
  .strictObject({
    angle: angleField('Bend angle, from flat.', { above: 0, max: 170 }),
    insideRadius: lengthField('Inside bend radius; left out: the thickness.', {
      min: 0,
      max: 100,
    }).optional(),
    direction: z
      .enum(['up', 'down'])
      .meta({ description: 'Toward the face that is drawn, or away from it.' }),
  })
  .meta({ description: 'A bend.' });

/** A pattern of four holes that is in the plate already, from another engine. */
export const oldHolesSchema = z
  .strictObject({
    alongBike: lengthField('Hole spacing fore and aft.', { above: 0, max: 600 }),
    acrossBike: lengthField('Hole spacing across.', { above: 0, max: 600 }),
    diameter: lengthField('Diameter of the holes.', { above: 0, max: 60 }),
    x: lengthField('Middle of the old pattern, along the plate.', { min: -500, max: 500 }).optional(),
    y: lengthField('Middle of the old pattern, across the plate.', { min: -500, max: 500 }).optional(),
  })
  .meta({ description: 'Four holes that are there already; new holes are checked against them.' });

/** What every plate has, whatever its recipe. */
export const plateCommon = {
  thickness: lengthField('Plate thickness.', { above: 0, max: 30 }),
  material: materialField.optional(),
  make: operationField,
  count: countField('How many of it, beside the mirrored pair.', { min: 1, max: 50 }).optional(),
  pair: z.boolean().meta({ description: 'A left one and its mirror image.' }).optional(),
  purpose: textField('What it is for, in a few words.', 80).optional(),
  holes: z.array(plateHoleSchema).max(100).meta({ description: 'Further holes and slots.' }).optional(),
  windows: z
    .array(z.array(cornerSchema).min(2).max(100))
    .max(20)
    .meta({ description: 'Windows and lightening cut-outs, each by its corners.' })
    .optional(),
  oldHoles: oldHolesSchema.optional(),
};

/** Where a plate that stands fore and aft sits across the bike. */
export const plateStanding = {
  inStack: nameField(
    "Item of the shaft's stack that this plate is; it then gives the place across the bike.",
  ).optional(),
  y: lengthField("Middle of the plate, left (+) of the bike's center plane, where no stack item gives it.", {
    min: -500,
    max: 500,
  }).optional(),
};
