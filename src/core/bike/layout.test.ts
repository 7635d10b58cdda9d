import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut, resolveLayout } from './index.ts';

const points = (patch: Patch = {}) => layOut(smallBuild(patch)).points;
const nodes = (table: Patch): Patch => ({ frame: { nodes: table } });
const firstIssue = (patch: Patch) => {
  const layout = resolveLayout(smallBuild(patch));
  return layout.ok ? undefined : layout.issues[0];
};

describe('datums', () => {
  test('axles stand on the ground at the tires’ radii, the wheelbase apart', () => {
    const { rearAxle, frontAxle } = points({ wheels: { front: { tire: { diameter: 400 } } } });
    expect(rearAxle).toEqual({ x: 0, y: 0, z: 0.165 });
    expect(frontAxle).toEqual({ x: 1.05, y: 0, z: 0.2 });
  });

  test('the front axle lies the offset ahead of the steering axis, the fork length below the neck', () => {
    const { frontAxle, neckBottom, neckTop } = points();
    const axis = { x: neckTop!.x - neckBottom!.x, z: neckTop!.z - neckBottom!.z };
    const arm = { x: frontAxle!.x - neckBottom!.x, z: frontAxle!.z - neckBottom!.z };
    expect(Math.hypot(axis.x, axis.z)).toBeCloseTo(0.12, 12);
    expect(Math.atan2(axis.z, -axis.x)).toBeCloseTo((64 * Math.PI) / 180, 12);
    // Along the axis and square to it, forward positive.
    expect((arm.x * axis.x + arm.z * axis.z) / 0.12).toBeCloseTo(-0.42, 12);
    expect((arm.x * axis.z - arm.z * axis.x) / 0.12).toBeCloseTo(0.038, 12);
  });

  test('a tilted engine turns its shaft about its base', () => {
    const { engineBase, engineShaft } = points({ engine: { tilt: 90, shaft: { forward: 12, height: 106 } } });
    expect(engineShaft!.x - engineBase!.x).toBeCloseTo(-0.106, 12);
    expect(engineShaft!.z - engineBase!.z).toBeCloseTo(0.012, 12);
  });
});

describe('nodes', () => {
  test('move along, then by offsets; height and side are absolute', () => {
    const at = points(
      nodes({
        a: { from: 'neckBottom', along: { toward: 'neckTop', distance: 60 }, left: 10 },
        b: { from: 'a', forward: -100, up: 5, side: -7 },
        c: { from: 'a', height: 300 },
      }),
    );
    expect(at.a!.x).toBeCloseTo((at.neckBottom!.x + at.neckTop!.x) / 2, 12);
    expect(at.b).toEqual({ x: at.a!.x - 0.1, y: -0.007, z: at.a!.z + 0.005 });
    expect(at.c!.z).toBe(0.3);
  });

  test('may be written before what they are given from', () => {
    const at = points(
      nodes({ first: { from: 'second', forward: 10 }, second: { from: 'rearAxle', up: 10 } }),
    );
    expect(at.first).toEqual({ x: 0.01, y: 0, z: expect.closeTo(0.175, 12) });
  });

  test('off the center plane have a mirror image, which other nodes may start from', () => {
    const at = points(
      nodes({ side: { from: 'rearAxle', left: 90 }, other: { from: 'side.right', forward: 10 } }),
    );
    expect(at['side.right']).toEqual({ x: 0, y: -0.09, z: 0.165 });
    expect(at.other!.y).toBe(-0.09);
    expect(at['rearAxle.right']).toBeUndefined();
  });

  test('given from each other in a circle are told with the circle', () => {
    const issue = firstIssue(nodes({ a: { from: 'b' }, b: { from: 'c' }, c: { from: 'a' } }));
    expect(issue).toMatchObject({ code: 'conflict' });
    expect(issue?.code === 'conflict' && issue.reason).toContain('a → b → c → a');
  });

  test('a circle through the engine is found too', () => {
    const issue = firstIssue({
      engine: { place: { from: 'a' } },
      frame: { nodes: { a: { from: 'engineShaft', forward: 10 } } },
    });
    expect(issue).toMatchObject({ code: 'conflict' });
  });

  test('from a name that nothing has are told with the nearest name', () => {
    expect(firstIssue(nodes({ a: { from: 'rearaxel' } }))).toMatchObject({
      code: 'unknown-name',
      path: 'frame.nodes.a.from',
      nearest: 'rearAxle',
    });
  });

  test('along a way of no length have no direction, which is told', () => {
    const issue = firstIssue(
      nodes({ a: { from: 'rearAxle' }, b: { from: 'a', along: { toward: 'rearAxle', distance: 5 } } }),
    );
    expect(issue).toMatchObject({ code: 'conflict', path: 'frame.nodes.b.along.toward' });
  });
});

describe('stances', () => {
  test('the design stance is the design, to the last digit', () => {
    const { design } = layOut(smallBuild()).stances;
    expect(design).toMatchObject({ pitch: 0, wheelbase: 1.05 });
    expect(design.frame.origin).toEqual({ x: 0, y: 0, z: 0 });
  });

  test('a rigid fork does not sag, a telescopic one does', () => {
    const fork = (kind: string) =>
      layOut(smallBuild({ steering: { fork: { kind, travel: 90, sag: 25 } } })).stances;
    expect(fork('rigid').sag.pitch).toBe(0);
    expect(fork('telescopic').sag.pitch).toBeGreaterThan(0);
    expect(fork('telescopic').sag.trail).toBeLessThan(fork('telescopic').design.trail);
  });

  test('tires on which the bike cannot stand are told', () => {
    expect(
      firstIssue({
        steering: { wheelbase: 400 },
        wheels: {
          rear: { fitted: { diameter: 1000, width: 90 } },
          front: { fitted: { diameter: 100, width: 90 } },
        },
      }),
    ).toMatchObject({ code: 'conflict', path: 'wheels' });
  });

  test('an unchecked build does not get a layout by force', () => {
    expect(() => layOut(smallBuild(nodes({ a: { from: 'nowhere' } })))).toThrow('not checked');
  });
});
