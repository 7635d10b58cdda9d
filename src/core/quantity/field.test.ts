import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import * as quantity from './index.ts';
import {
  countField,
  describeIssue,
  issuesOfZod,
  type Length,
  lengthField,
  quantityMeta,
  ratioField,
  readWith,
  resultField,
  toEdge,
} from './index.ts';

const FIELDS = {
  length: [quantity.lengthField, 'mm', '1 in', 25.4],
  angle: [quantity.angleField, '°', '0.5 rad', 90 / Math.PI],
  mass: [quantity.massField, 'kg', '1 lb', 0.45359237],
  force: [quantity.forceField, 'N', '1 lbf', 4.4482216152605],
  torque: [quantity.torqueField, 'N·m', '1 lb-ft', 1.3558179483314],
  pressure: [quantity.pressureField, 'MPa', '1 bar', 0.1],
  power: [quantity.powerField, 'W', '1 kW', 1000],
  speed: [quantity.speedField, 'm/s', '36 km/h', 10],
  angularSpeed: [quantity.angularSpeedField, 'rpm', '1 rev/s', 60],
  area: [quantity.areaField, 'mm²', '1 in²', 645.16],
  density: [quantity.densityField, 'kg/m³', '7.85 g/cm³', 7850],
  inertia: [quantity.inertiaField, 'kg·m²', '1e5 kg·mm²', 0.1],
  stiffness: [quantity.stiffnessField, 'N/mm', '1000 N/m', 1],
  lineMass: [quantity.lineMassField, 'kg/m', '100 g/m', 0.1],
  secondMoment: [quantity.secondMomentField, 'mm⁴', '1 in⁴', 416231.4256],
  lineForce: [quantity.lineForceField, 'N/mm', '1 kN/m', 1],
  frequency: [quantity.frequencyField, 'Hz', '1 kHz', 1000],
  ratio: [quantity.ratioField, '', '15 %', 0.15],
  count: [quantity.countField, '', '12T', 12],
} as const;

