import { z } from 'zod';
import {
  angularSpeedField,
  densityField,
  inertiaField,
  lengthField,
  massField,
  ratioField,
  readQuantity,
  resultField,
  speedField,
  torqueField,
} from '../quantity/index.ts';
import type { ElectricMotor } from '../ride/index.ts';

/** Fields that the worksheets of going share. */

/** Air at 15 °C and sea level, where no density is given [kg/m³]. */
export const AIR_DENSITY = 1.225;

/** A plain number from here on is in mm²: no vehicle has 100 m², and no bike 100 mm². */
const SQUARE_MILLIMETERS_FROM = 100;
const MAX_DRAG_AREA = 20;

/** Drag coefficient times frontal area [m²]. */
export const dragAreaField = z
  .union([z.number().min(0), z.string().meta({ examples: ['0.55 m²'] })])
  .transform((given, context): number => {
    const area = areaOf(given);
    if (area !== undefined && area >= 0 && area <= MAX_DRAG_AREA) return area;
    const issue =
      typeof given === 'number' || area !== undefined
        ? { code: 'out-of-range', path: '', given: area ?? given, min: 0, max: MAX_DRAG_AREA, unit: 'm²' }
        : { code: 'unreadable', path: '', given, wanted: 'an area', example: '0.55 m²' };
    context.issues.push({ code: 'custom', input: given, message: issue.code, params: { issue } });
    return z.NEVER;
  })
  .meta({
    description:
      'Drag coefficient times frontal area; left out: no drag; a number of 100 or more is taken as mm².',
    unit: 'm²',
  });

function areaOf(given: number | string): number | undefined {
  if (typeof given === 'number') return given >= SQUARE_MILLIMETERS_FROM ? given / 1e6 : given;
  const read = readQuantity(given, 'area');
  return read.ok ? read.value : undefined;
}

export const torqueCurveField = z
  .array(
    z.tuple([
      angularSpeedField('Speed.', { min: 0, max: 200_000 }),
      torqueField('Torque at full throttle.', { min: 0, max: 100_000 }),
    ]),
  )
  .min(1)
  .max(1000)
  .meta({
    description:
      'Torque curve by rising speed; straight between the points, the first torque held below the first point. Without a governed speed the last point is the highest speed.',
  });

export const bikeFields = {
  mass: massField('Bike and rider.', { above: 0, max: 10_000 }),
  wheelRadius: lengthField('Rolling radius of the driven wheel: measured rollout / 2π.', {
    min: 10,
    max: 2000,
  }),
  rollingCoefficient: ratioField('Rolling resistance as a share of the load; left out: none.', {
    min: 0,
    max: 1,
  }),
  grade: ratioField('Rise over run, downhill negative; left out: level.', { min: -1, max: 5 }),
  airDensity: densityField('Density of the air; left out: 1.225 at sea level.', { min: 0, max: 10 }),
  rotatingInertia: inertiaField('All that spins, as seen at the wheel; left out: none.', {
    min: 0,
    max: 1000,
  }),
  efficiency: ratioField('Product of the efficiencies of all stages; left out: 1, no loss.', {
    above: 0,
    max: 1,
  }),
  ratio: ratioField('Engine turns per wheel turn through all fixed stages.', { above: 0, max: 1000 }),
  governed: angularSpeedField('Governed speed.', { above: 0, max: 200_000 }),
  droop: ratioField('Share of the governed speed over which the governor takes the torque away.', {
    min: 0,
    max: 0.5,
  }),
} as const;

export const stanceFields = z
  .strictObject({
    wheelbase: lengthField('Wheelbase.', { above: 0, max: 5000 }),
    centerForward: lengthField('Center of mass ahead of the rear contact.', { min: 0, max: 5000 }),
    centerHeight: lengthField('Center of mass above the ground.', { above: 0, max: 3000 }),
    dragHeight: lengthField('Height at which the air pushes; that of the center of mass if left out.', {
      min: 0,
      max: 3000,
    }).optional(),
    grip: ratioField('Friction of the rear tire; grip is not looked at if left out.', {
      above: 0,
      max: 3,
    }).optional(),
  })
  .meta({ description: 'How the bike stands: for wheel lift and grip.' });

export const clutchFields = z
  .strictObject({
    engages: angularSpeedField('Speed of first bite.', { min: 0, max: 200_000 }),
    locks: angularSpeedField('Speed at which it carries its capacity.', { above: 0, max: 200_000 }),
    capacity: torqueField("Torque it carries at that speed; the engine's own torque there if left out.", {
      above: 0,
      max: 100_000,
    }).optional(),
  })
  .meta({ description: 'Centrifugal clutch: T = K·(ω² − ω0²).' });

/** A number in a unit that is no quantity kind. */
export const plainResult = (doc: string, unit: string) => z.number().meta({ description: doc, unit });

export const markResult = z.object({
  speed: resultField('speed', 'Road speed.'),
  time: plainResult('From the start.', 's'),
  distance: plainResult('From the start.', 'm'),
});

const motorNumber = (doc: string, unit: string) =>
  z.number().positive().max(1e6).meta({ description: doc, unit });

export const motorFields = z
  .strictObject({
    constant: motorNumber('Torque a motor current; the same number in V·s/rad.', 'N·m/A'),
    resistance: motorNumber('Winding, with the controller.', 'Ω'),
    drag: torqueField('Friction, iron and fan together.', { min: 0, max: 10_000 }).optional(),
    motorCurrent: motorNumber('Limit of the motor current.', 'A'),
    batteryCurrent: motorNumber('Limit of the battery current.', 'A'),
    voltage: motorNumber('Battery at rest.', 'V'),
    batteryResistance: z
      .number()
      .min(0)
      .max(10)
      .meta({ description: 'Inside the battery, with cables.', unit: 'Ω' })
      .optional(),
    energy: motorNumber('That may be used.', 'W·h').optional(),
    ride: z
      .array(
        z.strictObject({
          speed: speedField('Steady speed.', { above: 0, max: 100 }),
          distance: motorNumber('Length of the stretch.', 'm'),
          grade: ratioField('Rise over run.', { min: -1, max: 1 }).optional(),
        }),
      )
      .min(1)
      .max(200)
      .meta({ description: 'A ride of steady stretches, for energy and range.' })
      .optional(),
  })
  .meta({ description: 'Electric motor, controller and battery, instead of a torque curve.' });

const WATT_HOUR = 3600;

/** The motor that the fields describe, in SI. */
export function motorGiven(fields: z.output<typeof motorFields>): ElectricMotor {
  const { drag, voltage, batteryResistance, energy, ride: _, ...rest } = fields;
  return {
    ...rest,
    ...(drag === undefined ? {} : { drag }),
    battery: {
      voltage,
      ...(batteryResistance === undefined ? {} : { resistance: batteryResistance }),
      ...(energy === undefined ? {} : { energy: energy * WATT_HOUR }),
    },
  };
}
