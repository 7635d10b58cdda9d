import { z } from 'zod';
import { flatPattern, type PlateBend, type PlateBendLengths, plateBend } from '../geometry/index.ts';
import {
  angleField,
  derived,
  type Figure,
  type FigureInput,
  good,
  lengthField,
  type Outcome,
  ratioField,
  resultField,
} from '../quantity/index.ts';
import type { WorksheetRun } from './worksheet.ts';

export const plateInput = z.strictObject({
  of: z.literal('plate'),
  thickness: lengthField('thickness of the plate', { above: 0, max: 100, gauge: 'steel-sheet' }),
  insideRadius: lengthField('inside radius of the bend', { min: 0, max: 1000 }),
  angle: angleField('bend angle, turned from flat; 90 is a square corner', { above: 0, max: 179 }),
  kFactor: ratioField(
    'unstretched layer from the inside face, as a share of the thickness; about 0.33 to 0.5',
    {
      min: 0,
      max: 1,
    },
  ),
  legs: z
    .array(lengthField('outside length of a leg, to the mold lines', { above: 0, max: 10000 }))
    .min(2)
    .max(50)
    .meta({ description: 'outside lengths of the legs in order; all bends between them are alike' })
    .optional(),
});

export const plateOutput = z.strictObject({
  of: z.literal('plate'),
  allowance: resultField('length', 'bend allowance: flat length that goes into a bend'),
  outsideSetback: resultField('length', 'outside setback: from the mold line to the start of the bend'),
  deduction: resultField('length', 'bend deduction: outside legs less this is the flat length'),
  flatLength: resultField('length', 'length of the flat plate, when legs are given').optional(),
  bendLines: z
    .array(resultField('length', 'from the edge of the first leg to the middle of a bend, on the flat'))
    .meta({ description: 'bend lines on the flat plate, when legs are given' })
    .optional(),
});

export const PLATE_FORMULAS: readonly string[] = [
  'plate: BA = θ·(R + K·T)',
  'plate: OSSB = (R + T)·tan(θ/2)',
  'plate: BD = 2·OSSB − BA',
  'plate: flat length = sum of outside legs − number of bends·BD',
];

type Output = z.output<typeof plateOutput>;

const HANDBOOK = { key: 'machinerys-handbook-31', where: 'p. 1421' };

export function runPlate(given: z.output<typeof plateInput>): Outcome<WorksheetRun<Output>> {
  const bend: PlateBend = {
    thickness: given.thickness,
    insideRadius: given.insideRadius,
    angle: given.angle,
    kFactor: given.kFactor,
  };
  const lengths = plateBend(bend);
  if (!lengths.ok) return lengths;
  const figures = bendFigures(bend, lengths.value);
  const result: Output = { of: 'plate', ...lengths.value };
  if (given.legs === undefined) return good({ result, figures });
  const bends = given.legs.slice(1).map(() => bend);
  const flat = flatPattern(given.legs, bends);
  if (!flat.ok) return flat;
  const { length } = flat.value;
  return good({
    result: { ...result, flatLength: length, bendLines: flat.value.bends.map((place) => place.middle) },
    figures: [...figures, flatFigure(given.legs, lengths.value.deduction, length)],
  });
}

function bendFigures(bend: PlateBend, lengths: PlateBendLengths): Figure[] {
  const inputs: FigureInput[] = [
    { name: 'T, thickness', value: bend.thickness, kind: 'length' },
    { name: 'R, inside radius', value: bend.insideRadius, kind: 'length' },
    { name: 'θ, bend angle', value: bend.angle, kind: 'angle' },
    { name: 'K, K factor', value: bend.kFactor, kind: 'ratio' },
  ];
  const { allowance, outsideSetback, deduction } = lengths;
  const geometry = derived('right triangle at the mold line');
  return [
    {
      id: 'bend.allowance',
      symbol: 'BA',
      name: 'bend allowance',
      value: allowance,
      kind: 'length',
      formula: 'θ·(R + K·T)',
      inputs,
      source: HANDBOOK,
    },
    {
      id: 'bend.outsideSetback',
      symbol: 'OSSB',
      name: 'outside setback',
      value: outsideSetback,
      kind: 'length',
      formula: '(R + T)·tan(θ/2)',
      inputs,
      source: geometry,
    },
    {
      id: 'bend.deduction',
      symbol: 'BD',
      name: 'bend deduction',
      value: deduction,
      kind: 'length',
      formula: '2·OSSB − BA',
      inputs,
      source: geometry,
    },
  ];
}

function flatFigure(legs: readonly number[], deduction: number, length: number): Figure {
  return {
    id: 'bend.flatLength',
    symbol: 'L',
    name: 'flat length',
    value: length,
    kind: 'length',
    formula: 'sum of legs − number of bends·BD',
    inputs: [
      ...legs.map((value, i): FigureInput => ({ name: `leg ${i + 1}`, value, kind: 'length' })),
      { name: 'BD, bend deduction', value: deduction, kind: 'length' },
      { name: 'number of bends', value: legs.length - 1, kind: 'count' },
    ],
    source: derived('legs less setbacks plus allowances'),
  };
}
