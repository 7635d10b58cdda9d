import { describe, expect, test } from 'vitest';
import {
  ALL,
  answer,
  assembled,
  chain,
  expectClose,
  line,
  must,
  SECTION,
} from '../../../../tests/support/frames.ts';
import { rotate3 } from '../../geometry/index.ts';
import { assembleFrame, type FrameModel, sectionForces, solveFrame } from './index.ts';

const { youngsModulus: E, shearModulus: G, area: A, secondMomentY: Iy, secondMomentZ: Iz } = SECTION;
const J = SECTION.torsionConstant;
const L = 0.8;

/** Closed forms hold to rounding: one solution is corrected twice. */
const EXACT = 1e-10;

/** Members that do not stretch, for closed forms of bending alone: axial terms fall by the same factor. */
const STIFF = { ...SECTION, area: A * 1e6 };

/** Along X with y toward Z: local y = Z, local z = -Y. */
const UPRIGHT = { ...SECTION, up: { x: 0, y: 0, z: 1 } };

const wall = (model: Pick<FrameModel, 'nodes' | 'members'>, node = 'n0'): FrameModel => ({
  ...model,
  supports: [{ node, fixed: ALL }],
});

describe('a cantilever along X', () => {
  const model = wall(line(1, L, SECTION));

  test('[FRAME-3] bends by F·L³/3EI, Iz in the x-y plane and Iy in the x-z plane', () => {
    const { at, reaction } = answer(model, { nodes: [{ node: 'n1', force: { x: 500, y: 30, z: -20 } }] });
    const wanted = [
      (500 * L) / (E * A),
      (30 * L ** 3) / (3 * E * Iz),
      (-20 * L ** 3) / (3 * E * Iy),
      0,
      (20 * L ** 2) / (2 * E * Iy),
      (30 * L ** 2) / (2 * E * Iz),
    ];
    expectClose(at('n1'), wanted, EXACT);
    expectClose(reaction('n0'), [-500, -30, 20, 0, -20 * L, -30 * L], EXACT);
  });

  test('[FRAME-3] turns by M·L/EI and twists by T·L/GJ', () => {
    const { at, member } = answer(model, { nodes: [{ node: 'n1', moment: { x: 3, y: 4, z: 5 } }] });
    const wanted = [
      0,
      (5 * L ** 2) / (2 * E * Iz),
      (-4 * L ** 2) / (2 * E * Iy),
      (3 * L) / (G * J),
      (4 * L) / (E * Iy),
      (5 * L) / (E * Iz),
    ];
    expectClose(at('n1'), wanted, EXACT);
    expectClose(member('n0'), [0, 0, 0, -3, -4, -5, 0, 0, 0, 3, 4, 5], EXACT);
  });

  test('[FRAME-4] adds F·L/(G·As) where shear areas are given, each along its own axis', () => {
    const [ay, az] = [0.5 * A, 0.8 * A];
    const short = 0.05;
    const sheared = wall(line(1, short, { ...SECTION, shearAreas: [ay, az] }));
    const { at } = answer(sheared, { nodes: [{ node: 'n1', force: { x: 0, y: 30, z: 20 } }] });
    expectClose(
      at('n1').slice(1, 3),
      [
        (30 * short ** 3) / (3 * E * Iz) + (30 * short) / (G * ay),
        (20 * short ** 3) / (3 * E * Iy) + (20 * short) / (G * az),
      ],
      EXACT,
    );
  });

  test('[FRAME-6] under its own uniform load: w·L⁴/8EI, w·L²/2', () => {
    const { at, reaction } = answer(model, {
      members: [
        { member: 'n0', w: { x: 7, y: 100, z: 0 } },
        { member: 'n0', w: { x: 0, y: 0, z: -50 }, axes: 'local' },
      ],
    });
    expectClose(
      at('n1'),
      [
        (7 * L ** 2) / (2 * E * A),
        (100 * L ** 4) / (8 * E * Iz),
        (-50 * L ** 4) / (8 * E * Iy),
        0,
        (50 * L ** 3) / (6 * E * Iy),
        (100 * L ** 3) / (6 * E * Iz),
      ],
      EXACT,
    );
    const halfSquare = L ** 2 / 2;
    expectClose(reaction('n0'), [-7 * L, -100 * L, 50 * L, 0, -50 * halfSquare, -100 * halfSquare], EXACT);
  });

  test('[FRAME-15] turned anyhow in space, with its up, gives the turned answer', () => {
    const axis = { x: 2 / 7, y: 3 / 7, z: 6 / 7 };
    const turn = (v: { x: number; y: number; z: number }) => rotate3(v, axis, 1.234);
    const turned: FrameModel = {
      nodes: { n0: turn({ x: 0, y: 0, z: 0 }), n1: turn({ x: L, y: 0, z: 0 }) },
      members: [{ ...SECTION, id: 'n0', from: 'n0', to: 'n1', up: turn({ x: 0.4, y: 1, z: 0 }) }],
      supports: [{ node: 'n0', fixed: ALL }],
    };
    const force = { x: 500, y: 30, z: -20 };
    const moment = { x: 3, y: 4, z: 5 };
    const flat = answer(
      { ...model, members: model.members.map((one) => ({ ...one, up: { x: 0, y: 1, z: 0 } })) },
      { nodes: [{ node: 'n1', force, moment }] },
    );
    const { at, member } = answer(turned, {
      nodes: [{ node: 'n1', force: turn(force), moment: turn(moment) }],
    });
    const [ux, uy, uz, rx, ry, rz] = flat.at('n1') as [number, number, number, number, number, number];
    const u = turn({ x: ux, y: uy, z: uz });
    const r = turn({ x: rx, y: ry, z: rz });
    expectClose(at('n1'), [u.x, u.y, u.z, r.x, r.y, r.z], EXACT);
    expectClose(member('n0'), flat.member('n0'), EXACT);
  });
});

