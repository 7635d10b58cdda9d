import { expect, test } from 'vitest';
import { cylinderMesh } from '../../core/geometry/index.ts';
import { shade } from './shade.ts';

const bar = shade(cylinderMesh({ x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 1 }, 0.1, 32));

test('the side of a bar is lit round: each normal there points straight out of the axis', () => {
  let sides = 0;
  for (let k = 0; k < bar.positions.length; k += 3) {
    const [x, y] = [bar.positions[k]! / 0.1, bar.positions[k + 1]! / 0.1];
    const [nx, ny, nz] = [bar.normals[k]!, bar.normals[k + 1]!, bar.normals[k + 2]!];
    expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 5);
    if (Math.abs(nz) > 0.5) continue;
    sides += 1;
    // Half a facet of 32 is 5.6 degrees; weighting by area leaves less than that.
    expect(nx * x + ny * y).toBeGreaterThan(Math.cos(0.1));
  }
  expect(sides).toBeGreaterThanOrEqual(32 * 2 * 3);
});

test('only the rims of its two ends are edges', () => {
  const heights = bar.edges.filter((_, k) => k % 3 === 2);
  expect(bar.edges.length).toBe(2 * 32 * 6);
  expect([...new Set(heights)].sort()).toEqual([0, 1]);
});

test('a triangle of no area is left out', () => {
  const positions = new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0, 2, 0, 0]);
  const flat = shade({ positions, indices: new Uint32Array([0, 1, 2, 0, 1, 3, 1, 1, 2]) });
  expect(flat.positions.length).toBe(9);
});
