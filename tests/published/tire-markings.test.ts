import { describe, expect, test } from 'vitest';
import { readTire } from '../../src/core/standards/index.ts';

const sizes = (marking: string) => {
  const read = readTire(marking);
  if (!read.ok) throw new Error(`not read: ${marking}`);
  return {
    diameter: read.value.outsideDiameter * 1000,
    width: read.value.width * 1000,
    rule: read.value.rule,
  };
};

describe('tire size markings by their rules', () => {
  // Metric rows: exact by the rule of UN Regulation 75, section 6 (code table from memory). Direct row: read directly.
  // Utility rows: trade notes (4.10/3.50-4 is 11 in; 4.80/4.00-8 is 16 in by the rule). Code rows: from memory.
  // Whole millimeters are printed, code-marked ones are rounded: 0.5 mm; exact rows 0.05 mm.
  test.each([
    { marking: '90/90-10', diameter: 416, width: 90, rule: 'metric', within: 0.05 },
    { marking: '145/70-6', diameter: 356, width: 145, rule: 'metric', within: 1 }, // 355.4 unrounded; the rim table says 152
    { marking: '120/70-12', diameter: 473, width: 120, rule: 'metric', within: 0.05 },
    { marking: '130/60-13', diameter: 486, width: 130, rule: 'metric', within: 0.05 },
    { marking: '205/50-10', diameter: 460, width: 205, rule: 'metric', within: 1 },
    { marking: '205/65-10', diameter: 520, width: 205, rule: 'metric', within: 1 },
    { marking: '215/50-12', diameter: 521, width: 215, rule: 'metric', within: 0.05 },
    { marking: '205/35-15', diameter: 525, width: 205, rule: 'metric', within: 0.05 },
    { marking: '13x5.00-6', diameter: 330.2, width: 127, rule: 'direct', within: 0.05 },
    { marking: '4.10/3.50-4', diameter: 279.4, width: 104.14, rule: 'utility', within: 0.05 },
    { marking: '4.80/4.00-8', diameter: 406.4, width: 121.92, rule: 'utility', within: 0.05 },
    { marking: '3.50-10', diameter: 432, width: 88.9, rule: 'code', within: 0.5 },
    { marking: '3.00-10', diameter: 406, width: 76.2, rule: 'code', within: 0.5 },
    { marking: '4.00-8', diameter: 406, width: 101.6, rule: 'code', within: 0.5 },
    { marking: '2.75-14', diameter: 496, width: 69.85, rule: 'code', within: 0.5 },
  ])('$marking', ({ marking, diameter, width, rule, within }) => {
    const got = sizes(marking);
    expect(Math.abs(got.diameter - diameter), `${got.diameter}`).toBeLessThanOrEqual(within);
    expect(Math.abs(got.width - width)).toBeLessThanOrEqual(0.5);
    expect(got.rule).toBe(rule);
  });

  // Published data sheets: outside diameter as made. The rule must lie within the doubt that it states.
  test.each([
    { marking: '205/50-10', sheet: 460 },
    { marking: '205/65-10', sheet: 520 },
    { marking: '215/50-12', sheet: 535 },
    { marking: '205/35-15', sheet: 550 },
    { marking: '4.10/3.50-4', sheet: 279.4 },
  ])('$marking: the stated doubt covers the data sheet', ({ marking, sheet }) => {
    const read = readTire(marking);
    if (!read.ok) throw new Error('not read');
    const { outsideDiameter, doubt } = read.value;
    expect(Math.abs(outsideDiameter * 1000 - sheet)).toBeLessThanOrEqual(doubt * outsideDiameter * 1000);
  });

  test('markings that a parts list calls equivalent differ by over 5 %', () => {
    // A public list equates 2.75-14 with 70/80-14; the rules give 496 against 468 mm.
    expect(sizes('70/80-14').diameter).toBeCloseTo(468, 6);
    expect(sizes('2.75-14').diameter / sizes('70/80-14').diameter - 1).toBeGreaterThan(0.05);
  });
});
