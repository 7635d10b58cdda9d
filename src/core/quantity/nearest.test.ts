import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestName } from './index.ts';
import { editDistance } from './nearest.ts';

describe('nearestName', () => {
  const known = ['wheelbase', 'headAngle', 'rake', 'trail', 'a'];

  test.each([
    ['wheelbse', 'wheelbase'],
    ['whelebase', 'wheelbase'],
    ['head-angle', 'headAngle'],
    ['HEADANGLE', 'headAngle'],
    ['rak', 'rake'],
    ['trial', 'trail'],
    ['A', 'a'],
    ['b', undefined],
    ['', undefined],
    ['completelyOther', undefined],
  ])('%s', (given, wanted) => expect(nearestName(given, known)).toBe(wanted));

  test('nothing known, nothing near', () => expect(nearestName('x', [])).toBeUndefined());
});

describe('edit distance', () => {
  // The first two are the usual textbook examples; a swap of neighbors counts once.
  test.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['trial', 'trail', 1],
    ['', 'abc', 3],
    ['abc', 'abc', 0],
  ])('%s to %s', (a, b, distance) => expect(editDistance(a, b)).toBe(distance));

  test('is symmetric, zero only for equal texts, and never above the longer length', () => {
    const word = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });
});
