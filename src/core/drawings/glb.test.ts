import { WebIO } from '@gltf-transform/core';
import { expect, test } from 'vitest';
import { glbOfMeshes, type MeshPart } from './glb.ts';

/** A tetrahedron of 1 m legs along forward, left and up. */
const part: MeshPart = {
  name: 'gusset',
  color: 'plate',
  mesh: { positions: [0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1], indices: [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3] },
};

test('header, meters, y up, flat normals, names', async () => {
  const bytes = await glbOfMeshes([part, { ...part, name: 'rider', color: 'rider' }]);
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  // glTF 2.0, 4.4: magic "glTF", version 2, total length.
  expect(view.getUint32(0, true)).toBe(0x46546c67);
  expect(view.getUint32(4, true)).toBe(2);
  expect(view.getUint32(8, true)).toBe(bytes.length);
  const root = (await new WebIO().readBinary(bytes)).getRoot();
  expect(root.listNodes().map((n) => n.getName())).toEqual(['gusset', 'rider']);
  expect(root.listMaterials().map((m) => [m.getName(), m.getAlphaMode()])).toEqual([
    ['plate', 'OPAQUE'],
    ['rider', 'BLEND'],
  ]);
  const primitive = root.listMeshes()[0]!.listPrimitives()[0]!;
  const [points, normals] = ['POSITION', 'NORMAL'].map((s) => [...primitive.getAttribute(s)!.getArray()!]);
  expect(points!.length).toBe(36);
  // Up in the bike (0, 0, 1) is up in the file (0, 1, 0); left (0, 1, 0) is (0, 0, −1).
  const corners = Array.from({ length: 12 }, (_, i) => points!.slice(3 * i, 3 * i + 3).join());
  expect(new Set(corners)).toEqual(new Set(['0,0,0', '1,0,0', '0,1,0', '0,0,-1']));
  // The slanted face looks forward, left and up alike: (1, 1, −1)/√3 here, the same on its three corners.
  for (const k of [9, 10, 11]) {
    expect(normals![3 * k]).toBeCloseTo(1 / Math.sqrt(3), 6);
    expect(normals![3 * k + 1]).toBeCloseTo(1 / Math.sqrt(3), 6);
    expect(normals![3 * k + 2]).toBeCloseTo(-1 / Math.sqrt(3), 6);
  }
  // Volume by the divergence theorem from what the file holds: 1/6.
  let volume = 0;
  for (let i = 0; i < 36; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = points!.slice(i, i + 9) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    volume += (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
  }
  expect(volume).toBeCloseTo(1 / 6, 9);
});

test('same parts, same bytes; a corner that is none is refused', async () => {
  expect(Buffer.from(await glbOfMeshes([part])).equals(Buffer.from(await glbOfMeshes([part])))).toBe(true);
  await expect(glbOfMeshes([{ ...part, mesh: { ...part.mesh, indices: [0, 1, 9] } }])).rejects.toThrow(
    'not a point',
  );
});
