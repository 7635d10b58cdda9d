import { z } from 'zod';
import { angleField, lengthField, massField, stiffnessField } from '../../quantity/index.ts';
import { placementSchema } from './placement.ts';

export const steeringSchema = z
  .strictObject({
    wheelbase: lengthField('Axle to axle at design ride height.', { min: 400, max: 2500 }),
    headAngle: angleField('Steering axis from the ground, 90 degrees upright.', { min: 40, max: 90 }),
    forkOffset: lengthField(
      'Front axle ahead of the steering axis, square to it (clamp offset plus axle lead).',
      { min: -100, max: 200 },
    ),
    forkLength: lengthField(
      'From the front axle to the bottom of the neck, along the steering axis, at design ride height.',
      { min: 100, max: 1200 },
    ),
    neck: z.strictObject({
      length: lengthField('Bottom to top face of the neck tube.', { min: 40, max: 400 }),
      outside: lengthField('Outside diameter of the neck tube.', { above: 0, max: 100 }),
      wall: lengthField('Wall of the neck tube.', { above: 0, max: 20, gauge: 'tube-wall' }),
      bearingStack: lengthField('Bearings and races, both ends together, between the clamps and the neck.', {
        min: 0,
        max: 120,
      }).optional(),
    }),
    fork: z.strictObject({
      kind: z.enum(['rigid', 'telescopic']).meta({ description: 'Rigid, or telescopic with travel.' }),
      legSpacing: lengthField('Center to center of the legs.', { min: 50, max: 400 }),
      legDiameter: lengthField('Outside diameter of a leg.', { above: 0, max: 80 }),
      dropoutSpacing: lengthField('Between the inner faces that clamp the axle stack.', {
        min: 50,
        max: 400,
      }),
      travel: lengthField('Full travel.', { min: 0, max: 400 }).optional(),
      sag: lengthField('Travel used with the rider on, beyond the design ride height.', {
        min: 0,
        max: 300,
      }).optional(),
      springRate: stiffnessField('Spring rate of both legs together, along the legs.', {
        above: 0,
        max: 1000,
      }).optional(),
      preload: lengthField('Compression of the springs with the fork at full length.', {
        min: 0,
        max: 200,
      }).optional(),
      mass: massField('Fork with clamps and stem.', { above: 0, max: 40 }),
    }),
    bars: z.strictObject({
      grip: placementSchema.meta({ description: 'Middle of the left grip.' }),
      mass: massField('Bars with levers and grips.', { above: 0, max: 15 }),
    }),
    lock: angleField('Steering lock, straight ahead to stop.', { min: 0, max: 80 }).optional(),
  })
  .meta({ description: 'Head, fork and bars.' });
export type Steering = z.output<typeof steeringSchema>;