describe('local axes', () => {
  const bent = (to: { x: number; y: number; z: number }, up?: { x: number; y: number; z: number }) =>
    answer(
      {
        nodes: { a: { x: 0, y: 0, z: 0 }, b: to },
        members: [{ ...SECTION, id: 'm', from: 'a', to: 'b', ...(up ? { up } : {}) }],
        supports: [{ node: 'a', fixed: ALL }],
      },
      { nodes: [{ node: 'b', force: { x: 1, y: 1, z: 1 } }] },
    );

  test('[FRAME-1] without up, y leans to global Z', () => {
    // Along Y: y = Z, so that Iz resists movement along Z, and z = x × y = X.
    const { at } = bent({ x: 0, y: 1, z: 0 });
    expectClose([at('b')[2]!, at('b')[0]!], [1 / (3 * E * Iz), 1 / (3 * E * Iy)], EXACT);
  });

  test('[FRAME-1] along Z, y leans to global X', () => {
    for (const z of [1, -1]) {
      const { at } = bent({ x: 0, y: 0, z });
      expectClose([at('b')[0]!, at('b')[1]!], [1 / (3 * E * Iz), 1 / (3 * E * Iy)], EXACT);
    }
  });

  test('[FRAME-1] up chooses the plane of Iz; only its part across the member counts', () => {
    for (const up of [
      { x: 0, y: 1, z: 0 },
      { x: -5, y: 0.1, z: 0 },
    ]) {
      const { at, member } = bent({ x: 1, y: 0, z: 0 }, up);
      expectClose([at('b')[1]!, at('b')[2]!], [1 / (3 * E * Iz), 1 / (3 * E * Iy)], EXACT);
      // Local y is global Y, local z global Z.
      expectClose(member('m').slice(6, 9), [1, 1, 1], EXACT);
    }
    // The other way up: y and z both turn round.
    expectClose(
      bent({ x: 1, y: 0, z: 0 }, { x: 0, y: -1, z: 0 }).member('m').slice(6, 9),
      [1, -1, -1],
      EXACT,
    );
  });

  test('[FRAME-1] an up along the member is refused', () => {
    const outcome = assembleFrame({
      nodes: { a: { x: 0, y: 0, z: 0 }, b: { x: 1, y: 1, z: 0 } },
      members: [{ ...SECTION, id: 'm', from: 'a', to: 'b', up: { x: -2, y: -2, z: 0 } }],
      supports: [{ node: 'a', fixed: ALL }],
    });
    expect(outcome).toMatchObject({ ok: false, issues: [{ code: 'conflict', path: 'members[0].up' }] });
  });
});

