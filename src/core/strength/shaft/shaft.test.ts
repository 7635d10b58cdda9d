import { describe, expect, test } from 'vitest';
import {
  type AngularSpeed,
  type Density,
  type Force,
  kilograms,
  type Length,
  mm,
  newtonMeters,
  type Outcome,
  type Pressure,
  type Stiffness,
} from '../../quantity/index.ts';
import { criticalSpeed } from './criticalSpeed.ts';
import { enduranceLimit, notchFactors, notchSensitivity } from './enduranceLimit.ts';
import type { Across, Shaft } from './shaft.ts';
import { shaftStateAt, solveShaft } from './solveShaft.ts';

const E = 207e9;
const G = 79.3e9;
const I20 = (Math.PI / 64) * 0.02 ** 4;
const force = (y: number, z = 0): Across<Force> => [y as Force, z as Force];
const base: Shaft = {
  segments: [{ from: mm(0), to: mm(400), diameter: mm(20) }],
  supports: [{ at: mm(0) }, { at: mm(400) }],
  loads: [],
  elasticModulus: E as Pressure,
  shearModulus: G as Pressure,
};
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};
const refusal = (shaft: Shaft): string => {
  const outcome = solveShaft(shaft);
  if (outcome.ok) throw new Error('taken');
  return outcome.issues.map((issue) => `${issue.code} ${issue.path}`).join(', ');
};

