import { describe, expect, test } from 'vitest';
import { runWorksheet } from './index.ts';
import { keyWorksheet } from './key.ts';

describe('key', () => {
  test('a shaft under the table is refused', () => {
    const run = runWorksheet(keyWorksheet, { shaft: '1/4 in' });
    expect(run.ok).toBe(false);
    expect(!run.ok && run.issues[0]).toMatchObject({ code: 'out-of-range', path: 'shaft' });
  });
});
