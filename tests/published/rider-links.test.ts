import { describe, expect, test } from 'vitest';
import { placeTwoLinks } from '../../src/core/bike/index.ts';
import { bodyLinks, segmentMasses } from '../../src/core/standards/index.ts';

/** Knee angle with the ankle `forward` ahead of and `below` the hip [degrees]. */
function knee(thigh: number, shank: number, forward: number, below: number): number {
  const links = placeTwoLinks({
    from: { x: 0, y: 0, z: 0 },
    goal: { x: forward, y: 0, z: -below },
    first: thigh,
    second: shank,
    bend: { x: 1, y: 0, z: 0 },
  });
  return (links.angle * 180) / Math.PI;
}

describe('two-link leg, angles worked by another hand to six decimals', () => {
  test.each([
    { thigh: 0.408, shank: 0.418, forward: 0.3, below: 0.55, angle: 98.652208 },
    { thigh: 0.379, shank: 0.402, forward: 0.3, below: 0.55, angle: 106.639478 },
    { thigh: 0.45, shank: 0.455, forward: 0.3, below: 0.45, angle: 73.3948 },
    { thigh: 0.34, shank: 0.361, forward: 0.25, below: 0.5, angle: 105.736857 },
    { thigh: 0.379, shank: 0.402, forward: 0.25, below: 0.5, angle: 91.364287 },
    { thigh: 0.408, shank: 0.418, forward: 0.25, below: 0.5, angle: 85.175305 },
    { thigh: 0.458, shank: 0.46, forward: 0.25, below: 0.5, angle: 75.027026 },
  ])('$thigh/$shank at $forward, $below', ({ thigh, shank, forward, below, angle }) => {
    // One unit of the last digit: the reference rounded the hip-ankle distance before taking the angle.
    expect(Math.abs(knee(thigh, shank, forward, below) - angle)).toBeLessThanOrEqual(1e-6);
  });

  test('the thigh of the first lies 20.119580° below horizontal', () => {
    const { hinge } = placeTwoLinks({
      from: { x: 0, y: 0, z: 0 },
      goal: { x: 0.3, y: 0, z: -0.55 },
      first: 0.408,
      second: 0.418,
      bend: { x: 1, y: 0, z: 0 },
    });
    expect(Math.abs((Math.atan2(-hinge.z, hinge.x) * 180) / Math.PI - 20.11958)).toBeLessThanOrEqual(6e-6);
  });

  test('a goal beyond the stretched links is told, and the end stays at full stretch', () => {
    const far = placeTwoLinks({
      from: { x: 0, y: 0, z: 0 },
      goal: { x: 0, y: 0, z: -2 },
      first: 0.4,
      second: 0.4,
      bend: { x: 1, y: 0, z: 0 },
    });
    expect(far.reached).toBe(false);
    expect(far.end.z).toBeCloseTo(-0.8, 12);
    expect(far.angle).toBeCloseTo(Math.PI, 6);
  });
});

describe('body links against the medians of the survey (ANSUR II)', () => {
  // One set of shares stands for men and women; it lies within 12 mm of either median.
  test.each([
    {
      group: 'men',
      stature: 1.755,
      inseam: 0.845,
      thigh: 0.408,
      shank: 0.418,
      upperArm: 0.335,
      forearm: 0.3485,
    },
    {
      group: 'women',
      stature: 1.626,
      inseam: 0.78,
      thigh: 0.379,
      shank: 0.402,
      upperArm: 0.311,
      forearm: 0.316,
    },
  ])('$group', ({ stature, inseam, thigh, shank, upperArm, forearm }) => {
    const links = bodyLinks({ stature, inseam });
    for (const [found, median] of [
      [links.thigh, thigh],
      [links.shank, shank],
      [links.upperArm, upperArm],
      [links.forearm, forearm],
    ] as const) {
      expect(Math.abs(found - median)).toBeLessThanOrEqual(12e-3);
    }
  });

  test('the segments make up the whole mass', () => {
    const sum = segmentMasses.reduce((total, row) => total + row.massFraction * row.count, 0);
    // Published to three digits a segment.
    expect(Math.abs(sum - 1)).toBeLessThanOrEqual(2e-3);
  });
});