describe('closed forms', () => {
  test('central load: PL³/48EI, PL²/16EI, PL/4', () => {
    const solution = value(solveShaft({ ...base, loads: [{ at: mm(200), force: force(-1000) }] }));
    expect(solution.maxDeflection.value).toBeCloseTo((1000 * 0.4 ** 3) / (48 * E * I20), 12);
    expect(solution.maxDeflection.at).toBeCloseTo(0.2, 9);
    expect(solution.supports[0]!.slope).toBeCloseTo((1000 * 0.16) / (16 * E * I20), 12);
    expect(solution.maxMoment.value).toBeCloseTo(100, 9);
  });

  test('even load: 5qL⁴/384EI, qL²/8 in the middle, which is no station', () => {
    const q: Across<Stiffness> = [0 as Stiffness, -2000 as Stiffness];
    const solution = value(solveShaft({ ...base, distributed: [{ from: mm(0), to: mm(400), q }] }));
    expect(solution.maxMoment.value).toBeCloseTo((2000 * 0.16) / 8, 9);
    expect(solution.maxMoment.at).toBeCloseTo(0.2, 9);
    expect(solution.maxDeflection.value).toBeCloseTo((5 * 2000 * 0.4 ** 4) / (384 * E * I20), 12);
  });

  test('load at a: deflection is largest at √((L² − b²)/3) from the far end of a, not under it', () => {
    const solution = value(solveShaft({ ...base, loads: [{ at: mm(100), force: force(-1000) }] }));
    // Roark and others: x from the end further from the load.
    const fromFar = Math.sqrt((0.4 ** 2 - 0.1 ** 2) / 3);
    expect(solution.maxDeflection.at).toBeCloseTo(0.4 - fromFar, 9);
    const largest = (1000 * 0.1 * (0.4 ** 2 - 0.1 ** 2) ** 1.5) / (9 * Math.sqrt(3) * 0.4 * E * I20);
    expect(solution.maxDeflection.value).toBeCloseTo(largest, 12);
  });

  test('stepped cantilever: P/3E·((L³ − a³)/I1 + a³/I2)', () => {
    const stepped: Shaft = {
      ...base,
      segments: [
        { from: mm(150), to: mm(250), diameter: mm(15), bore: mm(6) },
        { from: mm(0), to: mm(150), diameter: mm(20) },
      ],
      supports: [{ at: mm(0), clamped: true }],
      loads: [{ at: mm(250), force: force(300, 400) }],
    };
    const thin = (Math.PI / 64) * (0.015 ** 4 - 0.006 ** 4);
    const tip = (500 / (3 * E)) * ((0.25 ** 3 - 0.1 ** 3) / I20 + 0.1 ** 3 / thin);
    const solution = value(solveShaft(stepped));
    expect(solution.maxDeflection.value).toBeCloseTo(tip, 12);
    expect(solution.supports[0]!.force).toEqual([expect.closeTo(-300, 8), expect.closeTo(-400, 8)]);
    // Fy at x turns about z, Fz about −y.
    expect(solution.supports[0]!.moment).toEqual([expect.closeTo(100, 8), expect.closeTo(-75, 8)]);
  });

  test('moments are vectors: about z bends in x-y, about y in x-z the other way', () => {
    const moment = [newtonMeters(0), newtonMeters(10)] as const;
    const aboutZ = value(solveShaft({ ...base, loads: [{ at: mm(0), moment }] }));
    expect(aboutZ.supports[0]!.force).toEqual([expect.closeTo(25, 9), expect.closeTo(0, 9)]);
    expect(aboutZ.supports[0]!.slopes[0]).toBeCloseTo((10 * 0.4) / (3 * E * I20), 12);
    const swapped = [moment[1], moment[0]] as const;
    const aboutY = value(solveShaft({ ...base, loads: [{ at: mm(0), moment: swapped }] }));
    expect(aboutY.supports[0]!.force).toEqual([expect.closeTo(0, 9), expect.closeTo(-25, 9)]);
    expect(aboutY.supports[0]!.slopes[1]).toBeCloseTo((-10 * 0.4) / (3 * E * I20), 12);
  });

  test('soft middle bearing: spring and beam share by their stiffness', () => {
    const k = 5e6 as Stiffness;
    const beam = (48 * E * I20) / 0.4 ** 3;
    const shaft: Shaft = {
      ...base,
      supports: [...base.supports, { at: mm(200), stiffness: k }],
      loads: [{ at: mm(200), force: force(-1000) }],
    };
    expect(value(solveShaft(shaft)).supports[2]!.force[0]).toBeCloseTo((1000 * k) / (k + beam), 7);
  });

  test('misaligned middle bearing: 48EI/L³ for its offset, rigid or through a spring', () => {
    const beam = (48 * E * I20) / 0.4 ** 3;
    const offset: Across<Length> = [mm(0), mm(0.1)];
    const rigid = value(solveShaft({ ...base, supports: [...base.supports, { at: mm(200), offset }] }));
    expect(rigid.supports[2]!.force[1]).toBeCloseTo(beam * 1e-4, 7);
    expect(rigid.supports[0]!.force[1]).toBeCloseTo((-beam * 1e-4) / 2, 7);
    const stiffness = beam as Stiffness;
    const soft = value(
      solveShaft({ ...base, supports: [...base.supports, { at: mm(200), offset, stiffness }] }),
    );
    expect(soft.supports[2]!.force[1]).toBeCloseTo((beam * 1e-4) / 2, 7);
  });

  test('shear deflection adds PL/4κGA', () => {
    const shaft: Shaft = { ...base, loads: [{ at: mm(200), force: force(-1000) }], shearDeflection: true };
    const poisson = E / (2 * G) - 1;
    const kappa = (6 * (1 + poisson)) / (7 + 6 * poisson);
    const bending = (1000 * 0.4 ** 3) / (48 * E * I20);
    const shear = (1000 * 0.4) / (4 * kappa * G * (Math.PI / 4) * 0.02 ** 2);
    expect(value(solveShaft(shaft)).maxDeflection.value).toBeCloseTo(bending + shear, 12);
  });
});

