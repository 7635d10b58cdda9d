import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layLadder } from './ladder.ts';
import { ladderFigures } from './ladderFigures.ts';
import { layOut } from './layout.ts';
import { stackFlaws } from './stackFlaws.ts';
import { placeStacks } from './stacks.ts';

/** Sums of a few typed lengths: all that can go wrong is rounding in the last digits [m]. */
const ROUNDING = 1e-12;

const laid = (patch: Patch = {}) => {
  const build = smallBuild(patch);
  const layout = layOut(build);
  const stacks = placeStacks(build, layout);
  const ladder = layLadder(build, layout, stacks);
  return { build, stacks, ladder, line: ladder.lines[0]!, flaws: stackFlaws(build, stacks) };
};

const near = (value: number, millimeters: number) =>
  expect(Math.abs(value - millimeters / 1000), `${value * 1000} mm, wanted ${millimeters} mm`).toBeLessThan(
    ROUNDING,
  );

/** The engine's stack with a spacer of a given length and no pin to the line. */
const fixedEngine = (spacer: number, more: Patch = {}): Patch => ({
  stacks: {
    engine: {
      items: [
        { id: 'clutch', kind: 'clutch', length: 40, planes: [{ runs: 'sprocket', drive: 'final', at: 30 }] },
        { id: 'spacer-shaft', kind: 'spacer', length: spacer },
        { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
      ],
    },
    ...more,
  },
});

describe('the chain line from both sides', () => {
  test('adds up to the same plane: 50 + 20 + 2.5 from the rim, −10 + 60 + 12.5 + 10 from the engine', () => {
    const { line } = laid();
    expect(line.drivenSteps.map((step) => [step.label, Math.round(step.length * 1e5) / 100])).toEqual([
      ['hub, rim center to left face', 50],
      ['spacer hub', 20],
      ['sprocket, right face to teeth', 2.5],
    ]);
    expect(line.driverSteps.map((step) => [step.label, Math.round(step.length * 1e5) / 100])).toEqual([
      ['center plane to engine mount center', -10],
      ['engine mount center to engine face', 60],
      ['spacer shaft', 12.5],
      ['clutch, right face to teeth', 10],
    ]);
    for (const steps of [line.drivenSteps, line.driverSteps]) {
      near(
        steps.reduce((sum, step) => sum + step.length, 0),
        72.5,
      );
    }
    near(line.offset, 0);
    expect(line.within).toBe(true);
  });

  test('a rim that is off its hub starts the ladder at the rim: 50 − 3 + 20 + 2.5', () => {
    // Rim 3 left of the hub's middle and in the center plane: hub 3 to the right.
    const { line } = laid({ wheels: { rear: { hub: { rimOffset: 3 } } } });
    near(line.drivenSteps[0]!.length, 47);
    near(line.drivenY, 69.5);
  });

  test('on the right-hand side lengths still count outward', () => {
    const { line } = laid({
      engine: { shaft: { side: 'right' } },
      stacks: {
        rearAxle: {
          items: [
            { id: 'hub', kind: 'hub', length: 100, pin: { to: 'rim-center' } },
            { id: 'spacer-hub', kind: 'spacer', length: 'solve' },
            { id: 'sprocket', kind: 'sprocket', length: 5, pin: { to: 'in-line', drive: 'final' } },
          ],
        },
        engine: {
          items: [
            { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
            { id: 'spacer-shaft', kind: 'spacer', length: 4 },
            {
              id: 'clutch',
              kind: 'clutch',
              length: 40,
              planes: [{ runs: 'sprocket', drive: 'final', at: 10 }],
            },
          ],
        },
      },
    });
    // Engine: −10 − 60 − 4 − 10 = −84. Wheel: 84 − 50 − 2.5 = 31.5 of spacer.
    near(line.drivenY, -84);
    near(
      line.drivenSteps.reduce((sum, step) => sum + step.length, 0),
      84,
    );
    near(line.driverSteps[0]!.length, 10);
    expect(line.drivenSteps[1]).toMatchObject({ part: 'spacer-hub', solved: true });
    near(line.drivenSteps[1]!.length, 31.5);
  });
});

describe('limits', () => {
  // Practice, chain makers' fitting notes as kept in the shop notes: 1 mm to 1 m of center distance.
  test.each([
    [13.4, 0.9, true],
    [13.6, 1.1, false],
    [11.4, -1.1, false],
  ])('an engine spacer of %s mm is %s mm off: within %s', (spacer, offset, within) => {
    const { line } = laid(fixedEngine(spacer));
    near(line.offset, offset);
    expect(line.within).toBe(within);
  });

  test('the angle is the offset over the center distance', () => {
    // Engine shaft 430 forward and 20 + 106 up of the axle: C = √(430² + 126²) = 448.08 mm; 1.1 mm is 0.1407°.
    const { line } = laid(fixedEngine(13.6));
    near(line.centerDistance, Math.hypot(430, 126));
    expect((line.angle * 180) / Math.PI).toBeCloseTo(0.1407, 4);
  });

  test('a variable belt may be 0.8 mm off', () => {
    const belt = (spacer: number) =>
      laid({
        driveline: {
          stages: [
            {
              id: 'final',
              kind: 'variable-belt',
              from: 'engine',
              to: 'rearAxle',
              beltLength: 1300,
              beltTopWidth: 20,
              driver: { smallest: 50, largest: 120 },
              driven: { smallest: 90, largest: 160 },
            },
          ],
        },
        ...fixedEngine(spacer),
      }).line;
    expect(belt(13.2).within).toBe(true);
    expect(belt(13.4).within).toBe(false);
    expect(belt(13.2).kind).toBe('variable-belt');
  });

  test('a drive with a plane on one shaft only has no line and is named', () => {
    const { ladder, flaws } = laid({
      stacks: { engine: { items: [{ id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } }] } },
    });
    expect(ladder.lines).toEqual([]);
    expect(flaws.find((flaw) => flaw.rule === 'no-plane')).toMatchObject({
      stack: 'engine',
      items: ['final'],
    });
  });
});

describe('spacer options', () => {
  const options = (patch: Patch) =>
    laid(patch).line.options.map((one) => ({
      ...one,
      change: Math.round(one.change * 1e6) / 1e3,
      length: Math.round(one.length * 1e6) / 1e3,
    }));

  test('an open line: shorten the engine spacer or lengthen the hub spacer by the offset', () => {
    // The clutch stands 3 mm too far out: 15.5 where 12.5 is in line.
    expect(options(fixedEngine(15.5))).toEqual([
      { stack: 'rearAxle', item: 'spacer-hub', change: 3, length: 23 },
      { stack: 'engine', item: 'spacer-shaft', change: -3, length: 12.5 },
    ]);
  });

  test('no room: the engine spacer would come out negative', () => {
    // Clutch 30 mm too far out on a spacer of 5 after the face went out by 37.5.
    const [hub, shaft] = options({ engine: { shaft: { face: 97.5 } }, ...fixedEngine(5) });
    expect(shaft).toMatchObject({ item: 'spacer-shaft', change: -30, length: -25 });
    expect(shaft!.hindrance).toContain('no room');
    // On the wheel 30 more use up the left spacer to the last bit: 30 − 30.
    expect(hub).toMatchObject({ item: 'spacer-hub', change: 30, length: 50 });
    expect(hub!.hindrance).toBeUndefined();
  });

  test('a spacer that the plates leave no room for names them', () => {
    const [hub] = options({ engine: { shaft: { face: 98.5 } }, ...fixedEngine(5) });
    expect(hub!.hindrance).toBe('spacer-left would come out -1.00 mm: there is no room for it');
  });

  test('what would move another drive, and a pinned plate, is named', () => {
    const twoPlanes = fixedEngine(15.5, {
      rearAxle: {
        items: [
          { id: 'plate-left', kind: 'plate', length: 6, pin: { to: 'place', feature: 'right-face', y: 105 } },
          { id: 'spacer-left', kind: 'spacer', length: 30 },
          { id: 'sprocket', kind: 'sprocket', length: 5, planes: [{ runs: 'sprocket', drive: 'final' }] },
          { id: 'spacer-hub', kind: 'spacer', length: 20 },
          { id: 'hub', kind: 'hub', length: 100, pin: { to: 'rim-center' } },
        ],
      },
    });
    const hub = options(twoPlanes).find((one) => one.item === 'spacer-hub')!;
    expect(hub.hindrance).toContain('plate-left in its place');
    expect(hub.hindrance).toContain('3.00 mm too long');
  });

  test('thread left at the far end: an axle that the longer stack would use up', () => {
    const loose = (length: number) =>
      options(
        fixedEngine(15.5, {
          rearAxle: {
            axle: { diameter: 15, length, pitch: 1.5, threadLeft: 20, threadRight: 20 },
            items: [
              { id: 'nut-left', kind: 'nut', length: 12 },
              { id: 'sprocket', kind: 'sprocket', length: 5, planes: [{ runs: 'sprocket', drive: 'final' }] },
              { id: 'spacer-hub', kind: 'spacer', length: 20 },
              { id: 'hub', kind: 'hub', length: 100, pin: { to: 'rim-center' } },
              { id: 'nut-right', kind: 'nut', length: 12 },
            ],
          },
        }),
      ).find((one) => one.item === 'spacer-hub')!;
    // Stack 149, 3 mm of thread showing at both ends: 155 is just enough; 3 more want 158.
    expect(loose(158).hindrance).toBeUndefined();
    expect(loose(157).hindrance).toBe('thread left at the right end of rearAxle would be 1.0 mm too short');
  });

  test('the flange of the hub stands in the way of a sprocket that moves in', () => {
    const flanged = (flange: number) =>
      options({
        wheels: { rear: { hub: { flange } } },
        // #35 on 40 teeth: pitch diameter 9.525 / sin(π/40) = 121.4 mm; a 9 mm high plate reaches in to 112 mm.
        driveline: {
          stages: [
            {
              id: 'final',
              kind: 'chain',
              from: 'engine',
              to: 'rearAxle',
              chain: '#35',
              driverTeeth: 12,
              drivenTeeth: 40,
            },
          ],
        },
        ...fixedEngine(0),
      }).find((one) => one.item === 'spacer-hub')!;
    // In line at 60: 10 mm from the hub; half a #35 chain is 9.9. One further in and it touches a large flange.
    expect(flanged(130).hindrance).toBeUndefined();
    const closer = (flange: number) =>
      options({
        wheels: { rear: { hub: { flange } } },
        engine: { shaft: { face: 59 } },
        driveline: {
          stages: [
            {
              id: 'final',
              kind: 'chain',
              from: 'engine',
              to: 'rearAxle',
              chain: '#35',
              driverTeeth: 12,
              drivenTeeth: 40,
            },
          ],
        },
        ...fixedEngine(0),
      }).find((one) => one.item === 'spacer-hub')!;
    expect(closer(130).hindrance).toBe('the chain of final would touch hub');
    expect(closer(100).hindrance).toBeUndefined();
  });

  test('a line that a worked-out spacer closes: that spacer, and who could take its length', () => {
    expect(options({})).toEqual([
      { stack: 'engine', item: 'spacer-shaft', change: 0, length: 12.5 },
      { stack: 'rearAxle', item: 'spacer-hub', change: -12.5, length: 7.5, insteadOf: 'spacer-shaft' },
    ]);
  });

  test('every option that nothing stands against closes the line when it is typed in', () => {
    const base = fixedEngine(15.5);
    const build = smallBuild(base);
    for (const option of laid(base).line.options) {
      const layout = layOut(build);
      const entry = build.stacks[option.stack]!;
      const items = entry.items.map((item) =>
        item.id === option.item ? { ...item, length: option.length as typeof item.length } : item,
      );
      const changed = { ...build, stacks: { ...build.stacks, [option.stack]: { ...entry, items } } };
      const [line] = layLadder(changed, layout, placeStacks(changed, layout)).lines;
      near(line!.offset, 0);
    }
  });
});

describe('room beside the tires', () => {
  const gap = (against: string, patch: Patch = {}) =>
    laid(patch).ladder.gaps.find((one) => one.against === against);

  test('tire edge + growth + gap + half chain is the sprocket plane', () => {
    // Plane 72.5, half a #35 chain 9.9 (memory, ISO 606 table: 13.2/2 + 3.3), tire 90/2, growth 4: 72.5 − 9.9 − 45 − 4.
    const chain = gap('chain final', { wheels: { rear: { growth: 4 } } })!;
    near(chain.gap, 13.6);
    near(
      chain.steps.reduce((sum, step) => sum + step.length, 0),
      72.5,
    );
    expect(chain.within).toBe(true);
  });

  test('under 5 mm of room is out', () => {
    // Practice: 5 mm plus growth. 72.5 − 9.9 − w/2: w = 115 leaves 5.1, w = 116 leaves 4.6.
    const wide = (width: number) => gap('chain final', { wheels: { rear: { tire: { width } } } })!;
    near(wide(115).gap, 5.1);
    expect(wide(115).within).toBe(true);
    expect(wide(116).within).toBe(false);
  });

  test('fork legs: half of 150 − 32, less half the tire', () => {
    near(gap('fork leg left')!.gap, 14);
    near(gap('fork leg right')!.gap, 14);
  });

  test('axle plates and the rails beside the tire', () => {
    near(gap('rear plate left')!.gap, 60);
    // Rail at 110, 1 in over all: 110 − 12.7 − 45.
    near(gap('tube rail right')!.gap, 52.3);
  });

  test('a tube that crosses the tire has less than no room', () => {
    const crossing = gap('tube brace', {
      frame: {
        nodes: {
          'brace-left': { from: 'rearAxle', left: 110, forward: 100 },
          'brace-right': { from: 'rearAxle', left: -110, forward: 120 },
        },
        tubes: { brace: { tubing: 'rail', through: ['brace-left', 'brace-right'] } },
      },
    })!;
    expect(crossing.gap).toBeLessThan(-0.045);
    expect(crossing.within).toBe(false);
  });

  test('a tube ahead of the tire is not beside it', () => {
    expect(
      gap('tube brace', {
        frame: {
          nodes: {
            'brace-left': { from: 'rearAxle', left: 110, forward: 185 },
            'brace-right': { from: 'rearAxle', left: -110, forward: 185 },
          },
          tubes: { brace: { tubing: 'rail', through: ['brace-left', 'brace-right'] } },
        },
      }),
    ).toBeUndefined();
  });
});

test('figures close as well: plane = sum of its inputs', () => {
  const { ladder } = laid();
  const figures = ladderFigures(ladder);
  const driven = figures.find((one) => one.id === 'line.final.driven')!;
  near(
    driven.inputs.reduce((sum, input) => sum + input.value, 0),
    driven.value * 1000,
  );
  expect(figures.find((one) => one.id === 'line.final.offset')!.value).toBe(ladder.lines[0]!.offset);
  expect(figures.map((one) => one.id)).toContain('tireGap.chain-final');
});