describe('beams that are held more than once', () => {
  test('[FRAME-6] a propped beam under uniform load: 3·w·L/8 at the prop, w·L²/8 at the wall', () => {
    const model: FrameModel = {
      ...line(1, L, SECTION),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: ['uz'] },
      ],
    };
    const { reaction } = answer(model, { members: [{ member: 'n0', w: { x: 0, y: 0, z: -200 } }] });
    expectClose([reaction('n1')[2]!], [(3 * 200 * L) / 8], EXACT);
    expectClose([reaction('n0')[2]!, reaction('n0')[4]!], [(5 * 200 * L) / 8, (-200 * L ** 2) / 8], EXACT);
    // Directions that nothing holds have no reaction at all.
    expect(reaction('n1').filter((value) => value !== 0)).toHaveLength(1);
  });

  test('[FRAME-9] a settlement δ of one end: 6·E·I·δ/L² and 12·E·I·δ/L³; a turn θ: 4·E·I·θ/L', () => {
    const model: FrameModel = {
      ...line(1, L, SECTION),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: ALL },
      ],
    };
    const sunk = answer(model, { settlements: [{ node: 'n1', by: { uz: -0.002 } }] });
    const unit = (E * Iy * 0.002) / L ** 3;
    expectClose(sunk.reaction('n0'), [0, 0, 12 * unit, 0, -6 * L * unit, 0], EXACT);
    expectClose(sunk.at('n1'), [0, 0, -0.002, 0, 0, 0], EXACT);
    const turned = answer(model, { settlements: [{ node: 'n1', by: { rz: 0.01 } }] });
    expectClose(
      [turned.reaction('n1')[5]!, turned.reaction('n0')[5]!],
      [(4 * E * Iz * 0.01) / L, (2 * E * Iz * 0.01) / L],
      EXACT,
    );
  });

  test('[FRAME-9] a determinate frame follows a settlement without force', () => {
    const model: FrameModel = { ...line(2, L, SECTION), supports: [{ node: 'n0', fixed: ALL }] };
    const { at, memberForces } = answer(model, {
      settlements: [{ node: 'n0', by: { uz: 0.001, ry: 0.01 } }],
    });
    expectClose(at('n2'), [0, 0, 0.001 - 0.01 * L, 0, 0.01, 0], EXACT);
    // Against the 3·E·I·θ/L² that the turn would cost a held beam.
    const held = (3 * E * Iy * 0.01) / L ** 2;
    expect(Math.max(...memberForces.map(Math.abs))).toBeLessThan(1e-10 * held);
  });

  test('[FRAME-10] a spring at the tip takes k/(k + 3EI/L³) of the load', () => {
    const k = 5000;
    const model: FrameModel = {
      ...line(1, L, SECTION),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: [], springs: { uz: k } },
      ],
    };
    const { at, reaction } = answer(model, { nodes: [{ node: 'n1', force: { x: 0, y: 0, z: -90 } }] });
    const own = (3 * E * Iy) / L ** 3;
    expectClose([at('n1')[2]!], [-90 / (k + own)], EXACT);
    expectClose(reaction('n1'), [0, 0, (90 * k) / (k + own), 0, 0, 0], EXACT);
  });

  test('[FRAME-10] a turning spring: a rigid-hinged bar on it falls by F·L²/k + F·L³/3EI', () => {
    const k = 300;
    const model: FrameModel = {
      ...line(1, L, SECTION),
      supports: [{ node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx', 'rz'], springs: { ry: k } }],
    };
    const { at, reaction } = answer(model, { nodes: [{ node: 'n1', force: { x: 0, y: 0, z: -10 } }] });
    expectClose([at('n1')[2]!], [(-10 * L ** 2) / k - (10 * L ** 3) / (3 * E * Iy)], EXACT);
    expectClose([reaction('n0')[4]!], [-10 * L], EXACT);
  });
});

