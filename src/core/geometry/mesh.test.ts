import { describe, expect, test } from 'vitest';
import { mm, type Outcome } from '../quantity/index.ts';
import { buildCenterline } from './centerline.ts';
import { bikeFrame, frameFromZ } from './frame3.ts';
import { loopProperties } from './loopProperties.ts';
import { circleLoop, rectangleLoop, slotLoop } from './loopShapes.ts';
import { joinMeshes, type Mesh, meshVolume } from './mesh.ts';
import { boxMesh, cylinderMesh, extrudedMesh, latheMesh, sweptTubeMesh, torusMesh } from './meshSolids.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

/** Positions are single precision: 6e-8 of a coordinate, a few times that of a volume. */
const SINGLE = 1e-5;

/** Area of a regular polygon in a circle over the area of the circle. */
const polygonShare = (sides: number): number => (sides * Math.sin((2 * Math.PI) / sides)) / (2 * Math.PI);

/** In a closed surface every edge is used once each way. */
function expectClosed(mesh: Mesh): void {
  const edges = new Map<string, number>();
  for (let k = 0; k < mesh.indices.length; k += 3) {
    const t = [0, 1, 2].map((j) => mesh.indices[k + j]!);
    t.forEach((a, j) => {
      const b = t[(j + 1) % 3]!;
      const [key, way] = a < b ? [`${a}-${b}`, 1] : [`${b}-${a}`, -1];
      edges.set(key, (edges.get(key) ?? 0) + way);
    });
  }
  expect([...edges.values()].filter((sum) => sum !== 0)).toEqual([]);
}

const relative = (found: number, wanted: number): number => Math.abs(found / wanted - 1);
const skew = frameFromZ({ x: 1, y: -0.5, z: 0.3 }, { x: 0.2, y: 0.9, z: -0.4 });

describe('solids are closed, face outward and have their volume', () => {
  test('cylinder', () => {
    const mesh = cylinderMesh({ x: 0.1, y: 0, z: 0.2 }, { x: 0.4, y: 0.1, z: 0.3 }, 0.02, 32);
    expectClosed(mesh);
    const height = Math.hypot(0.3, 0.1, 0.1);
    expect(relative(meshVolume(mesh).volume, Math.PI * 0.02 ** 2 * height * polygonShare(32))).toBeLessThan(
      SINGLE,
    );
  });

  test('box', () => {
    const mesh = boxMesh(skew, { x: 0.1, y: 0.2, z: 0.3 });
    expectClosed(mesh);
    const { volume, center } = meshVolume(mesh);
    expect(relative(volume, 0.006)).toBeLessThan(SINGLE);
    expect(Math.hypot(center.x - 1, center.y + 0.5, center.z - 0.3)).toBeLessThan(1e-6);
  });

  test('torus: Pappus 2πR·A', () => {
    const mesh = torusMesh({ center: skew.origin, axis: skew.z, ringRadius: 0.2, tubeRadius: 0.05 }, 96);
    expectClosed(mesh);
    // Pappus on the ring's polygon: the ring's middle runs on sides that are sin(2π/n)·n/2π of the circle.
    const section = Math.PI * 0.05 ** 2 * polygonShare(32);
    expect(relative(meshVolume(mesh).volume, 2 * Math.PI * 0.2 * section * polygonShare(96))).toBeLessThan(
      SINGLE,
    );
  });

  test('plate with holes', () => {
    const outline = slotLoop({ x: 0, y: 0 }, { x: 0.1, y: 0 }, 0.06);
    const holes = [circleLoop({ x: 0, y: 0 }, 0.01), rectangleLoop({ x: 0.08, y: 0 }, 0.02, 0.02)];
    const mesh = extrudedMesh({ frame: skew, outline, holes, from: -0.003, to: 0.003, chordTolerance: 1e-6 });
    expectClosed(mesh);
    const area = loopProperties(outline).area - Math.PI * 1e-4 - 4e-4;
    // Chords of 1e-6 m leave out about 2/3 of that along the arcs' length.
    expect(relative(meshVolume(mesh).volume, area * 0.006)).toBeLessThan(5e-5);
  });

  test('bent tube: Pappus along the centerline', () => {
    const line = must(
      buildCenterline({
        points: [
          { x: 0, y: 0, z: 0 },
          { x: 0.3, y: 0, z: 0 },
          { x: 0.3, y: 0.3, z: 0 },
          { x: 0.3, y: 0.3, z: 0.3 },
        ],
        bendRadius: mm(80),
      }),
    );
    const mesh = sweptTubeMesh(line, 0.0127, 48);
    expectClosed(mesh);
    // Bends of 7.5° chords are 0.1 % short over a third of the length.
    expect(
      relative(meshVolume(mesh).volume, line.length * Math.PI * 0.0127 ** 2 * polygonShare(48)),
    ).toBeLessThan(2e-3);
  });

  test('cone by revolving a triangle', () => {
    const profile = [
      { x: 0, y: 0 },
      { x: 0.1, y: 0 },
      { x: 0, y: 0.3 },
    ];
    const mesh = latheMesh(bikeFrame, profile, 40);
    expectClosed(mesh);
    const { volume, center } = meshVolume(mesh);
    expect(relative(volume, (Math.PI * 0.01 * 0.3 * polygonShare(40)) / 3)).toBeLessThan(SINGLE);
    expect(center.z).toBeCloseTo(0.075, 6);
  });
});

test('joined meshes keep their volumes', () => {
  const a = boxMesh(bikeFrame, { x: 1, y: 1, z: 1 });
  const b = boxMesh(skew, { x: 2, y: 1, z: 1 });
  expect(meshVolume(joinMeshes([a, b])).volume).toBeCloseTo(3, 5);
});

test('the same input gives the same mesh', () => {
  const make = (): Mesh =>
    torusMesh({ center: skew.origin, axis: skew.z, ringRadius: 0.2, tubeRadius: 0.05 });
  expect(make()).toEqual(make());
});

test('solids that can not be throw', () => {
  expect(() =>
    latheMesh(bikeFrame, [
      { x: -1, y: 0 },
      { x: 1, y: 0 },
      { x: 0, y: 1 },
    ]),
  ).toThrow(RangeError);
  expect(() =>
    extrudedMesh({
      frame: bikeFrame,
      outline: circleLoop({ x: 0, y: 0 }, 1),
      holes: [],
      from: 1,
      to: 1,
      chordTolerance: 1,
    }),
  ).toThrow(RangeError);
});
