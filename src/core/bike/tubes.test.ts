import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { materialNames } from '../build/index.ts';
import { materialNamed } from '../standards/index.ts';
import { layOut, placeTubes } from './index.ts';

const tubesOf = (frame: Patch) => {
  const build = smallBuild({ frame });
  return placeTubes(build, layOut(build));
};
const only = (frame: Patch) => {
  const { tubes, flaws } = tubesOf({ ...frame, tubes: { rail: null, ...(frame.tubes as Patch) } });
  return { tubes, flaws, byId: Object.fromEntries(tubes.map((tube) => [tube.id, tube])) };
};
const PIPE = { outside: 40, wall: 2 };

describe('a straight tube between two equal ones, square to them', () => {
  const frame = {
    tubing: { pipe: PIPE },
    nodes: {
      backLeft: { from: 'origin', side: 100, height: 300 },
      frontLeft: { from: 'origin', forward: 400, side: 100, height: 300 },
      crossLeft: { from: 'origin', forward: 200, side: 100, height: 300 },
    },
    tubes: {
      side: { tubing: 'pipe', through: ['backLeft', 'frontLeft'], mirror: true },
      cross: {
        tubing: 'pipe',
        through: ['crossLeft', 'crossLeft.right'],
        start: { joint: 'cope', onto: 'side' },
        end: { joint: 'cope', onto: 'side.right' },
      },
    },
  };

  test('is coped half a diameter deep: the long points reach the trunk’s axis plane, the short ones its surface', () => {
    const { byId, flaws } = only(frame);
    const [start, end] = byId.cross!.ends;
    expect(flaws).toEqual([]);
    for (const cope of [start, end]) {
      expect(cope.angle).toBeCloseTo(Math.PI / 2, 12);
      expect(cope.offset).toBeCloseTo(0, 12);
      // Equal tubes meet at the sides in the axis plane (s = 0) and at heel and crotch at s = R.
      expect(cope.longPoint).toBeCloseTo(0, 8);
      expect(cope.shortPoint).toBeCloseTo(0.02, 8);
    }
    expect([start.onto, end.onto]).toEqual(['side', 'side.right']);
  });

  test('weighs what is left between the cuts', () => {
    const { byId } = only(frame);
    // Mean of √(R² − R²·sin² φ) = R·|cos φ| over the turn is 2·R/π; 72 ordinates give it to 3e-4 of itself.
    const length = 0.2 - 2 * ((2 * 0.02) / Math.PI);
    const area = Math.PI * (0.02 ** 2 - 0.018 ** 2);
    expect(byId.cross!.mass / (length * area * 7850)).toBeCloseTo(1, 3);
  });

  test('has its copes turned to a quarter from its upper side, as its trunks run level', () => {
    const { byId } = only(frame);
    for (const cope of byId.cross!.ends) expect(Math.abs(cope.clock!)).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('a leaning tube', () => {
  test('makes the angle that its nodes say, and its offset from the trunk’s axis', () => {
    const { byId, flaws } = only({
      tubing: { pipe: PIPE, thin: { outside: 20, wall: 2 } },
      nodes: {
        a: { from: 'origin', height: 300 },
        b: { from: 'origin', forward: 600, height: 300 },
        foot: { from: 'origin', forward: 200, side: 5, height: 300 },
        top: { from: 'origin', forward: 300, side: 5, height: 473.205 },
      },
      tubes: {
        trunk: { tubing: 'pipe', through: ['a', 'b'] },
        stay: { tubing: 'thin', through: ['foot', 'top'], start: { joint: 'cope', onto: 'trunk' } },
      },
    });
    const [start, end] = byId.stay!.ends;
    expect(flaws).toEqual([]);
    expect(start.angle).toBeCloseTo(Math.PI / 3, 5);
    expect(Math.abs(start.offset!)).toBeCloseTo(0.005, 12);
    expect(end).toEqual({ joint: 'square', node: 'top', longPoint: 0, shortPoint: 0, leaveLong: 0 });
    // Published closed form of the saddle at φ = 0 and π: s = (√(R² − e²) ∓ r·cos θ)/sin θ.
    const level = Math.sqrt(0.02 ** 2 - 0.005 ** 2);
    expect(start.shortPoint).toBeGreaterThanOrEqual((level + 0.01 * 0.5) / Math.sin(Math.PI / 3) - 1e-6);
    expect(start.longPoint).toBeLessThanOrEqual((level - 0.01 * 0.5) / Math.sin(Math.PI / 3) + 1e-6);
  });
});

describe('what cannot be made', () => {
  const bent = (extra: Patch) => ({
    tubing: { pipe: { ...PIPE, centerlineRadius: 100 } },
    nodes: {
      a: { from: 'origin', height: 300 },
      b: { from: 'origin', forward: 60, height: 300 },
      c: { from: 'origin', forward: 60, height: 400 },
      ...(extra.nodes as Patch | undefined),
    },
    tubes: { hook: { tubing: 'pipe', through: ['a', 'b', 'c'] }, ...(extra.tubes as Patch | undefined) },
  });

  test('a bend without room is told and drawn with the radius that fits', () => {
    const { flaws, byId } = only(bent({}));
    expect(flaws).toHaveLength(1);
    expect(flaws[0]).toMatchObject({ tube: 'hook', rule: 'bends-overlap', value: 0.1 });
    // A right angle with a leg of 60 mm takes a radius of 60 mm.
    expect(flaws[0]!.limit).toBeCloseTo(0.06, 4);
    expect(byId.hook!.centerline.bends[0]!.radius).toBeLessThan(0.06);
  });

  test('a tube that turns straight back is told and left out', () => {
    const { flaws, byId } = only(bent({ tubes: { hook: { tubing: 'pipe', through: ['a', 'b', 'a'] } } }));
    expect(flaws[0]).toMatchObject({ tube: 'hook', rule: 'no-centerline' });
    expect(byId.hook).toBeUndefined();
  });

  test('a cope round a thinner tube is told', () => {
    const { flaws } = only({
      tubing: { pipe: PIPE, thin: { outside: 20, wall: 2 } },
      nodes: {
        a: { from: 'origin', height: 300 },
        b: { from: 'origin', forward: 600, height: 300 },
        foot: { from: 'origin', forward: 200, height: 300 },
        top: { from: 'origin', forward: 200, height: 500 },
      },
      tubes: {
        trunk: { tubing: 'thin', through: ['a', 'b'] },
        post: { tubing: 'pipe', through: ['foot', 'top'], start: { joint: 'cope', onto: 'trunk' } },
      },
    });
    expect(flaws[0]).toMatchObject({ tube: 'post', end: 'start', rule: 'no-cope' });
  });
});

test('every material that a build may name has a density', () => {
  for (const name of materialNames) expect(materialNamed(name).density).toBeGreaterThan(2000);
});
