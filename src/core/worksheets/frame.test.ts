import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { frameWorksheet } from './frame.ts';
import { runWorksheet } from './index.ts';

const SECTION = { E: 200000, G: 80000, A: 300, Iy: 20000, Iz: 50000, J: 40000 };
const ALL = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'];

interface Result {
  displacements: Record<string, number[]>;
  reactions: Record<string, number[]>;
  memberForces: Record<string, number[]>;
  residual: number;
  buckling?: number[];
  frequencies?: number[];
  pieces?: number;
}

function run(json: unknown): Result {
  const outcome = runWorksheet(frameWorksheet, json);
  if (!outcome.ok) throw new Error(outcome.issues.map(describeIssue).join('; '));
  return outcome.value.result as Result;
}

function refusals(json: unknown): string[] {
  const outcome = runWorksheet(frameWorksheet, json);
  return outcome.ok ? [] : outcome.issues.map(describeIssue);
}

const cantilever = {
  nodes: { a: [0, 0, 0], b: [1000, 0, 0] },
  members: [{ id: 'm', from: 'a', to: 'b', ...SECTION, up: [0, 1, 0] }],
  supports: [{ node: 'a', fixed: ALL }],
};

const column = (base: readonly string[], top: readonly string[]) => ({
  nodes: { a: [0, 0, 0], b: [0, 0, 1000] },
  members: [{ id: 'm', from: 'a', to: 'b', ...SECTION }],
  supports: [
    { node: 'a', fixed: base },
    { node: 'b', fixed: top },
  ],
  loads: [{ node: 'b', force: [0, 0, -1000] }],
});

