import { z } from 'zod';
import {
  areaField,
  countField,
  densityField,
  forceField,
  lengthField,
  lineForceField,
  pressureField,
  resultField,
  secondMomentField,
  stiffnessField,
  torqueField,
} from '../quantity/index.ts';
import { DIRECTIONS } from '../strength/index.ts';

const name = (doc: string) => z.string().min(1).max(48).meta({ description: doc });
const vector = <T extends z.ZodType>(doc: string, field: (axis: string) => T) =>
  z.tuple([field('x'), field('y'), field('z')]).meta({ description: doc });
const direction = z.enum(DIRECTIONS);
const directions = (doc: string) => z.array(direction).max(6).meta({ description: doc });
/** Angles of a frame are small and come in and out in radians, not in the degrees of other fields. */
const radians = (doc: string) => z.number().min(-1).max(1).meta({ description: doc, unit: 'rad' });
const perRadian = (doc: string) => z.number().min(0).max(1e12).meta({ description: doc, unit: 'N·m/rad' });

/** Largest frame taken. */
export const MOST = { nodes: 2000, members: 5000, modes: 20 };
const modulus = { above: 0, max: 1e7 };
const far = { min: -1e6, max: 1e6 };

const memberSchema = z.strictObject({
  id: name('Name, unique among the members.'),
  from: name('Node at its start; local x runs from here.'),
  to: name('Node at its end.'),
  E: pressureField("Young's modulus.", modulus),
  G: pressureField('Shear modulus.', modulus),
  A: areaField('Area of the section.', { above: 0, max: 1e9 }),
  Iy: secondMomentField('Second moment for bending in the local x-z plane.', { above: 0 }),
  Iz: secondMomentField('Second moment for bending in the local x-y plane.', { above: 0 }),
  J: secondMomentField('Torsion constant.', { above: 0 }),
  shearAreas: z
    .tuple([
      areaField('Effective shear area along local y.', { above: 0 }),
      areaField('Effective shear area along local z.', { above: 0 }),
    ])
    .meta({ description: 'Effective shear areas; left out: no shear deformation.' })
    .optional(),
  up: z
    .tuple([z.number(), z.number(), z.number()])
    .meta({
      description:
        'Direction in the local x-y plane on the +y side, any length; left out: Z, for a member along Z: X.',
    })
    .optional(),
  releases: z
    .strictObject({ from: directions('At the start.').optional(), to: directions('At the end.').optional() })
    .meta({ description: 'Movements of the ends, local axes, that the joints do not hold.' })
    .optional(),
});

const lengthDirections = (field: (axis: string) => z.ZodType<number, number | string>) => ({
  ux: field('x').optional(),
  uy: field('y').optional(),
  uz: field('z').optional(),
});

const supportSchema = z.strictObject({
  node: name('The node held.'),
  fixed: directions('Directions held: displacements along and rotations about the axes.'),
  settle: z
    .strictObject({
      ...lengthDirections((axis) =>
        lengthField(`Forced displacement along ${axis}.`, { min: -1e4, max: 1e4 }),
      ),
      rx: radians('Forced rotation about x.').optional(),
      ry: radians('Forced rotation about y.').optional(),
      rz: radians('Forced rotation about z.').optional(),
    })
    .meta({ description: 'Movement of the support in fixed directions; rotations in rad.' })
    .optional(),
  springs: z
    .strictObject({
      ...lengthDirections((axis) => stiffnessField(`Spring along ${axis}.`, { min: 0 })),
      rx: perRadian('Spring about x.').optional(),
      ry: perRadian('Spring about y.').optional(),
      rz: perRadian('Spring about z.').optional(),
    })
    .meta({ description: 'Springs to the ground in directions that are not fixed.' })
    .optional(),
});

