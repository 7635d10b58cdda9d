/** Press fits against both rings solved for their boundary values; keys against printed and derived cases. */
import { describe, expect, test } from 'vitest';
import {
  inches,
  type Length,
  megapascals,
  mm,
  newtonMeters,
  type Pressure,
  poundsForce,
  type Torque,
} from '../../src/core/quantity/index.ts';
import {
  fitPair,
  heatingForAssembly,
  keyLength,
  keyStress,
  outerRaceway,
  type PressFitInput,
  pressFit,
} from '../../src/core/strength/index.ts';

const STEEL = { elasticModulus: 206e9 as Pressure, poisson: 0.3 };
const ALUMINUM = { elasticModulus: 70e9 as Pressure, poisson: 0.33 };
const fitOf = (d: number, di: number, hub: number, interference: number, length = 1): PressFitInput => ({
  diameter: mm(d),
  innerBore: mm(di),
  hubOutside: mm(hub),
  interference: mm(interference),
  length: mm(length),
  friction: 0.12,
  hub: STEEL,
  inner: STEEL,
});

describe('Lamé, derived', () => {
  /** d, di, Do, δ [mm]; p, hoop [MPa]; push force at 4.7625, 6.35, 11 mm [N]. Last digit of the table. */
  test.each([
    [35, 31, 55, 0.02, 11.0619, 26.1184, [695.1, 926.8, 1605.5]],
    [35, 31, 100, 0.02, 12.3138, 15.7519, [773.8, 1031.7, 1787.3]],
    [35, 31, Number.POSITIVE_INFINITY, 0.02, 12.6843, 12.6843, []],
    [47, 42, 75, 0.033, 12.8895, 29.5598, [1087.7, 1450.2, 2512.2]],
    [20, 0, 40, 0.02, 77.25, 128.75, [2773.9, 3698.6, 6407]],
    [50, 0, 100, 0.04, 61.8, 103, []],
  ])('%d/%d/%d, %d', (d, di, hub, interference, pressure, hoop, forces) => {
    const fit = pressFit(fitOf(d, di, hub, interference));
    expect(Math.abs(fit.pressure / 1e6 - pressure)).toBeLessThan(6e-5);
    expect(Math.abs(fit.hubHoop / 1e6 - hoop)).toBeLessThan(6e-5);
    forces.forEach((force, i) => {
      const length = [4.7625, 6.35, 11][i]!;
      const found = pressFit(fitOf(d, di, hub, interference, length)).pushForce;
      expect(Math.abs(found - force)).toBeLessThan(0.06);
    });
  });

  test.each([
    [35, 31, 55, 0.02, [12.165, 16.22, 28.097]],
    [35, 31, 100, 0.02, [13.541, 18.055, 31.277]],
    [47, 42, 75, 0.033, [25.56, 34.081, 59.037]],
  ])('slip torque of %d/%d/%d', (d, di, hub, interference, torques) => {
    torques.forEach((torque, i) => {
      const length = [4.7625, 6.35, 11][i]!;
      const found = pressFit(fitOf(d, di, hub, interference, length)).slipTorque;
      expect(Math.abs(found - torque)).toBeLessThan(6e-4);
    });
  });

  test('steel ring in an aluminum hub', () => {
    const fit = pressFit({ ...fitOf(35, 31, 80, 0.025), hub: ALUMINUM });
    expect(fit.pressure / 1e6).toBeCloseTo(11.0737, 4);
    expect(fit.hubHoop / 1e6).toBeCloseTo(16.3164, 4);
  });

  /** A handbook rule takes 60 to 80 % of the interference off the play; raceway estimate from memory. */
  test('shrink of the ring, raceway and heating', () => {
    const { boreShrink } = pressFit(fitOf(35, 31, 55, 0.02));
    expect(boreShrink * 1000).toBeCloseTo(0.015449, 6);
    expect(boreShrink / mm(0.02)).toBeGreaterThan(0.6);
    expect(boreShrink / mm(0.02)).toBeLessThan(0.8);
    expect(outerRaceway(mm(15), mm(35)) * 1000).toBeCloseTo(31, 9);
    expect(outerRaceway(mm(20), mm(47)) * 1000).toBeCloseTo(41.6, 9);
    expect(heatingForAssembly(mm(0.033), mm(0.01), 12e-6, mm(35))).toBeCloseTo(102.4, 1);
  });

  /** Same material: p = (E·δ/2d³)·(Do² − d²)(d² − di²)/(Do² − di²). */
  test('one material in closed form', () => {
    const [d, di, hub, interference] = [0.047, 0.042, 0.075, 33e-6];
    const closed =
      ((206e9 * interference) / (2 * d ** 3)) *
      (((hub ** 2 - d ** 2) * (d ** 2 - di ** 2)) / (hub ** 2 - di ** 2));
    expect(pressFit(fitOf(47, 42, 75, 0.033)).pressure / closed).toBeCloseTo(1, 12);
  });
});

