import { z } from 'zod';
import { type CopeJoint, type CopeOrdinate, type CopeProfile, copeProfile } from '../geometry/index.ts';
import {
  angleField,
  bad,
  derived,
  type Figure,
  type FigureInput,
  good,
  type Issue,
  lengthField,
  mm,
  type Outcome,
  resultField,
} from '../quantity/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  branchDiameter: lengthField('outside diameter of the branch, the tube that is coped', {
    above: 0,
    max: 1000,
  }),
  branchWall: lengthField('wall of the branch; gives the cut line on its inside too', {
    above: 0,
    max: 100,
    gauge: 'tube-wall',
  }).optional(),
  trunkDiameter: lengthField('outside diameter of the trunk, the tube it is welded to', {
    above: 0,
    max: 1000,
  }),
  angle: angleField('angle between the two axes; 90 is square', { above: 0, max: 179 }),
  offset: lengthField('distance of the branch axis from the trunk axis; 0 when they cross', {
    min: -1000,
    max: 1000,
  }).default(mm(0)),
});

const ordinate = z.tuple([
  resultField(
    'angle',
    'around the branch: 0 heel (obtuse side), 90 the side of the offset, 180 crotch (acute side)',
  ),
  resultField('length', 'along the branch axis from the plane of the trunk axis; more is a shorter wall'),
]);

const output = z.strictObject({
  ordinates: z
    .array(ordinate)
    .meta({ description: 'cut line on the outside of the branch, every 5 degrees' }),
  insideOrdinates: z
    .array(ordinate)
    .meta({ description: 'cut line on the inside of the branch, when its wall is given' })
    .optional(),
  controllingOrdinates: z
    .array(ordinate)
    .meta({
      description:
        'cut square through the wall that touches the trunk and nowhere enters it, when the wall is given',
    })
    .optional(),
  lowest: ordinate.meta({ description: 'longest wall' }),
  highest: ordinate.meta({ description: 'shortest wall' }),
  depth: resultField('length', 'depth of the cut, from the longest to the shortest wall'),
  jointLength: resultField('length', 'length of the joint on the outside, to weld'),
});

type Input = z.output<typeof input>;
type Output = z.output<typeof output>;

const SOURCE = derived('circular saddle: the line of the branch wall cut with the cylinder of the trunk');
const POSITION = 's(φ) = (√(R² − (e + r·sin φ)²) − r·cos φ·cos θ) / sin θ';

/** The worksheet's fields for what the geometry calls by its radii. */
const FIELD_OF: Readonly<Record<string, string>> = {
  branchRadius: 'branchDiameter',
  wall: 'branchWall',
  trunkRadius: 'trunkDiameter',
};

export const copeWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'cope',
  title: 'Tube cope',
  summary:
    'The cut line on the end of a round tube that is welded to the side of another, square or slanted, centered or offset; for a paper wrap or for marking out around the tube.',
  input,
  output,
  run,
  formulas: [
    POSITION,
    'x = r·φ around the outside, unwrapped',
    'depth = max s − min s',
    'joint length = ∫ √(r² + (ds/dφ)²) dφ over a full turn',
  ],
  sources: [SOURCE],
  example: {
    title:
      '1 in tube square on a 1 1/4 in tube: radii as 4 to 5, so the sides lie at 3/5 of the trunk radius',
    input: { branchDiameter: '1 in', trunkDiameter: '1 1/4 in', angle: 90, offset: 0 },
    expected: [
      { path: 'ordinates.0.1', value: 15.875, tolerance: 1e-9 },
      { path: 'ordinates.18.1', value: 9.525, tolerance: 1e-9 },
      { path: 'depth', value: 6.35, tolerance: 1e-9 },
      { path: 'jointLength', value: 84.571, tolerance: 5e-4 },
    ],
    source: derived('3-4-5 triangle: √(15.875² − 12.7²) = 9.525'),
  },
};

function run(given: Input): Outcome<WorksheetRun<Output>> {
  const joint: CopeJoint = {
    branchRadius: given.branchDiameter / 2,
    trunkRadius: given.trunkDiameter / 2,
    angle: given.angle,
    offset: given.offset,
    ...(given.branchWall === undefined ? {} : { wall: given.branchWall }),
  };
  const outcome = copeProfile(joint);
  if (!outcome.ok) {
    const [first, ...rest] = outcome.issues;
    return bad(renamed(first), ...rest.map(renamed));
  }
  const profile = outcome.value;
  const withWall = joint.wall === undefined ? {} : insideResult(profile);
  const result: Output = {
    ordinates: profile.outside.map(pair),
    ...withWall,
    lowest: pair(profile.lowest),
    highest: pair(profile.highest),
    depth: profile.depth,
    jointLength: profile.jointLength,
  };
  return good({ result, figures: figuresOf(joint, profile) });
}

const insideResult = (profile: CopeProfile): Pick<Output, 'insideOrdinates' | 'controllingOrdinates'> => ({
  insideOrdinates: profile.inside.map(pair),
  controllingOrdinates: profile.controlling.map(pair),
});

const pair = (o: CopeOrdinate): [number, number] => [o.around, o.position];

const renamed = (issue: Issue): Issue => ({ ...issue, path: FIELD_OF[issue.path] ?? issue.path });

function figuresOf(joint: CopeJoint, profile: CopeProfile): Figure[] {
  const inputs: FigureInput[] = [
    { name: 'r, branch outside radius', value: joint.branchRadius, kind: 'length' },
    { name: 'R, trunk outside radius', value: joint.trunkRadius, kind: 'length' },
    { name: 'θ, angle between the axes', value: joint.angle, kind: 'angle' },
    { name: 'e, offset', value: joint.offset, kind: 'length' },
  ];
  const figure = (id: string, symbol: string, name: string, value: number, formula: string): Figure => ({
    id: `cope.${id}`,
    symbol,
    name,
    value,
    kind: 'length',
    formula,
    inputs,
    source: SOURCE,
  });
  const { depth, jointLength, lowest, highest } = profile;
  return [
    figure(
      'lowest',
      's min',
      'cut position at the longest wall',
      lowest.position,
      `min over φ of ${POSITION}`,
    ),
    figure(
      'highest',
      's max',
      'cut position at the shortest wall',
      highest.position,
      `max over φ of ${POSITION}`,
    ),
    figure('depth', 'h', 'cope depth', depth, 's max − s min'),
    figure('jointLength', 'l', 'length of the joint', jointLength, '∫ √(r² + (ds/dφ)²) dφ, 0 to 2π'),
  ];
}
