import { describe, expect, test } from 'vitest';
import { type OdeProblem, solveOde } from './index.ts';

const oscillator: OdeProblem = {
  rates: (_t, y, rate) => {
    rate[0] = y[1]!;
    rate[1] = -y[0]!;
  },
  start: [1, 0],
  from: 0,
  to: 20,
};

const tight = { relative: 1e-12, absolute: 1e-14 };

describe('against closed forms', () => {
  test('exponential, oscillator and a rate that depends on time', () => {
    const growth = solveOde(
      { rates: (_t, y, rate) => void rate.fill(-0.3 * y[0]!), start: [2], from: 0, to: 10 },
      tight,
    );
    expect(growth.ending).toBe('end');
    // Global error is a few times the local tolerance of 1e-12.
    expect(Math.abs(growth.state[0]! - 2 * Math.exp(-3))).toBeLessThan(1e-12);
    const swing = solveOde(oscillator, tight);
    expect(Math.abs(swing.state[0]! - Math.cos(20))).toBeLessThan(2e-11);
    expect(Math.abs(swing.state[1]! + Math.sin(20))).toBeLessThan(2e-11);
    const timed = solveOde(
      { rates: (t, _y, rate) => void rate.fill(Math.cos(t * t) * 2 * t), start: [0], from: 0, to: 3 },
      tight,
    );
    expect(Math.abs(timed.state[0]! - Math.sin(9))).toBeLessThan(1e-10);
  });

  test('a quadrature of degree four is exact but for rounding: the order conditions hold', () => {
    const whole = solveOde(
      { rates: (t, _y, rate) => void rate.fill(5 * t ** 4), start: [0], from: 0, to: 2 },
      { relative: 1, absolute: 1e9, firstStep: 2 },
    );
    expect(whole.steps).toBe(1);
    expect(whole.state[0]).toBeCloseTo(32, 12);
  });

  test('a state that ends early in one quarter of the interval gives the same as one integrated only so far', () => {
    const path = solveOde(oscillator, { ...tight, keepPath: true }).path!;
    // The extension is of order 4 between steps that were chosen for order 5.
    for (const time of [0, 0.001, 1.7, 5, 13.37, 20]) {
      expect(Math.abs(path(time)[0]! - Math.cos(time)), `t = ${time}`).toBeLessThan(2e-9);
    }
    expect(() => path(20.1)).toThrow(RangeError);
  });
});

test('observed order is 5 for the steps and at least 4 between them', () => {
  const errorOf = (steps: number): { end: number; between: number } => {
    const step = 4 / steps;
    const solved = solveOde(
      { ...oscillator, to: 4 },
      { relative: 1e9, absolute: 1e9, firstStep: step, largestStep: step, keepPath: true },
    );
    expect(solved.steps).toBe(steps);
    let between = 0;
    for (let k = 0; k < steps; k++) {
      const time = (k + 0.5) * step;
      between = Math.max(between, Math.abs(solved.path!(time)[0]! - Math.cos(time)));
    }
    return { end: Math.hypot(solved.state[0]! - Math.cos(4), solved.state[1]! + Math.sin(4)), between };
  };
  const [coarse, fine] = [errorOf(32), errorOf(64)];
  // Measured exponents reach the order only in the limit.
  expect(Math.log2(coarse.end / fine.end)).toBeGreaterThan(4.7);
  expect(Math.log2(coarse.end / fine.end)).toBeLessThan(5.5);
  expect(Math.log2(coarse.between / fine.between)).toBeGreaterThan(3.9);
});

