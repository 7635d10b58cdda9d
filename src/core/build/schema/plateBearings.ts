import { z } from 'zod';
import { angleField, countField, lengthField } from '../../quantity/index.ts';
import { nameField, textField } from './name.ts';
import { plateCommon, plateStanding } from './plateParts.ts';

/** How a bearing sits in a plate. */
export const bearingSeatSchema = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('bore'),
      bearing: textField('Bearing designation, e.g. 6203.', 24),
      fit: z
        .enum(['H7', 'J7', 'K7', 'M7', 'N7', 'P7'])
        .meta({ description: 'Fit of the bore; left out: N7 in steel, P7 in aluminum.' })
        .optional(),
      finish: z
        .enum(['bored', 'by-hand'])
        .meta({
          description:
            'bored: in a lathe or with a boring head; by-hand: opened until the bearing just seats. Left out: bored for torch, by hand for drill and saw.',
        })
        .optional(),
    })
    .meta({ description: 'A ball bearing pressed into the plate.' }),
  z
    .strictObject({
      kind: z.literal('flange'),
      bearing: textField('Flange bearing, for the list, e.g. UCFL204.', 24).optional(),
      bolts: countField('Bolts of the flange.', { min: 2, max: 6 }),
      boltCircle: lengthField(
        'Diameter of the circle through the bolts; for a two-bolt flange the bolt spacing.',
        { above: 0, max: 400 },
      ),
      bolt: textField('Bolt, e.g. M8 or 5/16 in.', 16),
      opening: lengthField('Hole in the plate for the shaft and the housing boss.', { above: 0, max: 300 }),
      turn: angleField('Direction of the first bolt from the shaft: 0 ahead, 90 up.', {
        min: -360,
        max: 360,
      }).optional(),
      clearance: lengthField(
        'Bolt holes bigger than the bolt by, so that the shaft sets its own line; left out: 1 mm.',
        { min: 0, max: 3 },
      ).optional(),
    })
    .meta({ description: 'A self-aligning flange bearing bolted to the plate.' }),
]);
export type BearingSeat = z.output<typeof bearingSeatSchema>;

const footSchema = z
  .strictObject({
    height: lengthField('From the shaft center down to the bottom of the foot.', { above: 0, max: 800 }),
    width: lengthField('Width of the foot, fore and aft.', { above: 0, max: 800 }),
    forward: lengthField('Middle of the foot ahead of the shaft.', { min: -400, max: 400 }).optional(),
    flange: z
      .strictObject({
        length: lengthField('Outside length of the bent foot.', { above: 0, max: 200 }),
        insideRadius: lengthField('Inside bend radius; left out: the thickness.', {
          min: 0,
          max: 50,
        }).optional(),
        toward: z
          .enum(['outside', 'inside'])
          .meta({ description: 'Bent away from the center plane or toward it.' })
          .optional(),
      })
      .meta({
        description: 'Foot bent square; left out: the plate is bolted or welded flat on its lower edge.',
      })
      .optional(),
    bolts: countField('Bolts of the foot; 0 for a welded one.', { min: 0, max: 8 }),
    bolt: textField('Bolt, e.g. M8 or 5/16 in.', 16).optional(),
    pitch: lengthField('From bolt to bolt.', { above: 0, max: 800 }).optional(),
    edge: lengthField(
      'From the bolt centers to the lower edge, or to the edge of the bent foot; left out: 2 bolt diameters.',
      { above: 0, max: 200 },
    ).optional(),
  })
  .meta({ description: 'How the plate stands.' });
export type PlateFoot = z.output<typeof footSchema>;

const bearingPlateCommon = {
  ...plateCommon,
  ...plateStanding,
  shaft: nameField('Shaft it carries; left out: countershaft.').optional(),
  seat: bearingSeatSchema,
  margin: lengthField(
    'Plate left round the bearing bore or the flange bolts, from hole edge to plate edge.',
    { above: 0, max: 200 },
  ),
  foot: footSchema,
};

export const bearingPlates = [
  z.strictObject({ recipe: z.literal('countershaft-plate'), ...bearingPlateCommon }).meta({
    description: 'Plate that carries a bearing of the countershaft. x forward, y up; origin: shaft center.',
  }),
  z
    .strictObject({
      recipe: z.literal('outboard-support'),
      ...bearingPlateCommon,
      upright: lengthField('Width of each upright.', { above: 0, max: 200 }),
      sill: lengthField('Height of the plate below the window, from the bottom of the foot.', {
        above: 0,
        max: 300,
      }).optional(),
    })
    .meta({
      description:
        'Support of a third or fourth bearing outside: two uprights on a foot, a window between. x forward, y up; origin: shaft center.',
    }),
] as const;
