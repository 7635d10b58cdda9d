import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mergePatch } from '../../../../build/index.ts';
import { readBuild, solve } from '../../../../index.ts';
import { unbalance } from '../../../plates/index.ts';
import { type StrengthCore, type StrengthInput, strengthCore } from '../../strengthCore.ts';
import { strengthOf } from '../../strengthOf.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { axlePlateStudy } from './axlePlateStudy.ts';
import { caliperStudy, heldBracket } from './caliperStudy.ts';
import { enginePlateStudy } from './enginePlateStudy.ts';
import { footForces } from './footForces.ts';
import { ownLoadStudy } from './ownLoadStudy.ts';
import { type PlacedPlate, placedPlates, pressedIn } from './plateAxes.ts';
import { loadsByPlate, plateBodies } from './plateBodies.ts';
import { isStudied, type PlateStudy } from './study.ts';

const GRAVITY = 9.80665;

function solved(name: string, changes: unknown = {}) {
  const file: unknown = JSON.parse(readFileSync(`demo/${name}.build.json`, 'utf8'));
  const build = readBuild(JSON.stringify(mergePatch(file, changes)));
  if (!build.ok) throw new Error(JSON.stringify(build.issues));
  return solve(build.value);
}

interface Sample {
  readonly input: JointInput;
  readonly core: StrengthCore;
  readonly studies: readonly PlateStudy[];
  readonly plates: readonly PlacedPlate[];
}

function sample(solution: StrengthInput): Sample {
  const core = strengthCore(solution);
  if (!core.results) throw new Error('the frame of the demo is a mechanism');
  const { frame, settings, cases, results } = core;
  const input = { ...solution, frame, settings, cases, results };
  const { bodies, owners } = plateBodies(frame);
  const loads = loadsByPlate(cases, owners);
  const plates = placedPlates(solution.patterns);
  const studies = plates
    .filter(({ pattern }) => pattern.recipe !== 'gusset')
    .map((plate) => {
      if (plate.pattern.recipe === 'engine-plate') return enginePlateStudy(input, plate, loads);
      if (plate.pattern.recipe === 'caliper-bracket') return caliperStudy(input, plate);
      if (plate.pattern.recipe === 'axle-plate')
        return axlePlateStudy(input, plate, bodies.get(plate.node)!, loads);
      return ownLoadStudy(input, plate, loads);
    })
    .filter(isStudied);
  return { input, core, studies, plates };
}

const samples = { light: sample(solved('light')), heavy: sample(solved('heavy')) };

const studyOf = ({ studies }: Sample, id: string): PlateStudy => {
  const found = studies.find(({ plate }) => plate.pattern.id === id);
  if (!found) throw new Error(`no study of ${id}`);
  return found;
};

const caseOf = ({ core }: Sample, id: string): number => core.cases.findIndex((one) => one.id === id);