describe('events', () => {
  test('crossings are found in order, with direction, and to the tolerance of the steps', () => {
    const solved = solveOde(
      {
        ...oscillator,
        events: [{ value: (_t, y) => y[0]!, direction: 1 }, { value: (_t, y) => y[0]! }],
      },
      tight,
    );
    const both = solved.crossings.filter((one) => one.event === 1);
    expect(both.length).toBe(6);
    both.forEach((one, k) => {
      expect(Math.abs(one.time - (k + 0.5) * Math.PI)).toBeLessThan(5e-12);
    });
    const rising = solved.crossings.filter((one) => one.event === 0);
    expect(rising.map((one) => Math.round(one.time / Math.PI - 0.5))).toEqual([1, 3, 5]);
    expect(Math.abs(solved.state[0]! - Math.cos(20))).toBeLessThan(2e-11);
  });

  test('an event that stops is the end, at its own time, whatever the tolerance of the extension', () => {
    const fall = solveOde(
      {
        rates: (_t, y, rate) => {
          rate[0] = y[1]!;
          rate[1] = -9.80665;
        },
        start: [10, 3],
        from: 0,
        to: 100,
        events: [{ value: (_t, y) => y[0]!, direction: -1, stops: true }],
      },
      { relative: 1e-6, absolute: 1e-6 },
    );
    const landing = (3 + Math.sqrt(9 + 2 * 9.80665 * 10)) / 9.80665;
    expect(fall.ending).toBe('event');
    // Quadratic motion is exact for order 5, so only rounding is left.
    expect(Math.abs(fall.time - landing)).toBeLessThan(1e-12);
    expect(Math.abs(fall.state[0]!)).toBeLessThan(1e-12);
  });

  test('restarting at the kink keeps the accuracy of a rate that jumps', () => {
    const rates = (push: number) => (_t: number, y: Float64Array, rate: Float64Array) =>
      void rate.fill(push - y[0]!);
    const first = solveOde(
      { rates: rates(2), start: [0], from: 0, to: 9, events: [{ value: (_t, y) => y[0]! - 1, stops: true }] },
      tight,
    );
    expect(Math.abs(first.time - Math.LN2)).toBeLessThan(1e-12);
    const second = solveOde({ rates: rates(0.5), start: first.state, from: first.time, to: 3 }, tight);
    const exact = 0.5 + 0.5 * Math.exp(-(3 - Math.LN2));
    expect(Math.abs(second.state[0]! - exact)).toBeLessThan(1e-12);
  });
});

describe('what cannot be solved is said, without NaN', () => {
  test('a pole ends with the last good state', () => {
    const pole = solveOde(
      { rates: (_t, y, rate) => void rate.fill(y[0]! ** 2), start: [1], from: 0, to: 2 },
      { relative: 1e-9, absolute: 1e-9 },
    );
    expect(['step-too-small', 'not-finite', 'too-many-steps']).toContain(pole.ending);
    expect(pole.time).toBeLessThan(1.0001);
    expect(Number.isFinite(pole.state[0]!)).toBe(true);
  });

  test('a rate that is not a number from the start, or past a point', () => {
    const never = solveOde(
      { rates: (_t, _y, rate) => void rate.fill(Number.NaN), start: [1], from: 0, to: 2 },
      tight,
    );
    expect(never).toMatchObject({ ending: 'not-finite', time: 0 });
    const later = solveOde(
      { rates: (t, _y, rate) => void rate.fill(Math.sqrt(1 - t)), start: [0], from: 0, to: 2 },
      { relative: 1e-8, absolute: 1e-8 },
    );
    expect(later.ending).toBe('not-finite');
    expect(later.time).toBeLessThanOrEqual(1);
    expect(Number.isFinite(later.state[0]!)).toBe(true);
  });

  test('the limit of steps', () => {
    const cut = solveOde(oscillator, { ...tight, maxSteps: 5 });
    expect(cut.ending).toBe('too-many-steps');
    expect(cut.steps + cut.refused).toBe(5);
  });

  test.each([
    ['no interval', { to: 0 }, tight],
    ['no tolerance', {}, { relative: 0, absolute: 1 }],
  ])('%s is a fault of the caller', (_name, change, options) => {
    expect(() => solveOde({ ...oscillator, ...change }, options)).toThrow(RangeError);
  });
});
