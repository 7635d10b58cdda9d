import { expect, test } from 'vitest';
import demo from '../../demo/light.build.json' with { type: 'json' };
import { readBuild } from '../core/build/index.ts';
import { starterBuild } from './starter.ts';

test('the starter reads without an issue and is the light demo under another name, nothing made or measured', () => {
  const text = starterBuild();
  const outcome = readBuild(text);
  expect(outcome.ok ? [] : outcome.issues).toEqual([]);
  const { about, $schema: _schema, ...rest } = JSON.parse(text);
  const { about: _about, $schema: _demoSchema, made: _made, measured: _measured, ...planned } = demo;
  expect(rest).toEqual(planned);
  expect(about.invented).toBeUndefined();
});

test('it is laid out for a person: no endless lines, what belongs together on one', () => {
  const lines = starterBuild().split('\n');
  expect(lines).toContain('  "rider": { "mass": "78 kg", "stature": "1.76 m", "inseam": "31 in" },');
  expect(lines.filter((line) => line.length > 250)).toEqual([]);
});