describe('releases', () => {
  test('[FRAME-5] a hinge at the far end of a fixed beam makes it a propped one', () => {
    const model: FrameModel = {
      ...line(1, L, UPRIGHT),
      members: line(1, L, UPRIGHT).members.map((one) => ({ ...one, releases: { to: ['ry'] } })),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: ALL },
      ],
    };
    const { member } = answer(model, { members: [{ member: 'n0', w: { x: 0, y: 0, z: -200 } }] });
    // In the plane of the load turns are about local z: this release changes nothing.
    expectClose([member('n0')[7]!], [200 * L * 0.5], EXACT);
    const other = answer(
      { ...model, members: model.members.map((one) => ({ ...one, releases: { to: ['rz'] } })) },
      { members: [{ member: 'n0', w: { x: 0, y: 0, z: -200 } }] },
    );
    expectClose(
      [other.member('n0')[1]!, other.member('n0')[5]!, other.member('n0')[7]!],
      [(5 * 200 * L) / 8, (200 * L ** 2) / 8, (3 * 200 * L) / 8],
      EXACT,
    );
    expect(other.member('n0')[11]).toBe(0);
  });

  test('[FRAME-5] a sliding end carries no shear', () => {
    const model: FrameModel = {
      ...line(1, L, UPRIGHT),
      members: line(1, L, UPRIGHT).members.map((one) => ({ ...one, releases: { to: ['uy'] } })),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: ALL },
      ],
    };
    const { member } = answer(model, { members: [{ member: 'n0', w: { x: 0, y: 0, z: -200 } }] });
    // Guided beam: all load at the wall, moments w·L²/3 and w·L²/6.
    expectClose(
      [member('n0')[1]!, member('n0')[5]!, member('n0')[11]!],
      [200 * L, (200 * L ** 2) / 3, (200 * L ** 2) / 6],
      EXACT,
    );
    expect(member('n0')[7]).toBe(0);
  });

  test('[FRAME-5] a truss of bars released at both ends: joint by joint', () => {
    const bars = { releases: { from: ['ry', 'rz'], to: ['ry', 'rz'] } } as const;
    const model: FrameModel = {
      nodes: { a: { x: 0, y: 0, z: 0 }, b: { x: 0.6, y: 0, z: 0 }, c: { x: 0.3, y: 0, z: 0.4 } },
      members: [
        { ...SECTION, ...bars, id: 'ac', from: 'a', to: 'c' },
        { ...SECTION, ...bars, id: 'bc', from: 'b', to: 'c' },
      ],
      supports: [
        { node: 'a', fixed: ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] },
        { node: 'b', fixed: ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] },
        { node: 'c', fixed: ['uy', 'rx', 'ry', 'rz'] },
      ],
    };
    const { member, at } = answer(model, { nodes: [{ node: 'c', force: { x: 60, y: 0, z: -40 } }] });
    // At c: 0.6·(Nac - Nbc) = 60 and 0.8·(Nac + Nbc) = -40.
    expectClose(member('ac'), [-25, 0, 0, 0, 0, 0, 25, 0, 0, 0, 0, 0], EXACT);
    expectClose(member('bc'), [75, 0, 0, 0, 0, 0, -75, 0, 0, 0, 0, 0], EXACT);
    expectClose([at('c')[0]!], [(100 * 0.5) / (E * A) / 1.2], EXACT);
  });

  test('[FRAME-5] releases that let a member move by itself are refused by name', () => {
    const loose = (releases: FrameModel['members'][number]['releases']) =>
      assembleFrame({
        ...line(1, L, UPRIGHT),
        members: line(1, L, UPRIGHT).members.map((one) => ({ ...one, ...(releases ? { releases } : {}) })),
        supports: [
          { node: 'n0', fixed: ALL },
          { node: 'n1', fixed: ALL },
        ],
      });
    for (const releases of [
      { from: ['rx'], to: ['rx'] },
      { from: ['ux'], to: ['ux'] },
      { from: ['ry', 'uz'], to: ['ry'] },
    ] as const)
      expect(loose(releases)).toMatchObject({
        ok: false,
        issues: [{ code: 'conflict', path: 'members[0].releases', reason: expect.stringContaining('"n0"') }],
      });
    expect(loose({ from: ['ry', 'rz'], to: ['rx', 'ry', 'rz'] }).ok).toBe(true);
  });
});

