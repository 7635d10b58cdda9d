import { describe, expect, test } from 'vitest';
import { degrees, mm, type Outcome } from '../quantity/index.ts';
import { type CopeJoint, controllingPosition, copePosition, copeProfile } from './cope.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

interface Row {
  /** r, R [mm], θ [°], e [mm] */
  readonly joint: readonly [number, number, number, number];
  /** s at φ = 0, 30 … 330° [mm] */
  readonly s: readonly number[];
  readonly depth: number;
  readonly jointLength: number;
  readonly lowest?: readonly [number, number];
  readonly highest?: readonly [number, number];
}

/** Derived: worked out apart from this program by numeric root finding in space, printed to 4 digits after the point. */
const rows: readonly Row[] = [
  {
    joint: [12.7, 12.7, 90, 0],
    s: [12.7, 10.9985, 6.35, 0, 6.35, 10.9985, 12.7, 10.9985, 6.35, 0, 6.35, 10.9985],
    depth: 12.7,
    jointLength: 97.033,
  },
  {
    joint: [12.7, 15.875, 90, 0],
    s: [15.875, 14.5497, 11.4476, 9.525, 11.4476, 14.5497, 15.875, 14.5497, 11.4476, 9.525, 11.4476, 14.5497],
    depth: 6.35,
    jointLength: 84.571,
  },
  {
    joint: [12.7, 15.875, 60, 0],
    s: [
      10.9985, 10.4505, 9.5524, 10.9985, 16.8848, 23.1505, 25.6632, 23.1505, 16.8848, 10.9985, 9.5524,
      10.4505,
    ],
    depth: 16.1382,
    jointLength: 91.188,
    lowest: [64.34, 9.525],
  },
  {
    joint: [12.7, 12.7, 45, 0],
    s: [5.2605, 4.5557, 2.6303, 0, 15.3303, 26.5528, 30.6605, 26.5528, 15.3303, 0, 2.6303, 4.5557],
    depth: 30.6605,
    jointLength: 117.276,
  },
  {
    joint: [11.1125, 19.05, 90, 5],
    s: [
      18.3821, 15.8577, 12.2086, 10.1632, 12.2086, 15.8577, 18.3821, 19.0419, 18.4804, 18.0427, 18.4804,
      19.0419,
    ],
    depth: 8.8868,
    jointLength: 74.079,
    highest: [206.74, 19.05],
  },
  {
    joint: [11.1125, 19.05, 55, 4],
    s: [
      14.9563, 13.3794, 12.3644, 14.1586, 20.1455, 26.8566, 30.5184, 29.9166, 26.1098, 21.5741, 18.3288,
      16.4394,
    ],
    depth: 18.4188,
    jointLength: 81.482,
    lowest: [61.12, 12.3625],
    highest: [190.4, 30.7812],
  },
  {
    joint: [9.525, 12.7, 72, 0],
    s: [10.2587, 9.6989, 8.6059, 8.8326, 11.7008, 15.0593, 16.4484, 15.0593, 11.7008, 8.8326, 8.6059, 9.6989],
    depth: 8.0482,
    jointLength: 64.411,
    lowest: [73.35, 8.4003],
  },
];

const jointOf = ([r, R, angle, e]: Row['joint']): CopeJoint => ({
  branchRadius: mm(r),
  trunkRadius: mm(R),
  angle: degrees(angle),
  offset: mm(e),
});

describe.each(rows.map((row) => [row.joint.join('/'), row] as const))('cope r/R/θ/e %s', (_name, row) => {
  const profile = must(copeProfile(jointOf(row.joint)));

  // Half of the last printed digit, 5e-8 m, and a hair.
  test('ordinates, depth and joint length', () => {
    row.s.forEach((s, k) => {
      expect(Math.abs(profile.outside[6 * k]!.position - mm(s)), `s at ${30 * k}°`).toBeLessThan(5.1e-8);
    });
    expect(Math.abs(profile.depth - mm(row.depth))).toBeLessThan(5.1e-8);
    expect(Math.abs(profile.jointLength - mm(row.jointLength))).toBeLessThan(5.1e-7);
  });

  test('least and greatest ordinate where they were found', () => {
    const pairs = [
      [row.lowest, profile.lowest],
      [row.highest, profile.highest],
    ] as const;
    for (const [wanted, found] of pairs) {
      if (!wanted) continue;
      const around = (found.around * 180) / Math.PI;
      // Symmetric joints have the same least value on both sides.
      const mirrored = row.joint[3] === 0 ? 360 - around : around;
      expect(Math.min(Math.abs(around - wanted[0]), Math.abs(mirrored - wanted[0]))).toBeLessThan(0.0051);
      expect(Math.abs(found.position - mm(wanted[1]))).toBeLessThan(5.1e-8);
    }
  });
});

