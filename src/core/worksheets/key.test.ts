import { describe, expect, test } from 'vitest';
import { runWorksheet } from './index.ts';
import { keyWorksheet } from './key.ts';

describe('key', () => {
  test('a shaft under the table is refused', () => {
    const run = runWorksheet(keyWorksheet, { shaft: '1/4 in' });
    expect(run.ok).toBe(false);
    expect(!run.ok && run.issues[0]).toMatchObject({ code: 'out-of-range', path: 'shaft' });
  });

  test('says which series a size is of, in the result and in the working', () => {
    // A 20 mm shaft has the 3/16 in key of ASME B17.1 (over 9/16 to 7/8 in).
    const found = runWorksheet(keyWorksheet, { shaft: 20 });
    expect(found.ok && found.value.result).toMatchObject({ series: 'inch', width: 4.7625 });
    expect(found.ok && found.value.figures[0]?.name).toContain('inch');
    const own = runWorksheet(keyWorksheet, { shaft: 20, width: 6, height: 6 });
    expect(own.ok && own.value.result).toMatchObject({ series: 'own', width: 6 });
  });
});
