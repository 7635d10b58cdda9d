import { z } from 'zod';
import { angleField, countField, lengthField, ratioField } from '../../quantity/index.ts';
import { namedTable, textField } from './name.ts';

/** How a plate's outline and holes are made; each way has its own smallest hole and accuracy. */
export const operationNames = ['drill', 'torch', 'saw'] as const;
export const operationField = z.enum(operationNames).meta({
  description:
    'How the plate is made: drill (sawn or filed outline, drilled holes), torch (flame or plasma by hand or table), saw.',
});
export type OperationName = z.output<typeof operationField>;

const operationSchema = z.strictObject({
  smallestHole: lengthField('Smallest hole this way can make, whatever the thickness.', {
    min: 0,
    max: 100,
  }).optional(),
  smallestHolePerThickness: ratioField('Smallest hole as a multiple of the plate thickness.', {
    min: 0,
    max: 10,
  }).optional(),
  largestHole: lengthField('Largest hole this way can make.', { above: 0, max: 500 }).optional(),
  kerf: lengthField('Width of the cut.', { min: 0, max: 10 }).optional(),
  holds: lengthField('What the outline or hole place can be held to, plus or minus.', {
    above: 0,
    max: 10,
  }).optional(),
  undersize: lengthField('How far a bore is left under size, to be bored or opened by hand.', {
    min: 0,
    max: 10,
  }).optional(),
});

export const shopSchema = z
  .strictObject({
    paper: z.enum(['a4', 'letter']).meta({ description: 'Paper of the book.' }).optional(),
    printer: z
      .strictObject({
        across: lengthField('What a bar drawn 100 mm long across the page measures on paper.', {
          min: 50,
          max: 150,
        }),
        down: lengthField('What a bar drawn 100 mm long down the page measures on paper.', {
          min: 50,
          max: 150,
        }),
      })
      .meta({ description: 'A printer that was measured; templates are corrected for it.' })
      .optional(),
    drill: operationSchema.optional(),
    torch: operationSchema.optional(),
    saw: operationSchema.optional(),
    instruments: z
      .strictObject({
        tape: lengthField('What the tape can be read to.', { above: 0, max: 10 }).optional(),
        caliper: lengthField('What the caliper can be read to.', { above: 0, max: 1 }).optional(),
        angleFinder: angleField('What the angle finder can be read to.', { above: 0, max: 5 }).optional(),
      })
      .optional(),
    bender: z
      .strictObject({
        centerlineRadius: lengthField('Centerline radius of the die.', { above: 0, max: 1000 }),
        springback: angleField('Springback of a 90 degree bend, from a sample.', {
          min: 0,
          max: 20,
        }).optional(),
        shortestLeg: lengthField('Shortest straight the bender can hold.', { min: 0, max: 1000 }).optional(),
      })
      .optional(),
    jig: z
      .strictObject({
        props: z
          .array(
            z.strictObject({
              what: textField('What it is, e.g. bolt head.', 60),
              thickness: lengthField('How much it lifts the frame.', { min: 0, max: 500 }),
            }),
          )
          .max(20)
          .meta({ description: 'What the frame rests on besides the blocks; it lifts everything.' })
          .optional(),
        blocks: z
          .array(lengthField('Thickness of one size of block.', { above: 0, max: 1000 }))
          .max(40)
          .meta({ description: 'Sizes of block on hand, as many as needed of each.' })
          .optional(),
        shims: z
          .array(lengthField('Thickness of one size of shim.', { above: 0, max: 20 }))
          .max(40)
          .meta({ description: 'Sizes of shim on hand.' })
          .optional(),
      })
      .meta({ description: 'What the frame is set up on.' })
      .optional(),
    coating: lengthField('Paint or powder thickness a face.', { min: 0, max: 1 }).optional(),
    tubeStock: z
      .array(
        z.strictObject({
          tubing: textField('Name of the tubing it is.', 48),
          length: lengthField('Length of one bar.', { above: 0, max: 12000 }),
          count: countField('How many bars are on hand.', { min: 0, max: 1000 }).optional(),
        }),
      )
      .max(100)
      .optional(),
    sheetStock: namedTable(
      z.strictObject({
        thickness: lengthField('Plate thickness; gauge as `11 ga`.', { above: 0, max: 50 }),
        width: lengthField('Width.', { above: 0, max: 3000 }),
        length: lengthField('Length.', { above: 0, max: 6000 }),
      }),
      'Sheets and plates on hand.',
    ).optional(),
  })
  .meta({ description: 'What this shop can do and hold; every field has a default that the report names.' });
export type Shop = z.output<typeof shopSchema>;
