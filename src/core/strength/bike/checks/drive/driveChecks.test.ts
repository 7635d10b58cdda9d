import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mergePatch } from '../../../../build/index.ts';
import { readBuild, solve } from '../../../../index.ts';
import { strengthCore } from '../../strengthCore.ts';
import { strengthOf } from '../../strengthOf.ts';
import { misalignmentOf } from './misalignment.ts';

type Json = Record<string, unknown>;

const fileOf = (name: string): Json => JSON.parse(readFileSync(`demo/${name}.build.json`, 'utf8')) as Json;

function solved(name: 'light' | 'heavy', changes: unknown = {}) {
  const build = readBuild(JSON.stringify(mergePatch(fileOf(name), changes)));
  if (!build.ok) throw new Error(JSON.stringify(build.issues));
  return solve(build.value);
}

/** The demo with fields of one item of one stack set. */
function withItem(name: 'light' | 'heavy', stack: string, id: string, fields: Json) {
  const { stacks } = fileOf(name) as { stacks: Record<string, { items: readonly Json[] }> };
  const items = stacks[stack]!.items.map((item) => (item.id === id ? { ...item, ...fields } : item));
  return { stacks: { [stack]: { items } } };
}

const shaftOf = (solution: ReturnType<typeof solved>) =>
  strengthCore(solution).drive.shafts.find(({ id }) => id === 'countershaft')!;

describe('an outboard bearing as a remedy', () => {
  // A shaft of soft steel, so that its stress passes the limit where the first chain hangs outside.
  const input = solved('light', { loads: { shafts: { yield: 40, tensile: 440 } } });
  const { remedies, drive, settings } = strengthOf(input);
  const remedy = remedies.find(({ row, what }) => row.part === 'countershaft' && /outboard/.test(what));

  test('is tried on the very row, and gives the stress that the comparison gives', () => {
    const { outboard } = drive.shafts[0]!;
    expect(outboard!.isThere).toBe(false);
    expect(remedy!.row.check).toMatch(/shaftStress|keyseatFatigue/);
    const stress = remedies.find(({ row, what }) => row.check === 'shaftStress' && /outboard/.test(what));
    if (!stress) throw new Error('no remedy for the stress');
    const allowed = settings.shaftYield / settings.yieldFactor;
    // The same solution once more: rounding only.
    expect(stress.utilization).toBeCloseTo(outboard!.with.maxStress / allowed, 9);
    expect(stress.utilization).toBeLessThan(stress.row.utilization);
    expect(stress.what).toContain(`${Math.round(Math.abs(outboard!.at) * 1000)} mm right`);
  });

  test('is not offered where one stands already', () => {
    const heavy = strengthOf(solved('heavy', { loads: { shafts: { yield: 40, tensile: 440 } } }));
    expect(heavy.drive.shafts[0]!.outboard!.isThere).toBe(true);
    expect(heavy.remedies.filter(({ what }) => /outboard/.test(what))).toEqual([]);
  });
});

