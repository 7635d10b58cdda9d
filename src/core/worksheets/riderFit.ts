import { z } from 'zod';
import { good, lengthField, mm, type Outcome, resultField } from '../quantity/index.ts';
import {
  type FittedRider,
  type RiderFit,
  type RiderFitInput,
  riderFit,
  riderFitFigures,
  seatTriangle,
  surveyRiders,
} from '../ride/index.ts';
import { bodyLinks } from '../standards/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const height = (doc: string) => lengthField(doc, { min: 0, max: 2500 });
const ahead = (doc: string) => lengthField(doc, { min: -2500, max: 2500 });

const input = z.strictObject({
  seatHeight: height('Top of the seat above the ground, rider on.'),
  seatWidth: lengthField('Width of the seat where the legs come down; left out: 200.', {
    min: 0,
    max: 600,
  }).optional(),
  pegAhead: ahead('Middle of the peg ahead of the seat.'),
  pegHeight: height('Middle of the peg above the ground.'),
  pegAcross: lengthField('Middle of the peg from the center plane; left out: 200.', {
    min: 0,
    max: 800,
  }).optional(),
  gripAhead: ahead('Middle of the grip ahead of the seat.'),
  gripHeight: height('Middle of the grip above the ground.'),
  gripAcross: lengthField('Middle of the grip from the center plane; left out: 320.', {
    min: 0,
    max: 800,
  }).optional(),
  stature: lengthField('A rider of your own: standing height.', { min: 800, max: 2300 }).optional(),
  inseam: lengthField('A rider of your own: crotch to floor.', { min: 300, max: 1200 }).optional(),
});

const place = z.enum(['inside', 'below', 'above']);
const pointOf = z.object({
  x: resultField('length', 'Ahead of the seat.'),
  z: resultField('length', 'Above the ground.'),
});
const POINTS = ['hip', 'knee', 'ankle', 'toe', 'shoulder', 'elbow', 'grip', 'head'] as const;
const rider = z.object({
  rider: z.string(),
  knee: resultField('angle', 'Hip-knee-ankle.'),
  hip: resultField('angle', 'Trunk to thigh.'),
  elbow: resultField('angle', 'Shoulder-elbow-grip.'),
  trunkLean: resultField('angle', 'From vertical.'),
  comfort: z.object({ knee: place, hip: place, elbow: place, trunkLean: place }).meta({
    description:
      'Against usual comfort: knee 90 to 130, hip 80 to 110, elbow 120 to 160, trunk 0 to 25 degrees.',
  }),
  reachesPeg: z.boolean(),
  reachesGrip: z.boolean(),
  groundMargin: resultField('length', 'Left over with both feet flat; negative: short.'),
  points: z
    .object({
      hip: pointOf,
      knee: pointOf,
      ankle: pointOf,
      toe: pointOf,
      shoulder: pointOf,
      elbow: pointOf,
      grip: pointOf,
      head: pointOf,
    })
    .meta({ description: 'The figure seen from the side.' }),
});

const output = z.object({
  seatToPeg: resultField('length', 'From the side.'),
  pegToGrip: resultField('length', 'From the side.'),
  seatToGrip: resultField('length', 'From the side.'),
  pegToSeatAngle: resultField('angle', 'From straight ahead, upward positive.'),
  seatToGripAngle: resultField('angle', 'From straight ahead, upward positive.'),
  riders: z
    .array(rider)
    .meta({ description: '5th, 50th and 95th percentile of women and men, then your own rider.' }),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

export const riderFitWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'rider-fit',
  title: 'Seat, pegs and bars against rider sizes',
  summary:
    'Knee, hip and elbow angles of a linked figure from the 5th to the 95th percentile of adults, and whether both feet reach the ground. For adults only: the survey holds no children.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<Result>> => {
    const asked = askedOf(given);
    const riders: FittedRider[] = [
      ...surveyRiders,
      ...(given.stature === undefined && given.inseam === undefined
        ? []
        : [{ label: 'own rider', links: bodyLinks(given) }]),
    ];
    const fits = riders.map((one) => riderFit(asked, one));
    const triangle = seatTriangle(asked.contacts);
    return good({
      result: { ...triangle, riders: fits.map(rowOf) },
      figures: riderFitFigures(triangle, fits),
    });
  },
  formulas: [
    'cos K = (L₁² + L₂² − D²)/(2·L₁·L₂), D between the ends of two links',
    'trunk: the least lean at which the elbow is as bent as at rest, 150°',
    'feet: crotch height + soles − √(seat height² + (seat width/2)²)',
  ],
  sources: [
    { key: 'ansur-2', where: 'percentiles of sizes and links' },
    { key: 'memory', where: 'comfort of angles, thickness of soles' },
    { key: 'practice', where: 'places of hip, shoulder and head in a seated figure' },
  ],
  example: {
    title: 'A seat at 700 mm, pegs 350 mm ahead at 280 mm, grips 550 mm ahead at 950 mm',
    input: {
      seatHeight: 700,
      seatWidth: 200,
      pegAhead: 350,
      pegHeight: 280,
      gripAhead: 550,
      gripHeight: 950,
    },
    expected: [
      { path: 'seatToPeg', value: 546.717, tolerance: 5e-4 },
      { path: 'seatToGrip', value: 604.152, tolerance: 5e-4 },
      // 712 + 25 − √(700² + 100²) and 925 + 25 − √(700² + 100²).
      { path: 'riders.0.groundMargin', value: 29.893, tolerance: 5e-4 },
      { path: 'riders.5.groundMargin', value: 242.893, tolerance: 5e-4 },
    ],
    source: { key: 'derived', where: 'distances, and crotch heights of the survey with soles of 25 mm' },
  },
};

function askedOf(given: Given): RiderFitInput {
  const peg = { x: given.pegAhead, y: given.pegAcross ?? mm(200), z: given.pegHeight };
  const grip = { x: given.gripAhead, y: given.gripAcross ?? mm(320), z: given.gripHeight };
  return {
    contacts: { seat: { x: 0, y: 0, z: given.seatHeight }, peg, pegDiameter: mm(22), grip },
    seatWidth: given.seatWidth ?? mm(200),
    obstacles: [],
  };
}

function rowOf({
  rider: who,
  angles,
  comfort,
  reaches,
  groundMargin,
  figure,
}: RiderFit): Result['riders'][number] {
  const points = Object.fromEntries(POINTS.map((name) => [name, { x: figure[name].x, z: figure[name].z }]));
  return {
    rider: who.label,
    ...angles,
    comfort: { ...comfort },
    reachesPeg: reaches.peg,
    reachesGrip: reaches.grip,
    groundMargin,
    points: points as Result['riders'][number]['points'],
  };
}
