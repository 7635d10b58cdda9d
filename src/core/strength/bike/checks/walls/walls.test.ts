import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBuild, solve } from '../../../../index.ts';
import type { FrameSolution } from '../../../frame/index.ts';
import { strengthOf } from '../../strengthOf.ts';
import { wallRows } from './wallRows.ts';

const DEMOS = ['light', 'heavy', 'wrong'] as const;

const bikes = Object.fromEntries(
  DEMOS.map((name) => {
    const read = readBuild(readFileSync(`demo/${name}.build.json`, 'utf8'));
    if (!read.ok) throw new Error('the demo does not read');
    const solution = solve(read.value);
    const { frame, settings, cases, results } = strengthOf(solution);
    if (!results) throw new Error('a mechanism');
    return [name, { ...solution, frame, settings, cases, results }];
  }),
);
const of = (name: string) => bikes[name]!;

describe.each(DEMOS)('walls under welds of the %s demo', (name) => {
  const input = of(name);
  const found = wallRows(input);

  test('every coped end is compared or named as left out', () => {
    const copes = input.frame.welds.filter(({ kind }) => kind === 'cope');
    const left = found.notChecked.filter((text) => text.startsWith('the wall of'));
    const rows = found.rows.filter(({ check }) => check === 'wallUnderTube');
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.length + left.length).toBe(copes.length);
    const names = found.rows.map(({ part, check, place }) => `${part} ${check} ${place}`);
    expect(new Set(names).size).toBe(names.length);
  });

  test('a heavier wall of a tube is used less under each of its welds', () => {
    for (const line of new Set(found.rows.map(({ part }) => part))) {
      const { wall } = input.frame.draft.lines.get(line)!.stock;
      const heavier = wallRows(input, { line, wall: wall * 1.2 }).rows;
      const same = wallRows(input, { line, wall }).rows;
      expect(same).toEqual(found.rows.filter(({ part }) => part === line));
      heavier.forEach((row, i) => {
        if (same[i]!.utilization > 1e-6) expect(row.utilization).toBeLessThan(same[i]!.utilization);
      });
    }
  });

  test('twice the forces in the tubes: more than twice, at most four times the use, as moments in plane count squared', () => {
    const twice = (one: FrameSolution): FrameSolution => ({
      ...one,
      memberForces: one.memberForces.map((f) => 2 * f),
      memberLoads: one.memberLoads.map((w) => 2 * w),
    });
    // Only one case at a time keeps the worst case the same; the push along the chord is doubled too.
    const c = input.cases.findIndex(({ id }) => id === 'seated');
    const alone = { ...input, cases: [input.cases[c]!] };
    const one = wallRows({
      ...alone,
      results: { ...input.results, solutions: [input.results.solutions[c]!] },
    });
    const two = wallRows({
      ...alone,
      results: { ...input.results, solutions: [twice(input.results.solutions[c]!)] },
    });
    const uses = (rows: typeof one.rows) =>
      rows.filter(({ check }) => check === 'wallUnderTube').map(({ utilization }) => utilization);
    uses(two.rows).forEach((use, i) => {
      const before = uses(one.rows)[i]!;
      expect(use).toBeGreaterThanOrEqual(2 * before);
      // kp falls from 1 to no less than 0.4 in all.
      expect(use).toBeLessThanOrEqual((4 * before) / 0.4 ** 2);
    });
  });
});

test('peg tab across its rail under the drop: by hand, forces along the hollow of the tab', () => {
  const input = of('heavy');
  const c = input.cases.findIndex(({ id }) => id === 'side-drop');
  const row = wallRows({
    ...input,
    cases: [input.cases[c]!],
    results: { ...input.results, solutions: [input.results.solutions[c]!] },
  }).rows.find(({ place }) => place === 'peg-tab.left')!;
  // The demo's tab stands upright and square out from its rail: its edge is vertical, its plane that of y and z.
  const tab = input.build.plates['peg-tab']!;
  if (tab.recipe !== 'peg-tab' || tab.plane !== 'across') throw new Error('another tab than the sum below');
  const edge = tab.base!;
  const { origin } = input.patterns.find(({ id }) => id === 'peg-tab')!.placed[0]!.frame;
  const foot = { y: origin.y - tab.height, z: origin.z };
  const { outside, wall } = input.frame.draft.lines.get('lowerRail')!.stock;
  // 1020 tube, beside the weld as annealed.
  const fy = 295e6;
  let [force, lift, moment] = [0, 0, 0];
  for (const load of input.cases[c]!.balanced.loads.nodes!) {
    if (load.node !== 'peg.left' && load.node !== 'mass:plates.peg-tab') continue;
    const at = input.frame.draft.nodes.get(load.node)!;
    force += load.force!.y;
    lift += load.force!.z;
    moment += (at.y - foot.y) * load.force!.z - (at.z - foot.z) * load.force!.y + (load.moment?.x ?? 0);
  }
  // The weld as a line about its own center, which lies this far out from the middle of the rail.
  const radius = outside / 2;
  const half = Math.asin(edge / outside);
  const arc = outside * half;
  const center = edge / 2 / half;
  const inertia = arc * (radius ** 2 - center ** 2);
  const turn = Math.abs(moment + (radius - center) * lift) / inertia;
  // The peg is pushed up and in: the upper end of the weld is pressed by both, and slides back a little of the lift.
  const line = Math.hypot(
    Math.abs(lift) / arc + turn * (radius * Math.cos(half) - center),
    Math.abs(force) / arc + turn * (edge / 2),
  );
  // A wall that is thicker than a tenth of the diameter lies outside the rule, of which 0.85 then counts; 1.5 on yield.
  const share = outside / wall < 10 ? 0.85 : 1;
  const allowed = (share * 2 * wall * fy) / Math.sqrt(3) / 1.5;
  const unit = (share * fy * wall ** 2) / 1.5;
  const face = unit * (4 + 20 * (edge / outside) ** 2);
  const byFace = Math.abs(force) / face + Math.abs(moment) / (0.5 * edge * face);
  // The hollow governs, also over the face with the little push that the rail has there.
  expect(line / allowed).toBeGreaterThan(byFace);
  expect(row.utilization / (line / allowed)).toBeCloseTo(1, 6);
});
