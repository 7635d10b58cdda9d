import { z } from 'zod';
import { angleField, countField, lengthField } from '../../quantity/index.ts';
import { nameField, textField } from './name.ts';
import { placementSchema } from './placement.ts';
import { bearingPlates } from './plateBearings.ts';
import { brackets } from './plateBrackets.ts';
import { bendSchema, cornerSchema, plateCommon, plateStanding } from './plateParts.ts';

const enginePlate = z
  .strictObject({
    recipe: z.literal('engine-plate'),
    ...plateCommon,
    rails: z
      .strictObject({
        spacing: lengthField(
          'Across, between the two rows of bolts into the rails, which lie either side of the center plane.',
          { above: 0, max: 800 },
        ),
        pitch: lengthField('Along, from bolt to bolt in a row.', { above: 0, max: 800 }),
        bolts: countField('Bolts in a row.', { min: 1, max: 8 }),
        bolt: textField('Bolt, e.g. M8 or 5/16 in.', 16),
        forward: lengthField('Middle of the rail pattern ahead of the engine pattern.', {
          min: -400,
          max: 400,
        }).optional(),
      })
      .meta({ description: 'How the plate bolts to the frame rails.' }),
    slotted: z
      .enum(['engine', 'rails', 'none'])
      .meta({
        description:
          'Which bolts go through slots: the engine bolts (usual), the rail bolts (the whole plate slides), or none.',
      })
      .optional(),
    travel: lengthField('Slot travel, where it is not left to what the drive needs.', {
      min: 0,
      max: 300,
    }).optional(),
    turned: z
      .boolean()
      .meta({ description: 'Engine pattern turned a quarter, its long spacing across.' })
      .optional(),
    margin: lengthField('From the outermost hole and slot-end centers to the plate edge.', {
      above: 0,
      max: 200,
    }).optional(),
    corner: lengthField('Corner radius; left out: the margin.', { min: 0, max: 200 }).optional(),
  })
  .meta({
    description:
      'Plate between engine and frame rails. x forward, y to the left; origin: center of the engine pattern as drawn.',
  });

const axlePlate = z
  .strictObject({
    recipe: z.literal('axle-plate'),
    ...plateCommon,
    ...plateStanding,
    shaft: nameField('Axle it carries; left out: rearAxle.').optional(),
    axle: lengthField('Axle diameter, where no stack gives it.', { above: 0, max: 60 }).optional(),
    clearance: lengthField('Slot wider than the axle by; left out: 0.5 mm.', { min: 0, max: 5 }).optional(),
    travel: lengthField('Slot travel, where it is not left to what the drive needs.', {
      min: 0,
      max: 300,
    }).optional(),
    margin: lengthField('From the edge of the slot to the edge of the plate.', { above: 0, max: 200 }),
    landings: z
      .array(
        z.strictObject({
          at: nameField('Frame node at the tube end.'),
          tubing: nameField('Tubing that lands there.'),
          margin: lengthField('Plate left round the tube; left out: half its diameter.', {
            min: 0,
            max: 100,
          }).optional(),
        }),
      )
      .min(1)
      .max(6)
      .meta({ description: 'Where tube ends land on the plate; the outline reaches round them.' }),
    adjuster: z
      .strictObject({
        bolt: textField('Pusher bolt, e.g. M8 or 5/16 in.', 16),
        tapped: z
          .boolean()
          .meta({ description: 'The flange itself is tapped; else a clearance hole and a welded nut.' })
          .optional(),
        width: lengthField('Width of the flange across the slot direction.', { above: 0, max: 200 }),
        length: lengthField('Flange from the outside of the plate to its edge, when bent.', {
          above: 0,
          max: 100,
        }),
        out: lengthField(
          'Center of the pusher bolt out from the outside face of the plate it was bent from.',
          { above: 0, max: 100 },
        ),
        behind: lengthField(
          'From the tight end of the slot to the outside of the bent flange; left out: the margin.',
          { above: 0, max: 100 },
        ).optional(),
        insideRadius: lengthField('Inside bend radius; left out: the thickness.', {
          min: 0,
          max: 50,
        }).optional(),
        toward: z
          .enum(['outside', 'inside'])
          .meta({ description: 'Bent away from the wheel or toward it.' })
          .optional(),
      })
      .meta({
        description:
          'Flange bent square beyond the tight end of the slot; the adjuster bolt runs through it along the slot.',
      })
      .optional(),
  })
  .meta({
    description: 'Plate with the slot of the rear axle. x forward, y up; origin: axle center as drawn.',
  });

