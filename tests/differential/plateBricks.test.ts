import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { polygonLoop } from '../../src/core/geometry/index.ts';
import { cutPlate, loadedCut, type PlateLoads } from '../../src/core/strength/index.ts';

/** A general finite-element solver: the plate as 20-node bricks, nothing of a beam theory. */
const SOLVER = '/usr/bin/ccx';

/** A cantilever bracket with a window between two posts [mm]; clamped at x = 0, loaded at its end. */
const [LENGTH, WIDTH, THICK, CELL] = [200, 80, 6, 5];
const WINDOW = { from: 70, to: 130, half: 25 };
/** At the end [N]: along y in the plane, and out of it. */
const [IN_PLANE, OUT_OF_PLANE] = [1500, 60];
const [NX, NY] = [LENGTH / CELL, WIDTH / CELL];

const isMetal = (i: number, j: number): boolean => {
  const [x, y] = [(i + 0.5) * CELL, (j + 0.5) * CELL - WIDTH / 2];
  return !(x > WINDOW.from && x < WINDOW.to && Math.abs(y) < WINDOW.half);
};

/** Corners, then the middles of the lower edges, of the upper and of the upright ones, in half cells. */
const BRICK: readonly (readonly [number, number, number])[] = [
  ...[0, 2].flatMap((k) => [[0, 0, k] as const, [2, 0, k] as const, [2, 2, k] as const, [0, 2, k] as const]),
  ...[0, 2].flatMap((k) => [[1, 0, k] as const, [2, 1, k] as const, [1, 2, k] as const, [0, 1, k] as const]),
  [0, 0, 1],
  [2, 0, 1],
  [2, 2, 1],
  [0, 2, 1],
];

/** Node at half cells along, across and through. */
const numberOf = (i: number, j: number, k: number): number => 1 + i + (2 * NX + 1) * (j + (2 * NY + 1) * k);

function mesh() {
  const nodes = new Map<number, string>();
  const bricks: string[] = [];
  let count = 0;
  for (let i = 0; i < NX; i++)
    for (let j = 0; j < NY; j++) {
      if (!isMetal(i, j)) continue;
      const ids = BRICK.map(([a, b, c]) => {
        const [x, y, z] = [2 * i + a, 2 * j + b, c];
        const id = numberOf(x, y, z);
        nodes.set(id, [id, (x * CELL) / 2, (y * CELL) / 2 - WIDTH / 2, (z * THICK) / 2].join(', '));
        return id;
      });
      // The solver reads sixteen numbers a line.
      bricks.push(`${[++count, ...ids.slice(0, 10)].join(', ')},`, ids.slice(10).join(', '));
    }
  return { nodes, bricks };
}

/** Nodes of both faces at the end, with the weight of Simpson's rule along the width. */
function endNodes(): readonly (readonly [id: number, weight: number])[] {
  const weights = Array.from({ length: 2 * NY + 1 }, (_, j) =>
    j % 2 === 1 ? 4 : j === 0 || j === 2 * NY ? 1 : 2,
  );
  const whole = weights.reduce((sum, w) => sum + w, 0);
  return weights.flatMap((w, j) => [0, 2].map((k) => [numberOf(2 * NX, j, k), w / whole / 2] as const));
}

function deck(direction: 2 | 3, force: number): string {
  const { nodes, bricks } = mesh();
  return [
    '*NODE, NSET=all',
    ...nodes.values(),
    '*ELEMENT, TYPE=C3D20R, ELSET=plate',
    ...bricks,
    ...['*MATERIAL, NAME=steel', '*ELASTIC', '205000., 0.3'],
    '*SOLID SECTION, ELSET=plate, MATERIAL=steel',
    ...['*STEP', '*STATIC', '*BOUNDARY'],
    ...[...nodes.keys()].filter((id) => (id - 1) % (2 * NX + 1) === 0).map((id) => `${id}, 1, 3`),
    '*CLOAD',
    ...endNodes().map(([id, weight]) => `${id}, ${direction}, ${force * weight}`),
    ...['*EL FILE', 'S', '*END STEP', ''],
  ].join('\n');
}