describe('frames', () => {
  const [h, b] = [0.6, 0.9];
  // Beam three times as stiff as the columns; upright in the X-Z plane.
  const column = { ...STIFF, up: { x: 1, y: 0, z: 0 } };
  const beam = { ...STIFF, secondMomentZ: 3 * Iz, up: { x: 0, y: 0, z: 1 } };
  const portal: FrameModel = {
    nodes: {
      a: { x: 0, y: 0, z: 0 },
      b: { x: 0, y: 0, z: h },
      c: { x: b, y: 0, z: h },
      d: { x: b, y: 0, z: 0 },
    },
    members: [
      { ...column, id: 'ab', from: 'a', to: 'b' },
      { ...beam, id: 'bc', from: 'b', to: 'c' },
      { ...column, id: 'dc', from: 'd', to: 'c' },
    ],
    supports: [
      { node: 'a', fixed: ALL },
      { node: 'd', fixed: ALL },
    ],
  };
  const k = (3 * h) / b;

  test('[FRAME-3] a fixed portal under a side load: Kleinlogel moments', () => {
    const { reaction, member } = answer(portal, { nodes: [{ node: 'b', force: { x: 100, y: 0, z: 0 } }] });
    const foot = ((100 * h) / 2) * ((3 * k + 1) / (6 * k + 1));
    const corner = ((100 * h) / 2) * ((3 * k) / (6 * k + 1));
    // Members that hardly stretch: 1e-6 of the bending.
    expectClose([reaction('a')[4]!, reaction('d')[4]!], [-foot, -foot], 1e-5);
    expectClose([reaction('a')[2]!, reaction('d')[2]!], [(-2 * corner) / b, (2 * corner) / b], 1e-5);
    expectClose([Math.abs(member('bc')[5]!), Math.abs(member('bc')[11]!)], [corner, corner], 1e-5);
  });

  test('[FRAME-6] a fixed portal under a uniform load on its beam', () => {
    const { reaction, member } = answer(portal, { members: [{ member: 'bc', w: { x: 0, y: 0, z: -1000 } }] });
    const corner = (1000 * b ** 2) / (6 * (k + 2));
    expectClose([reaction('a')[0]!, reaction('d')[0]!], [(1.5 * corner) / h, (-1.5 * corner) / h], 1e-5);
    expectClose([Math.abs(reaction('a')[4]!), Math.abs(member('bc')[5]!)], [corner / 2, corner], 1e-5);
  });

  test('[FRAME-3] a semicircular arch on two hinges, loaded at its crown: thrust P/π, deflection', () => {
    const R = 0.5;
    const errors = [40, 80].map((count) => {
      const arch = chain(
        'n',
        count,
        (t) => ({ x: -R * Math.cos(Math.PI * t), y: 0, z: R * Math.sin(Math.PI * t) }),
        { ...STIFF, up: { x: 0, y: 1, z: 0 } },
      );
      const { reaction, at } = answer(
        {
          ...arch,
          supports: [
            { node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx', 'rz'] },
            { node: `n${count}`, fixed: ['ux', 'uy', 'uz', 'rx', 'rz'] },
          ],
        },
        { nodes: [{ node: `n${count / 2}`, force: { x: 0, y: 0, z: -1000 } }] },
      );
      // up is Y, so Iy bends the arch in its plane.
      const sunk = ((3 * Math.PI) / 8 - 1 - 1 / (2 * Math.PI)) * ((1000 * R ** 3) / (E * Iy));
      return [reaction('n0')[0]! / (1000 / Math.PI) - 1, at(`n${count / 2}`)[2]! / -sunk - 1] as const;
    });
    const [coarse, fine] = errors as [readonly [number, number], readonly [number, number]];
    // Chords in place of arcs: 1/(6·n²)·π² of the height and less of the rest, falling fourfold when n doubles.
    expect(Math.abs(coarse[0])).toBeLessThan(2e-3);
    expect(Math.abs(coarse[1])).toBeLessThan(2e-2);
    expect(coarse[0] / fine[0]).toBeCloseTo(4, 0);
    expect(coarse[1] / fine[1]).toBeCloseTo(4, 0);
    // Extrapolated to arcs.
    expect(Math.abs((4 * fine[0] - coarse[0]) / 3)).toBeLessThan(2e-5);
    expect(Math.abs((4 * fine[1] - coarse[1]) / 3)).toBeLessThan(2e-4);
  });

  test('[FRAME-3] a quarter-circle bow from a wall, loaded across its plane: bending and twist', () => {
    const R = 0.5;
    const sunk = [40, 80].map((count) => {
      const bow = chain(
        'n',
        count,
        (t) => ({ x: R * Math.sin((Math.PI / 2) * t), y: R * (1 - Math.cos((Math.PI / 2) * t)), z: 0 }),
        SECTION,
      );
      const { at } = answer(wall(bow), { nodes: [{ node: `n${count}`, force: { x: 0, y: 0, z: -100 } }] });
      return at(`n${count}`)[2]!;
    }) as [number, number];
    const wanted = -100 * R ** 3 * (Math.PI / 4 / (E * Iz) + ((3 * Math.PI) / 4 - 2) / (G * J));
    expectClose([(4 * sunk[1] - sunk[0]) / 3], [wanted], 1e-6);
    expectClose([sunk[0]], [wanted], 1e-3);
  });
});

describe('rigid links', () => {
  const arm = { x: 0.1, y: -0.2, z: 0.3 };
  const model: FrameModel = {
    ...line(1, L, SECTION),
    nodes: {
      ...line(1, L, SECTION).nodes,
      plate: { x: L + arm.x, y: arm.y, z: arm.z },
      bolt: { x: L + arm.x, y: arm.y, z: 0 },
    },
    links: [
      { leader: 'plate', follower: 'bolt' },
      { leader: 'n1', follower: 'plate' },
    ],
    supports: [{ node: 'n0', fixed: ALL }],
  };

  test('[FRAME-11] a force on a follower is the force and its moment on the leader; the follower follows', () => {
    const linked = answer(model, { nodes: [{ node: 'plate', force: { x: 10, y: 20, z: 30 } }] });
    const direct = answer(wall(line(1, L, SECTION)), {
      nodes: [
        {
          node: 'n1',
          force: { x: 10, y: 20, z: 30 },
          // r × F
          moment: { x: -0.2 * 30 - 0.3 * 20, y: 0.3 * 10 - 0.1 * 30, z: 0.1 * 20 + 0.2 * 10 },
        },
      ],
    });
    expectClose(linked.at('n1'), direct.at('n1'), EXACT);
    expectClose(linked.reaction('n0'), direct.reaction('n0'), EXACT);
    const [ux, uy, uz, rx, ry, rz] = linked.at('n1') as [number, number, number, number, number, number];
    expectClose(
      linked.at('plate'),
      [ux + ry * 0.3 + rz * 0.2, uy + rz * 0.1 - rx * 0.3, uz - rx * 0.2 - ry * 0.1, rx, ry, rz],
      EXACT,
    );
  });

  test('[FRAME-11] as a beam thousands of times as stiff', () => {
    const stiff: FrameModel = {
      nodes: { ...model.nodes, far: { x: 2 * L, y: 0.3, z: 0.1 } },
      members: [
        ...model.members,
        { ...SECTION, id: 'on', from: 'bolt', to: 'far' },
        ...[
          ['n1', 'plate'],
          ['plate', 'bolt'],
        ].map(([from, to], i) => ({
          ...SECTION,
          id: `plate${i}`,
          from: from!,
          to: to!,
          youngsModulus: E * 1e6,
          shearModulus: G * 1e6,
        })),
      ],
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'bolt', fixed: [], springs: { uy: 4000, rx: 20 } },
      ],
    };
    const linked: FrameModel = { ...stiff, members: stiff.members.slice(0, 2), links: model.links! };
    const loads = { nodes: [{ node: 'far', force: { x: 10, y: 20, z: 30 }, moment: { x: 1, y: 2, z: 3 } }] };
    const [found, wanted] = [answer(linked, loads), answer(stiff, loads)];
    // What a link of 1e6 times the stiffness still gives.
    expectClose(found.at('far'), wanted.at('far'), 1e-5);
    expectClose(found.reaction('n0'), wanted.reaction('n0'), 1e-5);
    expectClose(found.member('on'), wanted.member('on'), 1e-5);
    expectClose(found.reaction('bolt'), wanted.reaction('bolt'), 1e-5);
    expect(found.residual).toBeLessThan(1e-12);
  });

  test('[FRAME-11] a settled leader carries its followers and their springs along', () => {
    const held: FrameModel = {
      ...model,
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n1', fixed: ALL },
        { node: 'bolt', fixed: [], springs: { uz: 1000 } },
      ],
    };
    const { at, reaction } = answer(held, { settlements: [{ node: 'n1', by: { uz: 0.001, rx: 0.01 } }] });
    // bolt is at (0.1, -0.2, 0) of n1.
    expectClose([at('bolt')[2]!], [0.001 - 0.2 * 0.01], EXACT);
    expectClose([reaction('bolt')[2]!], [1], EXACT);
  });

  test('[FRAME-11] circles, two leaders and fixed followers are refused', () => {
    const issues = (change: Partial<FrameModel>) => {
      const outcome = assembleFrame({ ...model, ...change });
      return outcome.ok ? [] : outcome.issues.map(({ code, path }) => `${code} ${path}`);
    };
    expect(
      issues({
        links: [
          { leader: 'plate', follower: 'bolt' },
          { leader: 'bolt', follower: 'plate' },
        ],
      }),
    ).toEqual(['conflict links[0]', 'conflict links[1]']);
    expect(issues({ links: [...model.links!, { leader: 'n0', follower: 'bolt' }] })).toEqual([
      'duplicate-name links[2].follower',
    ]);
    expect(issues({ supports: [...model.supports, { node: 'plate', fixed: ['uz'] }] })).toEqual([
      'conflict links[1].follower',
    ]);
  });
});