export const frameInput = z.strictObject({
  nodes: z
    .record(
      z.string().min(1).max(48),
      vector('Position.', (axis) => lengthField(`Along ${axis}.`, far)),
    )
    .meta({ description: 'Position of each node by its name.' }),
  members: z.array(memberSchema).max(MOST.members).meta({ description: 'Straight members of one section.' }),
  supports: z.array(supportSchema).max(MOST.nodes).meta({ description: 'What holds the frame.' }),
  links: z
    .array(z.strictObject({ leader: name('Node that leads.'), follower: name('Node that follows it.') }))
    .max(MOST.nodes)
    .meta({ description: 'Stiff bodies: the one moves with the other as one piece.' })
    .optional(),
  loads: z
    .array(
      z.strictObject({
        node: name('Where it acts.'),
        force: vector('Force.', (axis) => forceField(`Along ${axis}.`)).optional(),
        moment: vector('Moment.', (axis) => torqueField(`About ${axis}.`)).optional(),
      }),
    )
    .max(MOST.members)
    .meta({ description: 'Forces and moments on nodes, global axes.' })
    .optional(),
  memberLoads: z
    .array(
      z.strictObject({
        member: name('The member loaded over its whole length.'),
        w: vector('Force per length of the member.', (axis) => lineForceField(`Along ${axis}.`)),
        axes: z.enum(['global', 'local']).meta({ description: 'Axes of w; left out: global.' }).optional(),
      }),
    )
    .max(MOST.members)
    .meta({ description: 'Uniform loads on members.' })
    .optional(),
  buckling: countField('How many of the lowest buckling factors to find.', {
    min: 1,
    max: MOST.modes,
  }).optional(),
  frequencies: z
    .strictObject({
      count: countField('How many of the lowest natural frequencies to find.', { min: 1, max: MOST.modes }),
      density: densityField('Density of all members.', { above: 0, max: 30000 }),
    })
    .meta({ description: 'Natural frequencies of the frame by its own mass.' })
    .optional(),
});

const rotation = (axis: string) => z.number().meta({ description: `Rotation about ${axis}.`, unit: 'rad' });
const forceThree = (of: string) =>
  [
    resultField('force', `${of} along x.`),
    resultField('force', `${of} along y.`),
    resultField('force', `${of} along z.`),
  ] as const;
const momentThree = (of: string) =>
  [
    resultField('torque', `${of}, moment about x.`),
    resultField('torque', `${of}, moment about y.`),
    resultField('torque', `${of}, moment about z.`),
  ] as const;

export const frameOutput = z.object({
  displacements: z
    .record(
      z.string(),
      z.tuple([
        resultField('length', 'Displacement along x.'),
        resultField('length', 'Displacement along y.'),
        resultField('length', 'Displacement along z.'),
        rotation('x'),
        rotation('y'),
        rotation('z'),
      ]),
    )
    .meta({ description: 'By node: displacements in mm and rotations in rad, global axes.' }),
  reactions: z
    .record(z.string(), z.tuple([...forceThree('Reaction'), ...momentThree('Reaction')]))
    .meta({ description: 'By supported node: force and moment that the support exerts on the frame.' }),
  memberForces: z
    .record(
      z.string(),
      z.tuple([...forceThree('Start'), ...momentThree('Start'), ...forceThree('End'), ...momentThree('End')]),
    )
    .meta({
      description:
        'By member: force and moment at its start and at its end, exerted by the joints on the member, local axes.',
    }),
  residual: resultField('ratio', 'Largest unbalanced force at a joint against the largest force.'),
  pieces: resultField(
    'count',
    'Pieces in each member for buckling and frequencies: 8, or fewer where a frame of over 200 members would pass 1600; with few, divide long members yourself.',
  ).optional(),
  buckling: z
    .array(resultField('ratio', 'Factor on all loads at which the frame buckles.'))
    .meta({ description: 'Lowest first; fewer than asked where nothing more can buckle.' })
    .optional(),
  frequencies: z
    .array(resultField('frequency', 'Natural frequency.'))
    .meta({ description: 'Lowest first.' })
    .optional(),
});
