import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  degrees,
  edgeUnit,
  inches,
  mm,
  newtonMeters,
  poundsForce,
  printApart,
  printFineInches,
  printInches,
  printMillimeters,
  printNumber,
  printQuantity,
  type QuantityKind,
  readQuantity,
  toEdgeValue,
} from './index.ts';

describe('inches', () => {
  test.each([
    [8.4375, '8 7/16 in'],
    [8.4415, '8 7/16 in'],
    [0.5, '1/2 in'],
    [3, '3 in'],
    [0, '0 in'],
    [1 / 64, '1/64 in'],
    [0.999, '1 in'],
    [2.9999, '3 in'],
    [-8.4375, '-8 7/16 in'],
    [-0.25, '-1/4 in'],
    [-0.001, '0 in'],
    [63, '63 in'],
  ])('%d in prints as %s', (value, text) => expect(printInches(inches(value))).toBe(text));

  test.each([
    [8.4415, '8 7/16 in + 0.004'],
    [8.4335, '8 7/16 in - 0.004'],
    [8.4375, '8 7/16 in'],
    [8.43779, '8 7/16 in'],
    [-8.4415, '-8 7/16 in - 0.004'],
    [0.004, '0 in + 0.004'],
    [-0.004, '0 in - 0.004'],
  ])('%d in with its remainder prints as %s', (value, text) =>
    expect(printInches(inches(value), { remainder: true })).toBe(text),
  );
});