describe('mechanisms', () => {
  test('[FRAME-12] a frame held by nothing has six, each named', () => {
    const outcome = assembleFrame({ ...line(3, L, SECTION), supports: [] });
    if (outcome.ok) throw new Error('solved');
    expect(outcome.mechanisms).toHaveLength(6);
    expect(outcome.issues).toHaveLength(6);
    expect(new Set(outcome.mechanisms.map(({ direction }) => direction)).size).toBeGreaterThan(3);
  });

  test('[FRAME-12] a hinge in a cantilever lets the tip fall: node, direction and shape', () => {
    const model = line(4, L, UPRIGHT);
    const outcome = assembleFrame({
      ...model,
      members: model.members.map((one, i) => (i === 2 ? { ...one, releases: { from: ['rz'] } } : one)),
      supports: [{ node: 'n0', fixed: ALL }],
    });
    if (outcome.ok) throw new Error('solved');
    expect(outcome.mechanisms).toHaveLength(1);
    const [{ node, direction, shape }] = outcome.mechanisms as [(typeof outcome.mechanisms)[number]];
    expect([node, direction]).toEqual(['n4', 'uz']);
    // Straight about the hinge at n2.
    expectClose(
      [...shape.filter((_, i) => i % 6 === 2)].map((u) => u / shape[26]!),
      [0, 0, 0, 0.5, 1],
      1e-9,
    );
    expect(outcome.issues[0]).toMatchObject({
      code: 'conflict',
      path: 'nodes.n4',
      reason: 'node "n4" moves along z with nothing to hold it: the frame is a mechanism',
    });
  });

  test('[FRAME-12] a node that only spins, and one that nothing is attached to', () => {
    const model = line(2, L, UPRIGHT);
    const spinning = assembleFrame({
      ...model,
      members: model.members.map((one, i) =>
        i === 0 ? { ...one, releases: { to: ['rz'] } } : { ...one, releases: { from: ['rz'] } },
      ),
      supports: [
        { node: 'n0', fixed: ALL },
        { node: 'n2', fixed: ALL },
      ],
    });
    if (spinning.ok) throw new Error('solved');
    // Local z of members along X is -Y.
    expect(spinning.mechanisms.map(({ node, direction }) => [node, direction])).toEqual([['n1', 'ry']]);
    const loose = assembleFrame({
      ...wall(model),
      nodes: { ...model.nodes, lost: { x: 0, y: 9, z: 0 } },
    });
    if (loose.ok) throw new Error('solved');
    expect(loose.mechanisms.map(({ node }) => node)).toEqual(Array(6).fill('lost'));
  });

  test('[FRAME-12] a four-bar linkage of any turn in space is found; one diagonal closes it', () => {
    const turn = (v: { x: number; y: number; z: number }) => rotate3(v, { x: 0.6, y: 0, z: 0.8 }, 0.777);
    const at = { a: [0, 0], b: [0, 0.5], c: [0.7, 0.5], d: [0.7, 0] };
    const up = turn({ x: 0, y: 1, z: 0 });
    const bar = (from: string, to: string) => ({
      ...SECTION,
      id: from + to,
      from,
      to,
      up,
      releases: { from: ['ry'], to: ['ry'] } as const,
    });
    const model = (more: readonly ReturnType<typeof bar>[]): FrameModel => ({
      nodes: Object.fromEntries(Object.entries(at).map(([id, [x, z]]) => [id, turn({ x: x!, y: 0, z: z! })])),
      // One bar at each joint keeps it from spinning.
      members: [
        { ...bar('a', 'b'), releases: { from: ['ry'] } },
        { ...bar('b', 'c'), releases: { from: ['ry'] } },
        { ...bar('d', 'c'), releases: { from: ['ry'], to: ['ry'] } },
        ...more,
      ],
      supports: [
        { node: 'a', fixed: ALL },
        { node: 'd', fixed: ALL },
      ],
    });
    const open = assembleFrame(model([]));
    if (open.ok) throw new Error('solved');
    expect(open.mechanisms).toHaveLength(1);
    expect(['b', 'c']).toContain(open.mechanisms[0]?.node);
    expect(assembleFrame(model([bar('a', 'c')])).ok).toBe(true);
  });

  test('[FRAME-12] slender is no mechanism: a chain of 300 members, 0.1 mm thin', () => {
    const thin = { ...SECTION, secondMomentY: 1e-17, secondMomentZ: 1e-17, torsionConstant: 2e-17 };
    const model = wall(line(300, 10, thin));
    const { at } = answer(model, { nodes: [{ node: 'n300', force: { x: 0, y: 0, z: 1e-9 } }] });
    // 300 links: the stiffness of the whole is 1e-8 of that of one.
    expectClose([at('n300')[2]!], [(1e-9 * 1000) / (3 * E * 1e-17)], 1e-6);
  });
});

