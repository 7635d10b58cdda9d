import { z } from 'zod';
import type { Force, Length, Outcome, Pressure, Torque } from '../quantity/index.ts';
import {
  bad,
  forceField,
  good,
  lengthField,
  pressureField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import { findFiller, leastFillet } from '../standards/index.ts';
import {
  allowableBase,
  allowableThroat,
  directionalFactor,
  simplifiedDesignShear,
  type ThroatStress,
  throatOf,
  unresistedMoment,
  type WeldLine,
  type WeldLoad,
  weldedGrade,
  weldFigures,
  weldProperties,
  worstThroatStress,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf, pair, triple } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const PLACE = { min: -10_000, max: 10_000 };
const FORCE = { min: -1e7, max: 1e7 };
const TORQUE = { min: -1e6, max: 1e6 };
const place = (doc: string) => lengthField(doc, PLACE);
const point = (doc: string) => pair(doc, place('Along y.'), place('Along z.'));

const input = z.strictObject({
  lines: z
    .array(z.strictObject({ from: point('One end.'), to: point('Other end.') }))
    .max(200)
    .meta({ description: 'Straight fillets in the plane of the joint, y and z; x stands across it.' })
    .optional(),
  circles: z
    .array(
      z.strictObject({
        center: point('Center; left out: 0, 0.').optional(),
        diameter: lengthField('Outside of the tube welded all round.', { above: 0, max: 5000 }),
      }),
    )
    .max(50)
    .meta({ description: 'Fillets all round a tube.' })
    .optional(),
  leg: lengthField('Leg of the fillet; instead of throat.', { above: 0, max: 100 }).optional(),
  throat: lengthField('Throat of the fillet, leg/√2; instead of leg.', { above: 0, max: 100 }).optional(),
  force: triple(
    'Force on the joint along x, y and z.',
    forceField('Along x, out of the plane.', FORCE),
    forceField('Along y.', FORCE),
    forceField('Along z.', FORCE),
  ).optional(),
  at: triple(
    'Where the force acts; left out: in the plane at y = z = 0.',
    place('From the plane of the weld.'),
    place('Along y.'),
    place('Along z.'),
  ).optional(),
  moment: triple(
    'Further moment about x, y and z, right-hand rule; about x turns the joint in its plane.',
    torqueField('About x.', TORQUE),
    torqueField('About y.', TORQUE),
    torqueField('About z.', TORQUE),
  ).optional(),
  convention: oneOf(
    'all-shear: all of the throat stress counts as shear (Shigley, AWS). max-shear: the part across the plane is halved as a normal stress (some textbooks; up to half as much). Left out: all-shear.',
    ['all-shear', 'max-shear'],
  ).optional(),
  rule: oneOf(
    'Allowable: aws 0.30·FEXX, aws-directional times 1 + 0.5·sin^1.5 θ, en-1993-1-8 simplified for loads with partial factors, own. Left out: aws.',
    ['aws', 'aws-directional', 'en-1993-1-8', 'own'],
  ).optional(),
  filler: z.string().max(20).meta({ description: 'Electrode class for aws; left out: E70.' }).optional(),
  grade: z
    .string()
    .max(20)
    .meta({ description: 'Steel grade for en-1993-1-8: S235, S275 or S355.' })
    .optional(),
  baseTensile: pressureField(
    'fu of the base metal, for en-1993-1-8; left out: 360, 430 or 490 MPa by the grade, up to 40 mm thick (S355 has 510 in older print).',
    { above: 0, max: 5000 },
  ).optional(),
  baseYield: pressureField('Sy of the base metal, for shear along the leg.', {
    above: 0,
    max: 5000,
  }).optional(),
  allowable: pressureField('Own allowable stress in the throat; rule own.', {
    above: 0,
    max: 5000,
  }).optional(),
  thickerPart: lengthField('Thickness of the thicker part, for the least fillet.', {
    above: 0,
    max: 500,
  }).optional(),
});

const output = z.object({
  length: resultField('length', 'Length of weld.'),
  throat: resultField('length', 'Throat.'),
  leg: resultField('length', 'Leg.'),
  area: resultField('area', 'Throat area.'),
  centroid: pair('Center of the weld.', resultField('length', 'y.'), resultField('length', 'z.')),
  stress: resultField('pressure', 'Largest throat stress by the convention.'),
  at: pair('Where it is.', resultField('length', 'y.'), resultField('length', 'z.')),
  parts: triple(
    'Throat stress there across the plane and along y and z.',
    resultField('pressure', 'Across.'),
    resultField('pressure', 'Along y.'),
    resultField('pressure', 'Along z.'),
  ),
  loadAngle: resultField('angle', 'Between the force there and the line of the weld.'),
  allowable: resultField('pressure', 'Allowable throat stress by the rule.'),
  factor: resultField('ratio', 'Allowable over stress; left out without load.').optional(),
  neededLeg: resultField('length', 'Leg for factor 1.'),
  baseFactor: resultField('ratio', 'Base metal: 0.40·Sy over the stress on the leg.').optional(),
  leastLeg: resultField('length', 'Least leg for the thicker part.').optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const weldGroupWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'weld-group',
  title: 'Fillet weld group',
  summary:
    'Throat stress at the worst place of any pattern of straight fillets and tubes welded all round, under force and moment in any direction, against an allowable by a published rule.',
  input,
  output,
  run,
  formulas: [
    'σx = (Fx/L + bending of the line group)/a',
    'τ = (F/L + Mx·r/Ju)/a, Ju = Iy + Iz of the lines',
    'all-shear: τ = √(σx² + τy² + τz²); max-shear: τ = √((σx/2)² + τy² + τz²)',
    'allowable = 0.30·FEXX, times 1 + 0.5·sin^1.5 θ; or fu/(√3·βw·1.25)',
  ],
  sources: [
    { key: 'shigley-9', where: 'sections 9-2 to 9-4, tables 9-1 to 9-6' },
    { key: 'aisc-360', where: 'section J2.4' },
    { key: 'en-1993-1-8', where: 'section 4.5.3.3; βw from memory' },
    { key: 'bhandari', where: 'example 8.15, the max-shear convention' },
  ],
  example: {
    title: 'Bar of 50 mm welded all round, 10 kN at 200 mm, by the max-shear convention',
    input: {
      circles: [{ diameter: 50 }],
      throat: 5.132593,
      force: [0, 0, -10_000],
      at: [200, 0, 0],
      convention: 'max-shear',
      rule: 'own',
      allowable: 100,
    },
    expected: [
      { path: 'stress', value: 100, tolerance: 0.0001 },
      // The book's leg divides by 0.707 where this divides by 1/√2.
      { path: 'leg', value: 7.259678, tolerance: 0.0015 },
    ],
    source: { key: 'bhandari', where: 'example 8.15' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const lines = linesOf(given);
  if (!lines.ok) return lines;
  const throat = throatGiven(given);
  if (!throat.ok) return throat;
  const load = loadOf(given);
  const properties = weldProperties(lines.value);
  const free = unresistedMoment(properties, load);
  if (free > 1e-9 * loadSize(load))
    return bad({
      code: 'conflict',
      path: 'lines',
      reason: 'a single straight fillet has nothing to hold a moment about its own line; add weld beside it',
    });
  const convention = given.convention ?? 'all-shear';
  const worst = worstThroatStress(lines.value, throat.value, load, convention);
  const allowable = allowableOf(given, worst);
  if (!allowable.ok) return allowable;
  const leg = (throat.value * Math.SQRT2) as Length;
  const result: Result = {
    length: properties.length,
    throat: throat.value,
    leg,
    area: properties.length * throat.value,
    centroid: [...properties.centroid],
    stress: worst.resultant,
    at: [...worst.at],
    parts: [worst.normal, ...worst.shear],
    loadAngle: worst.loadAngle,
    allowable: allowable.value,
    ...(worst.resultant > 0 ? { factor: allowable.value / worst.resultant } : {}),
    neededLeg: (leg * worst.resultant) / allowable.value,
    ...baseOf(given, worst),
    ...(given.thickerPart === undefined ? {} : { leastLeg: leastFillet(given.thickerPart) }),
  };
  const figures = weldFigures(
    { properties, throat: throat.value, worst, convention },
    { id: 'weld', of: 'weld group' },
  );
  return good({ result, figures });
}

function linesOf({ lines = [], circles = [] }: Input): Outcome<readonly WeldLine[]> {
  if (lines.length + circles.length === 0)
    return bad({ code: 'missing', path: 'lines', wanted: 'lines or circles' });
  const point = lines.findIndex(({ from, to }) => from[0] === to[0] && from[1] === to[1]);
  if (point >= 0)
    return bad({ code: 'conflict', path: `lines[${point}].to`, reason: 'the fillet has no length' });
  const origin: [Length, Length] = [0 as Length, 0 as Length];
  return good([
    ...lines,
    ...circles.map(({ center, diameter }) => ({
      center: center ?? origin,
      radius: (diameter / 2) as Length,
    })),
  ]);
}

function throatGiven({ leg, throat }: Input): Outcome<Length> {
  if (leg !== undefined && throat !== undefined)
    return bad({
      code: 'conflict',
      path: 'throat',
      reason: 'leg and throat are both given; one follows from the other, give one',
    });
  if (throat !== undefined) return good(throat);
  if (leg === undefined) return bad({ code: 'missing', path: 'leg', wanted: 'leg or throat' });
  return good(throatOf(leg));
}

const NO_FORCE = [0, 0, 0] as unknown as readonly [Force, Force, Force];
const NO_PLACE = [0, 0, 0] as unknown as readonly [Length, Length, Length];
const NO_MOMENT = [0, 0, 0] as unknown as readonly [Torque, Torque, Torque];

const loadOf = ({ force, at, moment }: Input): WeldLoad => ({
  force: force ?? NO_FORCE,
  at: at ?? NO_PLACE,
  moment: moment ?? NO_MOMENT,
});

const loadSize = ({ force, at, moment }: WeldLoad): number =>
  Math.hypot(...force) * Math.hypot(...at) + Math.hypot(...moment);

function allowableOf(given: Input, worst: ThroatStress): Outcome<Pressure> {
  const rule = given.rule ?? 'aws';
  if (rule === 'own')
    return given.allowable === undefined
      ? bad({ code: 'missing', path: 'allowable', wanted: 'the own allowable stress' })
      : good(given.allowable);
  if (rule === 'en-1993-1-8') {
    if (given.grade === undefined) return bad({ code: 'missing', path: 'grade', wanted: 'a steel grade' });
    const steel = atPath(weldedGrade(given.grade), 'grade');
    if (!steel.ok) return steel;
    const { correlation, tensile } = steel.value;
    return good(simplifiedDesignShear(given.baseTensile ?? tensile, correlation));
  }
  const filler = atPath(findFiller(given.filler ?? 'E70'), 'filler');
  if (!filler.ok) return filler;
  const direction = rule === 'aws-directional' ? directionalFactor(worst.loadAngle) : 1;
  return good((allowableThroat(filler.value.tensile) * direction) as Pressure);
}

/** The leg is √2 of the throat wide, so its stress is that much less. */
function baseOf({ baseYield }: Input, worst: ThroatStress) {
  if (baseYield === undefined || worst.resultant === 0) return {};
  return { baseFactor: allowableBase(baseYield) / (worst.resultant * Math.SQRT1_2) };
}
