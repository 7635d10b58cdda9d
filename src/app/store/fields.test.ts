import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildJsonSchema } from '../../core/index.ts';
import { fieldsOf, leavesOf, type Schema, wordsOf } from './fields.ts';
import { isObject, type Json, type JsonObject } from './json.ts';

const schema = buildJsonSchema() as Schema;
const demo = (name: string): JsonObject =>
  JSON.parse(readFileSync(new URL(`../../../demo/${name}.build.json`, import.meta.url), 'utf8'));

/** Values that are no object or list, counted without the tree of fields. */
function valuesIn(value: Json): number {
  if (Array.isArray(value)) return value.reduce((sum: number, item: Json) => sum + valuesIn(item), 0);
  if (!isObject(value)) return 1;
  return Object.values(value).reduce((sum: number, item) => sum + valuesIn(item), 0);
}

describe.each(['light', 'heavy', 'wrong'])('fields of the %s demo', (name) => {
  const file = demo(name);
  const leaves = leavesOf(fieldsOf(schema, file));

  test('every value has a field, but for the schema and version that the program writes', () => {
    expect(leaves.length).toBe(valuesIn(file) - 2);
  });

  test('texts with a unit are quantities, with the unit that a plain number would have', () => {
    const measured = leaves.filter(
      ({ value, path }) =>
        typeof value === 'string' &&
        /^-?[\d./ -]+ (mm|kg)$/.test(value) &&
        // A reading takes the kind of the field that it was read at.
        path[0] !== 'measured',
    );
    expect(measured.length).toBeGreaterThan(50);
    for (const { entry, unit, value, path } of measured) {
      expect(entry, path.join('.')).toBe('quantity');
      expect(unit, path.join('.')).toBe(String(value).endsWith('kg') ? 'kg' : 'mm');
    }
  });
});

test('fields that the schema knows and the file leaves out can be added', () => {
  const tree = fieldsOf(schema, demo('light'));
  const wheels = tree.children.find(({ label }) => label === 'wheels');
  const rear = wheels?.type === 'group' ? wheels.children[0] : undefined;
  const tire = rear?.type === 'group' ? rear.children.find(({ label }) => label === 'tire') : undefined;
  expect(tire?.type === 'group' && tire.missing.map(({ key }) => key)).toEqual(['diameter']);
});

test('the branch of a recipe is found by its fixed words', () => {
  const tree = fieldsOf(schema, demo('heavy'));
  const teeth = leavesOf(tree).find(({ path }) => path.at(-1) === 'drivenTeeth');
  expect(teeth).toMatchObject({ entry: 'quantity', value: expect.any(Number) });
  const recipe = leavesOf(tree).find(({ path }) => path.at(-1) === 'recipe');
  expect(recipe?.entry).toBe('fixed');
});

test('keys are read as words', () => {
  expect(wordsOf('headAngle')).toBe('head angle');
  expect(wordsOf('threadLeft')).toBe('thread left');
});
