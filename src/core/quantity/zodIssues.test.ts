import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  angleField,
  countField,
  describeIssue,
  type Issue,
  issuesOfZod,
  lengthField,
  pathText,
  readWith,
} from './index.ts';

const item = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('spacer'), length: lengthField('l') }),
  z.strictObject({
    type: z.literal('sprocket'),
    teeth: countField('n', { min: 6 }),
    offset: lengthField('o').optional(),
  }),
]);
const point = z.union([
  lengthField('at'),
  z.strictObject({ along: lengthField('along'), up: lengthField('up') }),
]);
const schema = z.strictObject({
  name: z.string().max(20),
  steering: z.strictObject({ headAngle: angleField('a'), forkOffset: lengthField('o') }).optional(),
  stacks: z.record(z.string(), z.strictObject({ items: z.array(item).max(50) })),
  point: point.optional(),
  finish: z.enum(['paint', 'plate', 'none']).optional(),
  tilt: z.number().min(0).max(10).optional(),
  turns: z.number().gt(0).optional(),
  list: z.array(z.string()).min(1).optional(),
  nested: z.lazy(() => z.strictObject({ wheelbase: lengthField('w') })).optional(),
  size: z.tuple([lengthField('x'), lengthField('y')]).optional(),
  maybe: lengthField('x').optional(),
  even: z.number().multipleOf(2).optional(),
  label: z
    .string()
    .regex(/^[a-z]+$/, 'a name in small letters')
    .optional(),
  code: z.string().regex(/^\d$/).optional(),
  note: z.string().regex(/^\d$/).meta({ description: 'one digit' }).optional(),
  day: z.iso.date().optional(),
  named: z
    .record(
      z
        .string()
        .min(2)
        .regex(/^[a-z]+$/, 'a name in small letters'),
      lengthField('x'),
    )
    .optional(),
});

const good = { name: 'a', stacks: {} };

function issues(given: unknown): readonly Issue[] {
  const outcome = readWith(schema, given);
  return outcome.ok ? [] : outcome.issues;
}

const said = (given: unknown): string[] => issues(given).map(describeIssue);

describe('unknown keys', () => {
  test('one issue a key, with its path and the nearest key known there', () => {
    expect(issues({ ...good, stearing: {}, zzzzzz: 1 })).toEqual([
      { code: 'unknown-key', path: 'stearing', given: 'stearing', nearest: 'steering' },
      { code: 'unknown-key', path: 'zzzzzz', given: 'zzzzzz' },
    ]);
  });

  test('inside objects, records, lists, tagged unions, plain unions and lazy schemas', () => {
    const given = {
      ...good,
      steering: { headAngle: 24, forkOffset: 38, headangle: 3 },
      stacks: {
        rear: {
          items: [
            { type: 'spacer', length: 3, lenght: 4 },
            { type: 'sprocket', teeth: 12, ofset: 1 },
          ],
          item: 1,
        },
      },
      point: { along: 1, up: 2, alng: 3 },
      nested: { wheelbase: 1000, whelbase: 2 },
    };
    expect(said(given)).toEqual([
      'steering.headangle: unknown key "headangle"; did you mean "headAngle"?',
      'stacks.rear.items[0].lenght: unknown key "lenght"; did you mean "length"?',
      'stacks.rear.items[1].ofset: unknown key "ofset"; did you mean "offset"?',
      'stacks.rear.item: unknown key "item"; did you mean "items"?',
      'point.alng: unknown key "alng"; did you mean "along"?',
      'nested.whelbase: unknown key "whelbase"; did you mean "wheelbase"?',
    ]);
  });

  test('of thousands of unknown keys, all are named and the first hundred compared with the known', () => {
    const extra = Object.fromEntries(Array.from({ length: 20_000 }, (_, index) => [`steering${index}`, 1]));
    const found = issues({ ...good, ...extra });
    expect(found).toHaveLength(20_000);
    const compared = found.filter((issue) => issue.code === 'unknown-key' && issue.nearest === 'steering');
    expect(compared).toHaveLength(100);
  });
});

