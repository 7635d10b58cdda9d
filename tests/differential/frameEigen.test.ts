import { expect, test } from 'vitest';
import type { SkylineMatrix } from '../../src/core/numerics/index.ts';
import {
  buckleFrame,
  type FrameModel,
  lostStiffness,
  massMatrix,
  vibrateFrame,
} from '../../src/core/strength/index.ts';
import { runPython } from '../support/debianPython.ts';
import { ALL, answer, must, SECTION } from '../support/frames.ts';

/** Generalized eigenvalues through Cholesky and LAPACK's dense symmetric solver. */
const SCRIPT = `
import json, sys
import numpy as np
given = json.load(sys.stdin)
K = np.array(given['K'])
L = np.linalg.cholesky(K)
def largest(B):
    half = np.linalg.solve(L, np.array(B))
    A = np.linalg.solve(L, half.T)
    return sorted(np.linalg.eigvalsh((A + A.T) / 2).tolist(), reverse=True)
b = np.array(given['b'])
print(json.dumps({'vibration': largest(given['M']), 'buckling': largest(given['G']), 'x': np.linalg.solve(K, b).tolist()}))
`;

function denseOf({ size, top, start, values }: SkylineMatrix): number[][] {
  const rows = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++)
    for (let i = top[j]!; i <= j; i++) {
      const value = values[start[j]! + i - top[j]!]!;
      rows[i]![j] = value;
      rows[j]![i] = value;
    }
  return rows;
}

/** A tower of three legs that lean in, each side braced once a floor; hinged braces, a lump on top. */
function tower(): FrameModel {
  const floors = 5;
  const nodes: Record<string, { x: number; y: number; z: number }> = {};
  for (let floor = 0; floor <= floors; floor++)
    for (let leg = 0; leg < 3; leg++) {
      const angle = (2 * Math.PI * leg) / 3 + 0.1 * floor;
      const radius = 0.4 - 0.05 * floor;
      nodes[`${leg}-${floor}`] = { x: radius * Math.cos(angle), y: radius * Math.sin(angle), z: 0.3 * floor };
    }
  const section = { ...SECTION, density: 7850 };
  const members = Array.from({ length: floors }, (_, floor) =>
    [0, 1, 2].flatMap((leg) => {
      const next = (leg + 1) % 3;
      const bar = (from: string, to: string) => ({ ...section, id: `${from}>${to}`, from, to });
      return [
        bar(`${leg}-${floor}`, `${leg}-${floor + 1}`),
        bar(`${leg}-${floor + 1}`, `${next}-${floor + 1}`),
        {
          ...bar(`${leg}-${floor}`, `${next}-${floor + 1}`),
          area: 5e-5,
          secondMomentY: 1e-9,
          secondMomentZ: 1e-9,
          releases: { from: ['ry', 'rz'], to: ['ry', 'rz'] } as const,
        },
      ];
    }),
  ).flat();
  return {
    nodes: { ...nodes, top: { x: 0.05, y: 0, z: 1.7 } },
    members,
    supports: [0, 1, 2].map((leg) => ({ node: `${leg}-0`, fixed: ALL })),
    links: [{ leader: '0-5', follower: 'top' }],
    masses: [{ node: 'top', mass: 15, inertia: [0.2, 0.3, 0.25, 0.01, 0.02, 0] }],
  };
}

test('[FRAME-18] [FRAME-19] eigenvalues of a tower agree with a dense solver of a general library', () => {
  const solution = answer(tower(), { nodes: [{ node: 'top', force: { x: 800, y: 300, z: -20000 } }] });
  const { frame } = solution;
  const b = Array.from({ length: frame.equations.count }, (_, i) => Math.sin(i));
  const wanted = runPython(
    SCRIPT,
    {
      K: denseOf(frame.stiffness),
      M: denseOf(massMatrix(frame)),
      G: denseOf(lostStiffness(frame, solution)),
      b,
    },
    { module: 'numpy', debianPackage: 'python3-numpy' },
  ) as { vibration: number[]; buckling: number[]; x: number[] };

  const modes = must(vibrateFrame(frame, 12));
  expect(modes).toHaveLength(12);
  modes.forEach(({ angularFrequency }, i) => {
    // Rounding of K over its smallest eigenvalue; both sides.
    expect(Math.abs(angularFrequency ** 2 * wanted.vibration[i]! - 1)).toBeLessThan(1e-9);
  });
  const buckled = must(buckleFrame(frame, solution, 8));
  expect(buckled).toHaveLength(8);
  buckled.forEach(({ factor }, i) => {
    expect(Math.abs(factor * wanted.buckling[i]! - 1)).toBeLessThan(1e-9);
  });
});
