import { z } from 'zod';
import type { AngularSpeed, Density, Outcome } from '../quantity/index.ts';
import {
  densityField,
  forceField,
  good,
  lengthField,
  massField,
  pressureField,
  resultField,
  stiffnessField,
  torqueField,
} from '../quantity/index.ts';
import {
  criticalSpeed,
  type Shaft,
  type ShaftMass,
  type ShaftSolution,
  type ShaftState,
  shaftFigures,
  shaftStateAt,
  solveShaft,
} from '../strength/index.ts';
import { pair } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const PLACE = { min: -10_000, max: 10_000 };
const FORCE = { min: -1e7, max: 1e7 };
const TORQUE = { min: -1e6, max: 1e6 };
const MOST = 60;
const STEEL_DENSITY = 7850 as Density;

const place = (doc: string) => lengthField(doc, PLACE);

const input = z.strictObject({
  segments: z
    .array(
      z.strictObject({
        from: place('Start of the piece along x.'),
        to: place('End of the piece along x.'),
        diameter: lengthField('Outside diameter.', { above: 0, max: 1000 }),
        bore: lengthField('Bore; left out: solid.', { min: 0, max: 1000 }).optional(),
      }),
    )
    .min(1)
    .max(MOST)
    .meta({ description: 'Pieces of one diameter, together without gap.' }),
  supports: z
    .array(
      z.strictObject({
        at: place('Place along x.'),
        stiffness: stiffnessField('Of bearing and seat, alike all round; left out: rigid.', {
          above: 0,
          max: 1e9,
        }).optional(),
        offset: pair(
          'How far the bearing lies off the line of centers, along y and z.',
          lengthField('Along y.', { min: -100, max: 100 }),
          lengthField('Along z.', { min: -100, max: 100 }),
        ).optional(),
        clamped: z
          .boolean()
          .meta({ description: 'Held against tilting too: welded or shrunk into a stiff plate.' })
          .optional(),
      }),
    )
    .min(1)
    .max(MOST)
    .meta({ description: 'Bearings and other places that hold the shaft across; free to tilt.' }),
  loads: z
    .array(
      z.strictObject({
        at: place('Place along x.'),
        force: pair(
          'Force on the shaft along y and z.',
          forceField('Along y.', FORCE),
          forceField('Along z.', FORCE),
        ).optional(),
        moment: pair(
          'Moment on the shaft about the y and the z axis, right-hand rule; about z bends in the x-y plane.',
          torqueField('About y.', TORQUE),
          torqueField('About z.', TORQUE),
        ).optional(),
        torque: torqueField('Torque on the shaft about x.', TORQUE).optional(),
      }),
    )
    .max(MOST)
    .meta({ description: 'Forces, moments and torques at places along the shaft.' }),
  distributed: z
    .array(
      z.strictObject({
        from: place('Start.'),
        to: place('End.'),
        q: pair(
          'Load per length along y and z.',
          stiffnessField('Along y.', { min: -1e6, max: 1e6 }),
          stiffnessField('Along z.', { min: -1e6, max: 1e6 }),
        ),
      }),
    )
    .max(MOST)
    .meta({ description: 'Even loads along the shaft.' })
    .optional(),
  E: pressureField('Modulus of elasticity.', { above: 0, max: 1e7 }),
  G: pressureField('Shear modulus.', { above: 0, max: 1e7 }),
  shearDeflection: z
    .boolean()
    .meta({ description: 'Count deflection from shear too; left out: a slender beam.' })
    .optional(),
  density: densityField('Of the shaft, for the critical speed; left out: steel, 7850.', {
    above: 0,
    max: 25_000,
  }).optional(),
  masses: z
    .array(
      z.strictObject({
        at: place('Place along x.'),
        mass: massField('Of what sits there.', { min: 0, max: 1000 }),
      }),
    )
    .max(MOST)
    .meta({ description: 'Sprockets, rotors, wheels, for the critical speed.' })
    .optional(),
});

const acrossResult = (kind: 'force' | 'torque' | 'length' | 'ratio', doc: string) =>
  pair(doc, resultField(kind, 'y.'), resultField(kind, 'z.'));

const station = z.object({
  at: resultField('length', 'Place along x.'),
  side: z.enum(['left', 'right']).meta({ description: 'Just left or just right of the place.' }),
  shear: acrossResult('force', 'Sum of the forces left of the cut, along y and z.'),
  moment: acrossResult('torque', "Bending moment about y and z: M_z = EI·y'', M_y = −EI·z''."),
  torque: resultField('torque', 'Torque on the face of the left part about x.'),
  deflection: acrossResult('length', 'Along y and z.'),
  slope: acrossResult('ratio', 'dy/dx and dz/dx, rad.'),
});

