import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBuild, solve } from '../../../../index.ts';
import type { Force } from '../../../../quantity/index.ts';
import { slipLoad } from '../../../bolts/boltJoint.ts';
import { strengthOf } from '../../strengthOf.ts';
import { clampNeeded } from './slip.ts';

test('at that tension the faces slip just then: EN 1993-1-8, section 3.9, Fs = ks·µ·(Fp − Ft)', () => {
  const [friction, holeFactor, pull] = [0.15, 0.63, 1200];
  for (const tension of [1500, 6000, 25_000]) {
    const load = slipLoad({ clamp: (tension - pull) as Force, friction, faces: 1, holeFactor });
    expect(clampNeeded(load, pull, friction, holeFactor)).toBeCloseTo(tension, 9);
  }
});

test('bolts that are barely tight come out over their limit, not out of the list', () => {
  const file = JSON.parse(readFileSync('demo/light.build.json', 'utf8'));
  const read = readBuild(
    JSON.stringify({
      ...file,
      loads: { ...file.loads, bolts: { 'engine-plate': { torque: '0.5 N·m' } } },
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { rows, rowsLeft } = strengthOf(solve(read.value));
  const slip = rows.filter(({ check, part }) => check === 'boltSlip' && part === 'engine-plate');
  expect(slip.map(({ place }) => place).sort()).toEqual(['engine', 'rails']);
  for (const { utilization } of slip) expect(utilization).toBeGreaterThan(1);
  expect(rowsLeft).toEqual([]);
});
