import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut, placeStacks, stackFigures } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { figureDoubts, measuredBuild } from './measured.ts';

const read = (...measured: Patch[]) => measuredBuild(smallBuild({ measured }));
const figures = (build: Build) => stackFigures(placeStacks(build, layOut(build)));

describe('readings over what was typed', () => {
  test('win in a second build and leave the first as typed', () => {
    const typed = smallBuild({
      measured: [{ path: 'wheels.rear.hub.width', value: 101.2, with: 'caliper' }],
    });
    const { build, readings, issues } = measuredBuild(typed);
    expect(issues).toEqual([]);
    expect(build.wheels.rear.hub.width).toBeCloseTo(0.1012, 12);
    expect(typed.wheels.rear.hub.width).toBeCloseTo(0.1, 12);
    expect(readings).toMatchObject([{ path: 'wheels.rear.hub.width', kind: 'length', with: 'caliper' }]);
    expect(readings[0]!.typed).toBeCloseTo(0.1, 12);
    expect(readings[0]!.accuracy).toBeCloseTo(0.05e-3, 12);
  });

  test('are read as the field would be: text with a unit, an index or the name of an item', () => {
    const inch = read({ path: 'stacks.rearAxle.items[hub].length', value: '4 in', with: 'caliper' });
    expect(inch.build.stacks.rearAxle!.items[4]!.length).toBeCloseTo(0.1016, 12);
    const index = read({ path: 'stacks.rearAxle.items[4].length', value: 99, with: 'caliper' });
    expect(index.build.stacks.rearAxle!.items[4]!.length).toBeCloseTo(0.099, 12);
  });

  test('fill in what the file leaves out, and a spacer that was to be solved', () => {
    const { build, readings } = read(
      { path: 'wheels.rear.hub.rimOffset', value: 3, with: 'tape' },
      { path: 'stacks.rearAxle.items[spacer-left].length', value: 30.1, with: 'caliper' },
    );
    expect(build.wheels.rear.hub.rimOffset).toBeCloseTo(0.003, 12);
    expect(readings.map((reading) => reading.typed)).toEqual([undefined, undefined]);
    expect(build.stacks.rearAxle!.items[1]!.length).toBeCloseTo(0.0301, 12);
  });

  test('take the accuracy of the reading, the shop or the usual', () => {
    const measured = [
      { path: 'steering.headAngle', value: 63.5, with: 'angle-finder' },
      { path: 'steering.wheelbase', value: 1052, with: 'tape' },
      { path: 'engine.mass', value: 16.4, with: 'scale', accuracy: 0.2 },
    ];
    const { readings } = measuredBuild(smallBuild({ measured, shop: { instruments: { tape: 0.5 } } }));
    expect(readings[0]!.accuracy).toBeCloseTo((0.5 * Math.PI) / 180, 12);
    expect(readings[1]!.accuracy).toBeCloseTo(0.0005, 12);
    expect(readings[2]!.accuracy).toBeCloseTo(0.2, 12);
  });
});

describe('readings that cannot be used', () => {
  test.each([
    ['wheels.rear.hub.widht', 'unknown-name', 'width'],
    ['weels.rear.hub.width', 'unknown-name', 'wheels'],
    ['stacks.rearAxel.items[hub].length', 'unknown-name', 'rearAxle'],
    ['stacks.rearAxle.items[9].length', 'unknown-name', undefined],
    ['', 'wrong-type', undefined],
    ['__proto__.x', 'unknown-name', undefined],
    ['wheels.rear.hub', 'wrong-type', undefined],
    ['about.name', 'wrong-type', undefined],
  ])('path %s: %s', (path, code, nearest) => {
    const { build, issues, readings } = read({ path, value: 1, with: 'caliper' });
    expect(issues).toMatchObject([
      { code, path: 'measured[0].path', ...(nearest === undefined ? {} : { nearest }) },
    ]);
    expect(readings).toEqual([]);
    expect(build).toEqual(smallBuild({ measured: [{ path, value: 1, with: 'caliper' }] }));
  });

  test('a value that the field does not take, and an instrument that cannot read it', () => {
    const width = 'wheels.rear.hub.width';
    expect(read({ path: width, value: -4, with: 'caliper' }).issues).toMatchObject([
      { code: 'out-of-range', path: 'measured[0].value' },
    ]);
    expect(read({ path: width, value: '4 kg', with: 'caliper' }).issues).toMatchObject([
      { path: 'measured[0].value' },
    ]);
    expect(read({ path: width, value: 100, with: 'scale' }).issues).toMatchObject([
      { code: 'conflict', path: 'measured[0].with' },
    ]);
    expect(
      read({ path: 'stacks.rearAxle.items[hub].length', value: 'solve', with: 'caliper' }).issues,
    ).toMatchObject([{ path: 'measured[0].value' }]);
  });
});

describe('doubt of figures', () => {
  test('adds up worst case: hub ±0.2 halves on each side, plate ±0.1 in full', () => {
    // spacer-left = 105 − 5 − 20 − 100/2: moved by the hub's width by half of it, by the plate by all of it.
    const measured = read(
      { path: 'stacks.rearAxle.items[hub].length', value: 100, with: 'caliper', accuracy: 0.2 },
      { path: 'stacks.rearAxle.items[plate-left].pin.y', value: 105, with: 'caliper', accuracy: 0.1 },
    );
    const doubts = figureDoubts(measured, figures);
    const of = (id: string) => doubts.find((one) => one.id === id);
    expect(of('stack.rearAxle.spacer-left.length')!.doubt).toBeCloseTo(0.0002, 12);
    expect(of('stack.rearAxle.spacer-right.length')!.doubt).toBeCloseTo(0.0001, 12);
    // The engine's spacer follows the sprocket, which hangs on the hub.
    expect(of('stack.engine.spacer-shaft.length')!.doubt).toBeCloseTo(0.0001, 12);
    expect(of('stack.rearAxle.hub.plane.rim')).toBeUndefined();
  });
});
