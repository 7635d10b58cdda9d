import { describe, test } from 'vitest';
import type { Point3 } from '../../src/core/geometry/index.ts';
import { inches, poundsForce } from '../../src/core/quantity/index.ts';
import type { FrameModel } from '../../src/core/strength/index.ts';
import { ALL, answer, expectClose } from '../support/frames.ts';

const kip = poundsForce(1000);
const inch = inches(1);
const ksi = kip / inch ** 2;

/** [kip, kip·in] to [N, N·m]. */
const forces = (six: readonly number[]) => six.map((value, i) => value * kip * (i % 6 < 3 ? 1 : inch));

/** [in, rad] to [m, rad]. */
const movements = (six: readonly number[]) => six.map((value, i) => (i < 3 ? value * inch : value));

/**
 * kassimali-2, example 8.4: three members of one section meet at joint 1 and are fixed at their far ends; read
 * through a public transcription of the example's data and answers.
 */
describe('kassimali-2, example 8.4', () => {
  const section = {
    youngsModulus: 29000 * ksi,
    shearModulus: 11500 * ksi,
    area: 32.9 * inch ** 2,
    secondMomentZ: 716 * inch ** 4,
    secondMomentY: 236 * inch ** 4,
    torsionConstant: 15.1 * inch ** 4,
  };
  // The book's angles of roll, 0, 90° and 30°, as its rotation matrices print local y.
  const member = (id: string, from: string, up: Point3) => ({ ...section, id, from, to: '1', up });
  const model: FrameModel = {
    nodes: {
      '1': { x: 0, y: 0, z: 0 },
      '2': { x: -240 * inch, y: 0, z: 0 },
      '3': { x: 0, y: -240 * inch, z: 0 },
      '4': { x: 0, y: 0, z: -240 * inch },
    },
    members: [
      member('1', '2', { x: 0, y: 1, z: 0 }),
      member('2', '3', { x: 0, y: 0, z: 1 }),
      member('3', '4', { x: -0.5, y: Math.sqrt(0.75), z: 0 }),
    ],
    supports: ['2', '3', '4'].map((node) => ({ node, fixed: ALL })),
  };
  const {
    at,
    reaction,
    member: ends,
  } = answer(model, {
    nodes: [{ node: '1', moment: { x: -1800 * kip * inch, y: 0, z: 1800 * kip * inch } }],
    // 3 kip/ft.
    members: [{ member: '1', w: { x: 0, y: (-0.25 * kip) / inch, z: 0 } }],
  });
  /** Five printed digits, after rounded intermediate results of about as many. */
  const PRINTED = 5e-5;

  test('displacements of joint 1', () => {
    expectClose(
      at('1'),
      movements([-1.3522e-3, -2.7965e-3, -1.812e-3, -3.0021e-3, 1.0569e-3, 6.4986e-3]),
      PRINTED,
    );
  });

  test('reactions', () => {
    // The transcription of z at joint 2 differs in two places (-0.74070, -0.74272): taken from the member's end.
    expectClose(reaction('2'), forces([5.3757, 44.106, -0.74272, 2.1722, 58.987, 2330.5]), PRINTED);
    expectClose(reaction('3'), forces([-4.6249, 11.117, -6.4607, -515.55, -0.76472, 369.67]), PRINTED);
    expectClose(reaction('4'), forces([-0.75082, 4.7763, 7.2034, -383.5, -60.166, -4.702]), PRINTED);
  });

  test('member end forces in local axes', () => {
    expectClose(
      ends('1'),
      forces([
        ...[5.3757, 44.106, -0.74272, 2.1722, 58.987, 2330.5],
        ...[-5.3757, 15.894, 0.74272, -2.1722, 119.27, 1055],
      ]),
      PRINTED,
    );
    expectClose(
      ends('2'),
      forces([
        ...[11.117, -6.4607, -4.6249, -0.76472, 369.67, -515.55],
        ...[-11.117, 6.4607, 4.6249, 0.76472, 740.31, -1035],
      ]),
      PRINTED,
    );
    expectClose(ends('3').slice(0, 6), forces([7.2034, 4.5118, -1.7379, -4.702, 139.65, 362.21]), PRINTED);
  });
});

/**
 * weaver-1967, p. 146, problem 8: a bent of three members in space; data and answers through a public
 * transcription, whose reactions assume Poisson's ratio 0.25.
 */
describe('weaver-1967, p. 146, problem 8', () => {
  const L = 120 * inch;
  const section = {
    youngsModulus: 30000 * ksi,
    shearModulus: 12000 * ksi,
    area: 11 * inch ** 2,
    secondMomentY: 56 * inch ** 4,
    secondMomentZ: 56 * inch ** 4,
    torsionConstant: 83 * inch ** 4,
  };
  const model: FrameModel = {
    nodes: {
      '3': { x: 0, y: 0, z: 0 },
      '1': { x: 0, y: L, z: 0 },
      '2': { x: 2 * L, y: L, z: 0 },
      '4': { x: 3 * L, y: 0, z: L },
    },
    members: [
      { ...section, id: '1', from: '1', to: '2' },
      { ...section, id: '2', from: '3', to: '1' },
      { ...section, id: '3', from: '2', to: '4' },
    ],
    supports: ['3', '4'].map((node) => ({ node, fixed: ALL })),
  };
  const { at, reaction } = answer(model, {
    nodes: [
      { node: '1', force: { x: 2 * kip, y: 0, z: 0 } },
      { node: '2', force: { x: 0, y: -kip, z: 0 }, moment: { x: 0, y: 0, z: -120 * kip * inch } },
    ],
  });

  test('reactions, to the five digits given', () => {
    expectClose(reaction('3'), forces([-1.1041, -0.43222, 0.21731, 48.785, -17.973, 96.122]), 5e-5);
    expectClose(reaction('4'), forces([-0.89588, 1.4322, -0.21731, 123.08, 47.246, -11.72]), 5e-5);
  });

  test('displacements, as printed to 1e-5 in and rad', () => {
    expectClose(at('1'), movements([0.22267, 0.00016, -0.17182, -0.00255, 0.00217, -0.00213]), 2e-3);
    expectClose(at('2'), movements([0.22202, -0.48119, -0.70161, -0.00802, 0.00101, -0.00435]), 2e-3);
  });
});
