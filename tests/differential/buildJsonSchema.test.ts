import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { buildJsonSchema, mergePatch, readBuildValue } from '../../src/core/build/index.ts';

/** The published JSON Schema, judged by a general validator, against the reader. */
const validate = new Ajv2020({ strict: false, allErrors: true }).compile(buildJsonSchema());
const demo = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../demo/${name}.build.json`, import.meta.url), 'utf8')) as unknown;

test.each(['light', 'heavy'])('the %s demo is valid for both', (name) => {
  expect(validate(demo(name)), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  expect(readBuildValue(demo(name)).ok).toBe(true);
});

test.each([
  ['an unknown key', { steering: { forkOfset: 3 } }],
  ['a missing section', { wheels: null }],
  ['a number where an object is wanted', { frame: 3 }],
  ['a text where a list is wanted', { driveline: { stages: 'none' } }],
  ['a kind that does not exist', { brakes: { rear: { kind: 'rope' } } }],
  ['a name with a space', { frame: { nodes: { 'seat front': { from: 'origin' } } } }],
])('%s is refused by both', (_what, changes) => {
  const changed = mergePatch(demo('light'), changes);
  expect(validate(changed)).toBe(false);
  expect(readBuildValue(changed).ok).toBe(false);
});