describe('places that all but coincide', () => {
  /** A step, a load and a bearing a few nanometers to micrometers apart, as rounded input brings them. */
  test.each([2e-9, 3e-8, 1e-6, 1e-5])('%d m apart', (gap) => {
    const step = (at: number): Shaft => ({
      ...base,
      segments: [
        { from: mm(0), to: at as Length, diameter: mm(20) },
        { from: at as Length, to: mm(400), diameter: mm(15) },
      ],
      supports: [{ at: mm(0) }, { at: mm(200) }, { at: mm(400) }],
      loads: [
        { at: (0.2 - 2 * gap) as Length, force: force(-5000) },
        { at: mm(300), force: force(-1000) },
      ],
    });
    const apart = value(solveShaft(step(0.2 - gap)));
    const together = value(solveShaft(step(0.2)));
    apart.supports.forEach((support, i) => {
      // The load may lie 2e-5 m off its bearing: 1 N of 5000 at the next one.
      const other = together.supports[i]!;
      expect(Math.abs(support.force[0] - other.force[0])).toBeLessThan(1e-6 + gap * 1e5);
      expect(Math.abs(support.slope / other.slope - 1)).toBeLessThan(1e-8 + gap * 100);
    });
    const sum = apart.supports.reduce((total, { force: [y] }) => total + y, 0);
    expect(sum).toBeCloseTo(6000, 6);
    expect(value(criticalSpeed(step(0.2 - gap), 7850 as Density))).toBeCloseTo(
      value(criticalSpeed(step(0.2), 7850 as Density)),
      -1,
    );
  });
});

describe('torsion and stress', () => {
  const loads = [
    { at: mm(100), torque: newtonMeters(30) },
    { at: mm(300), torque: newtonMeters(-30) },
    { at: mm(200), force: force(-1000) },
  ];
  test('torque and twist between its stations; the stress of both', () => {
    const shaft = { ...base, loads };
    const solution = value(solveShaft(shaft));
    expect(solution.torsion).toHaveLength(1);
    const [piece] = solution.torsion;
    expect(piece!.torque).toBe(-30);
    expect(piece!.twist).toBeCloseTo((-30 * 0.2) / (G * 2 * I20), 12);
    expect(solution.torqueSum).toBe(0);
    const sigma = (32 * 100) / (Math.PI * 0.02 ** 3);
    const tau = (16 * 30) / (Math.PI * 0.02 ** 3);
    expect(solution.maxStress.value / Math.hypot(sigma, Math.sqrt(3) * tau)).toBeCloseTo(1, 12);
    expect(shaftStateAt(shaft, solution, 0.05).torque).toBeCloseTo(0, 12);
    expect(shaftStateAt(shaft, solution, 0.1, 'right').torque).toBe(-30);
  });

  test('torque that does not balance is told', () => {
    expect(value(solveShaft({ ...base, loads: loads.slice(0, 1) })).torqueSum).toBe(30);
  });
});

describe('critical speed', () => {
  const area = (Math.PI / 4) * 0.02 ** 2;
  const line = 7850 * area;
  const steel = 7850 as Density;
  const even = (root: number, length: number): number =>
    root ** 2 * Math.sqrt((E * I20) / (line * length ** 4));
  const speed = (
    shaft: Shaft,
    density = steel,
    masses: Parameters<typeof criticalSpeed>[2] = [],
  ): AngularSpeed => value(criticalSpeed(shaft, density, masses));

  /** Roots of the frequency equations: π simply supported, 1.8751 cantilever, 4.7300 both ends clamped, 3.9266 one. */
  test.each([
    [Math.PI, false, false],
    [4.730041, true, true],
    [3.926602, true, false],
  ])('even shaft, root %d', (root, left, right) => {
    const supports = [
      { at: mm(0), clamped: left },
      { at: mm(400), clamped: right },
    ];
    expect(speed({ ...base, supports }) / even(root, 0.4)).toBeCloseTo(1, 5);
  });

  test('cantilever', () => {
    const shaft = { ...base, supports: [{ at: mm(0), clamped: true }] };
    expect(speed(shaft) / even(1.875104, 0.4)).toBeCloseTo(1, 5);
  });

  test('a mass in the middle of a light shaft: √(48EI/mL³); between the bounds of Dunkerley and Rayleigh with its own', () => {
    const masses = [{ at: mm(200), mass: kilograms(5) }];
    const alone = Math.sqrt((48 * E * I20) / (5 * 0.4 ** 3));
    expect(speed(base, 1e-6 as Density, masses) / alone).toBeCloseTo(1, 6);
    const own = even(Math.PI, 0.4);
    const dunkerley = 1 / Math.sqrt(1 / alone ** 2 + 1 / own ** 2);
    const both = speed(base, steel, masses);
    expect(both).toBeGreaterThan(dunkerley);
    expect(both).toBeLessThan(Math.min(alone, own));
    expect(both / dunkerley).toBeLessThan(1.02);
  });

  test('offsets do not matter, soft bearings make it slower', () => {
    const shifted: Shaft = {
      ...base,
      supports: [{ at: mm(0), offset: [mm(1), mm(0)] }, { at: mm(400) }],
    };
    expect(speed(shifted)).toBeCloseTo(speed(base), 6);
    const soft: Shaft = {
      ...base,
      supports: base.supports.map((one) => ({ ...one, stiffness: 1e6 as Stiffness })),
    };
    expect(speed(soft)).toBeLessThan(speed(base));
  });
});

