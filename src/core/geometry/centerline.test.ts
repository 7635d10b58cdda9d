import { describe, expect, test } from 'vitest';
import { degrees, mm, type Outcome } from '../quantity/index.ts';
import { buildCenterline, centerlineAt, centerlinePlaces } from './centerline.ts';
import type { Point3 } from './point.ts';
import { pointsOfLegs } from './tubeLegs.ts';
import { distance3, dot3, length3 } from './vec3.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}
const at = (x: number, y: number, z: number): Point3 => ({ x: mm(x), y: mm(y), z: mm(z) });

describe('an L', () => {
  const line = must(
    buildCenterline({ points: [at(0, 0, 0), at(300, 0, 0), at(300, 200, 0)], bendRadius: mm(80) }),
  );

  test('developed length = legs − 2·R + R·π/2', () => {
    expect(line.length).toBeCloseTo(mm(300 + 200 - 160 + 40 * Math.PI), 15);
  });

  test('the bend starts a radius before the corner', () => {
    const [bend] = line.bends;
    expect(line.bends).toHaveLength(1);
    expect(bend!.start).toBeCloseTo(mm(220), 15);
    expect(bend!.straightBefore).toBeCloseTo(mm(220), 15);
    expect(bend!.tangentLength).toBeCloseTo(mm(80), 15);
    expect(bend!.angle).toBeCloseTo(Math.PI / 2, 15);
    expect(bend!.rotation).toBe(0);
  });

  test('half way round the bend lies R·(1 − 1/√2) from both sides', () => {
    const place = centerlineAt(line, mm(220 + 20 * Math.PI));
    expect(place.point.x).toBeCloseTo(mm(300 - 80 + 80 * Math.SQRT1_2), 14);
    expect(place.point.y).toBeCloseTo(mm(80 - 80 * Math.SQRT1_2), 14);
    expect(place.direction.x).toBeCloseTo(Math.SQRT1_2, 14);
  });

  test('its ends are the given points', () => {
    expect(distance3(centerlineAt(line, 0).point, at(0, 0, 0))).toBe(0);
    expect(distance3(centerlineAt(line, line.length).point, at(300, 200, 0))).toBeLessThan(1e-15);
    expect(() => centerlineAt(line, line.length + 0.001)).toThrow(RangeError);
  });
});

describe('two bends in space', () => {
  // Ahead along x, then left along y, then up along z: seen along y (the travel between the bends) the
  // second bend turns from the plane of x and y to the plane of y and z.
  const up = must(
    buildCenterline({
      points: [at(0, 0, 0), at(300, 0, 0), at(300, 300, 0), at(300, 300, 300)],
      bendRadius: mm(60),
    }),
  );
  const down = must(
    buildCenterline({
      points: [at(0, 0, 0), at(300, 0, 0), at(300, 300, 0), at(300, 300, -300)],
      bendRadius: mm(60),
    }),
  );

  test('rotation is +90° up and −90° down: right-hand rule about the direction of travel', () => {
    expect(up.bends[1]!.rotation).toBeCloseTo(Math.PI / 2, 14);
    expect(down.bends[1]!.rotation).toBeCloseTo(-Math.PI / 2, 14);
  });

  test('an S turns over by 180°, a C by 0', () => {
    const s = must(
      buildCenterline({
        points: [at(0, 0, 0), at(300, 0, 0), at(300, 300, 0), at(600, 300, 0)],
        bendRadius: mm(60),
      }),
    );
    const c = must(
      buildCenterline({
        points: [at(0, 0, 0), at(300, 0, 0), at(300, 300, 0), at(0, 300, 0)],
        bendRadius: mm(60),
      }),
    );
    expect(Math.abs(s.bends[1]!.rotation)).toBeCloseTo(Math.PI, 14);
    expect(c.bends[1]!.rotation).toBeCloseTo(0, 14);
  });

  test('length = straights and arcs', () => {
    expect(up.length).toBeCloseTo(mm(240 + 180 + 240 + 60 * Math.PI), 14);
  });

  test('places run on without a jump, `up` square to the travel', () => {
    const places = centerlinePlaces(up, degrees(5));
    places.forEach((place, i) => {
      expect(length3(place.direction)).toBeCloseTo(1, 14);
      expect(dot3(place.direction, place.up)).toBeCloseTo(0, 14);
      const before = places[i - 1];
      if (!before) return;
      const step = place.at - before.at;
      expect(distance3(before.point, place.point)).toBeLessThanOrEqual(step + 1e-15);
      expect(distance3(before.point, place.point)).toBeGreaterThan(0.99 * step);
      expect(distance3(centerlineAt(up, place.at).point, place.point)).toBeLessThan(1e-14);
    });
    expect(places.at(-1)!.at).toBeCloseTo(up.length, 15);
  });

  test('legs, angles and rotations give the tube back', () => {
    const legs = [mm(250), mm(320), mm(410), mm(200)];
    const bends = [
      { angle: degrees(35), rotation: 0 },
      { angle: degrees(80), rotation: degrees(110) },
      { angle: degrees(20), rotation: degrees(-65) },
    ];
    const line = must(
      buildCenterline({ points: pointsOfLegs(legs, bends), bendRadius: [mm(60), mm(90), mm(120)] }),
    );
    line.bends.forEach((bend, i) => {
      expect(bend.angle).toBeCloseTo(bends[i]!.angle, 13);
      expect(bend.rotation).toBeCloseTo(bends[i]!.rotation, 13);
    });
  });
});

describe('tubes that can not be', () => {
  const issuesOf = (points: readonly Point3[], bendRadius: number | readonly number[]): string[] => {
    const outcome = buildCenterline({ points, bendRadius });
    return outcome.ok ? [] : outcome.issues.map((issue) => issue.path);
  };
  const L = [at(0, 0, 0), at(100, 0, 0), at(100, 100, 0)];

  test.each([
    ['one point', [at(0, 0, 0)], 0.1, 'points'],
    ['a doubled point', [at(0, 0, 0), at(100, 0, 0), at(100, 0, 0), at(100, 100, 0)], 0.01, 'points[2]'],
    ['straight back', [at(0, 0, 0), at(100, 0, 0), at(50, 0, 0)], 0.01, 'points[1]'],
    ['no radius', L, 0, 'bendRadius'],
    ['a radius that is no number', L, Number.NaN, 'bendRadius'],
    ['a radius too large for the leg', L, 0.101, 'points[1]'],
    ['too few radii', L, [], 'bendRadius'],
  ] as const)('%s', (_name, points, radius, path) => {
    expect(issuesOf(points, radius)).toContain(path);
  });

  test('tangents that overlap between two bends', () => {
    expect(issuesOf([at(0, 0, 0), at(300, 0, 0), at(300, 100, 0), at(600, 100, 0)], mm(60))).toEqual([
      'points[2]',
    ]);
  });

  test('a corner that does not turn is passed straight through and needs no radius', () => {
    const line = must(
      buildCenterline({ points: [at(0, 0, 0), at(100, 0, 0), at(300, 0, 0)], bendRadius: 0 }),
    );
    expect(line.bends).toEqual([]);
    expect(line.length).toBeCloseTo(mm(300), 15);
  });

  test('tangents that just meet are taken', () => {
    const line = must(
      buildCenterline({
        points: [at(0, 0, 0), at(100, 0, 0), at(100, 200, 0), at(0, 200, 0)],
        bendRadius: mm(100),
      }),
    );
    expect(line.length).toBeCloseTo(mm(100 * Math.PI), 14);
  });
});
