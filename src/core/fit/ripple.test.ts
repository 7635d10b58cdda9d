import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { ladderFigures, layLadder, layOut, placeStacks, stackFigures } from '../bike/index.ts';
import { derived, type Figure, type QuantityKind } from '../quantity/index.ts';
import { rippleOf, type Solved } from './ripple.ts';

const figure = (id: string, value: number, kind: QuantityKind = 'length'): Figure => ({
  id,
  symbol: 'x',
  name: id,
  value,
  kind,
  formula: 'x',
  inputs: [],
  source: derived('test'),
});

const solved = (patch: Patch = {}): Solved => {
  const build = smallBuild(patch);
  const layout = layOut(build);
  const stacks = placeStacks(build, layout);
  const figures = [...stackFigures(stacks), ...ladderFigures(layLadder(build, layout, stacks))];
  return { figures, ...(build.made === undefined ? {} : { made: build.made }) };
};

describe('a change of the build', () => {
  test('another engine, face 7 mm further in: the shaft spacer grows by 7 and nothing on the wheel moves', () => {
    const changes = rippleOf(solved(), solved({ engine: { shaft: { face: 53 } } }));
    const spacer = changes.find((one) => one.id === 'stack.engine.spacer-shaft.length')!;
    expect(spacer).toMatchObject({ how: 'changed', part: 'stack.engine.spacer-shaft' });
    expect(spacer.before).toBeCloseTo(0.0125, 12);
    expect(spacer.change).toBeCloseTo(0.007, 12);
    // The line stays closed: its planes do not move.
    expect(changes.map((one) => one.id)).not.toContain('line.final.driver');
    expect(changes.some((one) => one.id.startsWith('stack.rearAxle'))).toBe(false);
  });

  test('no change, no ripple', () => {
    expect(rippleOf(solved(), solved())).toEqual([]);
  });

  test('figures that come and go', () => {
    const changes = rippleOf(
      { figures: [figure('plate.a.hole-1.x', 1)] },
      { figures: [figure('plate.a.hole-2.x', 2)] },
    );
    expect(changes.map((one) => [one.id, one.how, one.part])).toEqual([
      ['plate.a.hole-1.x', 'gone', 'plate.a.hole-1'],
      ['plate.a.hole-2.x', 'new', 'plate.a.hole-2'],
    ]);
  });
});

describe('parts that exist already', () => {
  const made = (state: string, asDrawn?: Patch): Patch => ({
    made: { 'engine.spacer-shaft': { state, ...(asDrawn === undefined ? {} : { asDrawn }) } },
  });
  const moved: Patch = { engine: { shaft: { face: 53 } } };

  test('a spacer made to its figure no longer fits, and comes first', () => {
    const [first] = rippleOf(solved(made('made')), solved({ ...made('made'), ...moved }));
    expect(first).toMatchObject({
      id: 'stack.engine.spacer-shaft.length',
      part: 'engine.spacer-shaft',
      state: 'made',
    });
    expect(first!.alreadyCut).toMatchObject({ from: 'before' });
    expect(first!.alreadyCut!.off).toBeCloseTo(0.007, 12);
  });

  test('a planned part is not flagged', () => {
    const changes = rippleOf(solved(made('planned')), solved({ ...made('planned'), ...moved }));
    expect(changes.every((one) => one.alreadyCut === undefined)).toBe(true);
  });

  test('what it was made to counts, so that small changes add up', () => {
    // Drawn 12.5, made to 12.40 as the pack printed then: 0.10 off although this change moved nothing.
    const drawn = made('welded', { 'stack.engine.spacer-shaft.length': 12.4 });
    const [first, ...others] = rippleOf(solved(drawn), solved(drawn));
    expect(others).toEqual([]);
    expect(first).toMatchObject({ how: 'drifted', state: 'welded', alreadyCut: { from: 'as drawn' } });
    expect(first!.alreadyCut!.off).toBeCloseTo(0.0001, 12);
    // Half a tenth is within what hand work can tell.
    const close = made('welded', { 'stack.engine.spacer-shaft.length': 12.45 });
    expect(rippleOf(solved(close), solved(close))).toEqual([]);
  });

  test('a figure of another kind was printed in its own edge unit', () => {
    const build = smallBuild({ made: { stay: { state: 'made', asDrawn: { 'tube.stay.bend': 45 } } } });
    const at = (degrees: number): Solved => ({
      figures: [figure('tube.stay.bend', (degrees * Math.PI) / 180, 'angle')],
      made: build.made!,
    });
    expect(rippleOf(at(45), at(45))).toEqual([]);
    const [first] = rippleOf(at(45), at(46));
    expect(first!.alreadyCut!.off).toBeCloseTo(Math.PI / 180, 12);
  });

  test('welded before made before bought before the rest, then by size', () => {
    const parts = smallBuild({
      made: { a: { state: 'bought' }, b: { state: 'welded' }, c: { state: 'made' } },
    }).made!;
    const of = (shift: number): Solved => ({
      figures: ['a', 'b', 'c', 'd', 'e'].map((id, i) =>
        figure(`part.${id}.x`, 1 + (i === 3 ? 2 : 1) * shift),
      ),
      made: parts,
    });
    expect(rippleOf(of(0), of(0.1)).map((one) => one.id)).toEqual([
      'part.b.x',
      'part.c.x',
      'part.a.x',
      'part.d.x',
      'part.e.x',
    ]);
  });

  test('a figure of a made part that is gone is flagged', () => {
    const parts = smallBuild({ made: { plate: { state: 'made' } } }).made!;
    const [gone] = rippleOf(
      { figures: [figure('plate.hole.x', 0.1)], made: parts },
      { figures: [], made: parts },
    );
    expect(gone).toMatchObject({ how: 'gone', alreadyCut: { was: 0.1, from: 'before' } });
  });
});
