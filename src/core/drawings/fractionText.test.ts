import { expect, test } from 'vitest';
import { fractionText } from './fractionText.ts';

test.each([
  ['8 7/16 in', '8\u2009⁷⁄₁₆ in'],
  ['1-1/2"', '1\u2009½"'],
  ['3/4 in shaft', '¾ in shaft'],
  ['15/64', '¹⁵⁄₆₄'],
  ['17 63/64 in and 1/4 in', '17\u2009⁶³⁄₆₄ in and ¼ in'],
  // Not fractions of an inch.
  ['shafts parallel to 1/300', 'shafts parallel to 1/300'],
  ['2/10', '2/10'],
  ['1/2/2026', '1/2/2026'],
  ['tile 1/2.5', 'tile 1/2.5'],
])('%s', (given, wanted) => {
  expect(fractionText(given)).toBe(wanted);
});