describe('the frame worksheet', () => {
  test('takes and gives edge units: mm, rad, N, N·m', () => {
    const { displacements, reactions, memberForces } = run({
      ...cantilever,
      loads: [{ node: 'b', force: [0, 100, 0], moment: [8, 0, 0] }],
    });
    // F·L³/3EI = 100·1e9/(3·1e10) mm; F·L²/2EI; T·L/GJ = 8000·1000/3.2e9.
    expect(displacements.b).toEqual([0, 10 / 3, 0, 0.0025, 0, 0.005].map((x) => expect.closeTo(x, 10)));
    expect(reactions).toEqual({ a: [0, -100, 0, -8, 0, -100].map((x) => expect.closeTo(x, 9)) });
    expect(memberForces.m).toEqual(
      [0, -100, 0, -8, 0, -100, 0, 100, 0, 8, 0, 0].map((x) => expect.closeTo(x, 9)),
    );
  });

  test('reads texts with units like numbers', () => {
    const texts = run({
      nodes: { a: ['0 in', 0, 0], b: ['1 m', 0, 0] },
      members: [{ ...cantilever.members[0], E: '200 GPa', A: '3 cm²', Iz: '5 cm⁴' }],
      supports: cantilever.supports,
      loads: [{ node: 'b', force: [0, '0.1 kN', 0], moment: ['8000 N·mm', 0, 0] }],
      memberLoads: [{ member: 'm', w: [0, 0, '-0.5 kN/m'] }],
    });
    const numbers = run({
      ...cantilever,
      loads: [{ node: 'b', force: [0, 100, 0], moment: [8, 0, 0] }],
      memberLoads: [{ member: 'm', w: [0, 0, -0.5] }],
    });
    expect(texts).toEqual(numbers);
  });

  test('settlements in mm and rad, springs in N/mm and N·m/rad', () => {
    const { reactions } = run({
      ...cantilever,
      supports: [
        { node: 'a', fixed: ALL },
        { node: 'b', fixed: ALL, settle: { uy: 2, rz: 0.004 } },
      ],
    });
    // 12·E·I·δ/L³ - 6·E·I·θ/L², E·I = 1e10 N·mm².
    expect(reactions.b?.[1]).toBeCloseTo(240 - 240, 8);
    expect(reactions.b?.[5]).toBeCloseTo((-6e10 * 2) / 1e9 + (4e10 * 0.004) / 1e6, 8);
    const sprung = run({
      ...cantilever,
      supports: [
        { node: 'a', fixed: ['ux', 'uy', 'uz', 'rx', 'ry'], springs: { rz: 5000 } },
        { node: 'b', fixed: [], springs: { uy: 10 } },
      ],
      loads: [{ node: 'b', force: [0, 100, 0] }],
    });
    // Flexibility of the rest: L²/k + L³/3EI = 0.2 + 0.0333 mm/N; the spring takes its share.
    expect(sprung.displacements.b?.[1]).toBeCloseTo(100 / (10 + 1 / (1 / 5 + 1 / 30)), 8);
  });

  test('buckling factors and natural frequencies on request', () => {
    const count = 8;
    const nodes = Object.fromEntries(
      Array.from({ length: count + 1 }, (_, i) => [`n${i}`, [0, 0, (1000 * i) / count]]),
    );
    const members = Array.from({ length: count }, (_, i) => ({
      id: `m${i}`,
      from: `n${i}`,
      to: `n${i + 1}`,
      ...SECTION,
    }));
    const { buckling, frequencies } = run({
      nodes,
      members,
      supports: [{ node: 'n0', fixed: ALL }],
      loads: [{ node: `n${count}`, force: [0, 0, -1000] }],
      buckling: 2,
      frequencies: { count: 2, density: 7850 },
    });
    // π²·E·I/(4·L²): 9869.6 and 24674 N.
    expect(buckling?.[0]).toBeCloseTo(9.8696, 3);
    expect(buckling?.[1]).toBeCloseTo(24.674, 2);
    // 3.516/2π·√(E·I/ρA)/L² = 23.06 Hz; rotary inertia is below 1e-3.
    const first = (3.5160153 / (2 * Math.PI)) * Math.sqrt((2e11 * 2e-8) / (7850 * 3e-4));
    expect(Math.abs(frequencies![0]! / first - 1)).toBeLessThan(1e-3);
  });

  const across = ['ux', 'uy', 'rx', 'ry'];
  const pinned = ['ux', 'uy'];
  // Textbook columns, Fcr = n·π²·E·I/L²; hinged below: twist and place held there. 2.0457 = (4.4934/π)².
  test.each([
    { ends: 'hinged at both ends', base: ['ux', 'uy', 'uz', 'rz'], top: pinned, n: 1 },
    { ends: 'fixed and free', base: ALL, top: [], n: 0.25 },
    { ends: 'fixed and hinged', base: ALL, top: pinned, n: (4.493409458 / Math.PI) ** 2 },
    { ends: 'fixed at both ends', base: ALL, top: across, n: 4 },
    { ends: 'fixed and guided', base: ALL, top: ['rx', 'ry'], n: 1 },
  ])('a column of one member, $ends: Euler within 0.1 %', ({ base, top, n }) => {
    const { buckling, pieces } = run({ ...column(base, top), buckling: 1 });
    // E·I = 4e9 N·mm² the weak way; 1 kN on 1 m.
    const euler = (n * Math.PI ** 2 * 4e9) / 1e9;
    expect(pieces).toBe(8);
    expect(Math.abs(buckling![0]! / euler - 1)).toBeLessThan(1e-3);
  });

  test('a released end stays released where its member is divided', () => {
    const held = column(ALL, across);
    const [member] = held.members;
    const released = { ...member, releases: { from: ['ry', 'rz'], to: ['ry', 'rz'] } };
    const { buckling } = run({ ...held, members: [released], buckling: 1 });
    expect(Math.abs(buckling![0]! / ((Math.PI ** 2 * 4e9) / 1e9) - 1)).toBeLessThan(1e-3);
  });

  test('a cantilever of one member: three ways of bending, by its own density', () => {
    const { frequencies, pieces } = run({ ...cantilever, frequencies: { count: 7, density: 7850 } });
    expect(pieces).toBe(8);
    // (k·L)² of the uniform cantilever, closed form; E·I = 4000 and 10000 N·m².
    const unit = Math.sqrt(4000 / (7850 * 3e-4)) / (2 * Math.PI);
    const roots = [3.5160153, 22.0344916, 61.6972144].flatMap((root) => [root, root * Math.sqrt(2.5)]);
    // Rotary inertia takes off up to 0.7 % of the third, as the closed form leaves it out; twist lies between.
    for (const root of roots) {
      const off = frequencies!.map((f) => Math.abs(f / (root * unit) - 1));
      expect(Math.min(...off)).toBeLessThan(root < 40 ? 4e-3 : 1e-2);
    }
    const dense = run({ ...cantilever, frequencies: { count: 1, density: 3 * 7850 } });
    expect(dense.frequencies![0]).toBeCloseTo(frequencies![0]! / Math.sqrt(3), 9);
  });

  test('member loads reach every piece: a mast under its own weight', () => {
    // Greenhill: q·L = 7.8373·E·I/L² of a fixed-free column under its own weight; E·I = 4e9 N·mm².
    const { loads: _, ...standing } = column(ALL, []);
    const { buckling } = run({
      ...standing,
      memberLoads: [{ member: 'm', w: [0, 0, -1] }],
      buckling: 1,
    });
    // The normal force goes in eight steps: 0.64 % off, a quarter of what four leave.
    expect(Math.abs((buckling![0]! * 1000) / (7.8373 * 4000) - 1)).toBeLessThan(8e-3);
  });

  test('statics are those of the members as given', () => {
    const loaded = { ...column(ALL, []), memberLoads: [{ member: 'm', w: [1, 0, 0] }] };
    const { buckling, pieces, ...statics } = run({ ...loaded, buckling: 1 });
    expect(statics).toEqual(run(loaded));
    expect([buckling?.length, pieces]).toEqual([1, 8]);
  });

  test('refuses a mechanism with the node and how it moves', () => {
    const said = refusals({ ...cantilever, supports: [{ node: 'a', fixed: ALL.slice(0, 5) }] });
    expect(said).toEqual([
      'nodes.b: node "b" moves along y with nothing to hold it: the frame is a mechanism',
    ]);
  });

  test('names every wrong place in its own words', () => {
    expect(
      refusals({ ...cantilever, loads: [{ node: 'c' }], memberLoads: [{ member: 'n', w: [0, 0, 0] }] }),
    ).toEqual([expect.stringContaining('loads[0].node'), expect.stringContaining('memberLoads[0].member')]);
    expect(
      refusals({
        ...cantilever,
        supports: [
          { node: 'a', fixed: ALL.slice(0, 5), settle: { rz: 0.1 } },
          { node: 'b', fixed: ['uy'] },
        ],
      }),
    ).toEqual([expect.stringMatching(/^supports\[0\]\.settle\.rz: /)]);
    expect(refusals({ ...cantilever, members: [{ ...cantilever.members[0], Iz: 0 }] })[0]).toMatch(
      /^members\[0\]\.Iz/,
    );
    expect(
      refusals({ ...cantilever, members: [{ ...cantilever.members[0], releases: { from: ['mz'] } }] })[0],
    ).toMatch(/^members\[0\]\.releases\.from\[0\]/);
    expect(refusals({ ...cantilever, nodes: {} }).length).toBeGreaterThan(0);
  });

  test('a node of any name stays a node', () => {
    const { displacements } = run({
      ...cantilever,
      nodes: { a: [0, 0, 0], constructor: [1000, 0, 0] },
      members: [{ ...cantilever.members[0], to: 'constructor' }],
      loads: [{ node: 'constructor', force: [0, 100, 0] }],
    });
    expect(Object.keys(displacements)).toEqual(['a', 'constructor']);
    expect(Object.entries(displacements)[1]?.[1][1]).toBeCloseTo(10 / 3, 9);
  });
});
