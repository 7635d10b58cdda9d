import { describe, expect, test } from 'vitest';
import { demoDrawing, demoNames } from '../../../tests/support/demoScene.ts';
import { centerlinePlaces, distance3, type Point3 } from '../geometry/index.ts';
import { blockHeight, stackBlocks } from './fitUp.ts';

describe.each(demoNames)('fit-up sheet of the %s demo', (name) => {
  const { context, work } = demoDrawing(name);
  const { bike } = context.scene;
  const { fitUp } = work;
  const lift = fitUp.propHeight - fitUp.restsAt;
  // The places of a centerline begin and end with each of its pieces, so marks of bends are among them.
  const metal: readonly Point3[] = bike.tubes.flatMap((tube) =>
    centerlinePlaces(tube.centerline, 0.005).map((place) => place.point),
  );
  const offTube = (at: Point3): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const point of metal) least = Math.min(least, distance3(point, at));
    return least;
  };

  test('every station but axle and neck lies on a tube', () => {
    const held = fitUp.stations.filter((one) => !/^(rearAxle|neckBottom|neckTop)$/.test(one.name));
    expect(held.length).toBeGreaterThan(8);
    for (const one of held) {
      const at = { x: one.forward, y: one.left, z: one.center - lift };
      // Straights are sampled at their ends alone, so only bend marks and tube ends are near a sample.
      if (!/^(cross|stay)/.test(one.name)) expect(offTube(at), one.name).toBeLessThan(1e-9);
    }
  });

  test('nothing is blocked on the neck, which its bar holds', () => {
    const names = fitUp.stations.map((one) => one.name);
    expect(names).not.toContain('neckLow');
    expect(names).not.toContain('neckHigh');
    expect(names).toContain('neckBottom');
  });

  test('a block never reaches into its tube, and under a level tube it ends at the underside', () => {
    for (const one of fitUp.stations) {
      if (one.block === undefined) continue;
      const tubes = bike.tubes.filter((tube) => one.what.startsWith(tube.entry) && tube.hand !== 'right');
      expect(tubes.length, one.name).toBe(1);
      expect(one.block, one.name).toBeLessThanOrEqual(one.center - tubes[0]!.outside / 2 + 1e-12);
    }
    const level = fitUp.stations.find((one) => one.name === 'end of bend 1 of lowerRail')!;
    const tube = bike.tubes.find((one) => one.entry === 'lowerRail')!;
    // Both demos' lower rails run level from the first bend to the second.
    expect(level.block).toBeCloseTo(level.center - tube.outside / 2, 12);
  });

  test('diagonals are the distances between the places they name', () => {
    expect(fitUp.diagonals.length).toBeGreaterThan(6);
    for (const tram of fitUp.diagonals) {
      expect(tram.length).toBeCloseTo(distance3(tram.from, tram.to), 12);
      const ends = [tram.from, tram.to].filter((at) => distance3(at, bike.layout.points.neckBottom!) > 1e-9);
      for (const at of ends) expect(offTube(at), tram.name).toBeLessThan(1e-9);
    }
  });
});

test('a bolt head of 1/4 in over two 1/4 in plates makes a block of 10 in one of 10 3/4 in', () => {
  // Closed form: 10 + 3 · 1/4; in inches through the exact 25.4 mm.
  const quarter = 0.0254 / 4;
  const props = ['bolt head', 'plate', 'plate'].map((what) => ({ what, thickness: quarter }));
  expect(blockHeight(10 * 0.0254, props)).toBeCloseTo(10.75 * 0.0254, 12);
});

test('blocks and shims never stand above the height, and say what is left', () => {
  const stack = stackBlocks(0.1634, [0.1, 0.05, 0.01], [0.001, 0.0005]);
  expect(stack.blocks).toEqual([0.1, 0.05, 0.01]);
  expect(stack.shims).toEqual([0.001, 0.001, 0.001]);
  expect(stack.left).toBeCloseTo(0.0004, 12);
});
