import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBuild, solve } from '../../../index.ts';
import { assembleFrame, type FrameModel, frequenciesBelow, solveFrame } from '../../frame/index.ts';
import { type Strength, strengthOf } from '../strengthOf.ts';
import { divideMembers } from './divide.ts';
import { drivenAt, engineRange, shakenRange } from './engineRange.ts';
import { movedText } from './movedText.ts';
import { type SlowStrength, slowStrength } from './slowStrength.ts';

const TURN = 2 * Math.PI;
const RPM = TURN / 60;

const DEMOS = ['light', 'heavy'] as const;

const bikes = Object.fromEntries(
  DEMOS.map((name) => {
    const read = readBuild(readFileSync(`demo/${name}.build.json`, 'utf8'));
    if (!read.ok) throw new Error('the demo does not read');
    const solution = solve(read.value);
    const strength = strengthOf(solution);
    return [name, { build: read.value, strength, slow: slowStrength(strength, read.value) }];
  }),
);
const of = (name: string) => bikes[name]!;

const hertz = ({ frequencies }: SlowStrength): readonly number[] =>
  frequencies.map(({ angularFrequency }) => angularFrequency / TURN);

/** The same bike with another frame model, its cases solved on it where they are wanted. */
function changed(name: string, change: (model: FrameModel) => FrameModel, loads = 1): SlowStrength {
  const { strength, build } = of(name);
  const model = change(strength.frame.model);
  const cases = strength.cases.map((one) => ({
    ...one,
    balanced: { ...one.balanced, loads: times(one.balanced.loads, loads) },
  }));
  const assembled = assembleFrame(model);
  if (!assembled.ok) throw new Error('a mechanism');
  const solved = solveFrame(
    assembled.value,
    cases.map(({ balanced }) => balanced.loads),
  );
  if (!solved.ok) throw new Error('not solved');
  const results = { ...strength.results!, assembled: assembled.value, solutions: solved.value };
  return slowStrength({ frame: { ...strength.frame, model }, cases, results }, build);
}

type Loads = Strength['cases'][number]['balanced']['loads'];
type Vector = { readonly x: number; readonly y: number; readonly z: number };

function times(loads: Loads, k: number): Loads {
  const scaled = ({ x, y, z }: Vector) => ({ x: k * x, y: k * y, z: k * z });
  return {
    nodes: (loads.nodes ?? []).map(({ node, force, moment }) => ({
      node,
      ...(force ? { force: scaled(force) } : {}),
      ...(moment ? { moment: scaled(moment) } : {}),
    })),
    members: (loads.members ?? []).map((one) => ({ ...one, w: scaled(one.w) })),
  };
}

const mirrored = <T extends Vector>(v: T): T => ({ ...v, y: -v.y });

const inMirror = (model: FrameModel): FrameModel => ({
  ...model,
  nodes: Object.fromEntries(Object.entries(model.nodes).map(([id, at]) => [id, mirrored(at)])),
  members: model.members.map((one) => (one.up ? { ...one, up: mirrored(one.up) } : one)),
  masses: (model.masses ?? []).map((one) => {
    if (!one.inertia) return one;
    const [xx, yy, zz, xy, yz, xz] = one.inertia;
    return { ...one, inertia: [xx, yy, zz, -xy, -yz, xz] };
  }),
});

const heavier = (model: FrameModel, k: number): FrameModel => ({
  ...model,
  members: model.members.map((one) => ({ ...one, density: k * (one.density ?? 0) })),
  masses: (model.masses ?? []).map(({ node, mass, inertia }) => {
    if (!inertia) return { node, mass: k * mass };
    const [xx, yy, zz, xy, yz, xz] = inertia;
    return { node, mass: k * mass, inertia: [k * xx, k * yy, k * zz, k * xy, k * yz, k * xz] };
  }),
});

const stiffer = (model: FrameModel, k: number): FrameModel => ({
  ...model,
  members: model.members.map((one) => ({
    ...one,
    youngsModulus: k * one.youngsModulus,
    shearModulus: k * one.shearModulus,
  })),
});

/** Largest difference, as a share. */
const apart = (a: readonly number[], b: readonly number[]): number => {
  expect(a).toHaveLength(b.length);
  return Math.max(...a.map((value, i) => Math.abs(value / b[i]! - 1)));
};

