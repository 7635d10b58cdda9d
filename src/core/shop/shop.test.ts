import { describe, expect, test } from 'vitest';
import { bikeOf, everyPlate, plateBuild, someNeeds } from '../../../tests/support/plateBuild.ts';
import type { Patch } from '../../../tests/support/smallBuild.ts';
import { layOut } from '../bike/index.ts';
import { solveDriveline } from '../driveline/index.ts';
import { platesOf } from '../plates/index.ts';
import { inches } from '../quantity/index.ts';
import { blockHeight, finishedLength, shopWork, stackBlocks } from './index.ts';

function work(patch: Patch = {}, plates = everyPlate) {
  const build = plateBuild(plates, patch);
  const bike = bikeOf(build);
  const driveline = solveDriveline(build, layOut(build));
  const { patterns } = platesOf(build, bike, someNeeds);
  return { build, bike, driveline, patterns, ...shopWork({ build, bike, driveline, patterns }) };
}

/** One bend of 90° in the plane of travel: 200 mm up, then 300 mm forward, bent to 60 mm. */
const bent: Patch = {
  frame: {
    nodes: {
      foot: { from: 'origin', forward: 200, height: 200 },
      corner: { from: 'foot', up: 200 },
      tip: { from: 'corner', forward: 300 },
    },
    tubes: {
      hoop: {
        tubing: 'rail',
        through: ['foot', 'corner', 'tip'],
        centerlineRadius: 60,
        start: { joint: 'square', leaveLong: 12 },
        end: { joint: 'square', leaveLong: 5 },
      },
    },
  },
};
/** Straights of 140 and 240 with a quarter of a circle of 60 between [m]. */
const HOOP = 0.14 + 0.24 + (Math.PI / 2) * 0.06;

describe('cut list', () => {
  test('lengths by hand; a pair is one row of two; what is left on is sawn', () => {
    const { cuts } = work(bent);
    const hoop = cuts.rows.find(({ tube }) => tube === 'hoop')!;
    expect(hoop).toMatchObject({ count: 1, pair: false, bends: 1 });
    expect(hoop.length).toBeCloseTo(HOOP, 9);
    expect(hoop.sawn).toBeCloseTo(HOOP + 0.017, 9);
    const rail = cuts.rows.find(({ tube }) => tube === 'rail')!;
    expect(rail).toMatchObject({ count: 2, pair: true, bends: 0 });
    expect(rail.length).toBeCloseTo(0.46, 9);
  });

  test('what is to be bought is every sawn piece with its kerf, and every piece is in a bar', () => {
    const { cuts } = work({ ...bent, shop: { saw: { kerf: 2 } } });
    const sawn = cuts.rows.reduce((sum, row) => sum + row.count * row.sawn, 0);
    const pieces = cuts.rows.reduce((sum, row) => sum + row.count, 0);
    const [plan] = cuts.plans;
    expect(plan!.total).toBeCloseTo(sawn + 0.002 * pieces, 9);
    expect(plan!.noStock).toBe(true);
    expect(plan!.bars.flatMap((bar) => bar.pieces)).toHaveLength(pieces);
    for (const { bar, pieces: cut, left } of plan!.bars)
      expect(cut.reduce((sum, piece) => sum + piece.length + 0.002, left)).toBeCloseTo(bar, 9);
  });

  test('the finished length is that of the placed tube', () => {
    const { bike, cuts } = work();
    for (const tube of bike.tubes.filter(({ hand }) => hand !== 'right'))
      expect(cuts.rows.find((row) => row.tube === tube.entry)!.length).toBe(finishedLength(tube));
  });
});

describe('bend schedule', () => {
  test('marks are from the sawn end: 12 left on, 140 of straight, a quarter circle of 60', () => {
    const [hoop] = work(bent).bends;
    const [row, ...more] = hoop!.rows;
    expect(more).toEqual([]);
    expect(hoop!.sawn).toBeCloseTo(HOOP + 0.017, 9);
    expect(row!.start).toBeCloseTo(0.012 + 0.14, 9);
    expect(row!.end).toBeCloseTo(0.012 + 0.14 + (Math.PI / 2) * 0.06, 9);
    expect(row!.angle).toBeCloseTo(Math.PI / 2, 9);
    expect(row!.rotation).toBe(0);
  });

  test('springback of the sample is bent over, and without a sample the sheet says so', () => {
    expect(work(bent).bends[0]).toMatchObject({ springbackKnown: false });
    const shop = { bender: { centerlineRadius: 60, springback: 3 } };
    const [hoop] = work({ ...bent, shop }).bends;
    expect(hoop!.springbackKnown).toBe(true);
    // A 90° bend on the sample's own angle: pulled until it comes back to 90°.
    expect((hoop!.rows[0]!.pull * 180) / Math.PI).toBeCloseTo(93, 6);
  });
});