test('the sides of a 4 : 5 joint lie at exactly 3/5 of the trunk radius', () => {
  expect(copePosition(jointOf([12.7, 15.875, 90, 0]), Math.PI / 2)).toBeCloseTo(0.009525, 15);
});

test('square, centered: depth = R − √(R² − r²)', () => {
  const profile = must(copeProfile(jointOf([10, 26, 90, 0])));
  expect(profile.depth).toBeCloseTo(0.026 - 0.024, 15);
});

test('two equal square tubes meet in two half ellipses of 45°: joint length = perimeter of an ellipse r√2 by r', () => {
  // Ramanujan's second formula is good to 1e-9 relative at this flatness.
  const [a, b] = [Math.SQRT2, 1];
  const h = ((a - b) / (a + b)) ** 2;
  const ellipse = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
  expect(must(copeProfile(jointOf([1000, 1000, 90, 0]))).jointLength).toBeCloseTo(ellipse, 8);
});

test('ordinates come every 5° or closer, and close', () => {
  const profile = must(copeProfile(jointOf([11, 19, 55, 4]), degrees(4)));
  expect(profile.outside).toHaveLength(91);
  expect(must(copeProfile(jointOf([11, 19, 55, 4]), degrees(30))).outside).toHaveLength(73);
  expect(profile.outside.at(-1)!.position).toBeCloseTo(profile.outside[0]!.position, 15);
});

describe('inside and controlling line', () => {
  const joint: CopeJoint = { ...jointOf([12.7, 15.875, 50, 1]), wall: mm(3) };
  const profile = must(copeProfile(joint));

  test('the inside line is the line of the inner radius', () => {
    for (const o of profile.inside)
      expect(o.position).toBeCloseTo(copePosition(joint, o.around, mm(9.7)), 15);
  });

  test('the controlling line is the largest through the wall, against a fine search', () => {
    for (const o of profile.controlling) {
      const through = Array.from({ length: 3001 }, (_, k) =>
        copePosition(joint, o.around, mm(9.7 + k / 1000)),
      );
      const searched = Math.max(...through);
      expect(o.position).toBeGreaterThanOrEqual(searched - 1e-15);
      // The search misses the top of a curve by its bend over half a step; far under 1e-9 m here.
      expect(o.position - searched).toBeLessThan(1e-9);
    }
  });

  test('the largest can lie between inside and outside', () => {
    const inner = profile.controlling.filter(
      (o, k) => o.position > Math.max(profile.outside[k]!.position, profile.inside[k]!.position) + 1e-9,
    );
    expect(inner.length).toBeGreaterThan(0);
  });

  test('without a wall the outside line controls', () => {
    const thin = jointOf([12.7, 15.875, 50, 1]);
    expect(controllingPosition(thin, 1)).toBe(copePosition(thin, 1));
  });
});

describe('joints that can not be', () => {
  const square = jointOf([10, 12, 90, 0]);
  const bad: readonly (readonly [string, CopeJoint, string])[] = [
    ['a branch wider than its trunk', { ...square, branchRadius: 0.013 }, 'branchRadius'],
    ['a branch past the trunk’s side', { ...square, offset: 0.0021 }, 'offset'],
    ['the same to the other side', { ...square, offset: -0.0021 }, 'offset'],
    ['parallel axes', { ...square, angle: 0 }, 'angle'],
    ['axes turned over', { ...square, angle: Math.PI }, 'angle'],
    ['no branch', { ...square, branchRadius: 0 }, 'branchRadius'],
    ['no trunk', { ...square, trunkRadius: Number.NaN }, 'trunkRadius'],
    ['a wall as thick as the radius', { ...square, wall: 0.01 }, 'wall'],
    ['an offset that is no number', { ...square, offset: Number.POSITIVE_INFINITY }, 'offset'],
  ];
  test.each(bad)('%s', (_name, joint, path) => {
    const outcome = copeProfile(joint);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.issues.map((issue) => issue.path)).toContain(path);
  });

  test('a branch that just grazes the trunk’s side is taken, without NaN', () => {
    for (const offset of [0.002, -0.002]) {
      const profile = must(copeProfile({ ...square, offset }));
      for (const o of profile.outside) expect(Number.isFinite(o.position)).toBe(true);
      expect(Number.isFinite(profile.jointLength)).toBe(true);
    }
  });
});
