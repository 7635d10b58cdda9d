import { z } from 'zod';
import {
  forceField,
  lengthField,
  pressureField,
  ratioField,
  stiffnessField,
  torqueField,
} from '../../quantity/index.ts';
import { namedTable, nameField, textField } from './name.ts';

/** Load cases that a bike may be held against; one whose part it lacks (front brake, stand) does not occur. */
export const loadCaseNames = [
  'seated',
  'standing',
  'drop',
  'peg',
  'bump-front',
  'bump-rear',
  'pothole',
  'braking-front',
  'braking-rear',
  'driving',
  'chain-pull',
  'cornering',
  'side-drop',
  'bar-pull',
  'stand',
] as const;
export type LoadCaseName = (typeof loadCaseNames)[number];

const share = (doc: string) => ratioField(doc, { min: 0, max: 1 });

const spectrumBlock = z
  .strictObject({
    case: z.enum(loadCaseNames).meta({ description: 'Load case.' }),
    scale: ratioField('Share of that case that this block reaches; left out: 1.', {
      above: 0,
      max: 3,
    }).optional(),
    perKilometer: z
      .number()
      .min(0)
      .max(1e5)
      .meta({ description: 'How often in a kilometer, on the mean.', unit: '1/km' }),
  })
  .meta({ description: 'One block of the ride spectrum.' });

const dutyPart = z
  .strictObject({
    time: share('Share of the riding time.'),
    torque: share('Share of the largest torque then.'),
    speed: share('Share of the highest speed then.'),
  })
  .meta({ description: 'One part of the duty of bearings and chains.' });

/** What the bike is held against. Every field has a default that the report names with its source. */
export const loadsSchema = z
  .strictObject({
    bumpFactor: ratioField('Wheel load over a bump, times the load at rest; left out: 3.', {
      min: 1,
      max: 10,
    }).optional(),
    potholeRearward: ratioField(
      'Rearward push on the front wheel at a pothole, times its load at rest; left out: 2.',
      { min: 0, max: 10 },
    ).optional(),
    brakingGrip: ratioField('Friction of the tires while braking; left out: 1.', {
      above: 0,
      max: 2,
    }).optional(),
    drivingGrip: ratioField('Friction of the rear tire while driving; left out: use.grip, then 1.', {
      above: 0,
      max: 2,
    }).optional(),
    cornering: ratioField('Side force on each wheel, times its load at rest; left out: 0.7.', {
      min: 0,
      max: 2,
    }).optional(),
    dropHeight: lengthField(
      'Height that the bike lands from, or falls from onto its peg; left out: 100 mm.',
      {
        min: 0,
        max: 2000,
      },
    ).optional(),
    tireRate: stiffnessField('Spring rate of one tire, for the drop; left out: 115 N/mm.', {
      above: 0,
      max: 2000,
    }).optional(),
    pegGive: lengthField(
      'How far peg, ground and cover give as the bike falls on its peg; left out: 20 mm.',
      {
        above: 0,
        max: 200,
      },
    ).optional(),
    pegLoad: forceField('Load on one peg; left out: 1500 N.', { min: 0, max: 20000 }).optional(),
    barPull: forceField('Pull at each grip; left out: 450 N.', { min: 0, max: 5000 }).optional(),
    standFactor: ratioField('Load on the side stand, times that at rest with the rider on; left out: 1.5.', {
      min: 1,
      max: 10,
    }).optional(),
    yieldFactor: ratioField('Yield over stress that is wanted; left out: 1.5.', {
      min: 1,
      max: 10,
    }).optional(),
    fatigueFactor: ratioField('Endurance over stress that is wanted of shafts; left out: 1.5.', {
      min: 1,
      max: 10,
    }).optional(),
    life: z
      .number()
      .positive()
      .max(1e7)
      .meta({ description: 'Distance that welds should last; left out: 5000.', unit: 'km' })
      .optional(),
    bearingLife: z
      .number()
      .positive()
      .max(1e6)
      .meta({ description: 'Running time that bearings should last; left out: 500.', unit: 'h' })
      .optional(),
    spectrum: z
      .array(spectrumBlock)
      .max(40)
      .meta({ description: 'How often each load comes in a kilometer; left out: a yard and path mix.' })
      .optional(),
    duty: z
      .array(dutyPart)
      .min(1)
      .max(20)
      .meta({ description: 'How hard the drive works; left out: 20 % full, 50 % half, 30 % idle pull.' })
      .optional(),
    weldDetail: nameField('Detail class for every weld, where it is not chosen by the joint.').optional(),
    weldLeg: lengthField('Leg of the fillets; left out: the thinner part.', { above: 0, max: 30 }).optional(),
    filler: textField('Filler metal, e.g. E70; left out: E70.', 16).optional(),
    fork: z
      .strictObject({
        legWall: lengthField('Wall of a fork leg; left out: 2 mm.', { above: 0, max: 20 }).optional(),
        stemOutside: lengthField('Outside diameter of the steering stem; left out: 25.4 mm.', {
          above: 0,
          max: 60,
        }).optional(),
        stemWall: lengthField('Wall of the steering stem; left out: 3 mm.', { above: 0, max: 30 }).optional(),
      })
      .meta({ description: 'Sizes inside the fork that strength needs.' })
      .optional(),
    shafts: z
      .strictObject({
        yield: pressureField('Yield of axles and shafts; left out: 370 MPa.', {
          above: 0,
          max: 2000,
        }).optional(),
        tensile: pressureField('Tensile strength of axles and shafts; left out: 440 MPa.', {
          above: 0,
          max: 2500,
        }).optional(),
      })
      .meta({ description: 'Steel of axles and shafts; left out: cold-drawn 1018.' })
      .optional(),
    bolts: namedTable(
      z.strictObject({
        grade: textField('Class or grade, e.g. 8.8 or grade 5; left out: 8.8.', 24).optional(),
        torque: torqueField('Tightening torque; left out: that of 75 % of proof.', {
          above: 0,
          max: 500,
        }).optional(),
        friction: ratioField('Slip factor of the faces; left out: 0.15, painted or oily.', {
          above: 0,
          max: 1,
        }).optional(),
      }),
      'Bolts by the plate that they hold.',
    ).optional(),
  })
  .meta({ description: 'Loads and limits of the strength check.' });
