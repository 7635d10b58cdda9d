import { describe, expect, test } from 'vitest';
import { expectClose } from './frames.ts';

describe('the comparison of vectors', () => {
  test('passes what agrees and fails what does not', () => {
    expectClose([100, 1e-9, 0, 0.5, 0, 0], [100, 0, 0, 0.5, 0, 0], 1e-9);
    expect(() => expectClose([100.1, 0, 0, 0, 0, 0], [100, 0, 0, 0, 0, 0], 1e-4)).toThrow(/number 0/);
    // A rotation is not lost beside a large displacement.
    expect(() => expectClose([100, 0, 0, 0.5, 0, 0], [100, 0, 0, 0.4, 0, 0], 1e-3)).toThrow(/number 3/);
    expect(() => expectClose([Number.NaN], [1], 1)).toThrow();
    expect(() => expectClose([1], [1, 2], 1)).toThrow();
    expect(() => expectClose([1e-3, 0, 0], [0, 0, 0], 1)).toThrow();
  });
});
