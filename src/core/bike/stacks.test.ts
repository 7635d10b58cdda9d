import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut } from './layout.ts';
import { rimOffset } from './rimOffset.ts';
import { stackFigures } from './stackFigures.ts';
import { stackFlaws } from './stackFlaws.ts';
import { placeStacks } from './stacks.ts';

/** Sums of a few typed lengths: all that can go wrong is rounding in the last digits [m]. */
const ROUNDING = 1e-12;

const placed = (patch: Patch = {}) => {
  const build = smallBuild(patch);
  const stacks = placeStacks(build, layOut(build));
  const item = (stack: string, id: string) => stacks[stack]!.items.find((one) => one.id === id)!;
  return { build, stacks, item, flaws: stackFlaws(build, stacks) };
};

const near = (value: number, millimeters: number) =>
  expect(Math.abs(value - millimeters / 1000), `${value * 1000} mm, wanted ${millimeters} mm`).toBeLessThan(
    ROUNDING,
  );

const frontAxle = (items: readonly unknown[], more: Patch = {}): Patch => ({
  stacks: { frontAxle: { shaft: 'frontAxle', items, ...more } },
});

describe('spacers of one stack', () => {
  test('a wheel between plates: left 105 − 75 = 30, right 105 − 50 = 55', () => {
    const { item, stacks } = placed();
    // Hub 100 about the center: ±50; spacer 20 and sprocket 5 on its left end at 75; plates at ±105.
    near(item('rearAxle', 'spacer-left').length, 30);
    near(item('rearAxle', 'spacer-right').length, 55);
    expect(stacks.rearAxle!.misfits).toEqual([]);
    expect(stacks.rearAxle!.gaps).toEqual([]);
  });

  test('a rim 4 mm off its hub makes the spacers differ by twice that', () => {
    // Fork 110 wide, hub 80: 15 a side for a true wheel. Rim 4 left of the hub's middle: hub 4 to the right.
    const fork = (offset: number) =>
      placed({
        wheels: { front: { hub: { rimOffset: offset } } },
        ...frontAxle([
          { id: 'leg-left', kind: 'leg', length: 10, pin: { to: 'place', feature: 'right-face', y: 55 } },
          { id: 'left', kind: 'spacer', length: 'solve' },
          { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
          { id: 'right', kind: 'spacer', length: 'solve' },
          { id: 'leg-right', kind: 'leg', length: 10, pin: { to: 'place', feature: 'left-face', y: -55 } },
        ]),
      });
    const off = fork(4);
    near(fork(0).item('frontAxle', 'left').length, 15);
    near(off.item('frontAxle', 'left').length, 19);
    near(off.item('frontAxle', 'right').length, 11);
    near(off.item('frontAxle', 'hub').planes[0]!.y, 0);
  });

  test('two readings at the rim edges give the offset', () => {
    // Fork ±55, rim 60 wide with its center at +4: edges at 34 and −26, read as 21 and 29; spacers both 15.
    near(rimOffset({ left: 0.021, right: 0.029, leftSpacer: 0.015, rightSpacer: 0.015 }), 4);
    // The same wheel with spacers 19 and 11: rim centered, read as 25 and 25.
    near(rimOffset({ left: 0.025, right: 0.025, leftSpacer: 0.019, rightSpacer: 0.011 }), 4);
  });

  test('no unknown and a run 2 mm too long is a misfit of +2 between the two pins', () => {
    const { stacks, flaws } = placed(
      frontAxle([
        { id: 'leg-left', kind: 'leg', length: 10, pin: { to: 'place', feature: 'right-face', y: 55 } },
        { id: 'left', kind: 'spacer', length: 17 },
        { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
      ]),
    );
    // Available 55 − 40 = 15, given 17.
    const [misfit, ...others] = stacks.frontAxle!.misfits;
    expect(others).toEqual([]);
    expect(misfit!.between).toEqual(['leg-left', 'hub']);
    near(misfit!.excess, 2);
    // The rim wins: it stays in the center plane.
    near(stacks.frontAxle!.items[2]!.planes[0]!.y, 0);
    expect(flaws.filter((flaw) => flaw.rule === 'misfit').map((flaw) => flaw.remedy)).toEqual([
      'Shorten what lies between leg-left and hub by 2.00 mm.',
    ]);
  });

  test('pins that agree within 0.05 mm agree; 0.06 mm is a misfit, loose as a minus', () => {
    const off = (length: number) =>
      placed(
        frontAxle([
          { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
          { id: 'right', kind: 'spacer', length },
          { id: 'leg', kind: 'leg', length: 10, pin: { to: 'place', feature: 'left-face', y: -55 } },
        ]),
      ).stacks.frontAxle!.misfits;
    expect(off(14.96)).toEqual([]);
    near(off(14.94)[0]!.excess, -0.06);
  });

  test('two unknowns between two pins are named and split evenly', () => {
    const { stacks } = placed(
      frontAxle([
        { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
        { id: 'inner', kind: 'spacer', length: 'solve' },
        { id: 'disc', kind: 'disc', length: 5 },
        { id: 'outer', kind: 'spacer', length: 'solve' },
        { id: 'leg', kind: 'leg', length: 10, pin: { to: 'place', feature: 'left-face', y: -55 } },
      ]),
    );
    expect(stacks.frontAxle!.gaps).toEqual([
      { stack: 'frontAxle', reason: 'two-unknowns', items: ['inner', 'outer'] },
    ]);
    // 15 − 5 of disc leaves 10 for two.
    near(stacks.frontAxle!.items[1]!.length, 5);
    near(stacks.frontAxle!.items[3]!.length, 5);
  });

  test('a spacer with no room comes out negative, is placed so, and is named', () => {
    const { stacks, item, flaws } = placed(
      frontAxle([
        { id: 'hub', kind: 'hub', length: 120, pin: { to: 'rim-center' } },
        { id: 'right', kind: 'spacer', length: 'solve' },
        { id: 'leg', kind: 'leg', length: 10, pin: { to: 'place', feature: 'left-face', y: -55 } },
      ]),
    );
    near(item('frontAxle', 'right').length, -5);
    expect(stacks.frontAxle!.gaps).toMatchObject([{ reason: 'negative-spacer', items: ['right'] }]);
    expect(flaws.find((flaw) => flaw.rule === 'negative-spacer')!.remedy).toContain('5.00 mm');
    expect(flaws.map((flaw) => flaw.rule)).toContain('hub-width');
  });

  test('a spacer beyond the last pin, and a stack without any pin, are said to have none', () => {
    const free = placed(
      frontAxle([
        { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
        { id: 'right', kind: 'spacer', length: 'solve' },
        { id: 'leg', kind: 'leg', length: 10 },
      ]),
    ).stacks.frontAxle!;
    expect(free.gaps).toEqual([{ stack: 'frontAxle', reason: 'no-pin', items: ['right'] }]);
    near(free.items[1]!.length, 0);
    const adrift = placed(frontAxle([{ id: 'hub', kind: 'hub', length: 80 }])).stacks.frontAxle!;
    expect(adrift.gaps.map((gap) => gap.reason)).toEqual(['no-pin']);
    near(adrift.items[0]!.left, 40);
  });
});

describe('stacks that hang on each other', () => {
  test('the engine spacer brings the clutch to the line of the wheel', () => {
    const { item } = placed();
    // Wheel: 50 + 20 + 2.5 = 72.5. Engine: face at −10 + 60 = 50, teeth 40 − 30 = 10 from its right face: 72.5 − 60.
    near(item('engine', 'clutch').planes[0]!.y, 72.5);
    near(item('engine', 'spacer-shaft').length, 12.5);
  });

  test('an engine with its shaft on the right mirrors: face at −10 − 60 = −70', () => {
    const { item } = placed({
      engine: { shaft: { side: 'right' } },
      stacks: {
        engine: {
          items: [
            { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
            { id: 'clutch', kind: 'clutch', length: 40 },
          ],
        },
      },
    });
    near(item('engine', 'face').left, -70);
    near(item('engine', 'clutch').right, -110);
  });

  const countershaft = (pin: Patch | undefined): Patch => ({
    driveline: {
      shafts: { countershaft: { at: { from: 'rearAxle', forward: 250, up: 60 }, diameter: 20, length: 200 } },
      stages: [
        {
          id: 'first',
          kind: 'chain',
          from: 'engine',
          to: 'countershaft',
          chain: '#35',
          driverTeeth: 12,
          drivenTeeth: 36,
        },
        {
          id: 'final',
          kind: 'chain',
          from: 'countershaft',
          to: 'rearAxle',
          chain: '#40',
          driverTeeth: 10,
          drivenTeeth: 40,
        },
      ],
    },
    stacks: {
      countershaft: {
        shaft: 'countershaft',
        items: [
          { id: 'driven', kind: 'sprocket', length: 6, planes: [{ runs: 'sprocket', drive: 'first' }] },
          { id: 'between', kind: 'spacer', length: 14 },
          {
            id: 'driver',
            kind: 'sprocket',
            length: 8,
            planes: [{ runs: 'sprocket', drive: 'final' }],
            ...(pin === undefined ? {} : { pin }),
          },
        ],
      },
      engine: {
        items: [
          {
            id: 'clutch',
            kind: 'clutch',
            length: 40,
            planes: [{ runs: 'sprocket', drive: 'first', at: 30 }],
            pin: { to: 'in-line', drive: 'first' },
          },
          { id: 'spacer-shaft', kind: 'spacer', length: 'solve' },
          { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
        ],
      },
    },
  });

  test('through a countershaft: wheel 72.5, then 4 + 14 + 3 further out for the first chain', () => {
    const { item, stacks } = placed(countershaft({ to: 'in-line', drive: 'final' }));
    near(item('countershaft', 'driver').planes[0]!.y, 72.5);
    near(item('countershaft', 'driven').planes[0]!.y, 93.5);
    // Engine: 93.5 − 10 − 50.
    near(item('engine', 'spacer-shaft').length, 33.5);
    expect(Object.values(stacks).flatMap((stack) => stack.gaps)).toEqual([]);
  });

  test('stacks that follow only each other are circular', () => {
    const { stacks } = placed({
      ...countershaft({ to: 'in-line', drive: 'final' }),
      wheels: {},
      stacks: {
        ...(countershaft({ to: 'in-line', drive: 'final' }).stacks as Patch),
        rearAxle: {
          items: [{ id: 'sprocket', kind: 'sprocket', length: 5, pin: { to: 'in-line', drive: 'final' } }],
        },
      },
    });
    expect(stacks.countershaft!.gaps.map((gap) => gap.reason)).toEqual(['circular']);
    expect(stacks.rearAxle!.gaps.map((gap) => gap.reason)).toEqual(['circular']);
  });

  test('a drive that the driveline does not have', () => {
    const { stacks, flaws } = placed(countershaft({ to: 'in-line', drive: 'second' }));
    expect(stacks.countershaft!.gaps).toContainEqual({
      stack: 'countershaft',
      reason: 'unknown-drive',
      items: ['driver'],
    });
    expect(flaws.map((flaw) => flaw.rule)).toContain('unknown-drive');
  });

  test('a disc goes to a caliper that is fixed and leaves one that follows', () => {
    const brake = (centerY?: number): Patch => ({
      brakes: {
        front: {
          kind: 'disc',
          side: 'right',
          disc: { diameter: 160, thickness: 3 },
          caliper: {
            mountSpacing: 50,
            bolt: 8,
            lugOffset: 10,
            lugRadius: 80,
            clock: 150,
            ...(centerY === undefined ? {} : { centerY }),
          },
        },
      },
      ...frontAxle([
        { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
        { id: 'carrier', kind: 'spacer', length: centerY === undefined ? 3 : 'solve' },
        {
          id: 'disc',
          kind: 'disc',
          length: 3,
          planes: [{ runs: 'disc', brake: 'front' }],
          pin: { to: 'caliper', brake: 'front' },
        },
      ]),
    });
    // Caliper at −46: disc from −44.5, hub to −40.
    near(placed(brake(-46)).item('frontAxle', 'carrier').length, 4.5);
    // Following: 40 + 3 + 1.5.
    near(placed(brake()).item('frontAxle', 'disc').planes[0]!.y, -44.5);
  });
});

describe('axle, thread and bores', () => {
  const axled = (axle: Patch, hub: Patch = {}) =>
    placed({
      wheels: { front: { hub } },
      ...frontAxle(
        [
          { id: 'nut-left', kind: 'nut', length: 10 },
          { id: 'leg-left', kind: 'leg', length: 8 },
          { id: 'left', kind: 'spacer', length: 15 },
          { id: 'hub', kind: 'hub', length: 80, pin: { to: 'rim-center' } },
          { id: 'right', kind: 'spacer', length: 15 },
          { id: 'leg-right', kind: 'leg', length: 8 },
          { id: 'nut-right', kind: 'nut', length: 10 },
        ],
        { axle: { diameter: 12, pitch: 1.25, threadLeft: 20, threadRight: 20, ...axle } },
      ),
    });

  test('stack 146 with two threads of 1.25 showing at each end wants an axle of 151', () => {
    const exact = axled({ length: 151 });
    near(exact.stacks.frontAxle!.axle!.outLeft, 2.5);
    near(exact.stacks.frontAxle!.axle!.outRight, 2.5);
    expect(exact.flaws.map((flaw) => flaw.rule)).not.toContain('thread-out');
    const short = axled({ length: 150 });
    near(short.flaws.find((flaw) => flaw.rule === 'thread-out')!.value, 1.5);
    const lost = axled({ length: 147 });
    near(lost.flaws.find((flaw) => flaw.rule === 'axle-too-short')!.value, -1.5);
  });

  test('thread short of the nut, and thread running into the leg', () => {
    // The nut's inner face is 2.5 + 10 = 12.5 in from the end; the leg lies from 12.5 to 20.5.
    expect(axled({ length: 151, threadLeft: 11 }).flaws.map((flaw) => flaw.rule)).toContain('nut-off-thread');
    const clean = axled({ length: 151, threadLeft: 13.5, threadRight: 13.5 }).flaws.map((flaw) => flaw.rule);
    expect(clean).not.toContain('nut-off-thread');
    expect(clean).not.toContain('thread-in-bearing');
    const into = axled({ length: 151 }).flaws.filter((flaw) => flaw.rule === 'thread-in-bearing');
    expect(into.map((flaw) => flaw.items[0])).toEqual(['leg-left', 'leg-right']);
    near(into[0]!.value, 7.5);
  });

  // Trade fact with no published source: a 10 mm axle in a 12 mm bore wants a 12 x 10 mm sleeve, full length.
  // Story of the smaller front wheel: axle 12, bore 15, sleeve 15/12 full length.
  test.each([
    { axle: 10, bore: 12 },
    { axle: 12, bore: 15 },
  ])('an axle of $axle in a bore of $bore wants a sleeve, full length of the hub', ({ axle, bore }) => {
    const { stacks, flaws } = axled({ length: 151, diameter: axle }, { bore });
    const [sleeve, ...others] = stacks.frontAxle!.sleeves;
    expect(others).toEqual([]);
    expect(sleeve!.item).toBe('hub');
    near(sleeve!.inside, axle);
    near(sleeve!.outside, bore);
    near(sleeve!.length, 80);
    expect(flaws.find((flaw) => flaw.rule === 'needs-sleeve')!.remedy).toContain(
      `${bore}.00 mm outside, ${axle}.00 mm inside`,
    );
  });

  test('a slip fit of 0.1 mm wants none, and a bore under the axle does not go on', () => {
    expect(axled({ length: 151 }, { bore: 12.1 }).stacks.frontAxle!.sleeves).toEqual([]);
    expect(axled({ length: 151 }, { bore: 12.11 }).stacks.frontAxle!.sleeves).toHaveLength(1);
    expect(axled({ length: 151 }, { bore: 11.9 }).flaws.map((flaw) => flaw.rule)).toContain(
      'bore-under-shaft',
    );
    expect(axled({ length: 151 }, { bore: 12 }).flaws.map((flaw) => flaw.rule)).not.toContain(
      'bore-under-shaft',
    );
  });
});

test('figures carry the spacers to make, by stack and item', () => {
  const { stacks } = placed();
  const figures = stackFigures(stacks);
  near(figures.find((one) => one.id === 'stack.rearAxle.spacer-left.length')!.value, 30);
  // 222 mm over the plates: 222 / 300 = 0.74 mm (shop note: 0.72 mm across a 216 mm axle).
  near(figures.find((one) => one.id === 'stack.rearAxle.parallel')!.value, 0.74);
  expect(new Set(figures.map((one) => one.id)).size).toBe(figures.length);
});

test('a washer bolted on the end of the engine shaft neither goes over it nor takes up its length', () => {
  const ended = (kind: string) =>
    placed({
      stacks: {
        engine: {
          items: [
            { id: 'end', kind, length: 4, bore: 8 },
            { id: 'clutch', kind: 'clutch', length: 60, bore: '3/4 in' },
            { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
          ],
        },
      },
    }).flaws.map((flaw) => flaw.rule);
  // Shaft 62 long: 60 fits, 64 does not; a collar of 8 mm bore does not go on.
  expect(ended('washer').filter((rule) => rule !== 'no-plane')).toEqual([]);
  expect(ended('collar')).toContain('bore-under-shaft');
  expect(ended('collar')).toContain('shaft-too-short');
});