describe('load cases', () => {
  const model = wall(line(3, L, SECTION));
  const cases = [
    { nodes: [{ node: 'n3', force: { x: 1, y: 2, z: 3 } }] },
    { members: [{ member: 'n1', w: { x: 0, y: 5, z: 0 } }] },
    {},
  ];

  test('[FRAME-13] together or alone, to the last digit; none gives none', () => {
    const frame = assembled(model);
    const together = must(solveFrame(frame, cases));
    cases.forEach((loads, i) => {
      expect(together[i]).toEqual(must(solveFrame(frame, [loads]))[0]);
    });
    expect(together[2]?.displacements.every((value) => value === 0)).toBe(true);
    expect(together[2]?.residual).toBe(0);
  });

  test('[FRAME-20] references that do not resolve are all listed', () => {
    const outcome = solveFrame(assembled(model), [
      {
        nodes: [{ node: 'n4' }],
        members: [{ member: 'm9', w: { x: 0, y: 0, z: 0 } }],
        settlements: [{ node: 'n3', by: { uz: 1 } }],
      },
    ]);
    if (outcome.ok) throw new Error('solved');
    expect(outcome.issues.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unknown-name loads[0].node',
      'unknown-name memberLoads[0].member',
      'conflict settlements[0].by.uz',
    ]);
  });

  test('[FRAME-20] so is all that is wrong with a model', () => {
    const outcome = assembleFrame({
      nodes: { a: { x: 0, y: 0, z: 0 }, b: { x: 0, y: 0, z: 0 } },
      members: [
        { ...SECTION, id: 'm', from: 'a', to: 'b' },
        { ...SECTION, id: 'm', from: 'a', to: 'toString' },
      ],
      supports: [
        { node: 'c', fixed: ALL },
        { node: 'a', fixed: [], springs: { ux: -1 } },
      ],
      masses: [{ node: 'q', mass: 1 }],
    });
    if (outcome.ok) throw new Error('solved');
    expect(outcome.issues.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'duplicate-name members[1].id',
      'conflict members[0]',
      'unknown-name members[1].to',
      'unknown-name supports[0].node',
      'conflict supports[1].springs.ux',
      'unknown-name masses[0].node',
    ]);
    expect(assembleFrame({ nodes: {}, members: [], supports: [] }).ok).toBe(false);
  });

  test('a frame that is held everywhere passes its loads to the supports', () => {
    const { reaction } = answer(
      {
        ...line(1, L, SECTION),
        supports: [
          { node: 'n0', fixed: ALL },
          { node: 'n1', fixed: ALL },
        ],
      },
      {
        nodes: [{ node: 'n0', force: { x: 1, y: 2, z: 3 } }],
        members: [{ member: 'n0', w: { x: 0, y: 0, z: 12 } }],
      },
    );
    expectClose(reaction('n0'), [-1, -2, -3 - 6 * L, 0, L ** 2, 0], EXACT);
  });
});

