import { expect, test } from 'vitest';
import { describeIssue, type Issue } from './index.ts';

test.each<[Issue, string]>([
  [
    { code: 'not-json', path: '', reason: 'a brace is missing' },
    'the file: not readable as JSON: a brace is missing',
  ],
  [
    {
      code: 'unreadable',
      path: 'a.b',
      at: { line: 3, column: 9 },
      given: '12 mn',
      wanted: 'a length',
      example: '12 mm',
    },
    'a.b (line 3, column 9): found "12 mn", wanted a length, for example 12 mm',
  ],
  [{ code: 'wrong-type', path: 'a', given: 'true', wanted: 'a text' }, 'a: found true, wanted a text'],
  [{ code: 'missing', path: 'a', wanted: 'a text' }, 'a: missing; wanted a text'],
  [{ code: 'unknown-key', path: 'a', given: 'a' }, 'a: unknown key "a"'],
  [{ code: 'unknown-key', path: 'a', given: 'a', nearest: 'b' }, 'a: unknown key "a"; did you mean "b"?'],
  [{ code: 'unknown-name', path: 'a', given: 'x', wanted: 'node' }, 'a: no node is called "x"'],
  [{ code: 'duplicate-name', path: 'a', given: 'x' }, 'a: the name "x" is used more than once'],
  [{ code: 'out-of-range', path: 'a', given: 3, min: 4, unit: 'mm' }, 'a: found 3 mm, wanted at least 4 mm'],
  [{ code: 'out-of-range', path: 'a', given: 3, max: 2, unit: 'mm' }, 'a: found 3 mm, wanted at most 2 mm'],
  [{ code: 'out-of-range', path: 'a', given: 3, min: 1, max: 2, unit: '' }, 'a: found 3, wanted 1 to 2'],
  [
    { code: 'out-of-range', path: 'a', given: 0, above: 0, unit: 'kg' },
    'a: found 0 kg, wanted more than 0 kg',
  ],
  [
    { code: 'out-of-range', path: 'a', given: 0, above: 0, max: 9, unit: 'kg' },
    'a: found 0 kg, wanted more than 0 and at most 9 kg',
  ],
  [
    { code: 'not-in-table', path: 'a', given: '31', nearest: ['30', '32'] },
    'a: "31" is not in the table; nearest: 30, 32',
  ],
  [
    { code: 'too-large', path: 'a', given: 9, max: 5, unit: 'items' },
    'a: found 9 items, at most 5 items are taken',
  ],
  [
    { code: 'version', path: 'version', given: '9', newest: 1 },
    'version: file version 9 is not known; this program reads up to version 1',
  ],
  [{ code: 'conflict', path: 'a', reason: 'both are given' }, 'a: both are given'],
])('%o', (issue, text) => expect(describeIssue(issue)).toBe(text));
