/**
 * Shafts and continuous beams against published three-moment examples and cases solved by two independent methods.
 * Units of the sources are kept by solving in them as if they were SI: a statically indeterminate beam of one section
 * has the same reactions whatever its E·I. Tolerances are half of the last digit that was written down.
 */
import { describe, expect, test } from 'vitest';
import type { Force, Length, Pressure, Stiffness, Torque } from '../../src/core/quantity/index.ts';
import {
  type Across,
  type Shaft,
  type ShaftLoad,
  type ShaftSolution,
  type ShaftSupport,
  shaftStateAt,
  solveShaft,
} from '../../src/core/strength/index.ts';

const STEEL = 207e9 as Pressure;
const SHEAR = 79.3e9 as Pressure;

interface Case {
  readonly diameter: number;
  readonly ends: readonly [number, number];
  readonly bearings: readonly number[];
  /** [place, force] */
  readonly forces: readonly (readonly [number, number])[];
}

const planar = (force: number): Across<Force> => [force as Force, 0 as Force];

function shaftOf({ diameter, ends, bearings, forces }: Case, scale = 1e-3): Shaft {
  const length = (value: number) => (value * scale) as Length;
  return {
    segments: [{ from: length(ends[0]), to: length(ends[1]), diameter: length(diameter) }],
    supports: bearings.map((at) => ({ at: length(at) })),
    loads: forces.map(([at, force]) => ({ at: length(at), force: planar(force) })),
    elasticModulus: STEEL,
    shearModulus: SHEAR,
  };
}

