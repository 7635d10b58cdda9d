import { z } from 'zod';
import { angleField, lengthField } from '../../quantity/index.ts';
import { nameField, textField } from './name.ts';
import { placementSchema } from './placement.ts';
import { plateCommon } from './plateParts.ts';

const caliperBracket = z
  .strictObject({
    recipe: z.literal('caliper-bracket'),
    ...plateCommon,
    brake: z.enum(['front', 'rear']).meta({ description: 'Which brake; its caliper gives the lug holes.' }),
    y: lengthField(
      'Middle of the plate, left (+) of the center plane, where disc and lug offset do not give it.',
      { min: -400, max: 400 },
    ).optional(),
    axleHole: z
      .boolean()
      .meta({ description: 'The bracket hangs on the axle and moves with it; left out: yes.' })
      .optional(),
    axle: lengthField('Axle diameter, where no stack gives it.', { above: 0, max: 60 }).optional(),
    anchors: z
      .array(
        z.strictObject({
          radius: lengthField('From the axle center.', { above: 0, max: 400 }),
          clock: angleField('Direction from the axle: 0 ahead, 90 up, 180 behind.', { min: -360, max: 360 }),
          bolt: textField('Bolt, e.g. M8 or 5/16 in.', 16),
        }),
      )
      .max(6)
      .meta({ description: 'Bolts to the fork leg, the frame or the reaction arm.' })
      .optional(),
    tappedLugs: z
      .boolean()
      .meta({ description: 'The caliper bolts are screwed into the bracket.' })
      .optional(),
    margin: lengthField('From hole edge to plate edge; left out: the diameter of the hole.', {
      above: 0,
      max: 100,
    }).optional(),
  })
  .meta({ description: 'Bracket of a disc brake caliper. x forward, y up; origin: axle center.' });

const gusset = z
  .strictObject({
    recipe: z.literal('gusset'),
    ...plateCommon,
    at: nameField('Node where the two tubes meet.'),
    between: z
      .tuple([nameField('First tube.'), nameField('Second tube, or `neck`.')])
      .meta({ description: 'The two tubes; they give angle and diameters.' }),
    legs: z
      .tuple([
        lengthField('Along the first tube.', { above: 0, max: 400 }),
        lengthField('Along the second tube.', { above: 0, max: 400 }),
      ])
      .meta({ description: 'From where the two tube sides meet, along each.' }),
    end: lengthField('Height of the blunt ends on the tube side; left out: 3 thicknesses.', {
      above: 0,
      max: 60,
    }).optional(),
    hollow: lengthField('Depth of the hollow in the free edge; left out: 0, straight.', {
      min: 0,
      max: 200,
    }).optional(),
    nose: lengthField('Radius of the relief over the weld of the joint; left out: 2 thicknesses.', {
      min: 0,
      max: 60,
    }).optional(),
  })
  .meta({
    description:
      'Gusset between two tubes at an angle, ending on the side of the tube. x along the first tube, away from the joint.',
  });

const tabCommon = {
  ...plateCommon,
  place: placementSchema.meta({ description: 'Point on the tube centerline that the tab stands on.' }),
  plane: z
    .enum(['side', 'level', 'across'])
    .meta({
      description:
        'Plane of the tab. side: x forward, y up; level: x forward, y left; across: x left, y up. Left out: side.',
    })
    .optional(),
  stands: angleField(
    'Direction in that plane that the tab stands out, counterclockwise from its x; left out: 90.',
    { min: -360, max: 360 },
  ).optional(),
  seat: z
    .enum(['saddle', 'flat'])
    .meta({
      description:
        'saddle: base hollowed to the tube, tab square to the tube; flat: base straight, along the tube.',
    })
    .optional(),
  tube: lengthField('Outside diameter of the tube it stands on.', { above: 0, max: 200 }),
  height: lengthField('From the tube surface to the hole center.', { above: 0, max: 300 }),
  base: lengthField('Width at the tube; left out: twice the nose radius.', { above: 0, max: 300 }).optional(),
  noseRadius: lengthField('Radius of the round nose about the hole.', { above: 0, max: 150 }),
};

export const brackets = [
  caliperBracket,
  gusset,
  z
    .strictObject({
      recipe: z.literal('peg-tab'),
      ...tabCommon,
      bolt: textField('Peg bolt, e.g. M10 or 3/8 in.', 16),
    })
    .meta({
      description: 'Round-nosed tab for a peg. x across the tab, y away from the tube; origin: hole center.',
    }),
  z
    .strictObject({
      recipe: z.literal('stand-tab'),
      ...tabCommon,
      bolt: textField('Pivot bolt, e.g. M10 or 3/8 in.', 16),
      stop: z
        .strictObject({
          x: lengthField('Across the tab from the pivot.', { min: -100, max: 100 }),
          y: lengthField('Away from the tube from the pivot.', { min: -100, max: 100 }),
          diameter: lengthField('Diameter of the stop pin hole.', { above: 0, max: 30 }),
        })
        .optional(),
    })
    .meta({
      description:
        'Round-nosed tab for the side stand. x across the tab, y away from the tube; origin: pivot center.',
    }),
] as const;
