import type { Point3 } from '../src/core/geometry/index.ts';
import {
  assembleFrame,
  buckleFrame,
  DIRECTIONS,
  type FrameLoads,
  type FrameMember,
  type FrameModel,
  type FrameSolution,
  solveFrame,
  vibrateFrame,
} from '../src/core/strength/index.ts';
import { bench, checksumOf } from './bench.ts';

const SECTION = {
  youngsModulus: 2e11,
  shearModulus: 8e10,
  area: 1.5e-4,
  secondMomentY: 1e-8,
  secondMomentZ: 1e-8,
  torsionConstant: 2e-8,
  shearAreas: [7.5e-5, 7.5e-5],
  density: 7850,
} as const;

/** A lattice of 10 by 5 by 4 nodes, 200 in all, held at the four corners of its foot; 575 members. */
const lattice = (): FrameModel => {
  const counts = { x: 10, y: 5, z: 4 };
  const nodes: Record<string, Point3> = {};
  const members: FrameMember[] = [];
  const name = (x: number, y: number, z: number) => `${x}.${y}.${z}`;
  const join = (from: string, to: string) => members.push({ ...SECTION, id: `${from}-${to}`, from, to });
  for (let x = 0; x < counts.x; x++)
    for (let y = 0; y < counts.y; y++)
      for (let z = 0; z < counts.z; z++) {
        nodes[name(x, y, z)] = { x: 0.15 * x, y: 0.12 * y, z: 0.14 * z + 0.01 * x };
        if (x > 0) join(name(x - 1, y, z), name(x, y, z));
        if (y > 0) join(name(x, y - 1, z), name(x, y, z));
        if (z > 0) join(name(x, y, z - 1), name(x, y, z));
        if (x > 0 && z > 0 && y % 2 === 0) join(name(x - 1, y, z - 1), name(x, y, z));
      }
  const corners = [0, counts.x - 1].flatMap((x) => [name(x, 0, 0), name(x, counts.y - 1, 0)]);
  return { nodes, members, supports: corners.map((node) => ({ node, fixed: DIRECTIONS })) };
};

const model = lattice();
const cases: readonly FrameLoads[] = Array.from({ length: 10 }, (_, i) => ({
  nodes: [{ node: `${i}.2.3`, force: { x: 10 * i, y: 100, z: -500 } }],
  members: model.members.slice(0, 50).map(({ id }) => ({ member: id, w: { x: 0, y: 0, z: -20 } })),
}));

function assembled() {
  const outcome = assembleFrame(model);
  if (!outcome.ok) throw new Error('the lattice does not stand');
  return outcome.value;
}

function solved(loads: readonly FrameLoads[]): readonly FrameSolution[] {
  const outcome = solveFrame(assembled(), loads);
  if (!outcome.ok) throw new Error('refused');
  return outcome.value;
}

/** Displacements to nine figures of the largest. */
function movementsOf(solutions: readonly FrameSolution[]): string {
  const all = solutions.flatMap(({ displacements }) => [...displacements]);
  const most = Math.max(...all.map(Math.abs));
  return checksumOf(all.map((value) => Math.round((value / most) * 1e7)));
}

const nodes = Object.keys(model.nodes).length;

export const benches = [
  bench({
    name: `frame, ${nodes} nodes, ${model.members.length} members: assembly, factor, one case`,
    warmUps: 10,
    runs: 41,
    target: 150,
    run: () => solved(cases.slice(0, 1)),
    checksum: movementsOf,
  }),
  bench({
    name: `frame, ${nodes} nodes: assembly, factor, ten cases`,
    warmUps: 10,
    runs: 41,
    run: () => solved(cases),
    checksum: movementsOf,
  }),
  bench({
    name: `frame, ${nodes} nodes: ten natural frequencies`,
    warmUps: 2,
    runs: 9,
    run: () => vibrateFrame(assembled(), 10),
    checksum: (outcome) =>
      checksumOf(
        outcome.ok ? outcome.value.map(({ angularFrequency }) => angularFrequency.toPrecision(7)) : [],
      ),
  }),
  bench({
    name: `frame, ${nodes} nodes: four buckling factors`,
    warmUps: 2,
    runs: 9,
    run: () => {
      const frame = assembled();
      const outcome = solveFrame(frame, cases.slice(0, 1));
      if (!outcome.ok) throw new Error('refused');
      return buckleFrame(frame, outcome.value[0]!, 4);
    },
    checksum: (outcome) =>
      checksumOf(outcome.ok ? outcome.value.map(({ factor }) => factor.toPrecision(7)) : []),
  }),
];
