import { z } from 'zod';
import type { Outcome } from '../quantity/index.ts';
import { PLATE_FORMULAS, plateInput, plateOutput, runPlate } from './bendPlate.ts';
import { runTube, TUBE_FORMULAS, tubeInput, tubeOutput } from './bendTube.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.discriminatedUnion('of', [plateInput, tubeInput]);
const output = z.discriminatedUnion('of', [plateOutput, tubeOutput]);

export const bendWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'bend',
  title: 'Bends in plate and tube',
  summary:
    'Plate: bend allowance, setback, deduction, flat length and bend lines. Tube: developed length and the bend schedule with marks, rotations and overbend.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<z.output<typeof output>>> =>
    given.of === 'plate' ? runPlate(given) : runTube(given),
  formulas: [...PLATE_FORMULAS, ...TUBE_FORMULAS],
  sources: [
    { key: 'machinerys-handbook-31', where: 'p. 1421' },
    { key: 'derived', where: 'neutral layer at K·T; tangent arc in a corner' },
  ],
  example: {
    title: '10 gauge sheet (0.1196 in) bent square over 3 mm, legs of 40 and 60 mm outside',
    input: { of: 'plate', thickness: 3.038, insideRadius: 3, angle: 90, kFactor: 0.44, legs: [40, 60] },
    expected: [
      { path: 'allowance', value: 6.8121, tolerance: 5e-5 },
      { path: 'outsideSetback', value: 6.038, tolerance: 5e-5 },
      { path: 'deduction', value: 5.2639, tolerance: 5e-5 },
      { path: 'flatLength', value: 94.7361, tolerance: 5e-5 },
    ],
    source: { key: 'derived', where: 'BA = π/2·(3 + 0.44·3.038); 100 − (2·6.038 − 6.8121)' },
  },
};