describe('forces inside a member', () => {
  test('[FRAME-7] from both ends alike; the sagging moment of a simple beam is w·L²/8', () => {
    const model: FrameModel = {
      ...line(1, L, UPRIGHT),
      supports: [
        { node: 'n0', fixed: ['ux', 'uy', 'uz', 'rx'] },
        { node: 'n1', fixed: ['uy', 'uz'] },
      ],
    };
    const { memberForces, memberLoads } = answer(model, {
      members: [{ member: 'n0', w: { x: 3, y: 40, z: -100 } }],
    });
    const middle = sectionForces(memberForces, memberLoads, L / 2);
    expectClose([Math.abs(middle.momentZ), Math.abs(middle.momentY)], [12.5 * L ** 2, 5 * L ** 2], EXACT);
    expect(Math.abs(middle.shearY)).toBeLessThan(1e-10);
    const end = sectionForces(memberForces, memberLoads, L);
    const [fx, fy, fz, mx, my, mz] = [...memberForces.subarray(6, 12)] as [
      ...[number, number, number],
      ...[number, number, number],
    ];
    expectClose(
      [end.normal, end.shearY, end.shearZ, end.torque, end.momentY, end.momentZ],
      [fx, fy, fz, mx, my, mz],
      EXACT,
    );
    expect(sectionForces(memberForces, memberLoads, 0).normal).toBeCloseTo(3 * L, 12);
  });
});
