import { z } from 'zod';
import type { Length, Outcome } from '../quantity/index.ts';
import { good, lengthField, practice, resultField } from '../quantity/index.ts';
import { fitFigures, fitPair, handBore, type SideLimits } from '../strength/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const tolerance = (doc: string) => z.string().min(1).max(10).meta({ description: doc });

const input = z.strictObject({
  size: lengthField('Nominal size of hole and shaft.', { above: 0, max: 120 }),
  hole: tolerance('Tolerance class of the hole, for example N7; "bearing" for the bore of a bearing ring.'),
  shaft: tolerance(
    'Tolerance class of the shaft, for example k6; "bearing" for the outside of a bearing ring.',
  ),
});

const side = (doc: string) =>
  z
    .object({
      upper: resultField('length', 'Upper deviation from nominal.'),
      lower: resultField('length', 'Lower deviation from nominal.'),
      largest: resultField('length', 'Largest size.'),
      smallest: resultField('length', 'Smallest size.'),
    })
    .meta({ description: doc });

const output = z.object({
  hole: side('Limits of the hole.'),
  shaft: side('Limits of the shaft.'),
  kind: z
    .enum(['clearance', 'transition', 'interference'])
    .meta({ description: 'Loose always, either way, tight always.' }),
  clearance: z
    .object({
      least: resultField('length', 'Least clearance; negative is interference.'),
      most: resultField('length', 'Most clearance; negative is interference.'),
    })
    .meta({ description: 'Hole less shaft.' }),
  interference: z
    .object({
      least: resultField('length', 'Least interference; negative is clearance.'),
      most: resultField('length', 'Most interference; negative is clearance.'),
    })
    .meta({ description: 'Shaft less hole.' }),
  handBore: z
    .object({
      tolerance: resultField('length', 'Width of the tolerance of the hole.'),
      stopAt: resultField('length', 'Stop here with a rough method; go on in small steps and try the part.'),
      aim: resultField('length', 'Middle of the tolerance.'),
      methods: z
        .array(
          z.object({
            method: z.string(),
            spread: resultField('length', 'Band it keeps to, by practice.'),
            holds: z.boolean().meta({ description: 'The band lies within the tolerance.' }),
          }),
        )
        .meta({ description: 'Rough ways first.' }),
    })
    .meta({ description: 'For a hole opened by hand.' }),
});

type Result = z.output<typeof output>;

export const fitLimitsWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'fit-limits',
  title: 'Limits and fits',
  summary:
    'Limits of a hole and a shaft of ISO classes up to 120 mm, the clearance or interference they make, and what it takes to open such a hole by hand.',
  input,
  output,
  run,
  formulas: [
    'hole D to H: EI = −es; K, M, N to IT8 and P, R, S to IT7: ES = −ei + Δ, Δ = ITn − IT(n − 1); JS, js: ±ITn/2',
    'clearance = hole − shaft: EI − es to ES − ei',
  ],
  sources: [
    { key: 'iso-286', where: 'parts 1 and 2; the table, not the formula' },
    {
      key: 'memory',
      where: 'ISO 286-1: d, e, f, r, s and N above IT8; ISO 492 class Normal: limits of bearing rings',
    },
    practice('bands of shop methods'),
  ],
  example: {
    title: 'Bearing of 35 mm outside in an N7 hole',
    input: { size: 35, hole: 'N7', shaft: 'bearing' },
    expected: [
      { path: 'hole.upper', value: -0.008, tolerance: 1e-9 },
      { path: 'hole.lower', value: -0.033, tolerance: 1e-9 },
      { path: 'interference.least', value: -0.003, tolerance: 1e-9 },
      { path: 'interference.most', value: 0.033, tolerance: 1e-9 },
    ],
    source: { key: 'iso-286', where: 'part 2, N7 over 30 to 50 mm; ring 0/−11 µm from memory of ISO 492' },
  },
};

function run({ size, hole, shaft }: z.output<typeof input>): Outcome<WorksheetRun<Result>> {
  const pair = fitPair(size, hole, shaft);
  if (!pair.ok) return pair;
  const { interference, kind } = pair.value;
  const bore = handBore(size, pair.value.hole);
  const result: Result = {
    hole: sideResult(size, pair.value.hole),
    shaft: sideResult(size, pair.value.shaft),
    kind,
    clearance: { least: -interference.most, most: -interference.least },
    interference,
    handBore: { ...bore, methods: bore.methods.map((method) => ({ ...method })) },
  };
  return good({ result, figures: fitFigures(size, pair.value, { id: 'fit', of: 'fit' }) });
}

const sideResult = (size: Length, { upper, lower }: SideLimits): Result['hole'] => ({
  upper,
  lower,
  largest: size + upper,
  smallest: size + lower,
});
