import { z } from 'zod';
import type { Outcome, Pressure } from '../quantity/index.ts';
import { bad, good, pressureField, ratioField, resultField } from '../quantity/index.ts';
import { detailCategories } from '../standards/index.ts';
import {
  cyclesToFailure,
  type FatigueEstimate,
  type FatigueRule,
  fatigueEstimate,
  fatigueFigures,
  type StressBlock,
} from '../strength/index.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

/** γMf of EN 1993-1-9 for safe life and high consequence: no one looks for cracks in a home-built frame. */
const PARTIAL_FACTOR = 1.35;

const input = z.strictObject({
  detail: oneOf(
    'Constructional detail; instead of category.',
    detailCategories.map(({ detail }) => detail),
  ).optional(),
  category: pressureField('Detail category or FAT class: range at 2 million cycles; instead of detail.', {
    above: 0,
    max: 500,
  }).optional(),
  slope: ratioField('Slope of the steep branch, 3 or 5; left out: that of the detail, else 3.', {
    min: 3,
    max: 5,
  }).optional(),
  rule: oneOf('Knee at 5 million cycles (en-1993-1-9) or 10 million (iiw); left out: en-1993-1-9.', [
    'en-1993-1-9',
    'iiw',
  ]).optional(),
  spectrum: z
    .array(
      z.strictObject({
        range: pressureField('Nominal stress range, largest less smallest.', { min: 0, max: 5000 }),
        cycles: ratioField('Cycles at that range in one repeat.', { min: 0, max: 1e12 }),
      }),
    )
    .min(1)
    .max(1000)
    .meta({ description: 'Blocks of one repeat: one ride, one hour, one year.' }),
  partialFactor: ratioField('γMf for the low end; left out: 1.35 (safe life, high consequence).', {
    min: 1,
    max: 5,
  }).optional(),
});

const life = (doc: string) =>
  z
    .object({
      category: resultField('pressure', 'Category used.'),
      repeats: resultField(
        'ratio',
        'Repeats of the spectrum to damage 1; left out: nothing counts.',
      ).optional(),
    })
    .meta({ description: doc });

const output = z.object({
  damage: resultField('ratio', 'Palmgren-Miner damage of one repeat, category as given.'),
  low: life('One category lower, with the partial factor.'),
  nominal: life('Category as given.'),
  high: life('One category higher, no partial factor.'),
  constantAmplitudeLimit: resultField('pressure', 'Range at the knee of the line.'),
  cutOff: resultField('pressure', 'Range at and under which nothing counts; 0: everything counts.'),
  limitShare: resultField('ratio', 'Largest range over the range at the knee.'),
  blocks: z.array(
    z.object({
      range: resultField('pressure', 'Range.'),
      cyclesToFailure: resultField('ratio', 'N; left out: does not count.').optional(),
      damage: resultField('ratio', 'n/N.'),
    }),
  ),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const fatigueWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'fatigue',
  title: 'Fatigue of a welded detail',
  summary:
    'Damage and life of a welded detail by nominal stress ranges, told as a range: detail categories are statistics of good welds, and the life of a hand-made one is not known closer.',
  input,
  output,
  run,
  formulas: [
    'N = 2·10⁶·(ΔσC/Δσ)^m down to ΔσD, N = ND·(ΔσD/Δσ)⁵ below',
    'ΔσD = (2·10⁶/ND)^(1/m)·ΔσC, ΔσL = (ND/10⁸)^(1/5)·ΔσD',
    'D = Σ n/N',
  ],
  sources: [
    { key: 'en-1993-1-9', where: 'sections 3 and 7.1, annex A.5, tables 8.1 to 8.7; from memory' },
    { key: 'iiw-fatigue', where: 'section 3.2; from memory' },
  ],
  example: {
    title: 'Category 71: one block at the category, one at 0.737 of it',
    input: {
      category: 71,
      spectrum: [
        { range: 71, cycles: 1e6 },
        { range: 52.327, cycles: 1e6 },
      ],
    },
    expected: [
      { path: 'blocks.0.cyclesToFailure', value: 2e6, tolerance: 1 },
      // 0.737 is rounded to three digits: 7e-4 of it is 2e-3 of N at slope 3.
      { path: 'blocks.1.cyclesToFailure', value: 5e6, tolerance: 5e6 * 2e-3 },
      { path: 'constantAmplitudeLimit', value: 52.3, tolerance: 0.05 },
      { path: 'cutOff', value: 0.404 * 71, tolerance: 0.001 * 71 },
    ],
    source: { key: 'en-1993-1-9', where: 'section 7.1: ΔσD = 0.737·ΔσC, ΔσL = 0.404·ΔσC as reprinted' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const detail = detailOf(given);
  if (!detail.ok) return detail;
  const rule: FatigueRule = given.rule ?? 'en-1993-1-9';
  const { spectrum } = given;
  const estimate = fatigueEstimate({
    ...detail.value,
    rule,
    partialFactor: given.partialFactor ?? PARTIAL_FACTOR,
    spectrum,
  });
  return good({
    result: resultOf(estimate, spectrum),
    figures: fatigueFigures({ estimate, spectrum, rule }, { id: 'fatigue', of: 'detail' }),
  });
}

function resultOf(estimate: FatigueEstimate, spectrum: readonly StressBlock[]): Result {
  const { line } = estimate;
  const of = (category: number, repeats: number) => ({
    category,
    ...(Number.isFinite(repeats) ? { repeats } : {}),
  });
  return {
    damage: estimate.damage,
    low: of(estimate.low.category, estimate.low.repeats),
    nominal: of(line.category, estimate.repeats),
    high: of(estimate.high.category, estimate.high.repeats),
    constantAmplitudeLimit: line.constantAmplitudeLimit,
    cutOff: line.cutOff,
    limitShare: estimate.limitShare,
    blocks: spectrum.map(({ range, cycles }) => {
      const failure = cyclesToFailure(line, range);
      const counts = Number.isFinite(failure) ? { cyclesToFailure: failure } : {};
      return { range, ...counts, damage: cycles / failure };
    }),
  };
}

function detailOf(given: Input): Outcome<{ readonly category: Pressure; readonly slope: number }> {
  if (given.detail !== undefined && given.category !== undefined)
    return bad({
      code: 'conflict',
      path: 'category',
      reason: 'detail and category are both given; one follows from the other, give one',
    });
  const listed = detailCategories.find(({ detail }) => detail === given.detail);
  const category = given.category ?? listed?.category;
  if (category === undefined) return bad({ code: 'missing', path: 'category', wanted: 'detail or category' });
  return good({ category, slope: given.slope ?? listed?.slope ?? 3 });
}
