import { z } from 'zod';
import { bad, type Figure, good, lengthField, type Outcome, resultField } from '../quantity/index.ts';
import { bearingRingLimits, type FitLimits, fitLimits, interferenceOf } from '../standards/index.ts';
import { atPath } from './atPath.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const classField = (doc: string) =>
  z
    .string()
    .regex(/^[A-Za-z]\d{1,2}$/, 'a tolerance class: one letter and a grade, e.g. N7 or k6')
    .meta({ description: doc });

const input = z.strictObject({
  size: lengthField('Nominal diameter.', { above: 0, max: 120 }),
  hole: z
    .union([classField('Tolerance class of the hole, e.g. N7.'), z.literal('bearing bore')])
    .meta({ description: 'Tolerance class of the hole, e.g. N7; or `bearing bore`.' }),
  shaft: z
    .union([classField('Tolerance class of the shaft, e.g. k6.'), z.literal('bearing outside')])
    .meta({ description: 'Tolerance class of the shaft, e.g. k6; or `bearing outside`.' }),
});

const output = z.object({
  holeSmallest: resultField('length', 'Smallest hole.'),
  holeLargest: resultField('length', 'Largest hole.'),
  shaftSmallest: resultField('length', 'Smallest shaft.'),
  shaftLargest: resultField('length', 'Largest shaft.'),
  leastInterference: resultField('length', 'Least interference; below zero it is play.'),
  mostInterference: resultField('length', 'Most interference; below zero it is play.'),
});

type Result = z.output<typeof output>;
type Given = z.output<typeof input>;
type Limits = Pick<FitLimits, 'upper' | 'lower' | 'source'>;

const ISO_286 = { key: 'iso-286', where: 'parts 1 and 2, up to 120 mm' } as const;
const RINGS = { key: 'memory', where: 'ISO 492, tolerance class Normal, radial bearings' } as const;

export const fitWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'fit',
  title: 'Limits and fit',
  summary:
    'Limits of a hole and a shaft, and how tight or loose they can come together; for bearing seats too.',
  input,
  output,
  run,
  formulas: [
    'smallest = nominal + lower deviation',
    'largest = nominal + upper deviation',
    'least interference = smallest shaft − largest hole',
    'most interference = largest shaft − smallest hole',
  ],
  sources: [ISO_286, RINGS],
  example: {
    title: 'A 35 mm bearing in a plate bored to N7',
    input: { size: 35, hole: 'N7', shaft: 'bearing outside' },
    expected: [
      { path: 'holeSmallest', value: 34.967, tolerance: 1e-6 },
      { path: 'holeLargest', value: 34.992, tolerance: 1e-6 },
      { path: 'shaftSmallest', value: 34.989, tolerance: 1e-6 },
      { path: 'leastInterference', value: -0.003, tolerance: 1e-6 },
      { path: 'mostInterference', value: 0.033, tolerance: 1e-6 },
    ],
    source: { key: 'iso-286', where: 'part 2, 30 to 50 mm N7: −8 and −33 µm; ring 0 to −11 µm from memory' },
  },
};

function run(given: Given): Outcome<WorksheetRun<Result>> {
  const hole = limitsOf(given, 'hole');
  if (!hole.ok) return hole;
  const shaft = limitsOf(given, 'shaft');
  if (!shaft.ok) return shaft;
  const { least, most } = interferenceOf(hole.value, shaft.value);
  const result: Result = {
    holeSmallest: given.size + hole.value.lower,
    holeLargest: given.size + hole.value.upper,
    shaftSmallest: given.size + shaft.value.lower,
    shaftLargest: given.size + shaft.value.upper,
    leastInterference: least,
    mostInterference: most,
  };
  return good({ result, figures: figuresOf(result, hole.value, shaft.value) });
}

function limitsOf(given: Given, part: 'hole' | 'shaft'): Outcome<Limits> {
  const named = given[part];
  if (named === 'bearing bore' || named === 'bearing outside') {
    const ring = bearingRingLimits(given.size, part === 'hole' ? 'bore' : 'outside');
    return ring ? good({ ...ring, source: RINGS } as Limits) : bad(noRing(given.size));
  }
  const limits = atPath(fitLimits(given.size, named), part);
  if (!limits.ok || limits.value.of === part) return limits;
  const reason = `${named} is the class of a ${limits.value.of}: a hole has a capital letter, a shaft a small one`;
  return bad({ code: 'conflict', path: part, reason });
}

const noRing = (size: number) =>
  ({
    code: 'conflict',
    path: 'size',
    reason: `the table has no bearing ring of ${(size * 1e3).toFixed(3)} mm`,
  }) as const;

function figuresOf(result: Result, hole: Limits, shaft: Limits): readonly Figure[] {
  const figure = (
    end: 'least' | 'most',
    value: number,
    formula: string,
    inputs: readonly (readonly [string, number])[],
  ): Figure => ({
    id: `fit.${end}Interference`,
    symbol: end === 'least' ? 'Imin' : 'Imax',
    name: `${end} interference`,
    value,
    kind: 'length',
    formula,
    inputs: inputs.map(([name, v]) => ({ name, value: v, kind: 'length' })),
    source: hole.source.key === 'iso-286' ? hole.source : shaft.source,
  });
  return [
    figure('least', result.leastInterference, 'ei − ES', [
      ['ei, lower deviation of the shaft', shaft.lower],
      ['ES, upper deviation of the hole', hole.upper],
    ]),
    figure('most', result.mostInterference, 'es − EI', [
      ['es, upper deviation of the shaft', shaft.upper],
      ['EI, lower deviation of the hole', hole.lower],
    ]),
  ];
}
