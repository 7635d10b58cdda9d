import { expect, test } from 'vitest';
import { z } from 'zod';
import { lengthField } from '../quantity/index.ts';
import { fieldForms } from './index.ts';

const rows = (schema: z.ZodType) => fieldForms(z.toJSONSchema(schema, { io: 'input' }) as object);

test('a field says its unit, its limits, its words and whether it may be left out', () => {
  const [fields] = rows(
    z.strictObject({
      wall: lengthField('Wall.', { above: 0, max: 20 }),
      hand: z.enum(['left', 'right']).optional(),
    }),
  );
  expect(fields).toEqual([
    {
      name: 'wall',
      unit: 'mm',
      description: 'Wall.',
      choices: [],
      limits: '> 0, ≤ 20',
      isRequired: true,
      forms: [],
    },
    {
      name: 'hand',
      unit: '',
      description: '',
      choices: ['left', 'right'],
      limits: '',
      isRequired: false,
      forms: [],
    },
  ]);
});

test('a length or a word keeps both', () => {
  const [fields] = rows(z.strictObject({ length: z.union([z.literal('solve'), lengthField('Long.')]) }));
  expect(fields?.[0]).toMatchObject({ unit: 'mm', choices: ['solve'], forms: [] });
});

test('fields inside: of lists, of things by name, of each form', () => {
  const fork = z.strictObject({ kind: z.literal('fork'), rake: lengthField('a') });
  const shock = z.strictObject({ kind: z.literal('shock') });
  const [fields] = rows(
    z.strictObject({
      items: z.array(z.strictObject({ id: z.string() })),
      nodes: z.record(z.string(), z.strictObject({ at: z.tuple([lengthField('x'), lengthField('y')]) })),
      front: z.discriminatedUnion('kind', [fork, shock]),
    }),
  );
  const names = (fields ?? []).map(({ name, forms }) => [
    name,
    forms.map((form) => form.map((field) => [field.name, field.unit])),
  ]);
  expect(names).toEqual([
    ['items', [[['id', '']]]],
    ['nodes', [[['at', 'mm, mm']]]],
    [
      'front',
      [
        [
          ['kind', ''],
          ['rake', 'mm'],
        ],
        [['kind', '']],
      ],
    ],
  ]);
});
