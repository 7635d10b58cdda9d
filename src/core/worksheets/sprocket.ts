import { z } from 'zod';
import { sprocketDimensions, sprocketFigures, sprocketOutline } from '../driveline/index.ts';
import type { Outcome } from '../quantity/index.ts';
import { countField, good, resultField } from '../quantity/index.ts';
import { findChain } from '../standards/index.ts';
import { atPath } from './atPath.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  chain: z.string().max(20).meta({ description: 'Chain size, for example #40 or 428.' }),
  teeth: countField('Number of teeth.', { min: 6, max: 300 }),
});

const output = z.object({
  pitchDiameter: resultField('length', 'Circle through the roller centers.'),
  outsideDiameter: resultField('length', 'Over the tooth tips.'),
  rootDiameter: resultField('length', 'Under the rollers.'),
  caliperDiameter: resultField('length', 'What a caliper reads across the bottoms.'),
  largestHub: resultField('length', 'Largest hub that clears the link plates.'),
  flangeThickness: resultField('length', 'Thickness of the toothed plate.'),
  outline: z
    .array(
      z.object({
        x: resultField('length', 'From the center.'),
        y: resultField('length', 'From the center.'),
        bulge: resultField(
          'ratio',
          'tan(sweep/4) of the arc to the next point, positive counterclockwise; 0 straight.',
        ),
      }),
    )
    .meta({ description: 'Closed outline, counterclockwise, a roller seat on +x.' }),
});

export const sprocketWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'sprocket',
  title: 'Sprocket',
  summary: 'Diameters, largest hub and full tooth outline of a sprocket for a chain of the table.',
  input,
  output,
  run,
  formulas: [
    'PD = P/sin(180°/N)',
    'OD = P·(0.6 + cot(180°/N))',
    'BD = PD − Dr',
    'CD = BD for even N, PD·cos(90°/N) − Dr for odd N',
    'MHD = P·(cot(180°/N) − 1) − 0.030 in',
    't = 0.93·W − 0.006 in',
  ],
  sources: [{ key: 'asme-b29-1', where: 'sprocket diameters and tooth form' }],
  example: {
    title: '13 teeth for #50 chain',
    input: { chain: '#50', teeth: 13 },
    expected: [
      { path: 'pitchDiameter', value: 66.335, tolerance: 0.0013 },
      { path: 'caliperDiameter', value: 55.692, tolerance: 0.0013 },
      { path: 'outsideDiameter', value: 73.932, tolerance: 0.0013 },
      { path: 'largestHub', value: 47.77, tolerance: 0.0013 },
    ],
    source: {
      key: 'asme-b29-1',
      where: 'formulas worked in inches to four decimals: 2.6116, 2.1926, 2.9107, 1.8807',
    },
  },
};

function run(given: z.output<typeof input>): Outcome<WorksheetRun<z.output<typeof output>>> {
  const chain = atPath(findChain(given.chain), 'chain');
  if (!chain.ok) return chain;
  const dimensions = sprocketDimensions(chain.value, given.teeth);
  const result = {
    pitchDiameter: dimensions.pitchDiameter,
    outsideDiameter: dimensions.outsideDiameter,
    rootDiameter: dimensions.rootDiameter,
    caliperDiameter: dimensions.caliperDiameter,
    largestHub: dimensions.largestHub,
    flangeThickness: dimensions.flangeThickness,
    outline: [...sprocketOutline(chain.value, given.teeth)],
  };
  return good({
    result,
    figures: sprocketFigures(chain.value, dimensions, { id: 'sprocket', of: 'sprocket' }),
  });
}
