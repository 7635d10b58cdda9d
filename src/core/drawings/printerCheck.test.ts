import { describe, expect, test } from 'vitest';
import { correctionOf, judgePrinter } from './printerCheck.ts';

/** Three prints of one plate with 150 mm rulers and a 162 mm hole spacing; numbers worked by hand. */
const judged = (across: number, down: number) => {
  const result = judgePrinter({ across, down, nominal: 150, spacing: 162 });
  if (!result.ok) throw new Error('readings are in range');
  return result.value;
};

describe('three prints', () => {
  test('145.2 / 145.1: a fitted page, not to be cut from', () => {
    const first = judged(145.2, 145.1);
    expect(first.verdict).toBe('reject');
    expect(first.across.toFixed(3)).toBe('0.968');
    // 162 · (1 − 0.968) = 5.2; the worse axis, 145.1, gives 5.29.
    expect(162 * (1 - first.across)).toBeCloseTo(5.2, 1);
    expect(first.text).toContain('fit to page');
    expect(first.text).toContain('actual size');
    expect(first.text).toMatch(/162 mm spacing would be 5\.[23] mm short/);
  });

  test('149.4 / 150.1: 0.996 across, 0.65 mm short on 162, compensated', () => {
    const second = judged(149.4, 150.1);
    expect(second.verdict).toBe('compensate');
    expect(second.across).toBeCloseTo(0.996, 9);
    expect(second.error).toBeCloseTo(-0.65, 2);
    expect(second.text).toContain('0.65 mm short');
    // The same words stand on the sheets that are corrected: nothing may ask to print them anew.
    expect(second.text).not.toMatch(/print a/i);
    expect(correctionOf(second).across).toBeCloseTo(1 / 0.996, 12);
  });

  test('150.0 / 150.1: pass', () => {
    expect(judged(150, 150.1).verdict).toBe('pass');
  });
});

test.each([
  [100.25, 99.75, 'pass'],
  [100.26, 100, 'compensate'],
  [99.3, 99.3, 'compensate'],
  [98.7, 98.7, 'reject'],
  [98.7, 99.6, 'compensate'],
  [97.9, 100, 'reject'],
  [94, 94, 'reject'],
  [103, 103, 'reject'],
])('%d / %d of 100 mm: %s', (across, down, verdict) => {
  const result = judgePrinter({ across, down });
  expect(result.ok && result.value.verdict).toBe(verdict);
});

test('a reading that is no reading of the bar is an issue for each axis', () => {
  const result = judgePrinter({ across: 4, down: Number.NaN });
  expect(result.ok ? [] : result.issues.map((i) => i.path)).toEqual(['printer.across', 'printer.down']);
});
