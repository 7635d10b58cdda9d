import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { runWorksheet, worksheetNamed } from './index.ts';

const worksheet = worksheetNamed('quantity')!;

function answer(json: unknown): unknown {
  const outcome = runWorksheet(worksheet, json);
  return outcome.ok ? outcome.value.result : outcome.issues.map(describeIssue);
}

describe('the quantity worksheet', () => {
  test('gives a length in both systems with what 1/64 in leaves', () => {
    expect(answer({ text: '214.4 mm' })).toEqual({
      kind: 'length',
      value: 214.4,
      unit: 'mm',
      millimeters: 214.4,
      inches: 8.4409448818898,
      printed: { mm: '214.4 mm', in: '8 7/16 in + 0.003', both: '214.4 mm (8 7/16 in + 0.003)' },
    });
  });

  test('reads a gauge by what it is the gauge of', () => {
    // 0.065 in and 0.0598 in; see the gauge tables.
    expect(answer({ text: '16 ga', gauge: 'tube-wall' })).toMatchObject({
      millimeters: 1.651,
      inches: 0.065,
    });
    expect(answer({ text: '16 ga' })).toMatchObject({ millimeters: 1.51892, inches: 0.0598 });
  });

  test('gives other kinds in their own unit, without inches', () => {
    // 1 hp = 550 ft·lbf/s = 745.69987158227022 W.
    expect(answer({ text: '1 hp', kind: 'power' })).toEqual({
      kind: 'power',
      value: 745.69987158227,
      unit: 'W',
      printed: { mm: '0.75 kW', in: '1.00 hp', both: '0.75 kW (1.00 hp)' },
    });
    expect(answer({ text: '24° 30′', kind: 'angle' })).toMatchObject({ value: 24.5, unit: '°' });
    expect(answer({ text: '6:1', kind: 'ratio' })).toMatchObject({ value: 6, unit: '' });
  });

  // Exact factors of NIST SP 811: 1 ft·lbf = 1.3558179483314004 N·m, 1 hp = 745.69987158227022 W, 1 psi = 6894.757293 Pa.
  test.each([
    { text: '24°', kind: 'angle', value: 24 },
    { text: '35 lb-ft', kind: 'torque', value: 35 * 1.3558179483314 },
    { text: '5 hp', kind: 'power', value: 5 * 745.69987158227 },
    { text: '10 kg', kind: 'mass', value: 10 },
    { text: '90 km/h', kind: 'speed', value: 25 },
    { text: '3600 rpm', kind: 'angularSpeed', value: 3600 },
    { text: '30 psi', kind: 'pressure', value: 30 * 0.006894757293 },
    { text: '6:1', kind: 'ratio', value: 6 },
    { text: "5'3", kind: 'length', value: 1600.2 },
    { text: "5'", kind: 'length', value: 1524 },
    { text: '1/2"', kind: 'length', value: 12.7 },
  ])('finds the kind of $text by its unit', ({ text, kind, value }) => {
    const found = answer({ text }) as { kind: string; value: number };
    expect(found.kind).toBe(kind);
    expect(Math.abs(found.value / value - 1)).toBeLessThan(1e-9);
  });

  test('a number without a unit wants the unit of a length', () => {
    expect(answer({ text: '12' })).toEqual([expect.stringMatching(/^text: .*wanted a length with its unit/)]);
  });

  test('says what it cannot read', () => {
    expect(answer({ text: '12 mn' })).toEqual([
      'text: found "12 mn", wanted a length in mm, in, m, cm, ft, for example 12 mm',
    ]);
    expect(answer({ text: '12 mm', kind: 'lenght' })).toEqual([
      expect.stringContaining('did you mean "length"?'),
    ]);
    expect(answer({ txt: '12 mm' })).toEqual([
      'text: missing; wanted a text: a quantity as written on a part or a drawing, e.g. 8 3/16 in',
      'txt: unknown key "txt"; did you mean "text"?',
    ]);
  });
});
