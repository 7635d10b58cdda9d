import { expect, test } from 'vitest';
import { csvOf } from './csv.ts';

test('RFC 4180: CRLF after every row, quotes where needed and doubled', () => {
  expect(
    csvOf(
      ['part', 'note', 'mm'],
      [
        ['tab, seat', 'says "up"', 12.7],
        ['two\nlines', '', -0],
      ],
    ),
  ).toBe('part,note,mm\r\n"tab, seat","says ""up""",12.7\r\n"two\nlines",,0\r\n');
});

test.each([
  ['=1+1', "'=1+1"],
  ['@sum', "'@sum"],
  ['+cmd', "'+cmd"],
  ['-1+cmd|x', "'-1+cmd|x"],
  ['\tx', "'\tx"],
  ['-5 mm', '-5 mm'],
  ['+0.1', '+0.1'],
  ['-3/16 in', '-3/16 in'],
])('a spreadsheet does not run %j', (given, wanted) => {
  expect(csvOf(['a'], [[given]])).toBe(`a\r\n${wanted}\r\n`);
});

test('a number that is none and a row of another length are broken promises', () => {
  expect(() => csvOf(['a'], [[Number.NaN]])).toThrow('cannot write');
  expect(() => csvOf(['a'], [['x', 'y']])).toThrow('cells');
});
