import { z } from 'zod';
import { type Figure, good, lengthField, type Outcome, resultField } from '../quantity/index.ts';
import { type Key, keyForShaft, keyseatDepths } from '../standards/index.ts';
import { atPath } from './atPath.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  shaft: lengthField('Shaft diameter.', { above: 0, max: 100 }),
});

const output = z.object({
  width: resultField('length', 'Width of the square key.'),
  height: resultField('length', 'Height of the square key.'),
  keyseatDepth: resultField(
    'length',
    'Depth of the keyseat in the shaft, at its sides: half the key height.',
  ),
  shaftDepth: resultField('length', 'S: from the bottom of the keyseat to the far side of the shaft.'),
  hubDepth: resultField('length', 'T: from the top of the keyseat in the hub to the far side of the bore.'),
});

type Result = z.output<typeof output>;

const B17_1 = { key: 'asme-b17-1', where: 'table 1 and depth control values' } as const;

export const keyWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'key',
  title: 'Key and keyseat',
  summary:
    'The parallel key of an inch shaft, and the two depths that are measured when its keyseats are cut.',
  input,
  output,
  run,
  formulas: ['y = (D − √(D² − W²))/2', 'S = D − y − H/2', 'T = D − y + H/2 + 0.005 in'],
  sources: [B17_1],
  example: {
    title: 'A 3/4 in shaft takes a 3/16 in key',
    input: { shaft: '3/4 in' },
    expected: [
      { path: 'width', value: 4.7625, tolerance: 1e-6 },
      { path: 'shaftDepth', value: 16.358, tolerance: 0.013 },
      { path: 'hubDepth', value: 21.26, tolerance: 0.013 },
    ],
    source: { key: 'asme-b17-1', where: 'depth control values, 3/4 in: S 0.644, T 0.837 in, three decimals' },
  },
};

function run(given: z.output<typeof input>): Outcome<WorksheetRun<Result>> {
  const key = atPath(keyForShaft(given.shaft), 'shaft');
  if (!key.ok) return key;
  const { width, height } = key.value;
  const depths = keyseatDepths(given.shaft, width, height);
  const result: Result = {
    width,
    height,
    keyseatDepth: height / 2,
    shaftDepth: depths.shaft,
    hubDepth: depths.hub,
  };
  return good({ result, figures: figuresOf(given.shaft, key.value, result) });
}

function figuresOf(shaft: number, { width, height }: Key, result: Result): readonly Figure[] {
  const inputs = [
    { name: 'D, shaft diameter', value: shaft, kind: 'length' },
    { name: 'W, key width', value: width, kind: 'length' },
    { name: 'H, key height', value: height, kind: 'length' },
  ] as const;
  const base = { kind: 'length', inputs, source: B17_1 } as const;
  return [
    {
      ...base,
      id: 'key.shaftDepth',
      symbol: 'S',
      name: 'shaft depth',
      value: result.shaftDepth,
      formula: 'D − y − H/2, y = (D − √(D² − W²))/2',
    },
    {
      ...base,
      id: 'key.hubDepth',
      symbol: 'T',
      name: 'hub depth',
      value: result.hubDepth,
      formula: 'D − y + H/2 + 0.005 in',
    },
  ];
}
