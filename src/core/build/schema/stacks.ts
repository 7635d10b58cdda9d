import { z } from 'zod';
import { lengthField, stiffnessField, torqueField } from '../../quantity/index.ts';
import { nameField, textField } from './name.ts';

export const stackItemKinds = [
  'nut',
  'washer',
  'spacer',
  'plate',
  'hub',
  'bearing',
  'sprocket',
  'clutch',
  'sheave',
  'disc',
  'collar',
  'face',
  'adjuster',
  'leg',
  'clearance',
] as const;
export type StackItemKind = (typeof stackItemKinds)[number];

/** A plane that matters inside an item: where the teeth, the rim or the disc run. */
const planeSchema = z.strictObject({
  runs: z.enum(['rim', 'sprocket', 'sheave', 'disc']).meta({ description: 'What runs in the plane.' }),
  drive: nameField('Chain or belt that runs there.').optional(),
  brake: nameField('Brake whose disc runs there: front or rear.').optional(),
  at: lengthField("From the item's left face to the plane; left out: the middle.", {
    min: -300,
    max: 500,
  }).optional(),
});

/** What fixes an item across the bike. One pin a gap between unknown spacers is enough; more are checked against each other. */
const pinSchema = z.discriminatedUnion('to', [
  z.strictObject({
    to: z.literal('place'),
    feature: z.enum(['left-face', 'right-face', 'middle']).meta({ description: 'Which face of the item.' }),
    y: lengthField("Where it is, left (+) of the bike's center plane.", { min: -600, max: 600 }),
  }),
  z
    .strictObject({ to: z.literal('rim-center') })
    .meta({ description: "The item's rim plane lies in the bike's center plane." }),
  z
    .strictObject({ to: z.literal('engine-face') })
    .meta({ description: 'The engine face, from the engine and its place.' }),
  z.strictObject({
    to: z.literal('in-line'),
    drive: nameField('Drive whose other plane this one must meet.'),
  }),
  z
    .strictObject({ to: z.literal('caliper'), brake: z.enum(['front', 'rear']) })
    .meta({ description: 'The disc runs in the middle of its caliper.' }),
]);

export const stackItemSchema = z
  .strictObject({
    id: nameField('Name, unique in the stack.'),
    kind: z.enum(stackItemKinds).meta({
      description:
        'face: the engine face or a shoulder, no length of its own; leg: fork leg; clearance: an air gap that is left on purpose.',
    }),
    length: z
      .union([z.literal('solve'), lengthField('Along the shaft.', { min: 0, max: 600 })])
      .meta({ description: 'Length along the shaft, or "solve" for a spacer to be made.' }),
    outside: lengthField('Outside diameter.', { above: 0, max: 400 }).optional(),
    bore: lengthField('Bore.', { above: 0, max: 200 }).optional(),
    planes: z.array(planeSchema).max(6).optional(),
    pin: pinSchema.optional(),
    overhang: lengthField('How far the item reaches over its right-hand neighbor without adding length.', {
      min: 0,
      max: 200,
    }).optional(),
    stiffness: stiffnessField('Of a bearing with its seat, alike all round; left out: rigid.', {
      above: 0,
      max: 1e6,
    }).optional(),
    offset: z
      .strictObject({
        forward: lengthField('Ahead of the line.', { min: -5, max: 5 }).optional(),
        up: lengthField('Above the line.', { min: -5, max: 5 }).optional(),
      })
      .meta({
        description: 'How far a bearing sits off the line of the others, as measured; left out: in line.',
      })
      .optional(),
    note: textField('Note for the stack drawing.', 120).optional(),
  })
  .refine(
    ({ kind, stiffness, offset }) => kind === 'bearing' || (stiffness === undefined && offset === undefined),
    { message: 'stiffness and offset are for a bearing' },
  )
  .meta({ description: 'One thing on the shaft.' });
export type StackItem = z.output<typeof stackItemSchema>;

export const stackSchema = z
  .strictObject({
    shaft: nameField('Shaft or axle: rearAxle, frontAxle, engine, or one of driveline.shafts.'),
    axle: z
      .strictObject({
        diameter: lengthField('Diameter.', { above: 0, max: 80 }),
        length: lengthField('Overall length.', { above: 0, max: 1000 }),
        threadLeft: lengthField('Length of thread at the left end.', { min: 0, max: 300 }).optional(),
        threadRight: lengthField('Length of thread at the right end.', { min: 0, max: 300 }).optional(),
        pitch: lengthField('Thread pitch.', { above: 0, max: 6 }).optional(),
        torque: torqueField('Tightening torque of its nuts; left out: their tension is not counted.', {
          above: 0,
          max: 500,
        }).optional(),
        leftEnd: lengthField('How far the left end stands out of the leftmost item.', {
          min: -100,
          max: 300,
        }).optional(),
      })
      .meta({ description: 'The axle or shaft itself.' })
      .optional(),
    items: z.array(stackItemSchema).min(1).max(60).meta({ description: "From the rider's left to right." }),
  })
  .meta({ description: 'What sits on one axle or shaft.' });
export type StackEntry = z.output<typeof stackSchema>;