describe('forces on the plates of a demo', () => {
  test.each(['light', 'heavy'] as const)('%s: in balance on every plate in every case', (name) => {
    const { studies, core } = samples[name];
    let looked = 0;
    for (const { plate, loads } of studies)
      core.cases.forEach((_, c) => {
        const acting = loads(c);
        if (!acting) return;
        looked++;
        // 1e-6 of the largest force; the frame's own residual is about 1e-13.
        expect(unbalance(acting, plate.pattern.centroid, Math.sqrt(plate.pattern.area))).toBeLessThan(1e-6);
      });
    expect(looked).toBeGreaterThan(10 * studies.length - 40);
  });

  test('an axle plate is loaded in every case, out of the balance of the frame alone', () => {
    const { core } = samples.light;
    const { loads } = studyOf(samples.light, 'axle-plate');
    for (let c = 0; c < core.cases.length; c++) expect(loads(c)).toBeDefined();
  });

  test('beside a bracket on the same axle, the plate is left out while that brake is on, and that is told', () => {
    const { core } = samples.heavy;
    const left = studyOf(samples.heavy, 'axle-plate');
    expect(left.loads(caseOf(samples.heavy, 'braking-rear'))).toBeUndefined();
    expect(left.loads(caseOf(samples.heavy, 'drop'))).toBeDefined();
    expect(core.platesLeft.join('\n')).toMatch(/axle-plate.*rear brake/);
    expect(core.platesLeft.join('\n')).toMatch(/neck-gusset/);
  });

  test('at rest the rail bolts carry the weight of engine and plate', () => {
    const { core, input } = samples.light;
    const c = caseOf(samples.light, 'seated');
    const { loads, plate } = studyOf(samples.light, 'engine-plate');
    const held = loads(c)!.points.slice(-4);
    const up = held.reduce(
      (sum, { force }) => sum + force.z * plate.frame.z.z + force.x * plate.frame.x.z,
      0,
    );
    const weight = core.frame.bodies
      .filter(({ carrier }) => carrier.by === 'node')
      .filter(
        ({ carrier }) =>
          core.frame.draft.leads((carrier as { node: string }).node) === core.frame.draft.leads('engine'),
      )
      .reduce((sum, { mass }) => sum + mass * GRAVITY, 0);
    expect(input.patterns.find(({ id }) => id === 'engine-plate')!.mass * GRAVITY).toBeLessThan(weight);
    // The bike rolls a little about its length in the model, since nobody balances it.
    expect(up / weight).toBeCloseTo(1, 2);
  });

  test('the tab of a peg at its seam: F·a·c/I of the foot and nothing else in its plane', () => {
    const { input } = samples.light;
    const study = studyOf(samples.light, 'peg-tab');
    const acting = study.loads(caseOf(samples.light, 'peg'))!;
    const entry = input.build.plates['peg-tab']!;
    if (entry.recipe !== 'peg-tab') throw new Error('no peg tab');
    const peg = input.bike.layout.places.peg;
    const pivot = study.plate.frame.origin;
    const foot = acting.points.find(({ force }) => Math.hypot(force.x, force.y) > 1000)!;
    // 1500 N, and some newtons of the peg's own acceleration.
    expect(Math.hypot(foot.force.x, foot.force.y)).toBeGreaterThan(1450);
    expect(Math.abs(foot.moment?.z ?? 0) / (1500 * (peg.y - pivot.y))).toBeCloseTo(1, 1);
  });
});

describe('caliper bracket', () => {
  test('the anchor holds the brake torque: F·r = µ·N·R of the wheel', () => {
    const { input, plates } = samples.heavy;
    const plate = plates.find(({ pattern }) => pattern.id === 'front-caliper')!;
    const { one, anchors } = heldBracket(input, plate)!;
    const push = one.applied.find(({ what }) => what === 'front wheel on the ground')!;
    const torque = Math.abs(push.force.x) * input.bike.layout.fitted.front.radius;
    const [anchor] = anchors;
    // 92 mm from the axle, as its file says.
    expect(Math.hypot(anchor!.load.force.x, anchor!.load.force.y)).toBeCloseTo(torque / 0.092, 3);
    expect(anchor!.load.force.x * anchor!.load.at.x + anchor!.load.force.y * anchor!.load.at.y).toBeCloseTo(
      0,
      6,
    );
  });

  test('without anything that keeps it from turning it is not looked at, and that is told', () => {
    const { plates } = samples.heavy;
    const bare = sample(solved('heavy', { plates: { 'front-caliper': { anchors: null } } }));
    expect(bare.studies.some(({ plate }) => plate.pattern.id === 'front-caliper')).toBe(false);
    expect(bare.core.platesLeft.join('\n')).toMatch(/front-caliper.*turning/);
    expect(plates.length).toBe(bare.plates.length);
  });
});