describe('bearings as the file tells them', () => {
  const plain = shaftOf(solved('heavy'));

  test('left out: rigid and in line', () => {
    for (const support of plain.model.shaft.supports) {
      expect(support.stiffness).toBeUndefined();
      expect(support.offset).toBeUndefined();
    }
  });

  test('stiffness and offset reach the shaft: up is its first direction across, forward its second', () => {
    const change = withItem('heavy', 'countershaft', 'bearing-inner', {
      stiffness: '20000 N/mm',
      offset: { up: '0.5 mm', forward: '-0.2 mm' },
    });
    const { model, solution } = shaftOf(solved('heavy', change));
    const k = model.bearings.findIndex(({ item }) => item === 'bearing-inner');
    expect(model.shaft.supports[k]).toMatchObject({ stiffness: 2e7, offset: [5e-4, -2e-4] });
    expect(solution.supports[k]!.force[0]).not.toBeCloseTo(plain.solution.supports[k]!.force[0], 0);
    // Forces still balance what pulls: a settled bearing only moves them about.
    for (const axis of [0, 1] as const) {
      const sum = (one: typeof solution): number =>
        one.supports.reduce((all, { force }) => all + force[axis], 0);
      expect(sum(solution)).toBeCloseTo(sum(plain.solution), 4);
    }
  });

  test('they are refused on anything but a bearing', () => {
    const change = withItem('heavy', 'countershaft', 'spacer-left', { stiffness: '20000 N/mm' });
    expect(readBuild(JSON.stringify(mergePatch(fileOf('heavy'), change))).ok).toBe(false);
  });

  test('a softer seat takes less of a fit-up, two bearings take none', () => {
    const soft = plain.model.shaft.supports.map((support) => ({ ...support, stiffness: 1e7 as never }));
    const yielding = misalignmentOf({ ...plain.model, shaft: { ...plain.model.shaft, supports: soft } })!;
    expect(yielding.reaction).toBeLessThan(plain.misalignment!.reaction);
    // No more than the spring itself could give at that offset.
    expect(yielding.reaction).toBeLessThan(1e7 * yielding.offset);
    expect(shaftOf(solved('light')).misalignment).toBeUndefined();
  });
});

describe('axle threads', () => {
  const rear = (threadLeft: string) => {
    const { axles, rows } = strengthCore(solved('light', { stacks: { rear: { axle: { threadLeft } } } }));
    return {
      threads: axles.find(({ id }) => id === 'rearAxle')!.threads,
      row: rows.find(({ check }) => check === 'axleThread'),
    };
  };

  test('a thread that ends before the plate is no one’s concern', () => {
    expect(rear('19.5 mm')).toEqual({ threads: [], row: undefined });
  });

  test('one that runs into the plate is told by how much', () => {
    const { threads, row } = rear('22 mm');
    // End of the axle 127.997 mm, plate 6.35 mm about 105 mm: 108.175 − (127.997 − 22).
    expect(threads[0]!.reach * 1000).toBeCloseTo(2.178, 2);
    expect(row).toBeUndefined();
  });

  test('one that runs through it is loaded as a notch, the further in the harder', () => {
    // A longer thread has every root of a shorter one, so no factor may grow with it.
    const factors = ['25 mm', '30 mm', '40 mm', '50 mm', '60 mm'].map((length) => rear(length).row!.value);
    factors.forEach((factor, i) => {
      expect(factor).toBeGreaterThan(0);
      if (i > 0) expect(factor).toBeLessThanOrEqual(factors[i - 1]!);
    });
    expect(factors.at(-1)).toBeLessThan(factors[0]!);
  });
});

describe('belts', () => {
  test('rows of slip and strength come with what the file tells, and are named as left out without', () => {
    const bare = strengthOf(solved('heavy'));
    expect(bare.rows.filter(({ check }) => check === 'beltSlip' || check === 'beltTension')).toEqual([]);
    expect(bare.notChecked.filter((one) => one.startsWith('belt primary'))).toHaveLength(2);
    const stages = (fileOf('heavy') as { driveline: { stages: readonly Json[] } }).driveline.stages.map(
      (one) =>
        one.kind === 'variable-belt'
          ? {
              ...one,
              workingTension: 2000,
              beltMass: '0.4 kg/m',
              driven: { ...(one.driven as Json), clamp: 900 },
            }
          : one,
    );
    const told = strengthOf(solved('heavy', { driveline: { stages } }));
    const [belt] = told.drive.belts;
    // m·v² at first bite: 0.4 kg/m, 2200 rpm on 35 mm.
    expect(belt!.centrifugal).toBeCloseTo(0.4 * (((2200 * 2 * Math.PI) / 60) * 0.035) ** 2, 6);
    expect(belt!.tight - bare.drive.belts[0]!.tight).toBeCloseTo(belt!.centrifugal, 9);
    expect(belt!.shaftLoad).toBeCloseTo(bare.drive.belts[0]!.shaftLoad, 9);
    expect(told.rows.find(({ check }) => check === 'beltSlip')!.utilization).toBeCloseTo(
      belt!.clampNeeded / 900,
      9,
    );
    expect(told.rows.find(({ check }) => check === 'beltTension')!.value).toBeCloseTo(belt!.tight, 9);
  });
});

