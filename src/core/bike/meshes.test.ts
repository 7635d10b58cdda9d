import { describe, expect, test } from 'vitest';
import { smallBuild } from '../../../tests/support/smallBuild.ts';
import { bikeFrame, circleLoop, type Mesh, meshPoint, meshVolume, rectangleLoop } from '../geometry/index.ts';
import { type BodyMesh, bikeMeshes, layOut, placeBike } from './index.ts';

const build = smallBuild({
  bodies: {
    tank: {
      name: 'tank',
      place: { from: 'neckBottom', forward: -200 },
      length: 200,
      width: 150,
      height: 90,
      mass: 3,
    },
  },
  brakes: { rear: { kind: 'band', side: 'right', diameter: 110, width: 25 } },
});
const bike = placeBike(build, layOut(build), {});
const chain = {
  drive: 'final',
  y: 0.08,
  width: 0.01,
  height: 0.008,
  points: [
    { x: -0.1, z: 0.1 },
    { x: 0.4, z: 0.15 },
    { x: 0.4, z: 0.25 },
    { x: -0.1, z: 0.2 },
  ],
};
const plate = {
  id: 'engine-plate',
  thickness: 0.006,
  outline: rectangleLoop({ x: 0, y: 0 }, 0.2, 0.1),
  windows: [],
  openings: [
    { center: { x: 0.05, y: 0 }, diameter: 0.01 },
    { center: { x: -0.05, y: 0 }, diameter: 0.01, travel: 0.02, direction: 0 },
  ],
  placed: [{ hand: 'center' as const, frame: bikeFrame }],
};
const meshes = bikeMeshes(build, bike, [chain], [plate]);
const named = (name: string): BodyMesh => {
  const found = meshes.find((mesh) => mesh.name === name);
  if (!found) throw new Error(`no ${name} among ${meshes.map((mesh) => mesh.name).join(', ')}`);
  return found;
};
const extent = (mesh: Mesh, of: 'x' | 'y' | 'z'): readonly [number, number] => {
  const values = Array.from({ length: mesh.positions.length / 3 }, (_, k) => meshPoint(mesh, k)[of]);
  return [Math.min(...values), Math.max(...values)];
};

/** Every edge of a closed surface belongs to two triangles, once each way. */
function openEdges(mesh: Mesh): number {
  const edges = new Map<string, number>();
  for (let k = 0; k < mesh.indices.length; k += 3) {
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const [p, q] = [mesh.indices[k + a]!, mesh.indices[k + b]!];
      const key = p < q ? `${p},${q}` : `${q},${p}`;
      edges.set(key, (edges.get(key) ?? 0) + (p < q ? 1 : -1));
    }
  }
  return [...edges.values()].filter((count) => count !== 0).length;
}

describe('bikeMeshes', () => {
  test.each(meshes.map((mesh) => [mesh.name, mesh] as const))(
    '%s is closed, faces outward and has no gaps',
    (_, { mesh }) => {
      for (const value of mesh.positions) expect(Number.isFinite(value)).toBe(true);
      expect(openEdges(mesh)).toBe(0);
      expect(meshVolume(mesh).volume).toBeGreaterThan(0);
    },
  );

  test('shows all that makes a bike', () => {
    const looks = new Set(meshes.map((mesh) => mesh.look));
    for (const look of [
      'frame',
      'wheel',
      'tire',
      'engine',
      'chain',
      'plate',
      'seat',
      'fork',
      'rider',
      'body',
      'shaft',
      'disc',
    ] as const) {
      expect(looks, look).toContain(look);
    }
  });

  test('tires touch the ground and have their width', () => {
    for (const name of ['rear tire', 'front tire']) {
      const [low, high] = extent(named(name).mesh, 'z');
      expect(low).toBeCloseTo(0, 6);
      expect(high).toBeCloseTo(0.33, 3);
      const [right, left] = extent(named(name).mesh, 'y');
      expect(left - right).toBeCloseTo(0.09, 6);
    }
  });

  test('the chain runs in its plane', () => {
    const [right, left] = extent(named('final').mesh, 'y');
    expect([right, left]).toEqual([expect.closeTo(0.075, 6), expect.closeTo(0.085, 6)]);
  });

  test('a plate has the volume of its outline less its holes', () => {
    const hole = Math.PI * 0.005 ** 2;
    const area = 0.2 * 0.1 - 2 * hole - 0.01 * 0.02;
    // Chords of 0.2 mm on 10 mm holes: some percent of the holes, under 1e-3 of the plate.
    expect(meshVolume(named('engine-plate').mesh).volume / (area * 0.006)).toBeCloseTo(1, 3);
    expect(circleLoop({ x: 0, y: 0 }, 0.005)).toHaveLength(2);
  });

  test('the rider sits on the seat', () => {
    const [low] = extent(named('rider, trunk').mesh, 'z');
    const [, top] = extent(named('seat').mesh, 'z');
    expect(Math.abs(low - top)).toBeLessThan(0.1);
  });
});