describe('fit-up', () => {
  // Trade fact with no published source: a 1/4 in bolt head on two 1/4 in table plates makes a 10 in block 10 3/4 in.
  const props = ['bolt head', 'table plate', 'second table plate'].map((what) => ({
    what,
    thickness: '1/4 in',
  }));

  test('a prop of 3/4 in makes a block of 10 in one of 10 3/4 in', () => {
    const height = blockHeight(
      inches(10),
      props.map(({ what }) => ({ what, thickness: inches(0.25) })),
    );
    expect(height / 0.0254).toBeCloseTo(10.75, 12);
  });

  test('props of the build lift every block and every center by 3/4 in, and no plumb mark', () => {
    const bare = work().fitUp;
    const lifted = work({ shop: { jig: { props } } }).fitUp;
    expect(lifted.propHeight / 0.0254).toBeCloseTo(0.75, 12);
    lifted.stations.forEach((station, i) => {
      const before = bare.stations[i]!;
      expect(station.name).toBe(before.name);
      expect(station.center - before.center).toBeCloseTo(inches(0.75), 12);
      if (station.block !== undefined) expect(station.block - before.block!).toBeCloseTo(inches(0.75), 12);
    });
    expect(lifted.plumbMarks).toEqual(bare.plumbMarks);
  });

  test('10 3/4 in of blocks: two of 4, one of 2, one of 1/2, one of 1/4', () => {
    const sizes = [4, 2, 1, 0.5, 0.25].map((size) => inches(size));
    const { blocks, shims, left } = stackBlocks(inches(10.75), sizes, [inches(1 / 16)]);
    expect(blocks.map((block) => block / 0.0254)).toEqual(
      [4, 4, 2, 0.5, 0.25].map((size) => expect.closeTo(size, 9)),
    );
    expect(shims).toEqual([]);
    expect(left).toBeCloseTo(0, 9);
  });

  test('never stacked higher than asked; what shims leave is told', () => {
    const { blocks, shims, left } = stackBlocks(0.0515, [0.025, 0.01], [0.001]);
    expect([...blocks, ...shims].reduce((sum, one) => sum + one, left)).toBeCloseTo(0.0515, 12);
    expect(left).toBeGreaterThanOrEqual(0);
    expect(left).toBeLessThan(0.001);
    expect(stackBlocks(0.05, [], [])).toEqual({ blocks: [], shims: [], left: 0.05 });
  });
});

describe('drill schedule', () => {
  test('alike openings are one row, counted over all copies, and none is lost', () => {
    const { drilling, patterns } = work();
    for (const pattern of patterns) {
      const rows = drilling.filter(({ plate }) => plate === pattern.id);
      expect(rows.reduce((sum, row) => sum + row.count, 0)).toBe(pattern.openings.length * pattern.count);
      expect(rows.flatMap((row) => row.holes).toSorted()).toEqual(
        pattern.openings.map(({ id }) => id).toSorted(),
      );
    }
    const rails = drilling.find(
      ({ plate, holes }) => plate === 'engine' && holes.some((id) => id.startsWith('rail')),
    );
    expect(rails).toMatchObject({ count: 4 });
  });
});

describe('parts and order of work', () => {
  const text = (steps: ReturnType<typeof work>['order']): string =>
    steps.map(({ title, details, hold }) => [title, ...details, hold ?? ''].join(' ')).join('\n');

  test('steps are numbered through, and the first start comes after the brakes', () => {
    const { order } = work();
    expect(order.map(({ number }) => number)).toEqual(order.map((_, i) => i + 1));
    const at = (part: RegExp) => order.findIndex(({ title }) => part.test(title));
    expect(at(/Brakes and controls/)).toBeLessThan(at(/First run/));
    expect(at(/tack/)).toBeLessThan(at(/^Weld/));
  });

  test('only parts that are there have steps and hold points', () => {
    const without = work({}, {});
    expect(text(without.order)).not.toMatch(/templates|[Bb]end schedule|Coat|Band brake/);
    const all = work({
      ...bent,
      shop: { coating: 0.1 },
      brakes: { front: { kind: 'band', side: 'left', diameter: 90, width: 20 } },
    });
    expect(text(all.order)).toMatch(/Print the templates/);
    expect(text(all.order)).toMatch(/By the bend schedule: hoop/);
    expect(text(all.order)).toMatch(/Coat/);
    expect(text(all.order)).toMatch(/Band brake/);
  });

  test('every plate, tube and spacer is on the parts list once, with its state', () => {
    const { parts, patterns, cuts } = work({ made: { rail: { state: 'welded' } } });
    expect(parts.map(({ item }) => item)).toEqual(parts.map((_, i) => i + 1));
    const made = parts.filter(({ source }) => source === 'make').map(({ part }) => part);
    for (const name of [
      ...patterns.map(({ id }) => id),
      ...cuts.rows.map(({ tube }) => tube),
      'rearAxle.spacer-left',
    ])
      expect(
        made.filter((part) => part === name),
        name,
      ).toHaveLength(1);
    expect(parts.find(({ part }) => part === 'rail')!.state).toBe('welded');
    expect(parts.find(({ part }) => part === 'engine')!.state).toBe('planned');
  });
});