describe.each(Object.entries(FIELDS))('the field of %s', (kind, [field, unit, text, edge]) => {
  const schema = z.strictObject({
    a: field('what it is', { min: 0.01, max: 1e6 }),
    b: field('more').optional(),
  });

  test('reads a number in the edge unit and a text alike, and goes back to the edge unit', () => {
    const fromText = readWith(schema, { a: text });
    if (!fromText.ok) throw new Error(describeIssue(fromText.issues[0]));
    const back = toEdge(schema, fromText.value) as { a: number };
    expect(back.a).toBeCloseTo(edge, 9);
    const fromNumber = readWith(schema, { a: back.a, b: back.a });
    if (!fromNumber.ok) throw new Error(describeIssue(fromNumber.issues[0]));
    expect(fromNumber.value.a / fromText.value.a).toBeCloseTo(1, 12);
    expect(toEdge(schema, fromNumber.value)).toEqual({ a: back.a, b: back.a });
  });

  test('its JSON Schema names kind and unit and takes number or text, checked by a general validator', () => {
    const json = z.toJSONSchema(schema, { io: 'input' }) as {
      properties: Record<string, unknown>;
      required: string[];
    };
    expect(json.properties.a).toMatchObject({
      description: 'what it is',
      kind,
      unit,
      anyOf: [{ type: 'number', minimum: 0.01, maximum: 1e6 }, { type: 'string' }],
    });
    expect(json.properties.b).toMatchObject({ description: 'more', unit });
    expect(json.required).toEqual(['a']);
    const validate = new Ajv2020({ strict: false }).compile(json);
    expect([validate({ a: 12 }), validate({ a: text }), validate({ a: 12, b: text })]).toEqual([
      true,
      true,
      true,
    ]);
    expect([validate({ a: 0 }), validate({ a: true }), validate({}), validate({ a: 12, c: 1 })]).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  test('refuses null, lists, objects, NaN and a missing value', () => {
    for (const given of [null, [], {}, Number.NaN, Number.POSITIVE_INFINITY, true]) {
      const outcome = readWith(schema, { a: given });
      expect(!outcome.ok && outcome.issues[0]).toMatchObject({ code: 'wrong-type', path: 'a' });
    }
    const missing = readWith(schema, {});
    expect(!missing.ok && missing.issues).toMatchObject([{ code: 'missing', path: 'a' }]);
  });
});

describe('limits, in edge units', () => {
  const said = (schema: z.ZodType, given: unknown): string[] => {
    const outcome = readWith(schema, given);
    return outcome.ok ? [] : outcome.issues.map(describeIssue);
  };

  test('hold for numbers and texts, ends included unless `above`', () => {
    const schema = z.strictObject({ d: lengthField('bore', { min: 5, max: 25.4 }) });
    for (const d of [5, 25.4, '1 in', '5 mm', '0.5 cm']) expect(said(schema, { d })).toEqual([]);
    expect(said(schema, { d: 4.99 })).toEqual(['d: found 4.99 mm, wanted 5 to 25.4 mm']);
    expect(said(schema, { d: '2 in' })).toEqual(['d: found 50.8 mm, wanted 5 to 25.4 mm']);
    const above = z.strictObject({ d: lengthField('wall', { above: 0 }) });
    expect(said(above, { d: 0 })).toEqual(['d: found 0 mm, wanted more than 0 mm']);
    expect(said(above, { d: '-1/2 in' })).toEqual(['d: found -12.7 mm, wanted more than 0 mm']);
    expect(said(z.strictObject({ d: lengthField('x', { above: 0, max: 9 }) }), { d: 10 })).toEqual([
      'd: found 10 mm, wanted more than 0 and at most 9 mm',
    ]);
    expect(said(z.strictObject({ d: ratioField('x', { max: 1 }) }), { d: '150 %' })).toEqual([
      'd: found 1.5, wanted at most 1',
    ]);
  });

  test('absurd size is refused without any limit given', () => {
    expect(said(z.strictObject({ d: lengthField('x') }), { d: 1e300 })[0]).toMatch(
      /at most 1000000000000 mm/,
    );
    expect(said(z.strictObject({ d: lengthField('x') }), { d: '999999999 km' })[0]).toMatch(
      /at most 1000000000000 mm/,
    );
  });

  test('a count is whole; a negative zero becomes zero', () => {
    expect(said(z.strictObject({ n: countField('teeth') }), { n: 2.5 })).toEqual([
      'n: found 2.5, wanted a whole number',
    ]);
    expect(said(z.strictObject({ n: countField('teeth') }), { n: '2.5' })[0]).toMatch(
      /wanted a whole number/,
    );
    const zero = readWith(z.strictObject({ d: lengthField('x') }), { d: -0 });
    expect(zero.ok && Object.is(zero.value.d, 0)).toBe(true);
  });

  test('a tube field reads bare gauge numbers as walls', () => {
    const outcome = readWith(z.strictObject({ wall: lengthField('wall', { gauge: 'tube-wall' }) }), {
      wall: '16 ga',
    });
    expect(outcome.ok && outcome.value.wall).toBeCloseTo(0.001651, 12);
  });
});

test('a default given by prefault is in edge units and shows in the JSON Schema', () => {
  const schema = z.strictObject({ a: lengthField('x').prefault(3), b: lengthField('y').prefault('1 in') });
  expect(readWith(schema, {})).toEqual({ ok: true, value: { a: 0.003, b: 0.0254 } });
  expect(z.toJSONSchema(schema, { io: 'input' })).toMatchObject({
    properties: { a: { default: 3, unit: 'mm' }, b: { default: '1 in', unit: 'mm' } },
  });
});

describe('toEdge walks', () => {
  const part = z.strictObject({ kind: z.literal('plate'), thickness: resultField('length', 't') });
  const rod = z.strictObject({ kind: z.literal('rod'), turn: resultField('angle', 'a') });
  const schema = z.strictObject({
    list: z.array(resultField('length', 'x')),
    pair: z.tuple([resultField('angle', 'a'), resultField('length', 'l')]),
    ordinates: z.array(z.tuple([resultField('angle', 'around'), resultField('length', 'along')])),
    byName: z.record(z.string(), resultField('torque', 't')),
    maybe: resultField('pressure', 'p').optional(),
    never: resultField('length', 'n').nullable(),
    shut: resultField('length', 'r').readonly(),
    parts: z.array(z.discriminatedUnion('kind', [part, rod])),
    either: z.union([z.string(), resultField('length', 'e')]),
    deep: z.lazy(() => part),
    plain: z.number(),
    yes: z.boolean(),
  });

  test('NaN does not pass', () => {
    expect(() => toEdge(resultField('length', 'x'), Number.NaN)).toThrow(RangeError);
  });

  test('every kind of schema', () => {
    const value = {
      list: [0.0127, 1],
      pair: [Math.PI, 0.5],
      ordinates: [[Math.PI / 2, 0.001]],
      byName: { a: 5 },
      maybe: 2e6,
      never: null,
      shut: 0.003,
      parts: [
        { kind: 'plate', thickness: 0.006 },
        { kind: 'rod', turn: Math.PI / 2 },
      ],
      either: 0.004,
      deep: { kind: 'plate', thickness: 0.008 },
      plain: 7,
      yes: true,
    };
    expect(toEdge(schema, value)).toEqual({
      list: [12.7, 1000],
      pair: [180, 500],
      ordinates: [[90, 1]],
      byName: { a: 5 },
      maybe: 2,
      never: null,
      shut: 3,
      parts: [
        { kind: 'plate', thickness: 6 },
        { kind: 'rod', turn: 90 },
      ],
      either: 4,
      deep: { kind: 'plate', thickness: 8 },
      plain: 7,
      yes: true,
    });
    expect(value.list).toEqual([0.0127, 1]);
    expect(z.toJSONSchema(schema, { io: 'output' }).properties?.shut).toMatchObject({ unit: 'mm' });
  });

  test('a schema tells its kind through no wrapper but its own', () => {
    expect(quantityMeta(lengthField('x'))).toMatchObject({ kind: 'length', unit: 'mm' });
    expect(quantityMeta(z.number())).toBeUndefined();
    expect(quantityMeta(z.number().meta({ description: 'plain' }))).toBeUndefined();
  });
});

test('a field has the branded type', () => {
  const outcome = readWith(lengthField('x'), 5);
  if (!outcome.ok) throw new Error('refused');
  const length: Length = outcome.value;
  expect(length).toBe(0.005);
  expect(issuesOfZod(new z.ZodError([]))).toEqual([]);
});