const seatCommon = {
  ...plateCommon,
  place: placementSchema.meta({ description: 'Center of the hole pattern, on the lower face of the plate.' }),
  tilt: angleField('Front of the plate tilted up.', { min: -90, max: 90 }).optional(),
  holePattern: z.strictObject({
    across: lengthField('Between holes across; 0 for one row on the center line.', { min: 0, max: 500 }),
    along: lengthField('Between holes along; 0 for one row across.', { min: 0, max: 500 }),
    bolt: textField('Bolt, e.g. M6 or 1/4 in.', 16),
  }),
  length: lengthField('Of the flat that carries the seat, along.', { above: 0, max: 600 }),
  width: lengthField('Of the flat that carries the seat, across.', { above: 0, max: 600 }),
  corner: lengthField('Corner radius; left out: 6 mm.', { min: 0, max: 100 }).optional(),
  tongue: z
    .strictObject({
      width: lengthField('Width.', { above: 0, max: 400 }),
      length: lengthField('Outside length, from the outside of the bend to the tip.', { above: 0, max: 400 }),
      bend: bendSchema.optional(),
      bolt: textField('Bolt through the tongue, if any.', 16).optional(),
      tip: lengthField('From the bolt center to the tip; left out: half the width.', {
        above: 0,
        max: 200,
      }).optional(),
    })
    .meta({ description: 'Tongue that reaches the frame: ahead of a front mount, behind a rear one.' })
    .optional(),
};
const seatMountFront = z
  .strictObject({ recipe: z.literal('seat-mount-front'), ...seatCommon })
  .meta({ description: 'Front seat mount. x forward, y to the left; origin: middle of its holes.' });
const seatMountRear = z
  .strictObject({ recipe: z.literal('seat-mount-rear'), ...seatCommon })
  .meta({ description: 'Rear seat mount. x forward, y to the left; origin: middle of its holes.' });

const bendEnd = z.strictObject({
  x: lengthField('x.', { min: -3000, max: 3000 }),
  y: lengthField('y.', { min: -3000, max: 3000 }),
});

const free = z
  .strictObject({
    recipe: z.literal('free'),
    ...plateCommon,
    corners: z
      .array(cornerSchema)
      .min(2)
      .max(400)
      .meta({ description: 'Outline in the flat, in order; either way round.' }),
    bends: z
      .array(
        z.strictObject({
          from: bendEnd,
          to: bendEnd,
          ...bendSchema.shape,
        }),
      )
      .max(20)
      .meta({ description: 'Middle lines of the bends, in the flat as drawn.' })
      .optional(),
    place: placementSchema.meta({ description: 'Where the origin of the drawing lies.' }).optional(),
    plane: z
      .enum(['side', 'level', 'across'])
      .meta({ description: 'side: x forward, y up; level: x forward, y left; across: x left, y up.' })
      .optional(),
    turn: angleField('Turn of the drawing in its plane, counterclockwise.', {
      min: -360,
      max: 360,
    }).optional(),
  })
  .meta({ description: 'Any plate, by its corners.' });

export const plateSchema = z.discriminatedUnion('recipe', [
  enginePlate,
  axlePlate,
  ...bearingPlates,
  ...brackets,
  seatMountFront,
  seatMountRear,
  free,
]);
export type PlateEntry = z.output<typeof plateSchema>;
export type PlateRecipe = PlateEntry['recipe'];
/** The entry of one recipe. */
export type PlateOf<R extends PlateRecipe> = Extract<PlateEntry, { recipe: R }>;
