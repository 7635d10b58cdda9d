import { describe, expect, test } from 'vitest';
import { ALL, answer, line, must, SECTION } from '../../../../tests/support/frames.ts';
import { buckleFrame, type FrameModel, type FrameSupport } from './index.ts';

const { youngsModulus: E, shearModulus: G, area: A } = SECTION;
const I = 1e-8;
const L = 1.2;
/** Bends alike both ways, so each factor occurs twice. */
const ROUND = { ...SECTION, secondMomentY: I, secondMomentZ: I };
const EULER = (Math.PI ** 2 * E * I) / L ** 2;
const COUNT = 16;

/** A column along X pressed by 1000 N at its end. */
const pressed = (supports: readonly FrameSupport[], section = ROUND, force = -1000) => {
  const model: FrameModel = { ...line(COUNT, L, section), supports };
  const solution = answer(model, { nodes: [{ node: `n${COUNT}`, force: { x: force, y: 0, z: 0 } }] });
  return (count: number) => must(buckleFrame(solution.frame, solution, count));
};

const end = `n${COUNT}`;
const hinge: FrameSupport = { node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx'] };
const wall: FrameSupport = { node: 'n0', fixed: ALL };

/** First two roots of each end condition as parts of π²·E·I/L². */
const COLUMNS = [
  { name: 'free', supports: [wall], factors: [0.25, 2.25] },
  { name: 'hinged at both ends', supports: [hinge, { node: end, fixed: ['uy', 'uz'] }], factors: [1, 4] },
  {
    name: 'fixed and hinged',
    supports: [wall, { node: end, fixed: ['uy', 'uz'] }],
    // Roots of tan x = x: 4.493409 and 7.725252.
    factors: [(4.493409458 / Math.PI) ** 2, (7.725251837 / Math.PI) ** 2],
  },
  {
    name: 'fixed at both ends',
    supports: [wall, { node: end, fixed: ALL.slice(1) }],
    factors: [4, 8.1829973],
  },
] as const;

describe('Euler columns', () => {
  test.each(COLUMNS)('[FRAME-18] $name: each factor twice, from above', ({ supports, factors }) => {
    const found = pressed(supports)(4).map(({ factor }) => (factor * 1000) / EULER);
    const [first, second] = factors;
    [first, first, second, second].forEach((wanted, i) => {
      // A finite element is too stiff: (k·l)⁴/720, k·l the phase in one element, here at most 0.56.
      expect(found[i]! / wanted).toBeGreaterThan(1 - 1e-8);
      expect(found[i]! / wanted).toBeLessThan(1 + 2e-4);
    });
  });

  test('[FRAME-18] with shear: Pe/(1 + Pe/(G·As)), Engesser', () => {
    const As = 1e-6;
    const soft = { ...ROUND, shearAreas: [As, 1] as const };
    const [mode] = pressed(COLUMNS[1].supports, soft)(1);
    const off = (mode!.factor * 1000) / (EULER / (1 + EULER / (G * As))) - 1;
    // Shear is even within an element: (π/16)²/12 times its share of 0.15 is 4.7e-4.
    expect(off).toBeGreaterThan(0);
    expect(off).toBeLessThan(4.7e-4);
  });

  test('[FRAME-18] the shape is the half wave of the first mode', () => {
    const weak = { ...ROUND, secondMomentZ: I / 2 };
    const [mode] = pressed(COLUMNS[1].supports, weak)(1);
    expect((mode!.factor * 1000) / EULER).toBeCloseTo(0.5, 4);
    const v = [...(mode?.shape ?? [])].filter((_, i) => i % 6 === 1);
    v.forEach((value, i) => {
      expect(value / v[COUNT / 2]!).toBeCloseTo(Math.sin((Math.PI * i) / COUNT), 5);
    });
  });

  test('[FRAME-18] under tension, and without load, nothing buckles', () => {
    expect(pressed(COLUMNS[0].supports, ROUND, 1000)(3)).toEqual([]);
    expect(pressed(COLUMNS[0].supports, ROUND, 0)(3)).toEqual([]);
  });

  test('[FRAME-18] tension elsewhere does not hide the member that is pressed', () => {
    // Middle third pressed, outer thirds pulled much harder.
    const model: FrameModel = {
      ...line(15, L, ROUND),
      supports: [
        { node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx'] },
        { node: 'n5', fixed: ['uy', 'uz'] },
        { node: 'n10', fixed: ['uy', 'uz'] },
        { node: 'n15', fixed: ['uy', 'uz'] },
      ],
    };
    const at = (node: string, x: number) => ({ node, force: { x, y: 0, z: 0 } });
    const solution = answer(model, { nodes: [at('n5', -9000), at('n10', 9000 + 50000), at('n15', -9)] });
    const modes = must(buckleFrame(solution.frame, solution, 2));
    expect(modes).toHaveLength(2);
    expect(modes[0]!.factor).toBeGreaterThan(0);
    // A column of L/3 with ends between hinged and fixed.
    const own = (9 * EULER) / Math.abs(50000 - 9);
    expect(modes[0]!.factor).toBeGreaterThan(Math.min(own, 1e9) * 0.9);
  });

  test('[FRAME-18] releases: a column of two hinged halves on side supports is two short columns', () => {
    const members = line(COUNT, L, ROUND).members.map((one, i) =>
      i === COUNT / 2 ? { ...one, releases: { from: ['ry', 'rz'] as const } } : one,
    );
    const model: FrameModel = {
      ...line(COUNT, L, ROUND),
      members,
      supports: [hinge, { node: `n${COUNT / 2}`, fixed: ['uy', 'uz'] }, { node: end, fixed: ['uy', 'uz'] }],
    };
    const solution = answer(model, { nodes: [{ node: end, force: { x: -1000, y: 0, z: 0 } }] });
    const factors = must(buckleFrame(solution.frame, solution, 4)).map(
      ({ factor }) => (factor * 1000) / EULER,
    );
    for (const factor of factors) expect(factor / 4).toBeCloseTo(1, 4);
    expect(factors).toHaveLength(4);
  });

  test('twist under pressure comes at G·J·A/Ip', () => {
    const stiff = { ...ROUND, secondMomentY: 1, secondMomentZ: 1, torsionConstant: 1e-8 };
    const [mode] = pressed([wall], stiff)(1);
    expect((mode!.factor * 1000) / ((G * 1e-8 * A) / 2)).toBeCloseTo(1, 6);
  });
});
