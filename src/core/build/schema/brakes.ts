import { z } from 'zod';
import { angleField, countField, lengthField, massField, ratioField } from '../../quantity/index.ts';

const discBrake = z.strictObject({
  kind: z.literal('disc'),
  side: z.enum(['left', 'right']).meta({ description: 'Side of the wheel.' }),
  disc: z.strictObject({
    diameter: lengthField('Outside diameter.', { above: 0, max: 400 }),
    thickness: lengthField('Thickness.', { above: 0, max: 12 }),
    inside: lengthField('Inside diameter of the pad track.', { above: 0, max: 380 }).optional(),
    mass: massField('Mass.', { above: 0, max: 5 }).optional(),
  }),
  caliper: z.strictObject({
    mountSpacing: lengthField('Between the centers of its two mounting holes.', { above: 0, max: 200 }),
    bolt: lengthField('Mounting bolt diameter.', { above: 0, max: 16 }),
    lugOffset: lengthField('From the middle plane of the disc to the lug face, toward the wheel positive.', {
      min: -60,
      max: 60,
    }),
    lugRadius: lengthField(
      'From the axle center to the line through the mounting holes, when the pads sit right on the disc.',
      { above: 0, max: 300 },
    ),
    clock: angleField('Direction of the caliper from the axle: 0 ahead, 90 up, 180 behind.', {
      min: -360,
      max: 360,
    }),
    padHeight: lengthField('Height of a pad along the radius.', { above: 0, max: 60 }).optional(),
    padEdge: lengthField('From the mounting line inward to the outer edge of the pads.', {
      min: -60,
      max: 100,
    }).optional(),
    width: lengthField('Overall width of the caliper.', { above: 0, max: 120 }).optional(),
    pistonDiameter: lengthField('Piston diameter.', { above: 0, max: 60 }).optional(),
    pistons: countField('Pistons, both sides together.', { min: 1, max: 8 }).optional(),
    style: z
      .enum(['opposed', 'sliding'])
      .meta({ description: 'Pistons on both sides, or one side and a sliding body.' })
      .optional(),
    centerY: lengthField(
      "Middle of the caliper slot, left (+) of the bike's center plane, where it is already fixed.",
      { min: -400, max: 400 },
    ).optional(),
    mass: massField('Mass.', { above: 0, max: 5 }).optional(),
  }),
  masterBore: lengthField('Bore of the master cylinder.', { above: 0, max: 30 }).optional(),
  leverRatio: ratioField('Lever or pedal ratio.', { above: 0, max: 30 }).optional(),
});

const bandBrake = z.strictObject({
  kind: z.enum(['band', 'drum']),
  side: z.enum(['left', 'right']),
  diameter: lengthField('Drum diameter.', { above: 0, max: 400 }),
  width: lengthField('Lining width.', { above: 0, max: 100 }),
  selfWraps: z
    .boolean()
    .meta({ description: 'The open end is where forward rotation wraps the band on.' })
    .optional(),
  reactionArm: z.boolean().meta({ description: 'A bolted reaction arm holds it to the frame.' }).optional(),
  leverRatio: ratioField('Lever or pedal ratio.', { above: 0, max: 30 }).optional(),
});

export const brakeSchema = z.discriminatedUnion('kind', [discBrake, bandBrake]);
export type BrakeEntry = z.output<typeof brakeSchema>;
export type DiscBrakeEntry = z.output<typeof discBrake>;
export const brakesSchema = z
  .strictObject({ front: brakeSchema.optional(), rear: brakeSchema.optional() })
  .meta({ description: 'Two independent brakes are asked for; what is missing becomes a finding.' });
