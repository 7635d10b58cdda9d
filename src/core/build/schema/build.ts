import { z } from 'zod';
import { brakesSchema } from './brakes.ts';
import { drivelineSchema } from './driveline.ts';
import { engineSchema } from './engine.ts';
import { frameSchema } from './frame.ts';
import { loadsSchema } from './loads.ts';
import { namedTable } from './name.ts';
import { plateSchema } from './plates.ts';
import { aboutSchema, recordSchemas } from './record.ts';
import { bodySchema, riderSchema, seatingSchema } from './seating.ts';
import { shopSchema } from './shop.ts';
import { stackSchema } from './stacks.ts';
import { steeringSchema } from './steering.ts';
import { useSchema } from './use.ts';
import { wheelsSchema } from './wheels.ts';

/** Version that this program writes; older ones are migrated on reading, newer ones refused. */
export const BUILD_VERSION = 1;

/**
 * The build file: what the builder has and wants. Plain numbers are in edge units (mm, degrees, kg, N·m, rpm);
 * texts carry their unit. The published JSON Schema is generated from this definition.
 */
export const buildSchema = z
  .strictObject({
    $schema: z.string().max(300).optional(),
    version: z.literal(BUILD_VERSION),
    about: aboutSchema,
    shop: shopSchema.optional(),
    rider: riderSchema,
    wheels: wheelsSchema,
    steering: steeringSchema,
    frame: frameSchema,
    engine: engineSchema,
    driveline: drivelineSchema,
    stacks: namedTable(stackSchema, 'What sits on each axle and shaft, by name.'),
    plates: namedTable(plateSchema, 'Plates and brackets, by recipe or free outline.'),
    brakes: brakesSchema,
    seating: seatingSchema,
    use: useSchema.optional(),
    loads: loadsSchema.optional(),
    bodies: namedTable(bodySchema, 'Tank, exhaust, guards: things with mass and size.').optional(),
    fasteners: recordSchemas.fasteners.optional(),
    purchases: recordSchemas.purchases.optional(),
    made: recordSchemas.made.optional(),
    measured: recordSchemas.measured.optional(),
    variants: recordSchemas.variants.optional(),
  })
  .meta({
    title: 'Jigwright build file',
    description: 'One small motor two-wheeler: what you have, what you want.',
  });

/** A checked build in SI. Nothing in it is placed or worked out yet. */
export type Build = z.output<typeof buildSchema>;