describe('chains', () => {
  test('a shock drive takes the factor of high impact, an engine on a clutch that of some impact', () => {
    const [first] = strengthCore(solved('light')).drive.chains;
    const [final] = strengthCore(solved('heavy')).drive.chains;
    expect(first!.service).toEqual({ load: 'some-impact', factor: 1.4 });
    expect(final!.service).toEqual({ load: 'high-impact', factor: 1.7 });
    expect(first!.peak).toBeGreaterThan(1.4 * first!.tension);
  });
});

describe('bearings in plates', () => {
  test('bored: the limits of the class; by hand: the band of the file about a ring that just seats', () => {
    const seatOf = (seat: Json) =>
      strengthCore(solved('heavy', { plates: { 'inner-plate': { seat } } })).drive.seats.find(
        ({ plate }) => plate === 'inner-plate',
      )!;
    // ISO 286, 52 mm: N7 −9/−39, ring of class Normal 0/−13.
    const bored = seatOf({});
    expect(bored.interference.least * 1e6).toBeCloseTo(-4, 6);
    expect(bored.interference.most * 1e6).toBeCloseTo(39, 6);
    expect(bored.clearance!.group).toBe('C3');
    const opened = seatOf({ finish: 'by-hand', bearing: '6205' });
    expect(opened.isByHand).toBe(true);
    expect(opened.interference.most).toBeCloseTo(-opened.interference.least, 12);
    expect(opened.clearance!.group).toBe('N');
    expect(opened.clearanceLoss.middle).toBe(0);
  });
});

describe('wheel bearings', () => {
  test('worse roads shorten their life; none named is said, not guessed', () => {
    const life = (spectrum: readonly Json[]): number =>
      strengthCore(solved('heavy', { loads: { spectrum } })).wheelBearings.find(
        ({ wheel }) => wheel === 'front',
      )!.hours.low;
    const mild = life([{ case: 'bump-front', scale: 0.2, perKilometer: 1 }]);
    const rough = life([{ case: 'bump-front', scale: 1, perKilometer: 200 }]);
    expect(rough).toBeLessThan(mild);
    const unnamed = strengthOf(solved('heavy', { wheels: { front: { hub: { bearing: null } } } }));
    expect(unnamed.wheelBearings.map(({ wheel }) => wheel)).toEqual(['rear']);
    expect(unnamed.notChecked.some((one) => one.startsWith('bearings of the front wheel'))).toBe(true);
  });

  test('two that are wider than their hub are said, not squeezed in', () => {
    // Two 6202 are 22 mm wide.
    const narrow = withItem('light', 'front', 'hub', { length: '21 mm' });
    const { wheelBearings, notChecked } = strengthOf(solved('light', narrow));
    expect(wheelBearings.map(({ wheel }) => wheel)).toEqual(['rear']);
    expect(notChecked.some((one) => one.includes('6202 are wider than its hub'))).toBe(true);
  });

  test('a thicker axle is not offered for them, nor any change that changes nothing', () => {
    const { rows, remedies } = strengthOf(solved('heavy', { loads: { bearingLife: 10_000 } }));
    expect(
      rows.find(({ part, check }) => part === 'rearAxle' && check === 'wheelBearingLife')!.utilization,
    ).toBeGreaterThan(1);
    expect(remedies.filter(({ row }) => row.check === 'wheelBearingLife')).toEqual([]);
    for (const { row, utilization } of remedies) expect(utilization).toBeLessThan(row.utilization);
  });
});
