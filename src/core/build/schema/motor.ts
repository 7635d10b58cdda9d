import { z } from 'zod';
import { torqueField } from '../../quantity/index.ts';

/** A positive number in a unit that the quantity room does not know. */
const plain = (unit: string, description: string) =>
  z.number().positive().max(1e6).meta({ description, unit });

/** An electric motor in place of the engine; its torque curve follows from these. */
export const motorSchema = z
  .strictObject({
    constant: plain('N·m/A', 'Torque a motor current; the same number in V·s/rad.'),
    resistance: plain('Ω', 'Winding, with the controller.'),
    drag: torqueField('Friction, iron and fan together.', { min: 0, max: 100 }).optional(),
    motorCurrent: plain('A', 'Limit of the motor current.'),
    batteryCurrent: plain('A', 'Limit of the battery current.'),
    battery: z.strictObject({
      voltage: plain('V', 'At rest.'),
      resistance: z
        .number()
        .min(0)
        .max(10)
        .meta({ description: 'Inside, with cables.', unit: 'Ω' })
        .optional(),
      energy: plain('W·h', 'That may be used.').optional(),
    }),
  })
  .meta({ description: 'An electric motor, controller and battery, instead of a torque curve.' });
