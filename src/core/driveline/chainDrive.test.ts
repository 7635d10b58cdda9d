import { describe, expect, test } from 'vitest';
import { type AngularSpeed, mm } from '../quantity/index.ts';
import { type ChainDriveInput, linkCountsAround, planChainDrive, slackSetting } from './index.ts';

const drive: ChainDriveInput = { pitch: mm(12.7), driverTeeth: 19, drivenTeeth: 35, wantedCenter: mm(480) };

function planned(more: Partial<ChainDriveInput> = {}) {
  const plan = planChainDrive({ ...drive, ...more });
  if (!plan.ok) throw new Error(JSON.stringify(plan.issues));
  return plan.value;
}
const codes = (more: Partial<ChainDriveInput>) => planned(more).cautions.map((caution) => caution.code);

describe('link counts', () => {
  test.each([
    [{ exactLinks: 128.67, eachSide: 1 }, [128, 130]],
    [{ exactLinks: 128, eachSide: 1 }, [128, 130]],
    // A count met but for rounding of the arithmetic is met.
    [{ exactLinks: 127.9999999999, eachSide: 1 }, [128, 130]],
    [{ exactLinks: 127.99, eachSide: 2 }, [124, 126, 128, 130]],
    [{ exactLinks: 128.67, eachSide: 1, offsetLinks: true }, [128, 129]],
    [{ exactLinks: 1.5, eachSide: 2 }, [2, 4]],
  ])('%j: %j', (question, counts) => {
    expect(linkCountsAround(question)).toEqual(counts);
  });
});

describe('cautions', () => {
  test('a plain drive inside every rule has none', () => {
    expect(codes({})).toEqual([]);
  });

  test.each([
    ['few-teeth', { driverTeeth: 11 }],
    ['many-teeth', { drivenTeeth: 121, wantedCenter: mm(620) }],
    ['ratio', { driverTeeth: 17, drivenTeeth: 120, wantedCenter: mm(620) }],
    ['wrap', { drivenTeeth: 110, wantedCenter: mm(300) }],
    ['sprockets-touch', { wantedCenter: mm(112) }],
    ['short-center', { wantedCenter: mm(300) }],
    ['long-center', { wantedCenter: mm(700) }],
    ['steep', { inclination: 1.1 as never }],
    ['hunting', { driverTeeth: 18 }],
    ['offset-link', { links: 101 }],
  ] as const)('%s', (code, more) => {
    expect(codes(more)).toContain(code);
  });
});

test('an offset link is taken only when asked for', () => {
  expect(planned().alternatives.every((choice) => !choice.offsetLink)).toBe(true);
  const counts = planned({ offsetLinks: true }).alternatives.map((choice) => choice.links);
  expect(counts.map((links) => links - (counts[0] ?? 0))).toEqual([0, 1, 2, 3]);
});

test('fixed centers and large sprockets wear out sooner', () => {
  expect(planned().wear.rule).toBe('general');
  expect(planned({ fixedCenters: true }).wear).toMatchObject({ rule: 'fixed-centers', elongation: 0.015 });
  expect(planned({ drivenTeeth: 80 }).wear).toMatchObject({ rule: 'large-sprocket', elongation: 0.025 });
});

test('a steep run gets half the play, a quarter of the center change', () => {
  const question = { span: mm(430), lengthPerCenter: 2 };
  const [usual, steep] = [slackSetting(question), slackSetting({ ...question, steep: true })];
  expect(steep.play).toBeCloseTo(usual.play / 2, 15);
  // The V is quadratic in the play; 4 % of it is left of the exact root.
  expect(usual.centerChange / steep.centerChange).toBeCloseTo(4, 2);
});

test('speed of the chain, and none without a speed', () => {
  expect(planned().chainSpeed).toBeUndefined();
  const turn = 2 * Math.PI;
  expect(planned({ driverSpeed: turn as AngularSpeed }).chainSpeed).toBeCloseTo(19 * 0.0127, 12);
});

test('options outside their range are all named', () => {
  const plan = planChainDrive({
    ...drive,
    wearLimit: 0.5,
    fitting: mm(-1),
    pusherPitch: mm(0),
    driverSpeed: -1 as AngularSpeed,
  });
  if (plan.ok) throw new Error('taken');
  expect(plan.issues.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'out-of-range wearLimit',
    'out-of-range fitting',
    'out-of-range driverSpeed',
    'out-of-range pusherPitch',
  ]);
});
