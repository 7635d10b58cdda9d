import { describe, expect, test } from 'vitest';
import { type WhippleParameters, whippleMatrices } from '../../src/core/ride/index.ts';
import { smallMotorcycle } from '../support/smallMotorcycle.ts';
import { whippleBenchmark } from '../support/whippleBenchmark.ts';

// Another physics for two of the four matrices. K0: second derivatives of the potential energy of the bike, leaned and
// steered, with both knife-edge wheels held on the ground. M: kinetic energy at rest speed, the rear frame yawing with
// μ·δ′ so that neither contact slips sideways. Neither uses a formula of the matrices under test.

type Vector = readonly [number, number, number];
const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const turn = (v: Vector, axis: Vector, angle: number): Vector => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return add(add(times(v, c), times(cross(axis, v), s)), times(axis, dot(axis, v) * (1 - c)));
};
const X: Vector = [1, 0, 0];
const Y: Vector = [0, 1, 0];
const DOWN: Vector = [0, 0, 1];

/** Axes of the publication: x forward, y right, z down. The steering axis points down and forward. */
const steerAxis = (p: WhippleParameters): Vector => [Math.sin(p.lam), 0, Math.cos(p.lam)];
/** A point of the axis: where it meets the ground. */
const axisPoint = (p: WhippleParameters): Vector => [p.w + p.c, 0, 0];

/** How deep the lowest point of a wheel lies: center and axle direction in world axes. */
const deepest = (center: Vector, axle: Vector, radius: number): number =>
  center[2] + radius * Math.sqrt(Math.max(0, 1 - dot(axle, DOWN) ** 2));

/** Potential energy [J]: the rear frame is leaned, then pitched until the front wheel is as deep as the rear one. */
function potential(p: WhippleParameters, lean: number, steer: number): number {
  const rear: Vector = [0, 0, -p.rR];
  const front = steered(p, [p.w, 0, -p.rF], steer);
  const axle = turn(Y, steerAxis(p), steer);
  const place = (v: Vector, pitch: number): Vector => turn(turn(v, Y, pitch), X, lean);
  const depth = (pitch: number): readonly [number, number] => [
    deepest(place(rear, pitch), place(Y, pitch), p.rR),
    deepest(place(front, pitch), place(axle, pitch), p.rF),
  ];
  let [low, high] = [-0.3, 0.3];
  const gap = (pitch: number): number => depth(pitch)[1] - depth(pitch)[0];
  const sign = Math.sign(gap(low));
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (Math.sign(gap(middle)) === sign) low = middle;
    else high = middle;
  }
  const pitch = (low + high) / 2;
  const [ground] = depth(pitch);
  const up = (v: Vector): number => ground - place(v, pitch)[2];
  return (
    p.g *
    (p.mR * up(rear) +
      p.mB * up([p.xB, 0, p.zB]) +
      p.mH * up(steered(p, [p.xH, 0, p.zH], steer)) +
      p.mF * up(front))
  );
}

const steered = (p: WhippleParameters, v: Vector, steer: number): Vector =>
  add(axisPoint(p), turn(minus(v, axisPoint(p)), steerAxis(p), steer));

/** Second derivative along (a, b) by central differences, two steps extrapolated. */
function curvature(of: (k: number) => number): number {
  const at = (h: number): number => (of(h) - 2 * of(0) + of(-h)) / h ** 2;
  const h = 8e-3;
  const [one, two, four] = [at(h), at(2 * h), at(4 * h)];
  const [first, second] = [(4 * one - two) / 3, (4 * two - four) / 3];
  return (16 * first - second) / 15;
}

function kinetic(p: WhippleParameters, leanRate: number, steerRate: number): number {
  const yaw = ((p.c * Math.cos(p.lam)) / p.w) * steerRate;
  const rearSpin: Vector = [leanRate, 0, yaw];
  const frontSpin = add(rearSpin, times(steerAxis(p), steerRate));
  const rearVelocity = (v: Vector): Vector => cross(rearSpin, v);
  const frontVelocity = (v: Vector): Vector =>
    add(cross(rearSpin, v), cross(times(steerAxis(p), steerRate), minus(v, axisPoint(p))));
  const turning = (spin: Vector, xx: number, zz: number, xz: number): number =>
    xx * spin[0] ** 2 + 2 * xz * spin[0] * spin[2] + zz * spin[2] ** 2;
  const moving = (mass: number, velocity: Vector): number => mass * dot(velocity, velocity);
  return (
    (moving(p.mR, rearVelocity([0, 0, -p.rR])) +
      moving(p.mB, rearVelocity([p.xB, 0, p.zB])) +
      moving(p.mH, frontVelocity([p.xH, 0, p.zH])) +
      moving(p.mF, frontVelocity([p.w, 0, -p.rF])) +
      turning(rearSpin, p.IRxx, p.IRxx, 0) +
      turning(rearSpin, p.IBxx, p.IBzz, p.IBxz) +
      turning(frontSpin, p.IHxx, p.IHzz, p.IHxz) +
      turning(frontSpin, p.IFxx, p.IFxx, 0)) /
    2
  );
}

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe.each([
  ['benchmark bicycle', whippleBenchmark],
  ['small motorcycle', smallMotorcycle()],
  ['benchmark with a steep head and unequal wheels', { ...whippleBenchmark, lam: 0.2, rF: 0.25, c: 0.05 }],
])('%s', (_, p) => {
  const { M, K0 } = whippleMatrices(p);

  test('[WHP-7] M is the kinetic energy', () => {
    // T = ½·q′ᵀ·M·q′ is quadratic: three values give all entries, to rounding.
    const lean = 2 * kinetic(p, 1, 0);
    const steer = 2 * kinetic(p, 0, 1);
    near(lean, M[0][0], 1e-12 * M[0][0]);
    near(steer, M[1][1], 1e-12);
    near((2 * kinetic(p, 1, 1) - lean - steer) / 2, M[0][1], 1e-12 * M[0][0]);
  });

  test('[WHP-8] K0 is the curvature of the potential energy', () => {
    const lean = curvature((k) => potential(p, k, 0)) / p.g;
    const steer = curvature((k) => potential(p, 0, k)) / p.g;
    const both = curvature((k) => potential(p, k, k)) / p.g;
    // Differences over 8e-3 rad of energies of some 1e3 J known to 1e-13 of themselves: 3e-8 of the largest entry.
    near(lean, K0[0][0], 3e-8 * Math.abs(K0[0][0]));
    near(steer, K0[1][1], 3e-8 * Math.abs(K0[0][0]));
    near((both - lean - steer) / 2, K0[0][1], 3e-8 * Math.abs(K0[0][0]));
  });
});
