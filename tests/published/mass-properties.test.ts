import { describe, expect, test } from 'vitest';
import {
  boxInertia,
  type Inertia,
  type Lump,
  layOut,
  placeBike,
  rodLump,
  sumLumps,
  weigh,
} from '../../src/core/bike/index.ts';
import { bikeFrame, type Frame3, type Point3 } from '../../src/core/geometry/index.ts';
import { smallBuild } from '../support/smallBuild.ts';

// Worked by another hand from textbook formulas (box m/12·(b² + c²), thin rod m·L²/12, parallel axes), printed to ten
// digits or so; the tolerances are half a unit of the last printed digit.

/** Axes pitched nose up by `angle` [rad]. */
const pitched = (angle: number): Frame3 => ({
  ...bikeFrame,
  x: { x: Math.cos(angle), y: 0, z: Math.sin(angle) },
  z: { x: -Math.sin(angle), y: 0, z: Math.cos(angle) },
});
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const box = (mass: number, center: Point3, size: Point3, noseUp = 0): Lump => ({
  mass,
  center,
  inertia: boxInertia(mass, size, pitched(noseUp)),
});
const point = (mass: number, center: Point3): Lump => ({ mass, center, inertia: [0, 0, 0, 0, 0, 0] });
const at = (x: number, z: number): Point3 => ({ x, y: 0, z });
const size = (x: number, y: number, z: number): Point3 => ({ x, y, z });

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const xx = (inertia: Inertia): number => inertia[0];

describe('unit cases', () => {
  test('a box of 10 kg pitched 30° nose up', () => {
    const [ixx, iyy, izz, ixy, iyz, ixz] = boxInertia(10, size(0.6, 0.2, 0.3), pitched(rad(30)));
    near(ixx, 0.164583333, 5e-10);
    near(iyy, 0.375, 1e-12);
    near(izz, 0.277083333, 5e-10);
    near(ixz, -0.0974278579, 5e-11);
    near(ixy, 0, 1e-15);
    near(iyz, 0, 1e-15);
  });

  test('a level box and a point off the center plane', () => {
    const sum = sumLumps([box(10, at(0, 0.3), size(0.6, 0.2, 0.3)), point(5, { x: 0.4, y: 0.1, z: 0.9 })]);
    expect(sum.mass).toBe(15);
    near(sum.center.x, 0.133333, 5e-7);
    near(sum.center.y, 0.033333, 5e-7);
    near(sum.center.z, 0.5, 1e-12);
    const expected = [1.3416667, 2.1083333, 0.9, -0.1333333, -0.2, -0.8];
    sum.inertia.forEach((entry, k) => {
      near(entry, expected[k]!, 5e-8);
    });
  });
});

test('a wheel of 5.0 kg and 0.20 m radius, known by its mass alone', () => {
  const build = smallBuild({ wheels: { rear: { tire: { diameter: 400 }, mass: 5 } } });
  const parts = weigh(build, placeBike(build, layOut(build), {}), []).parts;
  const [across, spin] = parts.find((part) => part.id === 'wheels.rear')!.inertia;
  // Worked from its tire, rim and hub: spin 0.071265, across 0.0370075. A share of the radius stands for the make of
  // all wheels: 2 % of the spin for its two digits, 5 % across, where the width is left out.
  near(spin, 0.071265, 0.02 * 0.071265);
  near(across, 0.0370075, 0.05 * 0.0370075);
});

describe('a worked small motorcycle', () => {
  const HEAD = rad(66);
  const up = { x: -Math.cos(HEAD), y: 0, z: Math.sin(HEAD) };
  const rearBody = [
    box(9, at(0.45, 0.42), size(0.9, 0.18, 0.25)),
    box(16, at(0.42, 0.36), size(0.32, 0.36, 0.3)),
    box(4, at(0.4, 0.62), size(0.6, 0.2, 0.1)),
    point(2, at(0.1, 0.2)),
    // Leaning 10° forward is 10° nose down.
    box(43, at(0.32, 1.02), size(0.22, 0.36, 0.75), rad(-10)),
    box(20, at(0.5, 0.68), size(0.45, 0.35, 0.14)),
    box(11, at(0.62, 0.42), size(0.12, 0.4, 0.45)),
    box(6, at(0.52, 1), size(0.5, 0.5, 0.1)),
  ];
  const leg = (y: number): Lump => {
    const foot = { x: 1, y, z: 0.2 };
    return rodLump(1.75, foot, { x: foot.x + 0.45 * up.x, y, z: foot.z + 0.45 * up.z });
  };
  const front = [
    leg(0.08),
    leg(-0.08),
    rodLump(1.5, { x: 0.72, y: -0.36, z: 0.92 }, { x: 0.72, y: 0.36, z: 0.92 }),
    box(1, at(0.8, 0.7), size(0.1, 0.15, 0.15)),
  ];

  // The reference counts z downward, which turns the sign of z and of Ixz.
  test('rear body with rider', () => {
    const sum = sumLumps(rearBody);
    expect(sum.mass).toBe(111);
    near(sum.center.x, 0.4168468468, 5e-11);
    near(-sum.center.z, -0.7252252252, 5e-11);
    near(xx(sum.inertia), 12.32801216, 5e-9);
    near(-sum.inertia[5], -1.269337842, 5e-10);
    near(sum.inertia[2], 3.990778605, 5e-10);
  });

  test('front body', () => {
    const sum = sumLumps(front);
    expect(sum.mass).toBe(6);
    near(sum.center.x, 0.8432824823, 5e-11);
    near(-sum.center.z, -0.5832361746, 5e-11);
    near(xx(sum.inertia), 0.4344962595, 5e-11);
    near(-sum.inertia[5], -0.1298250505, 5e-11);
    near(sum.inertia[2], 0.1392299983, 5e-11);
  });
});