describe('bearing rings in holes and on shafts (µm, derived from ISO 286; rings of class Normal from memory)', () => {
  test.each([
    ['H7', -36, 0],
    ['J7', -25, 11],
    ['K7', -18, 18],
    ['M7', -11, 25],
    ['N7', -3, 33],
    ['P7', 6, 42],
  ])('35 mm outside in %s', (hole, least, most) => {
    const pair = fitPair(mm(35), hole, 'bearing');
    if (!pair.ok) throw new Error('refused');
    expect(pair.value.interference.least * 1e6).toBeCloseTo(least, 6);
    expect(pair.value.interference.most * 1e6).toBeCloseTo(most, 6);
  });

  test.each([
    ['g6', -17, 2],
    ['h6', -11, 8],
    ['j6', -3, 16],
    ['k5', 1, 17],
    ['k6', 1, 20],
  ])('17 mm bore on %s', (shaft, least, most) => {
    const pair = fitPair(mm(17), 'bearing', shaft);
    if (!pair.ok) throw new Error('refused');
    expect(pair.value.interference.least * 1e6).toBeCloseTo(least, 6);
    expect(pair.value.interference.most * 1e6).toBeCloseTo(most, 6);
    expect(pair.value.kind).toBe(least >= 0 ? 'interference' : 'transition');
  });
});

describe('keys', () => {
  /** Example 7-6, from memory: 40 hp at 600 rpm, 1 7/16 in, 3/8 key, Sy 65 ksi, n 2.8; 1.16 and 1.34 in with F 5850. */
  test('example 7-6', () => {
    const pound = poundsForce(1);
    const torque = ((5850 * pound * inches(1.4375)) / 2) as Torque;
    const size = { shaft: inches(1.4375), torque, width: inches(0.375), height: inches(0.375) };
    const sy = ((65_000 * pound) / inches(1) ** 2) as Pressure;
    const length = keyLength(size, sy, 2.8, 'distortion-energy');
    expect(length.shear / inches(1)).toBeCloseTo(1.1646, 4);
    expect(length.bearing / inches(1)).toBeCloseTo(1.344, 4);
    // 40 hp at 600 rpm: 4201.7 lbf·in, which the book rounds to 4200 and F to 5850 lbf.
    const whole = (40 * 33_000 * 12) / (2 * Math.PI * 600);
    expect(whole).toBeCloseTo(4201.7, 1);
    const exact = keyStress({ ...size, torque: (whole * pound * inches(1)) as Torque, length: inches(1) });
    expect(exact.force / pound).toBeCloseTo(5845.8, 1);
  });

  /** Derived: d, W = H, T, L [mm, N·m]; F [N], τ, σ [MPa]. */
  test.each([
    [19, 4.7625, 40, 25.4, 4210.53, 34.807, 69.614],
    [15.875, 4.7625, 20, 25.4, 2519.69, 20.829, 41.659],
  ])('%d mm shaft', (d, w, t, l, force, shear, bearing) => {
    const stress = keyStress({
      shaft: mm(d),
      torque: newtonMeters(t),
      width: mm(w),
      height: mm(w),
      length: mm(l) as Length,
    });
    expect(stress.force).toBeCloseTo(force, 2);
    expect(stress.shear / 1e6).toBeCloseTo(shear, 3);
    expect(stress.bearing / 1e6).toBeCloseTo(bearing, 3);
    expect(stress.bearing).toBeLessThan(megapascals(100));
  });
});
