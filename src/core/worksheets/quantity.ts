import { z } from 'zod';
import {
  bad,
  edgeUnit,
  type Figure,
  type GaugeStock,
  good,
  type Outcome,
  printQuantity,
  type QuantityKind,
  readQuantity,
  type SourceRef,
  toEdgeValue,
} from '../quantity/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const KINDS = [
  'length',
  'angle',
  'mass',
  'force',
  'torque',
  'pressure',
  'power',
  'speed',
  'angularSpeed',
  'area',
  'density',
  'inertia',
  'stiffness',
  'lineMass',
  'ratio',
  'count',
] as const satisfies readonly QuantityKind[];

const SOURCE: SourceRef = { key: 'nist-sp-811', where: 'appendix B.8' };

const input = z.strictObject({
  text: z.string().meta({ description: 'a quantity as written on a part or a drawing, e.g. 8 3/16 in' }),
  kind: z
    .enum(KINDS)
    .meta({
      description:
        "what the quantity measures; left out: what its unit says, a length where the unit may be one or is missing (5', a bare 12), and refused where it may be two others",
    })
    .optional(),
  gauge: z
    .enum(['steel-sheet', 'tube-wall', 'aluminum-sheet'])
    .default('steel-sheet')
    .meta({ description: 'what a gauge number without a word is the gauge of' }),
});

// The kind is only known at run time, so the numbers here are already in the units that their names or `unit` say.
const output = z.strictObject({
  kind: z.enum(KINDS).meta({ description: 'what it was read as' }),
  value: z.number().meta({ description: 'the value in `unit`, the unit of a plain number of this kind' }),
  unit: z.string().meta({ description: 'unit of `value`; empty for a ratio or a count' }),
  millimeters: z.number().meta({ description: 'for a length', unit: 'mm' }).optional(),
  inches: z.number().meta({ description: 'for a length', unit: 'in' }).optional(),
  printed: z
    .strictObject({ mm: z.string(), in: z.string(), both: z.string() })
    .meta({ description: 'as printed in each unit system; inches to 1/64 with what is left over' }),
});

/** Reads one quantity as builders write it and gives it in both unit systems. */
export const quantityWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'quantity',
  title: 'Read and convert a quantity',
  summary:
    'Reads a length, angle, force or other quantity as it is written in the shop and gives it in metric and inch units, fractions to 1/64 in with the remainder.',
  input,
  output,
  run,
  formulas: ['value = number × unit', '1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s² (exact)'],
  sources: [SOURCE, { key: 'msg-weights', where: 'steel sheet' }, { key: 'bwg-table', where: 'tube walls' }],
  example: {
    title: '8 3/16 in in millimeters',
    input: { text: '8 3/16 in', kind: 'length' },
    // 8.1875 · 25.4 by hand; the tolerance is the rounding of doubles.
    expected: [
      { path: 'value', value: 207.9625, tolerance: 1e-9 },
      { path: 'inches', value: 8.1875, tolerance: 1e-12 },
    ],
    source: SOURCE,
  },
};

type Kind = (typeof KINDS)[number];

function run(given: z.output<typeof input>): Outcome<WorksheetRun<z.output<typeof output>>> {
  const { text, gauge } = given;
  const found: Outcome<Kind> = given.kind === undefined ? kindOf(text, gauge) : good(given.kind);
  if (!found.ok) return found;
  const kind = found.value;
  const read = readQuantity(text, kind, { gauge });
  if (!read.ok) {
    const [first, ...rest] = read.issues;
    return bad({ ...first, path: 'text' }, ...rest);
  }
  const value = read.value;
  const result = {
    kind,
    value: toEdgeValue(value, kind),
    unit: edgeUnit(kind).symbol,
    ...(kind === 'length' ? { millimeters: toEdgeValue(value, 'length'), inches: inInches(value) } : {}),
    printed: {
      mm: printQuantity(value, kind, 'mm'),
      in: printQuantity(value, kind, 'in', { remainder: true }),
      both: printQuantity(value, kind, 'both', { remainder: true }),
    },
  };
  return good({ result, figures: [figure(value, kind)] });
}

/** What the unit of a text says; a length before all else, and what no kind can read, so that its reasons are told. */
function kindOf(text: string, gauge: GaugeStock): Outcome<Kind> {
  const fit = KINDS.filter((kind) => readQuantity(text, kind, { gauge }).ok);
  const [kind = 'length', ...others] = fit.includes('length') || isNumber(text) ? ['length' as const] : fit;
  if (others.length === 0) return good(kind);
  const reason = `"${text}" may be ${[kind, ...others].join(' or ')}: say which`;
  return bad({ code: 'conflict', path: 'kind', reason });
}

/** A number without a unit is a ratio and a count too: it says nothing. */
const isNumber = (text: string): boolean => readQuantity(text, 'count').ok || /^[\s\d.+-]+$/.test(text);

function figure(value: number, kind: QuantityKind): Figure {
  const { symbol, factor } = edgeUnit(kind);
  return {
    id: 'quantity.value',
    symbol: 'q',
    name: symbol === '' ? 'value' : `value in ${symbol}`,
    value,
    kind,
    formula: 'q = number × unit',
    inputs: [
      { name: 'number', value: value / factor, kind: 'ratio' },
      { name: 'unit', value: factor, kind },
    ],
    source: SOURCE,
  };
}

/** Free of the last-digit noise of the division. */
const inInches = (length: number): number => Number((length / 0.0254).toPrecision(14));