describe('bolted foot', () => {
  const load = (force: { x: number; y: number; z: number }, moment = { x: 0, y: 0, z: 0 }) => ({
    at: { x: 0, y: 0 },
    force,
    moment,
  });
  const bent = { along: [-0.06, 0.06], middle: 0, half: 0.09, bent: { off: 0.07, toe: 0.02 } };

  test('tipping about its end: M·l/Σl² on the far bolt, and the lever of the bent foot', () => {
    // bhandari, section 7.9: l 150 and 30 mm from the end it tips on.
    const { lift, shear, pull } = footForces(bent, load({ x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 36 }));
    expect(lift).toBeCloseTo((36 * 0.15) / (0.15 ** 2 + 0.03 ** 2), 9);
    expect(shear).toBeCloseTo(0, 9);
    // About the free edge of the foot: P·e = F·(a + e).
    expect(pull * 0.02).toBeCloseTo(lift * 0.09, 9);
  });

  test('what presses the foot down holds it; what lifts it is shared', () => {
    const tip = { x: 0, y: 0, z: 36 };
    expect(footForces(bent, load({ x: 0, y: -400, z: 0 }, tip)).lift).toBeCloseTo(0, 9);
    expect(footForces(bent, load({ x: 0, y: 300, z: 0 })).lift).toBeCloseTo(150, 9);
  });

  test('bolts across a flat foot take all that acts in its plane, by the bolt group', () => {
    const flat = { along: [-0.06, 0.06], middle: 0, half: 0.09 };
    const { shear, lift } = footForces(flat, load({ x: 0, y: 800, z: 0 }, { x: 0, y: 0, z: 48 }));
    // 400 N each, and ±48/0.12 across the row.
    expect(shear).toBeCloseTo(800, 9);
    expect(lift).toBe(0);
  });
});

test('a moment that a bolt brings in is the couple of two forces', () => {
  const at = { x: 0.02, y: -0.01 };
  const parts = pressedIn({ at, force: { x: 5, y: 6, z: 7 }, moment: { x: 3, y: -4, z: 2 } }, 0.006);
  const sum = [0, 0, 0];
  for (const { at: p, force, moment } of parts) {
    sum[0]! += (p.y - at.y) * force.z + (moment?.x ?? 0);
    sum[1]! += -(p.x - at.x) * force.z + (moment?.y ?? 0);
    sum[2]! += (p.x - at.x) * force.y - (p.y - at.y) * force.x + (moment?.z ?? 0);
  }
  expect(sum[0]).toBeCloseTo(3, 9);
  expect(sum[1]).toBeCloseTo(-4, 9);
  expect(sum[2]).toBeCloseTo(2, 9);
});

describe('rows', () => {
  const thin = strengthOf(solved('light', { plates: { 'stand-tab': { thickness: '1/4 in' } } }));
  const row = thin.rows.find(({ part, check }) => part === 'stand-tab' && check === 'plateStress')!;

  test('a thin tab is over its limit, in words, and a thicker plate is tried', () => {
    expect(row.utilization).toBeGreaterThan(1);
    expect(row.where).toMatch(/mm of metal/);
    const tried = thin.remedies.find((one) => one.row.part === 'stand-tab')!;
    expect(tried.what).toMatch(/^Make "stand-tab" of .* plate$/);
    expect(tried.holds).toBe(true);
    expect(tried.utilization).toBeLessThan(row.utilization);
  });

  test('two alike carry half each', () => {
    const pair = strengthCore(
      solved('light', { plates: { 'stand-tab': { thickness: '1/4 in', count: 2 } } }),
    );
    const shared = pair.rows.find(({ part, check }) => part === 'stand-tab' && check === 'plateStress')!;
    // The tab's own weight is not shared.
    expect(shared.value / row.value).toBeCloseTo(0.5, 2);
  });

  test('every plate of the demos has a row or a reason why not', () => {
    for (const { core, plates } of Object.values(samples))
      for (const { pattern } of plates) {
        const has = core.rows.some(({ part, check }) => part === pattern.id && check === 'plateStress');
        const told = core.platesLeft.some((line) => line.includes(`"${pattern.id}"`));
        expect(has || told).toBe(true);
      }
  });
});
