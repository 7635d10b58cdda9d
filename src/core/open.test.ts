import { describe, expect, test } from 'vitest';
import { mergePatch, type Patch, smallBuildInput } from '../../tests/support/smallBuild.ts';
import { openBuild, openBuildValue } from './open.ts';
import { solve } from './solve.ts';

const textOf = (patch: Patch): string => JSON.stringify(mergePatch(smallBuildInput, patch), null, 2);
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

describe('a build that is opened', () => {
  test('can be solved', () => {
    const build = openBuild(textOf({}));
    expect(build.ok && solve(build.value).build.about.name).toBe('small test build');
  });

  test('is refused with a place where its tires do not let it stand', () => {
    const text = textOf({
      wheels: {
        front: { fitted: { diameter: 1000, width: 90 } },
        rear: { fitted: { diameter: 100, width: 90 } },
      },
      steering: { wheelbase: 400 },
    });
    const build = openBuild(text);
    expect(build.ok ? [] : build.issues).toMatchObject([
      { code: 'conflict', path: 'wheels', at: { line: lineOf(text, '"wheels"') } },
    ]);
  });

  test('is refused where a direction is wanted between two points in one place', () => {
    const lost = { from: 'rearAxle', along: { toward: 'twin', distance: 20 } };
    const nodes = { twin: { from: 'rearAxle' }, lost };
    const text = textOf({ frame: { nodes } });
    const build = openBuild(text);
    expect(build.ok ? [] : build.issues).toMatchObject([
      { code: 'conflict', path: 'frame.nodes.lost.along.toward', at: { line: lineOf(text, '"toward"') } },
    ]);
    const value = openBuildValue(JSON.parse(text));
    expect(value.ok ? [] : value.issues[0].at).toBeUndefined();
  });

  test.each([
    ['steering.neck.wall', { steering: { neck: { outside: 38, wall: 19 } } }],
    ['frame.tubing.rail.wall', { frame: { tubing: { rail: { outside: 20, wall: 10 } } } }],
  ])('is refused where a tube has no bore left: %s', (path, patch) => {
    const build = openBuildValue(mergePatch(smallBuildInput, patch));
    expect(build.ok ? [] : build.issues).toMatchObject([{ code: 'conflict', path }]);
  });

  test('is refused for a node five meters off, and for a wall that is nothing', () => {
    const far = openBuildValue(
      mergePatch(smallBuildInput, { frame: { nodes: { 'rail-rear': { forward: 5001 } } } }),
    );
    expect(far.ok ? [] : far.issues).toMatchObject([
      { code: 'out-of-range', path: 'frame.nodes.rail-rear.forward' },
    ]);
    const thin = openBuildValue(
      mergePatch(smallBuildInput, { frame: { tubing: { rail: { wall: 5e-324 } } } }),
    );
    expect(thin.ok ? [] : thin.issues).toMatchObject([
      { code: 'out-of-range', path: 'frame.tubing.rail.wall' },
    ]);
  });

  const spacer = 'engine.spacer-shaft';
  const drawn = 'stack.engine.spacer-shaft.length';

  test('takes parts that exist already by each name they go by', () => {
    const made = {
      [spacer]: { state: 'made', asDrawn: { [drawn]: 12.5 } },
      'spacer-shaft': { state: 'bought' },
    };
    const rail = { rail: { state: 'welded' }, 'rear-wheel': { state: 'bought' } };
    const build = openBuildValue(mergePatch(smallBuildInput, { made: { ...made, ...rail } }), {
      whole: true,
    });
    expect(build).toMatchObject({ ok: true });
  });

  test('is refused where a part said to exist is none of its parts', () => {
    const text = textOf({
      made: { 'engine.spacer-shfat': { state: 'made' }, 'nosuch.part': { state: 'made' } },
    });
    const build = openBuild(text);
    const at = { line: lineOf(text, '"engine.spacer-shfat"') };
    expect(build.ok ? [] : build.issues).toMatchObject([
      {
        code: 'unknown-name',
        path: 'made."engine.spacer-shfat"',
        given: 'engine.spacer-shfat',
        nearest: spacer,
        at,
      },
      { code: 'unknown-name', path: 'made."nosuch.part"', given: 'nosuch.part' },
    ]);
  });

  test.each(['length', 'stack', 'engine.spacer-shaft.length'])(
    'takes no part of a figure for a part: %s',
    (name) => {
      const build = openBuildValue(mergePatch(smallBuildInput, { made: { [name]: { state: 'made' } } }), {
        whole: true,
      });
      expect(build.ok ? [] : build.issues).toMatchObject([{ code: 'unknown-name', given: name }]);
    },
  );

  test('is refused where a part was made to a figure that it does not have', () => {
    const asDrawn = { 'stack.engine.spacer-shaft.lenght': 12.5 };
    const build = openBuildValue(
      mergePatch(smallBuildInput, { made: { [spacer]: { state: 'made', asDrawn } } }),
      { whole: true },
    );
    expect(build.ok ? [] : build.issues).toMatchObject([
      {
        code: 'unknown-name',
        path: `made."${spacer}".asDrawn."stack.engine.spacer-shaft.lenght"`,
        nearest: drawn,
      },
    ]);
  });

  test('is refused at the changes of a variant whose tires do not let it stand', () => {
    const wheels = {
      front: { fitted: { diameter: 1000, width: 90 } },
      rear: { fitted: { diameter: 100, width: 90 } },
    };
    const changes = { wheels, steering: { wheelbase: 400 } };
    const build = openBuild(textOf({ variants: { lost: { changes } } }), { variant: 'lost' });
    expect(build.ok ? [] : build.issues).toMatchObject([
      { code: 'conflict', path: 'variants.lost.changes.wheels' },
    ]);
  });

  test('still knows a part that a variant takes out', () => {
    const patch: Patch = {
      bodies: {
        box: { name: 'box', place: { from: 'rearAxle' }, length: 50, width: 50, height: 50, mass: 1 },
      },
      made: { box: { state: 'bought' } },
      variants: { bare: { changes: { bodies: { box: null } } } },
    };
    const build = openBuildValue(mergePatch(smallBuildInput, patch), { variant: 'bare', whole: true });
    expect(build).toMatchObject({ ok: true });
  });
});
