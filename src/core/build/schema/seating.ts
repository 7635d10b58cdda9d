import { z } from 'zod';
import { angleField, lengthField, massField, stiffnessField } from '../../quantity/index.ts';
import { textField } from './name.ts';
import { placementSchema } from './placement.ts';

export const seatingSchema = z
  .strictObject({
    seat: z.strictObject({
      place: placementSchema.meta({ description: 'Top of the seat where the rider sits.' }),
      length: lengthField('Length.', { above: 0, max: 1000 }),
      width: lengthField('Width.', { above: 0, max: 500 }),
      thickness: lengthField('Pad and pan together.', { above: 0, max: 200 }).optional(),
      mass: massField('Mass.', { above: 0, max: 20 }).optional(),
      springRate: stiffnessField('Rate of all its springs together, where it has any.', {
        above: 0,
        max: 1000,
      }).optional(),
    }),
    pegs: z.strictObject({
      place: placementSchema.meta({ description: 'Middle of the left peg.' }),
      length: lengthField('Length.', { above: 0, max: 200 }),
      diameter: lengthField('Diameter.', { above: 0, max: 60 }),
    }),
    stand: z
      .strictObject({
        pivot: placementSchema.meta({ description: 'Pivot of the side stand, left.' }),
        lean: angleField('Lean of the bike at rest.', { min: 2, max: 25 }),
        splay: angleField('Leg outward from the bike upright plane.', { min: 5, max: 60 }).optional(),
      })
      .optional(),
  })
  .meta({ description: 'Seat, pegs and stand.' });

export const riderSchema = z
  .strictObject({
    mass: massField('With clothes.', { min: 15, max: 250 }),
    stature: lengthField('Standing height.', { min: 800, max: 2300 }).optional(),
    inseam: lengthField('Crotch to floor.', { min: 300, max: 1200 }).optional(),
  })
  .meta({ description: 'The rider.' });

/** Things with mass and a size that no other section places: tank, exhaust, guards, battery. */
export const bodySchema = z
  .strictObject({
    name: textField('What it is.', 80),
    place: placementSchema.meta({ description: 'Its middle.' }),
    length: lengthField('Fore and aft.', { above: 0, max: 1500 }),
    width: lengthField('Across.', { above: 0, max: 1000 }),
    height: lengthField('Upright.', { above: 0, max: 1000 }),
    mass: massField('Mass as ridden.', { min: 0, max: 100 }),
    turns: z.boolean().meta({ description: 'Turns with the bars.' }).optional(),
    buy: textField('What to look for when buying it.', 200).optional(),
  })
  .meta({ description: 'A body with mass.' });