const output = z.object({
  reactions: z
    .array(acrossResult('force', 'Force of the support on the shaft along y and z.'))
    .meta({ description: 'One a support, in the order given.' }),
  reactionMoments: z
    .array(acrossResult('torque', 'Moment of the support on the shaft about y and z; 0 for a bearing.'))
    .meta({ description: 'One a support, in the order given.' }),
  maxMoment: z.object({
    value: resultField('torque', 'Largest √(My² + Mz²).'),
    at: resultField('length', 'Where.'),
  }),
  maxDeflection: z.object({
    value: resultField('length', 'Largest √(y² + z²).'),
    at: resultField('length', 'Where.'),
  }),
  slopes: z
    .array(resultField('ratio', 'Slope in the support, rad: √((dy/dx)² + (dz/dx)²), never negative.'))
    .meta({ description: 'One a support; what the limit of a bearing is compared with.' }),
  slopePairs: z
    .array(acrossResult('ratio', 'dy/dx and dz/dx in the support, rad, with their signs.'))
    .meta({ description: 'One a support, in the order given.' }),
  maxStress: z.object({
    value: resultField('pressure', 'Largest nominal √(σ² + 3τ²) of bending and torsion, no notch.'),
    at: resultField('length', 'Where.'),
  }),
  torsion: z
    .array(
      z.object({
        from: resultField('length', 'Start.'),
        to: resultField('length', 'End.'),
        torque: resultField('torque', 'Torque on the face of the left part.'),
        twist: resultField('angle', 'Twist of the right end against the left one.'),
      }),
    )
    .meta({ description: 'Between the places where torque goes in or out.' }),
  torqueSum: resultField('torque', 'Sum of all torques: 0 for a shaft that turns evenly.'),
  criticalSpeed: resultField(
    'angularSpeed',
    'First critical speed; no gyroscopic effect, no rotary inertia.',
  ),
  stations: z.array(station).meta({ description: 'State on both sides of each station.' }),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const shaftWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'shaft',
  title: 'Shaft on any number of bearings',
  summary:
    'Reactions, moments, deflection, slopes, torsion and first critical speed of a stepped shaft or axle that bends in two planes on two or more bearings, seat stiffness and misaligned bearings included.',
  input,
  output,
  run,
  formulas: [
    "E·I·y'' = M_z, E·I·z'' = −M_y between stations",
    'M = √(My² + Mz²), δ = √(y² + z²), θ = √(y′² + z′²)',
    'twist = T·L/(G·J)',
    'K·u = ω²·M·u for the critical speed',
  ],
  sources: [{ key: 'bathe-1996', where: 'section 5.4.1, beam elements; section 11.5, frequencies' }],
  example: {
    title: 'Continuous beam of two 3 m spans: 120 kN in the middle of the first, 40 kN/m on the second',
    input: {
      segments: [{ from: 0, to: 6000, diameter: 300 }],
      supports: [{ at: 0 }, { at: 3000 }, { at: 6000 }],
      loads: [{ at: 1500, force: [-120_000, 0] }],
      distributed: [{ from: 3000, to: 6000, q: [-40, 0] }],
      E: '207 GPa',
      G: '79.3 GPa',
    },
    expected: [
      { path: 'reactions.0.0', value: 41_250, tolerance: 0.001 },
      { path: 'reactions.1.0', value: 157_500, tolerance: 0.001 },
      { path: 'reactions.2.0', value: 41_250, tolerance: 0.001 },
      // 41.25 kN · 1.5 m under the load is more than the 56.25 kN·m over the middle support.
      { path: 'maxMoment.value', value: 61_875, tolerance: 0.001 },
    ],
    source: { key: 'nptel-mechanics', where: 'example 5.22, three-moment equation' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const { E, G, density, masses, ...rest } = given;
  const shaft = { ...rest, elasticModulus: E, shearModulus: G } as Shaft;
  const solved = solveShaft(shaft);
  if (!solved.ok) return solved;
  const speed = criticalSpeed(shaft, density ?? STEEL_DENSITY, (masses ?? []) as readonly ShaftMass[]);
  if (!speed.ok) return speed;
  return good({
    result: resultOf(shaft, solved.value, speed.value),
    figures: shaftFigures(shaft, solved.value, { id: 'shaft', of: 'shaft' }),
  });
}

function resultOf(shaft: Shaft, solution: ShaftSolution, speed: AngularSpeed): Result {
  const { supports, maxMoment, maxDeflection, maxStress, torsion } = solution;
  const { stations } = solution.mesh;
  return {
    reactions: supports.map(({ force }) => [...force]),
    reactionMoments: supports.map(({ moment }) => [...moment]),
    maxMoment,
    maxDeflection,
    slopes: supports.map(({ slope }) => slope),
    slopePairs: supports.map(({ slopes }) => [...slopes]),
    maxStress,
    torsion: torsion.map((piece) => ({ ...piece })),
    torqueSum: solution.torqueSum,
    criticalSpeed: speed,
    stations: stations.flatMap((x, i) => [
      ...(i > 0 ? [rowOf(shaftStateAt(shaft, solution, x, 'left'), 'left')] : []),
      ...(i < stations.length - 1 ? [rowOf(shaftStateAt(shaft, solution, x, 'right'), 'right')] : []),
    ]),
  };
}

const rowOf = (state: ShaftState, side: 'left' | 'right'): Result['stations'][number] => ({
  at: state.at,
  side,
  shear: [...state.shear],
  moment: [...state.moment],
  torque: state.torque,
  deflection: [...state.deflection],
  slope: [...state.slope],
});