function solved(shaft: Shaft): ShaftSolution {
  const outcome = solveShaft(shaft);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const inY = (solution: ShaftSolution): number[] => solution.supports.map(({ force }) => force[0]);
const momentAt = (shaft: Shaft, solution: ShaftSolution, x: number, side: 'left' | 'right'): number =>
  shaftStateAt(shaft, solution, x, side).moment[1];

describe('shafts solved by finite elements and by the three-moment equation', () => {
  /** Reactions [N] to 4 decimals, slopes [rad] to the digits given, deflection [mm]. */
  test('S1: bearings 0/100/250, 1500 N down at 50, 900 N up at 200', () => {
    const shaft = shaftOf({
      diameter: 20,
      ends: [0, 250],
      bearings: [0, 100, 250],
      forces: [
        [50, -1500],
        [200, 900],
      ],
    });
    const solution = solved(shaft);
    expect(inY(solution)).toEqual([757.5, 437.5, -595].map((v) => expect.closeTo(v, 6)));
    expect(momentAt(shaft, solution, 0.1, 'left')).toBeCloseTo(0.75, 9);
  });

  test('S2: bearings 0/120/300, 2000 N at 70, overhang 1000 N at 340, d 20', () => {
    const solution = solved(
      shaftOf({
        diameter: 20,
        ends: [0, 340],
        bearings: [0, 120, 300],
        forces: [
          [70, -2000],
          [340, -1000],
        ],
      }),
    );
    expect(inY(solution)).toEqual([779.398, 1034.336, 1186.265].map((v) => expect.closeTo(v, 3)));
    const slopes = solution.supports.map((support) => support.slopes[0]);
    expect(slopes).toEqual([-9.3699e-4, 9.7697e-4, -1.59565e-3].map((v) => expect.closeTo(v, 8)));
    expect(solution.supports.map(({ slope }) => slope)).toEqual(
      slopes.map((v) => expect.closeTo(Math.abs(v), 15)),
    );
  });

  test('S3: bearings 0/80/200/320, 1200 N at 40, 2500 N at 260, 800 N at 360, d 20', () => {
    const shaft = shaftOf({
      diameter: 20,
      ends: [0, 360],
      bearings: [0, 80, 200, 320],
      forces: [
        [40, -1200],
        [260, -2500],
        [360, -800],
      ],
    });
    const solution = solved(shaft);
    const reactions = [584.2905, 461.0923, 1303.0405, 2151.5766];
    expect(inY(solution)).toEqual(reactions.map((v) => expect.closeTo(v, 4)));
    expect(solution.supports.map(({ slopes }) => slopes[0])).toEqual(
      [-2.8494e-4, 2.7463e-4, -5.0288e-4, 3.5293e-4].map((v) => expect.closeTo(v, 8)),
    );
    expect(shaftStateAt(shaft, solution, 0.26).deflection[0] * 1000).toBeCloseTo(-0.026677, 6);
  });

  test('S4: bearings 0/150, overhangs 900 N at -40 and 600 N at 190, d 15.875', () => {
    const shaft = shaftOf({
      diameter: 15.875,
      ends: [-40, 190],
      bearings: [0, 150],
      forces: [
        [-40, -900],
        [190, -600],
      ],
    });
    const solution = solved(shaft);
    expect(inY(solution)).toEqual([980, 520].map((v) => expect.closeTo(v, 8)));
    expect(solution.supports.map(({ slopes }) => slopes[0])).toEqual(
      [3.71891e-3, -3.25405e-3].map((v) => expect.closeTo(v, 8)),
    );
    const tips = [-0.04, 0.19].map((x) => shaftStateAt(shaft, solution, x, x < 0 ? 'right' : 'left'));
    expect(tips.map(({ deflection }) => deflection[0] * 1000)).toEqual(
      [-0.178508, -0.149996].map((v) => expect.closeTo(v, 6)),
    );
  });
});

/** A beam in the units of its source (m and kN, ft and kip), stiff enough for small slopes. */
function beam(
  ends: readonly [number, number],
  supports: readonly ShaftSupport[],
  loads: readonly ShaftLoad[],
  distributed: readonly (readonly [number, number, number])[] = [],
): Shaft {
  return {
    segments: [{ from: ends[0] as Length, to: ends[1] as Length, diameter: 0.5 as Length }],
    supports,
    loads,
    distributed: distributed.map(([from, to, q]) => ({
      from: from as Length,
      to: to as Length,
      q: [q as Stiffness, 0 as Stiffness],
    })),
    elasticModulus: STEEL,
    shearModulus: SHEAR,
  };
}
const on = (...places: number[]): ShaftSupport[] => places.map((at) => ({ at: at as Length }));
const down = (at: number, force: number): ShaftLoad => ({ at: at as Length, force: planar(-force) });

describe('continuous beams', () => {
  /** NPTEL, Strength of Materials, example 5.22 [kN, m]. */
  test('two 3 m spans, 120 kN in the middle of the first, 40 kN/m on the second', () => {
    const shaft = beam([0, 6], on(0, 3, 6), [down(1.5, 120)], [[3, 6, -40]]);
    const solution = solved(shaft);
    expect(inY(solution)).toEqual([41.25, 157.5, 41.25].map((v) => expect.closeTo(v, 8)));
    expect(momentAt(shaft, solution, 3, 'left')).toBeCloseTo(-56.25, 8);
  });

  /** `beam-examples`, three-moment problem 826 [kN, m]: 4, 4, 3 m; couple 8 at 2 m, 2 kN/m on span 2, 6 kN at 2 m from the right end. */
  test('couple in a span', () => {
    // Clockwise: 6Aā/L = +8 on the side of the support moments.
    const couple: ShaftLoad = { at: 2 as Length, moment: [0 as Torque, -8 as Torque] };
    const shaft = beam([0, 11], on(0, 4, 8, 11), [couple, down(9, 6)], [[4, 8, -2]]);
    const solution = solved(shaft);
    expect([4, 8].map((x) => momentAt(shaft, solution, x, 'left'))).toEqual(
      [-1.692308, -3.230769].map((v) => expect.closeTo(v, 6)),
    );
  });

  /** `beam-examples`, Structural Analysis (Kassimali), example D.3 [kip, ft]: fixed end, 45 k mid, 1.8 k/ft, overhang moment -90. */
  test('fixed end and overhang', () => {
    const supports = [{ at: 0 as Length, clamped: true }, ...on(20, 50)];
    const shaft = beam([0, 60], supports, [down(10, 45), down(60, 9)], [[20, 50, -1.8]]);
    const solution = solved(shaft);
    expect(momentAt(shaft, solution, 0, 'right')).toBeCloseTo(-97.5, 6);
    expect(momentAt(shaft, solution, 20, 'left')).toBeCloseTo(-142.5, 6);
    expect(momentAt(shaft, solution, 50, 'left')).toBeCloseTo(-90, 6);
    // The moment of the wall on the beam is what the beam has there, turned about z.
    expect(solution.supports[0]!.moment[1]).toBeCloseTo(97.5, 6);
  });

  /** `beam-examples`, three-moment problem 824, inputs published, answer derived [kN, m]. */
  test('4, 2 and 4 m, 2 kN/m outside, 10 kN in the middle', () => {
    const shaft = beam(
      [0, 10],
      on(0, 4, 6, 10),
      [down(5, 10)],
      [
        [0, 4, -2],
        [6, 10, -2],
      ],
    );
    const solution = solved(shaft);
    expect([4, 6].map((x) => momentAt(shaft, solution, x, 'left'))).toEqual(
      [-3.357143, -3.357143].map((v) => expect.closeTo(v, 6)),
    );
    expect(inY(solution)).toEqual([3.160714, 9.839286, 9.839286, 3.160714].map((v) => expect.closeTo(v, 6)));
  });

  /** Textbook coefficients of equal spans, derived. */
  test('equal spans', () => {
    expect(inY(solved(beam([0, 2], on(0, 1, 2), [], [[0, 2, -1]])))).toEqual(
      [0.375, 1.25, 0.375].map((v) => expect.closeTo(v, 9)),
    );
    expect(inY(solved(beam([0, 3], on(0, 1, 2, 3), [], [[0, 3, -1]])))).toEqual(
      [0.4, 1.1, 1.1, 0.4].map((v) => expect.closeTo(v, 9)),
    );
    const shaft = beam([0, 2], on(0, 1, 2), [down(0.5, 1)]);
    const solution = solved(shaft);
    expect(inY(solution)).toEqual([0.40625, 0.6875, -0.09375].map((v) => expect.closeTo(v, 9)));
    expect(momentAt(shaft, solution, 1, 'left')).toBeCloseTo(-0.09375, 9);
  });
});

describe('slopes and deflections', () => {
  /** Shigley problem with a slope limit of 0.001, n 1.28 [mm, N]; inputs published, diameters derived. */
  test('l 300, a 100, 3 kN: d 38.065 for the left, 36.000 for the right bearing', () => {
    const slopesAt = (diameter: number): number[] =>
      solved(shaftOf({ diameter, ends: [0, 300], bearings: [0, 300], forces: [[100, -3000]] })).supports.map(
        ({ slope }) => slope,
      );
    // Five printed digits of d are 4e-5 of the slope, which falls with d⁴.
    expect(slopesAt(38.065)[0]! * 1.28).toBeCloseTo(0.001, 7);
    expect(slopesAt(36)[1]! * 1.28).toBeCloseTo(0.001, 7);
    const { maxDeflection } = solved(
      shaftOf({ diameter: 38.1, ends: [0, 300], bearings: [0, 300], forces: [[100, -3000]] }),
    );
    expect(maxDeflection.value * 1000).toBeCloseTo(0.06779, 5);
  });

  /** Derived: d 15.875, L 150, 1 kN in the middle. */
  test('simple span', () => {
    const { supports } = solved(
      shaftOf({ diameter: 15.875, ends: [0, 150], bearings: [0, 150], forces: [[75, -1000]] }),
    );
    expect(supports[0]!.slope).toBeCloseTo(0.00217905, 8);
  });
});