describe('millimeters and other steps', () => {
  test.each([
    [214.3125, 0.1, '214.3 mm'],
    [214.3125, 0.01, '214.31 mm'],
    [214.3125, 1, '214 mm'],
    [214.3125, 0.5, '214.5 mm'],
    [214.3125, 0.25, '214.25 mm'],
    [214.3125, 10, '210 mm'],
    [12, 0.1, '12.0 mm'],
    [-12.34, 0.1, '-12.3 mm'],
    [-0.04, 0.1, '0.0 mm'],
    // 0.15 / 0.1 is 1.4999999999999998 in doubles; a half goes up all the same.
    [0.15, 0.1, '0.2 mm'],
  ])('%d mm to %d prints as %s', (value, step, text) => expect(printMillimeters(mm(value), step)).toBe(text));

  test('default is 0.1 mm', () => expect(printMillimeters(mm(207.9625))).toBe('208.0 mm'));

  test('a value that is not finite, or a step that is none, is a fault of the caller', () => {
    expect(() => printMillimeters(Number.NaN)).toThrow(RangeError);
    expect(() => printInches(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    for (const step of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => printNumber(1, step)).toThrow(RangeError);
  });
});

describe('printQuantity', () => {
  test.each([
    [inches(8.4375), 'length', '214.3 mm', '8 7/16 in', '214.3 mm (8 7/16 in)'],
    [degrees(24.5), 'angle', '24.5°', '24.5°', '24.5°'],
    [2, 'mass', '2.00 kg', '4.41 lb', '2.00 kg (4.41 lb)'],
    [poundsForce(324), 'force', '1441 N', '324 lbf', '1441 N (324 lbf)'],
    [newtonMeters(11), 'torque', '11.0 N·m', '8.1 lb-ft', '11.0 N·m (8.1 lb-ft)'],
    [220_000, 'pressure', '0.22 MPa', '32 psi', '0.22 MPa (32 psi)'],
    [4101, 'power', '4.10 kW', '5.50 hp', '4.10 kW (5.50 hp)'],
    [12.5, 'speed', '45.0 km/h', '28.0 mph', '45.0 km/h (28.0 mph)'],
    [120 * Math.PI, 'angularSpeed', '3600 rpm', '3600 rpm', '3600 rpm'],
    [6, 'ratio', '6.000', '6.000', '6.000'],
    [-3, 'count', '-3', '-3', '-3'],
  ] as const)('%d of %s', (value, kind, metric, customary, both) => {
    expect(printQuantity(value, kind, 'mm')).toBe(metric);
    expect(printQuantity(value, kind, 'in')).toBe(customary);
    expect(printQuantity(value, kind, 'both')).toBe(both);
  });

  test('options reach both systems', () => {
    expect(printQuantity(inches(8.4415), 'length', 'both', { resolution: 0.01, remainder: true })).toBe(
      '214.41 mm (8 7/16 in + 0.004)',
    );
    // 0.001 N·m is 0.0007 lb-ft: the step below it by tens is 0.0001.
    expect(printQuantity(1, 'torque', 'both', { resolution: 0.001 })).toBe('1.000 N·m (0.7376 lb-ft)');
    expect(printQuantity(1, 'force', 'both', { resolution: 0.1 })).toBe('1.0 N (0.22 lbf)');
  });
});

describe('there and back', () => {
  const length = fc.double({ min: -5000, max: 5000, noNaN: true });
  const read = (text: string, kind: QuantityKind): number => {
    const outcome = readQuantity(text, kind);
    if (!outcome.ok) throw new Error(text);
    return outcome.value;
  };

  test('printed inches read back within 1/128 in, with the remainder within 0.0005 in, either sign', () => {
    fc.assert(
      fc.property(length, (value) => {
        const given = mm(value);
        // 1e-12 m: doubles at 5 m.
        expect(Math.abs(read(printInches(given), 'length') - given)).toBeLessThanOrEqual(
          0.0254 / 128 + 1e-12,
        );
        const finer = read(printInches(given, { remainder: true }), 'length');
        expect(Math.abs(finer - given)).toBeLessThanOrEqual(0.0005 * 0.0254 + 1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  test('printed millimeters read back within half a step', () => {
    fc.assert(
      fc.property(length, fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1, 5), (value, step) => {
        const back = read(printMillimeters(mm(value), step), 'length') * 1000;
        expect(Math.abs(back - value)).toBeLessThanOrEqual(step / 2 + 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  test('millimeters to inches to millimeters', () => {
    fc.assert(
      fc.property(length, (value) => {
        const asInches = mm(value) / inches(1);
        // Four roundings of 2^-53 each; 1e-300 for numbers too small to keep their digits.
        expect(Math.abs(inches(asInches) * 1000 - value)).toBeLessThanOrEqual(
          4e-15 * Math.abs(value) + 1e-300,
        );
      }),
    );
  });

  test('64ths print and read exactly, in every denominator', () => {
    for (let parts = -640; parts <= 640; parts++) {
      const text = printInches(inches(parts / 64));
      expect(read(text, 'length')).toBe(inches(parts / 64) + 0);
      const bottom = /\/(\d+)/.exec(text)?.[1];
      if (bottom) expect([2, 4, 8, 16, 32, 64]).toContain(Number(bottom));
    }
  });

  test('every kind prints in both systems to texts that read back', () => {
    const kinds = [
      'angle',
      'mass',
      'force',
      'torque',
      'pressure',
      'power',
      'speed',
      'angularSpeed',
      'area',
      'density',
      'inertia',
      'stiffness',
      'lineMass',
      'ratio',
      'count',
    ] as const;
    for (const kind of kinds)
      for (const edge of [-3, 7, 1234]) {
        const value = edge * edgeUnit(kind).factor;
        for (const system of ['mm', 'in'] as const) {
          const back = read(printQuantity(value, kind, system, { resolution: 1e-6 }), kind);
          const wanted = kind === 'count' ? edge : value;
          // Six decimals of the largest unit printed (kW for 3 W) leave at least four digits.
          expect(Math.abs(back - wanted), kind).toBeLessThanOrEqual(2e-4 * Math.abs(wanted));
        }
      }
  });

  test('edge units: SI over the factor', () => {
    expect(edgeUnit('length')).toEqual({ symbol: 'mm', factor: 0.001 });
    expect(edgeUnit('pressure')).toEqual({ symbol: 'MPa', factor: 1e6 });
    expect(edgeUnit('stiffness')).toEqual({ symbol: 'N/mm', factor: 1000 });
    expect(edgeUnit('power')).toEqual({ symbol: 'W', factor: 1 });
    expect(edgeUnit('angle').factor).toBeCloseTo(Math.PI / 180, 15);
    expect(edgeUnit('area').symbol).toBe('mm²');
    expect(toEdgeValue(inches(1.5), 'length')).toBe(38.1);
    expect(toEdgeValue(degrees(30), 'angle')).toBe(30);
  });
});

describe('lengths that must fit', () => {
  // Gauge walls and a chain's center are no 64ths; decimals by hand: 354.71 / 25.4 = 13.96496.
  test.each([
    [0.134, '0.134 in'],
    [0.095, '0.095 in'],
    [354.71 / 25.4, '13.965 in'],
    [12 / 25.4, '0.472 in'],
    [0.5 / 25.4, '0.020 in'],
    [0.039 / 25.4, '0.0015 in'],
    [-0.039 / 25.4, '-0.0015 in'],
    [0.001 / 25.4, '0.00004 in'],
    [0.75, '3/4 in'],
    [1 / 64, '1/64 in'],
    [0, '0 in'],
  ])('%d in prints as %s', (value, text) => expect(printFineInches(inches(value))).toBe(text));

  test('three figures below 1 mm', () => {
    const print = (value: number) => printQuantity(mm(value), 'length', 'mm', { fine: true });
    expect([0.039, 0.15, 0.9996, 1.04, 12, 0].map(print)).toEqual([
      '0.0390 mm',
      '0.150 mm',
      '1.000 mm',
      '1.0 mm',
      '12.0 mm',
      '0.0 mm',
    ]);
  });

  test('read back within half a step of either', () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (given) => {
        const read = readQuantity(printFineInches(given), 'length');
        const back = read.ok ? read.value : Number.NaN;
        // Half a thousandth of an inch, and the room that a fraction is given.
        expect(Math.abs(back - given)).toBeLessThanOrEqual(inches(0.0005) * (1 + 1e-9));
      }),
    );
  });
});

describe('value beside its limit', () => {
  test.each([
    [mm(0.039), mm(0.033), 'length', ['0.0390 mm (0.0015 in)', '0.0330 mm (0.0013 in)']],
    [mm(100.04), mm(100.01), 'length', ['100.04 mm (3.939 in)', '100.01 mm (3 15/16 in)']],
    [mm(80), mm(80), 'length', ['80.0 mm (3 5/32 in)', '80.0 mm (3 5/32 in)']],
  ] as const)('%d against %d', (value, limit, kind, texts) =>
    expect(printApart(value, limit, kind, 'both')).toEqual(texts),
  );

  test('what differs is told apart, whatever the kind', () => {
    const [value, limit] = printApart(1001e3, 1002e3, 'pressure', 'mm');
    expect(value).not.toBe(limit);
  });
});