describe.each(DEMOS)('vibration and buckling of the %s demo as a whole', (name) => {
  const found = hertz(of(name).slow);

  test('ten frequencies above zero, lowest first, and no other among them (Sturm count)', () => {
    expect(found).toHaveLength(10);
    expect(found[0]).toBeGreaterThan(0);
    expect(found.toSorted((a, b) => a - b)).toEqual(found);
    const { model } = divideMembers(of(name).strength.frame.model, 0.15);
    const assembled = assembleFrame(model);
    if (!assembled.ok) throw new Error('a mechanism');
    for (const [k, f] of found.entries()) {
      expect(frequenciesBelow(assembled.value, f * TURN * (1 - 1e-5))).toBe(k);
      expect(frequenciesBelow(assembled.value, f * TURN * (1 + 1e-5))).toBe(k + 1);
    }
  });

  // Rounding of the pencil moves an eigenvalue by some 1e-9 of itself.
  test('k times the mass: 1/√k of each frequency; buckling stays', () => {
    const slow = changed(name, (model) => heavier(model, 3));
    expect(
      apart(
        hertz(slow).map((f) => f * Math.sqrt(3)),
        found,
      ),
    ).toBeLessThan(1e-7);
    expect(slow.buckling!.factor / of(name).slow.buckling!.factor).toBeCloseTo(1, 7);
  });

  test('k times E and G: √k of each frequency, k times the buckling factor', () => {
    const slow = changed(name, (model) => stiffer(model, 2));
    expect(
      apart(
        hertz(slow).map((f) => f / Math.SQRT2),
        found,
      ),
    ).toBeLessThan(1e-7);
    expect(slow.buckling!.factor / of(name).slow.buckling!.factor).toBeCloseTo(2, 6);
  });

  test('seen in a mirror it has the same frequencies', () => {
    expect(apart(hertz(changed(name, inMirror)), found)).toBeLessThan(1e-7);
  });

  test('twice the loads: half the buckling factor, the same case and part', () => {
    const [one, two] = [of(name).slow.buckling!, changed(name, (model) => model, 2).buckling!];
    expect(two.factor / one.factor).toBeCloseTo(0.5, 7);
    expect([two.case, two.moved.part]).toEqual([one.case, one.moved.part]);
  });

  test('finer members: frequencies and buckling fall toward a limit, within 0.1 % of it already', () => {
    const { strength, build } = of(name);
    const fine = slowStrength(strength, build, 0.03);
    // More elements can only soften a model of true shapes (Rayleigh), but for rounding.
    found.forEach((f, i) => {
      expect(hertz(fine)[i]!).toBeLessThan(f * (1 + 1e-9));
    });
    expect(apart(found, hertz(fine))).toBeLessThan(1e-3);
    expect(apart([of(name).slow.buckling!.factor], [fine.buckling!.factor])).toBeLessThan(1e-3);
  });

  test('the three cases with the largest push hold the lowest factor of all', () => {
    const { strength, build, slow } = of(name);
    const each = strength.cases.map((one, c) => {
      const results = { ...strength.results!, solutions: [strength.results!.solutions[c]!] };
      return slowStrength({ frame: strength.frame, cases: [one], results }, build).buckling?.factor;
    });
    expect(slow.buckling!.factor).toBeCloseTo(Math.min(...each.map((f) => f ?? Number.POSITIVE_INFINITY)), 6);
  });
});

describe('dividing members', () => {
  test('leaves movements and reactions under member loads as they were', () => {
    const { strength } = of('light');
    const { model, loadsOf } = divideMembers(strength.frame.model, 0.05);
    expect(model.members.length).toBeGreaterThan(strength.frame.model.members.length);
    const assembled = assembleFrame(model);
    if (!assembled.ok) throw new Error('a mechanism');
    const { loads } = strength.cases[0]!.balanced;
    const solved = solveFrame(assembled.value, [loadsOf(loads)]);
    if (!solved.ok) throw new Error('not solved');
    const whole = strength.results!;
    const most = Math.max(...whole.solutions[0]!.displacements.map(Math.abs));
    for (const [node, i] of whole.assembled.nodeIndex) {
      const k = assembled.value.nodeIndex.get(node)!;
      for (let j = 0; j < 6; j++) {
        const off =
          solved.value[0]!.displacements[k * 6 + j]! - whole.solutions[0]!.displacements[i * 6 + j]!;
        expect(Math.abs(off)).toBeLessThan(1e-7 * most);
      }
    }
  });
});

describe('engine speeds', () => {
  const range = { idle: 1400 * RPM, governed: 3600 * RPM, isIdleGiven: true, fires: true };

  test('a four-stroke single fires once in two turns: 25 Hz at 3000 rpm, and turns at it at 1500 rpm', () => {
    const { firing, turning } = drivenAt(25 * TURN, range);
    expect(firing! / RPM).toBeCloseTo(3000, 9);
    expect(turning! / RPM).toBeCloseTo(1500, 9);
  });

  test('outside its speeds nothing drives: 10 Hz below idle, 70 Hz above the governor', () => {
    expect(drivenAt(10 * TURN, range)).toEqual({});
    expect(drivenAt(70 * TURN, range)).toEqual({});
    expect(shakenRange(range).map((w) => w / TURN)).toEqual([700 / 60, 60].map((f) => expect.closeTo(f, 9)));
  });

  test('a motor does not fire and has no idle', () => {
    expect(drivenAt(25 * TURN, { ...range, idle: 0, fires: false })).toEqual({ turning: 25 * TURN });
  });

  test('idle is the file’s, else 0.4 of the governed speed (practice, no source)', () => {
    const { build } = of('light');
    const { idle: _, ...engine } = build.engine;
    expect(engineRange({ ...build, engine })).toMatchObject({
      idle: 0.4 * build.engine.governed!,
      isIdleGiven: false,
    });
    const told = { ...engine, idle: (1200 * RPM) as NonNullable<typeof build.engine.idle> };
    expect(engineRange({ ...build, engine: told })).toMatchObject({ idle: 1200 * RPM, isIdleGiven: true });
    const { governed: _g, torque: _t, ...silent } = engine;
    // A motor runs no faster than its back voltage lets it: 48 V at 0.12 V·s.
    const motor = { battery: { voltage: 48 }, constant: 0.12 } as NonNullable<typeof build.engine.motor>;
    expect(engineRange({ ...build, engine: { ...silent, motor } })).toEqual({
      idle: 0,
      governed: 400,
      isIdleGiven: true,
      fires: false,
    });
    expect(engineRange({ ...build, engine: silent })).toBeUndefined();
  });
});

test('what moves is said in words', () => {
  const said = (part: string, isPair = false) =>
    movedText({ node: part, part, isPair, direction: 'sideways' });
  expect(said('grip.left', true)).toBe('grips, sideways');
  expect(said('leg.right')).toBe('right fork leg, sideways');
  expect(said('bodies.exhaust')).toBe('exhaust, sideways');
  expect(said('stacks.front')).toBe('parts on the front axle, sideways');
  expect(said('upperRail.right')).toBe('upper rail, right, sideways');
  expect(said('upperRail', true)).toBe('upper rail, both sides, sideways');
});
