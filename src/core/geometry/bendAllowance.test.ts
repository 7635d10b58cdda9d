import { describe, expect, test } from 'vitest';
import { degrees, inches, megapascals, mm } from '../quantity/index.ts';
import { flatPattern, overbentAngle, plateBend, sprungBack } from './bendAllowance.ts';

const square = { thickness: mm(3), insideRadius: mm(3), angle: degrees(90), kFactor: 0.44 };

test('bends unlike each other: flat = legs − deductions, bend lines in order', () => {
  const other = { ...square, angle: degrees(60), insideRadius: mm(5) };
  const flat = flatPattern([mm(30), mm(50), mm(20)], [square, other]);
  const [a, b] = [plateBend(square), plateBend(other)];
  if (!flat.ok || !a.ok || !b.ok) throw new Error('refused');
  expect(flat.value.length).toBeCloseTo(mm(100) - a.value.deduction - b.value.deduction, 15);
  expect(flat.value.bends[0]!.middle).toBeCloseTo(mm(30) - a.value.deduction / 2, 15);
  expect(flat.value.bends[1]!.middle).toBeCloseTo(flat.value.length - mm(20) + b.value.deduction / 2, 15);
});

describe('springback', () => {
  // From memory of a manufacturing text's worked example: 0.0359 in, R 0.5 in, Y 40 ksi, E 29e6 psi: Ri/Rf 0.942, Rf 0.531.
  test('sheet of 0.0359 in over 0.5 in', () => {
    const ksi = 6.894757293168361; // MPa
    const result = sprungBack({
      thickness: inches(0.0359),
      radius: inches(0.5),
      angle: degrees(90),
      yieldStrength: megapascals(40 * ksi),
      elasticModulus: megapascals(29000 * ksi),
    });
    if (!result.ok) throw new Error('refused');
    expect(Math.abs(inches(0.5) / result.value.radius - 0.942397)).toBeLessThan(1e-6);
    expect(Math.abs(result.value.radius - inches(0.530562))).toBeLessThan(inches(1e-6));
  });

  // Derived from the same formula apart from this program.
  test.each([
    [3, 250, 3.01102, 89.78],
    [10, 350, 10.17369, 88.661],
  ])('3 mm plate over %f mm, yield %f MPa', (radius, strength, wantedRadius, wantedAngle) => {
    const result = sprungBack({
      thickness: mm(3),
      radius: mm(radius),
      angle: degrees(90),
      yieldStrength: megapascals(strength),
      elasticModulus: megapascals(205000),
    });
    if (!result.ok) throw new Error('refused');
    expect(Math.abs(result.value.radius - mm(wantedRadius))).toBeLessThan(mm(6e-6));
    expect(Math.abs(result.value.angle - degrees(wantedAngle))).toBeLessThan(degrees(6e-4));
  });

  test('a plate that springs back straight is refused', () => {
    const gentle = {
      thickness: mm(1),
      radius: mm(500),
      angle: 1,
      yieldStrength: megapascals(350),
      elasticModulus: megapascals(205000),
    };
    expect(sprungBack(gentle).ok).toBe(false);
  });

  test('the overbend adds what springs back', () => {
    expect(overbentAngle(degrees(90), degrees(3))).toBeCloseTo(degrees(93), 15);
  });
});

describe('bends that can not be', () => {
  test.each([
    ['thickness', { ...square, thickness: 0 }],
    ['insideRadius', { ...square, insideRadius: -0.001 }],
    ['angle', { ...square, angle: Math.PI }],
    ['angle', { ...square, angle: Number.NaN }],
    ['kFactor', { ...square, kFactor: 1.1 }],
  ])('%s', (path, bend) => {
    const outcome = plateBend(bend);
    expect(outcome.ok ? [] : outcome.issues.map((issue) => issue.path)).toEqual([path]);
  });

  test('legs that do not fit', () => {
    expect(flatPattern([mm(30)], [square]).ok).toBe(false);
    expect(flatPattern([mm(30), mm(5)], [square]).ok).toBe(false);
    expect(flatPattern([mm(30), mm(30)], [{ ...square, kFactor: 2 }]).ok).toBe(false);
  });
});
