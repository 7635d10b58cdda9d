import { z } from 'zod';
import {
  angleField,
  countField,
  forceField,
  lengthField,
  massField,
  ratioField,
  resultField,
  speedField,
} from '../quantity/index.ts';

const shared = {
  control: forceField('Force on the lever or pedal.', { min: 0, max: 1000 }),
  leverRatio: ratioField(
    'Lever or pedal ratio; of a mechanical brake from the hand to the pad, band or shoe.',
    {
      above: 0,
      max: 100,
    },
  ),
  friction: ratioField('Pad or lining friction, where it is known.', { above: 0, max: 1 }).optional(),
  cableEfficiency: ratioField('Efficiency of the cable; left out: 0.75.', { above: 0, max: 1 }).optional(),
  tireRadius: lengthField('Tire radius under load.', { above: 0, max: 500 }),
};

const disc = z.strictObject({
  kind: z.literal('disc'),
  ...shared,
  masterBore: lengthField('Bore of the master cylinder; left out: pulled by a cable.', {
    above: 0,
    max: 40,
  }).optional(),
  pistonDiameter: lengthField('Diameter of a caliper piston.', { above: 0, max: 80 }).optional(),
  pistons: countField('Pistons, both sides together; left out: 2.', { min: 1, max: 12 }).optional(),
  style: z
    .enum(['opposed', 'sliding'])
    .meta({
      description: 'Pistons on both sides, or on one side of a sliding body; left out: opposed where even.',
    })
    .optional(),
  discOutside: lengthField('Outside diameter of the pad track.', { above: 0, max: 400 }),
  discInside: lengthField('Inside diameter of the pad track.', { above: 0, max: 400 }),
  discMass: massField('Mass of the disc, for its heat.', { above: 0, max: 10 }).optional(),
});

const band = z.strictObject({
  kind: z.literal('band'),
  ...shared,
  diameter: lengthField('Drum diameter.', { above: 0, max: 400 }),
  wrap: angleField('Wrap of the band; left out: 270 degrees.', { above: 0, max: 360 }).optional(),
  selfWraps: z
    .boolean()
    .meta({ description: 'Turning forward wraps the band on: the pulled end is the slack one.' }),
});

const drum = z.strictObject({
  kind: z.literal('drum'),
  ...shared,
  diameter: lengthField('Drum diameter.', { above: 0, max: 400 }),
  drumFactor: ratioField('Drum force over shoe force; left out: 2.', { above: 0, max: 10 }).optional(),
});

export const brakeInput = z.discriminatedUnion('kind', [disc, band, drum]);

export const brakingInput = z.strictObject({
  mass: massField('Bike with rider.', { above: 0, max: 1000 }),
  wheelbase: lengthField('Wheelbase.', { above: 0, max: 5000 }),
  centerAhead: lengthField('Center of mass ahead of the rear axle.', { above: 0, max: 5000 }),
  centerHeight: lengthField('Center of mass above the ground.', { above: 0, max: 3000 }),
  friction: ratioField('Tire on road: 0.8 dry, 0.4 wet; left out: 0.8.', { above: 0, max: 2 }).optional(),
  speed: speedField('Speed at the start; left out: 40 km/h.', { above: 0, max: 100 }).optional(),
  reaction: z
    .number()
    .min(0)
    .max(10)
    .meta({ description: 'Reaction before the brake bites [s]; left out: 1.' })
    .optional(),
  front: brakeInput.meta({ description: 'Front brake.' }).optional(),
  rear: brakeInput.meta({ description: 'Rear brake.' }).optional(),
  stops: countField('Repeated stops for the disc; left out: 10.', { min: 1, max: 1000 }).optional(),
  interval: z
    .number()
    .positive()
    .max(3600)
    .meta({ description: 'From stop to stop [s]; left out: 60.' })
    .optional(),
  cooling: z
    .number()
    .min(0)
    .max(500)
    .meta({ description: 'Heat a disc gives to the air [W/(m²·K)]; left out: 15, the least of the usual.' })
    .optional(),
});

const plain = (doc: string) => z.number().meta({ description: doc });
const gains = z.object({
  low: resultField('ratio', 'At the lowest friction.'),
  usual: resultField('ratio', 'At the middle of the friction.'),
  high: resultField('ratio', 'At the highest friction.'),
});
const heat = z.object({
  energy: plain('Into the disc a stop [J].'),
  rise: plain('Rise a stop [K].'),
  after: z.array(z.number()).meta({ description: 'Rise over the air after each stop [K].' }),
  limit: plain('Rise over the air after many stops [K].').optional(),
});
export const brakeResult = z.object({
  gain: gains.meta({ description: 'Force at the ground over force at the lever.' }),
  force: resultField('force', 'At the ground, wheel turning, at the middle of the friction.'),
  lockControl: resultField(
    'force',
    'Lever or pedal force that locks this wheel alone, or lifts the rear one.',
  ),
  lockBy: z.enum(['locks', 'lift']),
  heat: heat.optional(),
});
const point = z.object({ front: z.number(), rear: z.number() });

export const brakingOutput = z.object({
  liftDeceleration: plain('Deceleration that lifts the rear wheel [m/s²].'),
  frontLimit: plain('Most deceleration with the front brake alone [m/s²].'),
  rearLimit: plain('Most deceleration with the rear brake alone [m/s²].'),
  bothLimit: plain('Most deceleration with both, ideally shared [m/s²].'),
  stops: z.array(
    z.object({
      with: z.enum(['front', 'rear', 'both']),
      deceleration: plain('[m/s²]'),
      limitedBy: z.enum(['hand', 'front-locks', 'rear-locks', 'both-lock', 'lift']),
      distance: plain('Stopping distance with reaction [m].').optional(),
    }),
  ),
  front: brakeResult.optional(),
  rear: brakeResult.optional(),
  frontShare: resultField('ratio', 'Share of the front in the braking force, wheels turning.').optional(),
  ideal: z.array(point).meta({ description: 'Ideal distribution, as shares of the weight.' }),
  real: z.array(point).meta({ description: "The bike's own line, as shares of the weight." }),
  reference: z
    .array(
      z.object({
        vehicle: z.string(),
        with: z.enum(['front', 'rear']),
        asked: plain('Mean fully developed deceleration [m/s²].'),
        found: plain('Deceleration of this brake alone here [m/s²].'),
        allowed: plain('Longest stopping distance at the test speed [m].'),
        distance: plain('Stopping distance at the test speed with the same delay [m].'),
        reaches: z.boolean(),
      }),
    )
    .meta({ description: 'Published figures, for reference only: no approval follows from them.' }),
});