describe('refusals', () => {
  const [segment] = base.segments;
  test.each([
    ['no segment', { ...base, segments: [] }, 'missing segments'],
    ['a backward segment', { ...base, segments: [{ ...segment!, to: mm(0) }] }, 'conflict segments[0].to'],
    ['a bore too large', { ...base, segments: [{ ...segment!, bore: mm(20) }] }, 'conflict segments[0].bore'],
    [
      'a gap',
      {
        ...base,
        segments: [
          { ...segment!, to: mm(100) },
          { ...segment!, from: mm(110) },
        ],
      },
      'conflict segments',
    ],
    [
      'an overlap',
      {
        ...base,
        segments: [
          { ...segment!, to: mm(120) },
          { ...segment!, from: mm(110) },
        ],
      },
      'conflict segments',
    ],
    ['one bearing', { ...base, supports: [{ at: mm(0) }] }, 'conflict supports'],
    ['two at one place', { ...base, supports: [{ at: mm(5) }, { at: mm(5) }] }, 'conflict supports[1].at'],
    [
      'places off the shaft',
      { ...base, supports: [{ at: mm(-1) }, { at: mm(9) }], loads: [{ at: mm(401) }] },
      'out-of-range supports[0].at, out-of-range loads[0].at',
    ],
    [
      'an even load backward',
      { ...base, distributed: [{ from: mm(9), to: mm(9), q: [0, 0] as unknown as Across<Stiffness> }] },
      'conflict distributed[0].to',
    ],
  ])('%s', (_name, shaft, wanted) => {
    expect(refusal(shaft)).toBe(wanted);
  });

  test('a mass off the shaft', () => {
    expect(criticalSpeed(base, 7850 as Density, [{ at: mm(500), mass: kilograms(1) }]).ok).toBe(false);
  });
});

describe('endurance limit and notches', () => {
  const steel = { tensile: 600e6 as Pressure, diameter: mm(20), surface: 'machined', rotating: true };

  test('an axle that stands still feels its load on a smaller part', () => {
    const [turning, still] = [true, false].map((rotating) => value(enduranceLimit({ ...steel, rotating })));
    expect(still!.limit).toBeGreaterThan(turning!.limit);
  });

  test('stronger steel gains nothing over 1400 MPa', () => {
    const strong = value(enduranceLimit({ ...steel, tensile: 1800e6 as Pressure }));
    expect(strong.specimen).toBe(700e6);
  });

  test('what is not listed is refused with what is', () => {
    for (const wrong of [{ surface: 'rusty' }, { reliability: 97 }]) {
      const outcome = enduranceLimit({ ...steel, ...wrong });
      expect(outcome.ok).toBe(false);
      expect(JSON.stringify(outcome)).toMatch(/machined|99/);
    }
    expect(notchFactors('hole', steel.tensile, mm(20)).ok).toBe(false);
  });

  test('notch sensitivity grows with radius and strength; threads carry Kf as listed', () => {
    const q = (tensile: number, radius: number): number =>
      notchSensitivity(tensile as Pressure, mm(radius), 'bending');
    expect(q(600e6, 2)).toBeGreaterThan(q(600e6, 0.5));
    expect(q(1000e6, 1)).toBeGreaterThan(q(400e6, 1));
    expect(value(notchFactors('cut-thread-low-class', steel.tensile, mm(20))).bending).toBe(2.8);
  });
});
