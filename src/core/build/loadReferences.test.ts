import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBuildValue } from './read.ts';

const demo: unknown = JSON.parse(readFileSync('demo/light.build.json', 'utf8'));
const issuesWith = (loads: object): readonly object[] => {
  const read = readBuildValue({ ...(demo as object), loads });
  return read.ok ? [] : read.issues;
};

describe('names of the strength check that the tables do not hold are told, not replaced', () => {
  test.each<[string, object, object]>([
    ['filler', { filler: 'E7O' }, { code: 'not-in-table', path: 'loads.filler' }],
    [
      'weld detail',
      { weldDetail: 'tab-over-10' },
      { code: 'unknown-name', path: 'loads.weldDetail', nearest: 'tab-over-100' },
    ],
    [
      'bolt class',
      { bolts: { 'engine-plate': { grade: '8.9' } } },
      { code: 'not-in-table', path: 'loads.bolts.engine-plate.grade' },
    ],
    [
      'plate of bolts',
      { bolts: { 'engin-plate': {} } },
      { code: 'unknown-name', path: 'loads.bolts.engin-plate', nearest: 'engine-plate' },
    ],
    ['load case', { spectrum: [{ case: 'bump-frnt', perKilometer: 1 }] }, { path: 'loads.spectrum[0].case' }],
  ])('%s', (_what, loads, issue) => {
    expect(issuesWith(loads)).toMatchObject([issue]);
  });

  test('what the tables hold is taken in the ways that it is written', () => {
    const bolts = { 'engine-plate': { grade: 'Grade 8' } };
    expect(issuesWith({ filler: 'E7018', weldDetail: 'tab-over-100', bolts })).toEqual([]);
  });
});
