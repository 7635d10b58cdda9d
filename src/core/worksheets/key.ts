import { z } from 'zod';
import type { Length, Outcome, Torque } from '../quantity/index.ts';
import {
  bad,
  good,
  lengthField,
  pressureField,
  ratioField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import { type KeyseatDepths, keyForShaft, keyseatDepths } from '../standards/index.ts';
import {
  type KeyInput,
  keyFigures,
  keyLength,
  keyStress,
  keyseatFigures,
  longestKey,
  shearYieldShare,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  shaft: lengthField('Shaft diameter.', { above: 0, max: 500 }),
  torque: torqueField('Torque through the key; left out: size and depths only.', {
    min: 0,
    max: 1e6,
  }).optional(),
  length: lengthField('Length of key in contact, with torque.', { above: 0, max: 1000 }).optional(),
  width: lengthField('Width; left out: of the inch series, by the shaft.', { above: 0, max: 100 }).optional(),
  height: lengthField('Height; left out: square, or of the inch series by the shaft.', {
    above: 0,
    max: 100,
  }).optional(),
  yield: pressureField('Sy of the weakest of key, shaft and hub.', { above: 0, max: 5000 }).optional(),
  shearYield: oneOf('Shear yield: 0.577·Sy (distortion-energy) or 0.5·Sy (max-shear); left out: max-shear.', [
    'distortion-energy',
    'max-shear',
  ]).optional(),
  factor: ratioField('Factor for which a length is wanted.', { above: 0, max: 100 }).optional(),
});

const output = z.object({
  series: z.enum(['inch', 'own']).meta({
    description:
      'Of the size: inch, by table 1 of ASME B17.1, or own as given. Depths follow the inch rule either way. Metric keys (ISO 773) are not in the tables: for a metric shaft give width and height, and take the depths from its own standard, where they are not H/2.',
  }),
  width: resultField('length', 'W.'),
  height: resultField('length', 'H.'),
  keyseatDepth: resultField('length', 'Depth of the keyseat in the shaft, at its sides: H/2.'),
  shaftDepth: resultField('length', 'S: bottom of the keyseat to the far side of the shaft.'),
  hubDepth: resultField('length', 'T: top of the keyseat to the far side of the bore.'),
  force: resultField('force', 'Force on the key.').optional(),
  shear: resultField('pressure', 'Shear in the key.').optional(),
  bearing: resultField('pressure', 'Bearing pressure on key, shaft and hub.').optional(),
  shearFactor: resultField('ratio', 'Shear yield over shear.').optional(),
  bearingFactor: resultField('ratio', 'Yield over bearing pressure.').optional(),
  neededLength: resultField('length', 'Length for the wanted factor.').optional(),
  longest: resultField('length', '1.5 shafts: a longer key does not carry evenly.'),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const keyWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'key',
  title: 'Key and keyseat',
  summary:
    'Size of the inch key for a shaft, depths to measure by the inch rule, shear and bearing under a torque.',
  input,
  output,
  run,
  formulas: [
    'y = ½·(D − √(D² − W²)), S = D − y − H/2, T = D − y + H/2 + 0.005 in',
    'F = 2·T/D, τ = F/(W·L), σ = F/(L·H/2)',
  ],
  sources: [
    { key: 'asme-b17-1', where: 'table 1 and depth control values' },
    { key: 'mott', where: 'equations 11-1 to 11-4' },
    { key: 'shigley-9', where: 'section 7-7' },
  ],
  example: {
    title: '1 in shaft with its 1/4 in key, 1 in long, 50 N·m',
    input: { shaft: '1 in', torque: 50, length: '1 in' },
    expected: [
      { path: 'width', value: 6.35, tolerance: 1e-9 },
      { path: 'shaftDepth', value: 0.859 * 25.4, tolerance: 0.0005 * 25.4 },
      { path: 'hubDepth', value: 1.114 * 25.4, tolerance: 0.0005 * 25.4 },
    ],
    source: { key: 'asme-b17-1', where: 'depth control values, printed to a thousandth' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const { shaft, torque, length } = given;
  const size = sizeOf(given);
  if (!size.ok) return size;
  const { width, height } = size.value;
  if (width >= shaft)
    return bad({ code: 'conflict', path: 'width', reason: 'the key is narrower than the shaft' });
  if (height >= shaft)
    return bad({ code: 'conflict', path: 'height', reason: 'the key is lower than the shaft' });
  if (torque !== undefined && length === undefined)
    return bad({ code: 'missing', path: 'length', wanted: 'the length of the key, for its stresses' });
  const depths = keyseatDepths(shaft, width, height);
  const key = { shaft, width, height, ...depthsOf(depths) };
  const loaded =
    torque === undefined || length === undefined ? undefined : { ...size.value, shaft, torque, length };
  const stress = loaded && keyStress(loaded);
  const result: Result = {
    series: given.width === undefined ? 'inch' : 'own',
    width,
    height,
    keyseatDepth: height / 2,
    shaftDepth: depths.shaft,
    hubDepth: depths.hub,
    ...stress,
    ...(stress && loaded ? strengthOf(given, stress.shear, stress.bearing, loaded.torque) : {}),
    ...(loaded ? neededOf(given, loaded) : {}),
    longest: longestKey(shaft),
  };
  const names = { id: 'key', of: 'key' };
  const figures = [
    ...keyseatFigures(key, names),
    ...(stress && loaded ? keyFigures(loaded, stress, names) : []),
  ];
  return good({ result, figures });
}

const depthsOf = ({ shaft, hub }: KeyseatDepths) => ({ shaftDepth: shaft, hubDepth: hub });

function sizeOf(given: Input): Outcome<{ readonly width: Length; readonly height: Length }> {
  const { width, height } = given;
  if (width !== undefined) return good({ width, height: height ?? width });
  const key = atPath(keyForShaft(given.shaft), 'shaft');
  return key.ok ? good({ width: key.value.width, height: height ?? key.value.height }) : key;
}

function strengthOf(given: Input, shear: number, bearing: number, torque: Torque) {
  if (given.yield === undefined || torque === 0) return {};
  const share = shearYieldShare(given.shearYield ?? 'max-shear');
  return { shearFactor: (share * given.yield) / shear, bearingFactor: given.yield / bearing };
}

function neededOf(given: Input, key: KeyInput) {
  if (given.yield === undefined || given.factor === undefined) return {};
  const needed = keyLength(key, given.yield, given.factor, given.shearYield ?? 'max-shear');
  return { neededLength: Math.max(needed.shear, needed.bearing) };
}
