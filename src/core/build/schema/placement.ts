import { z } from 'zod';
import { lengthField } from '../../quantity/index.ts';
import { referenceField } from './name.ts';

/** Datums that a placement may start from, besides the file's own nodes. */
export const datumNames = [
  'origin',
  'rearAxle',
  'frontAxle',
  'neckBottom',
  'neckTop',
  'engineBase',
  'engineShaft',
  'countershaft',
] as const;

/** No part of a bike is further from another than this [mm]. */
const FURTHEST = { min: -5000, max: 5000 };

/**
 * A point given from a datum or another node, so that a changed wheelbase or head angle carries it along.
 * Offsets are in the bike's axes at design ride height; `along` moves first from `from` toward another point.
 */
export const placementSchema = z
  .strictObject({
    from: referenceField('Datum or node to start from, e.g. rearAxle, neckBottom, engineShaft.'),
    along: z
      .strictObject({
        toward: referenceField('Datum or node to move toward.'),
        distance: lengthField('Distance moved toward it; negative moves away.', FURTHEST),
      })
      .optional(),
    forward: lengthField('Offset forward (X).', FURTHEST).optional(),
    left: lengthField("Offset to the rider's left (Y).", FURTHEST).optional(),
    up: lengthField('Offset upward (Z).', FURTHEST).optional(),
    height: lengthField('Height above the ground, in place of `up`.', FURTHEST).optional(),
    side: lengthField('Distance left of the center plane, in place of `left`.', FURTHEST).optional(),
  })
  .meta({ description: 'A place given from a datum or a node.' });

export type Placement = z.output<typeof placementSchema>;