/** Stress along x by node [MPa]. */
function stressAlong(direction: 2 | 3, force: number): (x: number, y: number, z: 0 | 6) => number {
  const folder = mkdtempSync(join(tmpdir(), 'plate-bricks-'));
  try {
    writeFileSync(join(folder, 'plate.inp'), deck(direction, force));
    const run = spawnSync(SOLVER, ['plate'], { cwd: folder, encoding: 'utf8' });
    if (run.error) throw new Error('this check needs a finite-element solver: apt-get install calculix-ccx');
    const lines = readFileSync(join(folder, 'plate.frd'), 'utf8').split('\n');
    const from = lines.findIndex((line) => line.startsWith(' -4  STRESS'));
    if (from < 0) throw new Error(`the solver wrote no stress: ${run.stdout.slice(-400)}`);
    const found = new Map(
      lines
        .slice(from, lines.indexOf(' -3', from))
        .filter((line) => line.startsWith(' -1'))
        .map((line) => [Number(line.slice(3, 13)), Number(line.slice(13, 25))]),
    );
    return (x, y, z) => {
      const value = found.get(numberOf((2 * x) / CELL, (2 * (y + WIDTH / 2)) / CELL, z / 3));
      if (value === undefined) throw new Error(`no stress at ${x}, ${y}, ${z}`);
      return value;
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const SPOTS = [20, 40, 50, 80, 100, 120, 160].map((x) => ({ x: x / 1000, y: 0 }));
const cut = cutPlate(
  {
    outline: polygonLoop([
      { x: 0, y: -0.04 },
      { x: 0.2, y: -0.04 },
      { x: 0.2, y: 0.04 },
      { x: 0, y: 0.04 },
    ]),
    openings: [
      polygonLoop([
        { x: 0.07, y: -0.025 },
        { x: 0.13, y: -0.025 },
        { x: 0.13, y: 0.025 },
        { x: 0.07, y: 0.025 },
      ]),
    ],
    thickness: THICK / 1000,
  },
  { spots: SPOTS },
);

/** Our stress in the cut square across at x [MPa]. */
function ours(x: number, y: number, z: number): number {
  const loads: PlateLoads = {
    points: [
      { at: { x: 0.2, y: 0 }, force: { x: 0, y, z } },
      { at: { x: 0, y: 0 }, force: { x: 0, y: -y, z: -z }, moment: { x: 0, y: 0.2 * z, z: -0.2 * y } },
    ],
    lines: [],
  };
  const section = cut.sections.find(
    ({ line }) => line.angle === 0 && Math.abs(line.offset - x / 1000) < 1e-9,
  );
  if (!section) throw new Error(`no cut at ${x}`);
  return loadedCut(cut, section, loads).stress.equivalent / 1e6;
}

describe('a bracket with a window as bricks in a general solver', () => {
  const flat = stressAlong(2, IN_PLANE);
  const out = stressAlong(3, OUT_OF_PLANE);
  const posts = [-40, -25, 25, 40];

  test('whole plate in its plane, away from the window: edges within 1 %', () => {
    const bricks = Math.max(...[-40, 40].map((y) => Math.abs(flat(20, y, 0))));
    expect(bricks / ours(20, IN_PLANE, 0)).toBeGreaterThan(0.99);
    expect(bricks / ours(20, IN_PLANE, 0)).toBeLessThan(1.01);
  });

  test('before the window the posts pull unevenly on the whole plate, but less than on themselves', () => {
    // A beam knows nothing of it: 20 mm before the window the bricks show 1.6 times its stress.
    const before = Math.max(...[-40, 40].map((y) => Math.abs(flat(50, y, 0))));
    expect(before / ours(50, IN_PLANE, 0)).toBeGreaterThan(1.4);
    expect(before).toBeLessThan(0.7 * ours(80, IN_PLANE, 0));
  });

  test('posts beside the window: they bend by their share of the shear; within 10 %, ours on the high side', () => {
    // Ten millimeters from the window's corners. Posts are stout and the plate they stand on gives.
    for (const x of [80, 120]) {
      const bricks = Math.max(...posts.map((y) => Math.abs(flat(x, y, 0))));
      expect(bricks / ours(x, IN_PLANE, 0)).toBeGreaterThan(0.9);
      expect(bricks / ours(x, IN_PLANE, 0)).toBeLessThan(1);
      // Without the bending of each post by itself the cut would miss a third of it.
      const plain = (IN_PLANE * (LENGTH - x) * 40) / ((THICK * (80 ** 3 - 50 ** 3)) / 12);
      expect(bricks / plain).toBeGreaterThan(1.3);
    }
  });

  test('out of its plane: mean over the metal within 3 %, the largest of it within 12 %', () => {
    for (const x of [20, 40, 100]) {
      const ys = Array.from({ length: NY + 1 }, (_, j) => j * CELL - WIDTH / 2).filter(
        (y) => x !== 100 || Math.abs(y) >= WINDOW.half,
      );
      const each = ys.map((y) => Math.abs(out(x, y, 6)));
      const weights = ys.map((y) => (Math.abs(y) === 40 || (x === 100 && Math.abs(y) === 25) ? 0.5 : 1));
      const mean =
        each.reduce((sum, s, i) => sum + s * weights[i]!, 0) / weights.reduce((sum, w) => sum + w, 0);
      expect(mean / ours(x, 0, OUT_OF_PLANE)).toBeGreaterThan(0.97);
      expect(mean / ours(x, 0, OUT_OF_PLANE)).toBeLessThan(1.03);
      expect(Math.max(...each) / ours(x, 0, OUT_OF_PLANE)).toBeLessThan(1.12);
    }
  });
});
