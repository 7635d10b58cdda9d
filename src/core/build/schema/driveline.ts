import { z } from 'zod';
import {
  angleField,
  angularSpeedField,
  countField,
  forceField,
  lengthField,
  lineMassField,
  massField,
  ratioField,
  torqueField,
} from '../../quantity/index.ts';
import { nameField, textField } from './name.ts';
import { placementSchema } from './placement.ts';

export const slideSchema = z
  .strictObject({
    direction: angleField(
      'Way it slides to tighten, from straight ahead, upward positive; 180 degrees is straight back.',
      { min: -360, max: 360 },
    ),
    travel: lengthField(
      'Slot length less the bolt: how far it can slide in all. Left out: the slot is made as long as the drive needs.',
      { min: 0, max: 300 },
    ).optional(),
    slack: lengthField('How much of the travel lies on the slack side of the drawn place.', {
      min: 0,
      max: 300,
    }).optional(),
    pusherPitch: lengthField("Thread pitch of the pusher screw; 1/20 in is `20 tpi`'s 1.27 mm.", {
      above: 0,
      max: 5,
    }).optional(),
  })
  .meta({ description: 'A slot or adjuster that the shaft slides in.' });

export const shaftSchema = z
  .strictObject({
    at: placementSchema
      .meta({
        description: 'Center of the shaft as drawn. Not given for the engine shaft and the rear axle.',
      })
      .optional(),
    diameter: lengthField('Diameter. Not given for the engine shaft.', { above: 0, max: 80 }).optional(),
    length: lengthField('Length. Not given for the engine shaft.', { above: 0, max: 1000 }).optional(),
    slide: slideSchema.optional(),
    rides: nameField(
      'Shaft whose slide carries this one along (a countershaft on the engine plate).',
    ).optional(),
  })
  .meta({ description: 'A shaft of the driveline: engine, rearAxle or one of your own.' });
export type ShaftEntry = z.output<typeof shaftSchema>;

const clutchStage = z.strictObject({
  id: nameField('Name of the stage.'),
  kind: z.literal('clutch'),
  on: nameField('Shaft it sits on.'),
  engages: angularSpeedField('Speed of first bite.', { above: 0, max: 20000 }),
  locks: angularSpeedField('Speed at which it carries full torque.', { above: 0, max: 20000 }).optional(),
  capacity: torqueField('Torque it carries when locked.', { above: 0, max: 500 }).optional(),
  mass: massField('Mass.', { above: 0, max: 20 }).optional(),
});

const chainStage = z.strictObject({
  id: nameField('Name of the drive.'),
  kind: z.literal('chain'),
  from: nameField('Driving shaft.'),
  to: nameField('Driven shaft.'),
  chain: textField('Chain size: #25, #35, #40, #41, 420, 428, #50, 520, 525, 530, #60.', 12),
  driverTeeth: countField('Teeth of the driving sprocket.', { min: 6, max: 200 }),
  drivenTeeth: countField('Teeth of the driven sprocket.', { min: 6, max: 200 }),
  links: countField('Link count, where the chain is already cut.', { min: 10, max: 1000 }).optional(),
  offsetLink: z.boolean().meta({ description: 'An offset (half) link may be used.' }).optional(),
  steep: z
    .boolean()
    .meta({ description: 'Steep, start-stop or shock drive: set the smaller sag.' })
    .optional(),
  wearLimit: ratioField(
    'Elongation at which this chain is thrown away, 0.015 for 1.5 %; left out: 3 %, or 2 over the teeth of the large sprocket.',
    { min: 0, max: 0.1 },
  ).optional(),
  adjust: nameField('Shaft that slides to set this chain.').optional(),
});

const beltStage = z.strictObject({
  id: nameField('Name of the drive.'),
  kind: z.literal('variable-belt'),
  from: nameField('Driving shaft.'),
  to: nameField('Driven shaft.'),
  beltLength: lengthField('Pitch length of the belt.', { above: 0, max: 5000 }),
  beltTopWidth: lengthField('Top width of the belt.', { above: 0, max: 80 }),
  driver: z.strictObject({
    smallest: lengthField('Smallest pitch diameter.', { above: 0, max: 500 }),
    largest: lengthField('Largest pitch diameter.', { above: 0, max: 500 }),
  }),
  driven: z.strictObject({
    smallest: lengthField('Smallest pitch diameter.', { above: 0, max: 500 }),
    largest: lengthField('Largest pitch diameter.', { above: 0, max: 500 }),
    clamp: forceField('What its spring presses the sheaves together with in low gear, as measured.', {
      above: 0,
      max: 20000,
    }).optional(),
  }),
  workingTension: forceField("Tension of the tight side that the belt's maker allows.", {
    above: 0,
    max: 50000,
  }).optional(),
  beltMass: lineMassField('Mass of the belt per length; left out: its swing outward is not counted.', {
    above: 0,
    max: 5,
  }).optional(),
  grooveAngle: angleField('Angle between the sheave faces.', { above: 0, max: 60 }).optional(),
  engages: angularSpeedField('Speed of first bite.', { above: 0, max: 20000 }).optional(),
  shiftsAt: angularSpeedField('Engine speed that it holds while it shifts.', {
    above: 0,
    max: 20000,
  }).optional(),
  efficiency: ratioField('Efficiency.', { above: 0, max: 1 }).optional(),
  adjust: nameField('Shaft that slides to set this belt.').optional(),
  mass: massField('Driver and driven units together.', { above: 0, max: 30 }).optional(),
});

export const stageSchema = z.discriminatedUnion('kind', [clutchStage, chainStage, beltStage]);
export type Stage = z.output<typeof stageSchema>;
export type ChainStage = z.output<typeof chainStage>;
export type BeltStage = z.output<typeof beltStage>;
export type ClutchStage = z.output<typeof clutchStage>;

export const drivelineSchema = z
  .strictObject({
    shafts: z.record(nameField('shaft'), shaftSchema).meta({
      description: 'Shafts by name; `engine` and `rearAxle` are known, add your own (`countershaft`).',
    }),
    stages: z
      .array(stageSchema)
      .max(12)
      .meta({ description: 'From the engine to the rear wheel, in order.' }),
  })
  .meta({ description: 'Clutch or variable belt, chains and shafts.' });
