import { describe, expect, test } from 'vitest';
import { fitWorksheet } from './fit.ts';
import { runWorksheet } from './index.ts';
import { keyWorksheet } from './key.ts';

describe('limits and fit', () => {
  test('a 17 mm bearing bore on k6: 1 to 20 µm tight (class Normal ring from memory)', () => {
    const run = runWorksheet(fitWorksheet, { size: 17, hole: 'bearing bore', shaft: 'k6' });
    expect(run.ok && run.value.result).toMatchObject({
      leastInterference: expect.closeTo(0.001, 9),
      mostInterference: expect.closeTo(0.02, 9),
    });
  });

  test('a shaft class on a hole, an unknown class and a size outside are refused with their path', () => {
    const refused = (input: object) => {
      const run = runWorksheet(fitWorksheet, input);
      return run.ok ? 'ran' : run.issues[0].path;
    };
    expect(refused({ size: 20, hole: 'k6', shaft: 'h6' })).toBe('hole');
    expect(refused({ size: 20, hole: 'H7', shaft: 'x6' })).toBe('shaft');
    expect(refused({ size: 150, hole: 'H7', shaft: 'h6' })).toBe('size');
    expect(refused({ size: 5, hole: 'H7', shaft: 'bearing outside' })).toBe('size');
  });
});

describe('key', () => {
  test('a shaft under the table is refused', () => {
    const run = runWorksheet(keyWorksheet, { shaft: '1/4 in' });
    expect(run.ok).toBe(false);
    expect(!run.ok && run.issues[0]).toMatchObject({ code: 'out-of-range', path: 'shaft' });
  });
});