describe('other issues', () => {
  test('all at once, in one list', () => {
    expect(
      said({
        name: 7,
        steering: { headAngle: '24 mm' },
        stacks: {
          rear: {
            items: [
              { type: 'spacer', length: '12 mn' },
              { type: 'spaser' },
              { length: 3 },
              4,
              { type: 'sprocket', teeth: 5 },
            ],
          },
        },
      }),
    ).toEqual([
      'name: found 7, wanted a text',
      'steering.headAngle: found "24 mm", wanted an angle in °, rad, mrad, arcmin, rev ("mm" measures a length), for example 24° or 24 deg',
      'steering.forkOffset: missing; wanted a length, for example 12 mm or 1 1/2 in',
      'stacks.rear.items[0].length: found "12 mn", wanted a length in mm, in, m, cm, ft, for example 12 mm',
      'stacks.rear.items[1].type: no name (spacer, sprocket) is called "spaser"; did you mean "spacer"?',
      'stacks.rear.items[2].type: missing; wanted one of spacer, sprocket',
      'stacks.rear.items[3]: found 4, wanted an object { … }',
      'stacks.rear.items[4].teeth: found 5, wanted at least 6',
    ]);
  });

  test.each([
    [{}, ['name: missing; wanted a text', 'stacks: missing; wanted an object { … }']],
    [
      { ...good, finish: 'pant' },
      ['finish: no name (paint, plate, none) is called "pant"; did you mean "paint"?'],
    ],
    [{ ...good, finish: 3 }, ['finish: found 3, wanted one of paint, plate, none']],
    [{ ...good, tilt: 11 }, ['tilt: found 11, wanted at most 10']],
    [{ ...good, tilt: -1 }, ['tilt: found -1, wanted at least 0']],
    [{ ...good, turns: 0 }, ['turns: found 0, wanted more than 0']],
    [{ ...good, list: [] }, ['list: found 0 items, wanted at least 1 item']],
    [{ ...good, name: 'x'.repeat(30) }, ['name: found 30 characters, at most 20 characters are taken']],
    [
      { ...good, point: '3 mn' },
      ['point: found "3 mn", wanted a length in mm, in, m, cm, ft, for example 3 mm'],
    ],
    [{ ...good, point: { along: 1 } }, ['point.up: missing; wanted a length, for example 12 mm or 1 1/2 in']],
    [{ ...good, point: true }, ['point: found true, wanted another form']],
    [{ ...good, size: [1] }, ['size: found 1 item, wanted at least 2 items']],
    [
      { ...good, size: ['1 in', '2'] },
      ['size[1]: found "2", wanted a length with its unit, for example 2 mm or 2 in'],
    ],
    [{ ...good, maybe: true }, ['maybe: found true, wanted a length, for example 12 mm or 1 1/2 in']],
    [{ ...good, even: 3 }, ['even: found 3, wanted a multiple of 2']],
    [{ ...good, label: 'A' }, ['label: found the text "A", wanted a name in small letters']],
    [{ ...good, code: 'A' }, ['code: found the text "A", wanted a text that matches /^\\d$/']],
    [{ ...good, note: 'A' }, ['note: found the text "A", wanted a text: one digit']],
    [{ ...good, day: 'A' }, ['day: found the text "A", wanted a text of the form date']],
    [{ ...good, named: { 'A B': 1 } }, ['named."A B": found the name "A B", wanted a name in small letters']],
    [{ ...good, named: { a: 1 } }, ['named.a: found 1 character, wanted at least 2 characters']],
    [[], ['the file: found a list, wanted an object { … }']],
    [null, ['the file: found null, wanted an object { … }']],
    [undefined, ['the file: missing; wanted an object { … }']],
    ['text', ['the file: found the text "text", wanted an object { … }']],
  ])('%j', (given, wanted) => expect(said(given)).toEqual(wanted));

  test('without schema or data, an error still says what it can', () => {
    const error = schema.safeParse({
      name: 7,
      stacks: {},
      stearing: 1,
      steering: { headAngle: true, forkOffset: '1 mn' },
    }).error;
    expect(issuesOfZod(error!).map(describeIssue)).toEqual([
      'name: found number, wanted a text',
      'steering.headAngle: found boolean, wanted another form',
      'steering.forkOffset: found "1 mn", wanted a length in mm, in, m, cm, ft, for example 1 mm',
      'stearing: unknown key "stearing"',
    ]);
  });
});

test('what would make the schema library throw is refused before it', () => {
  expect(said(JSON.parse('{"stacks":{"rear":{"items":{"length":[{"toString":1}]}}}}'))).toEqual([
    'stacks.rear.items.length: found an object, wanted plain JSON',
  ]);
  const odd = Object.setPrototypeOf({}, { constructor: { name: { toString: 1 } } });
  expect(said({ ...good, named: { ab: odd } })).toEqual(['named.ab: found an object, wanted plain JSON']);
  expect(said({ ...good, named: { ab: Object.create(null) } })).toEqual([
    'named.ab: found an object, wanted plain JSON',
  ]);
  expect(said(JSON.parse('{"name":"a","stacks":{"rear":{"items":{"length":{}}}}}'))).toEqual([
    'stacks.rear.items: found an object, wanted a list [ … ]',
  ]);
});

test('any data at all is read or answered with issues that can be told, never an exception', () => {
  const key = fc.constantFrom(
    'name',
    'stacks',
    'steering',
    'headAngle',
    'items',
    'type',
    'length',
    'point',
    'along',
    'size',
    'named',
    'nested',
    '__proto__',
    'constructor',
    'toString',
    '',
    'a.b',
    '0',
  );
  const leaf = fc.oneof(
    fc.constantFrom('spacer', 'sprocket', '12 mm', '12 mn', '24°', ''),
    fc.double(),
    fc.boolean(),
    fc.constant(null),
    fc.constant(undefined),
  );
  const { tree } = fc.letrec((tie) => ({
    tree: fc.oneof(
      { depthSize: 'medium' },
      leaf,
      fc.array(tie('tree'), { maxLength: 4 }),
      fc.dictionary(key, tie('tree'), { maxKeys: 6 }),
    ),
  }));
  const file = fc.record(
    {
      name: leaf,
      stacks: fc.dictionary(key, tree),
      steering: tree,
      point: tree,
      size: tree,
      nested: tree,
      named: tree,
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(fc.oneof(tree, file), (generated) => {
      // As JSON brings it: plain objects, `__proto__` an own key.
      const given: unknown =
        generated === undefined ? undefined : JSON.parse(JSON.stringify(generated) ?? 'null');
      for (const text of said(given)) expect(text).toMatch(/^.+: .+/s);
    }),
    { numRuns: 2000 },
  );
});

test('paths read as in the file', () => {
  expect(pathText([])).toBe('');
  expect(pathText(['stacks', 'rearAxle', 'items', 2, 'length'])).toBe('stacks.rearAxle.items[2].length');
  expect(pathText([0, 'a'])).toBe('[0].a');
  expect(pathText(['a', 'odd key', 'b'])).toBe('a."odd key".b');
});
