import { type Point3, subtract3 } from '../../geometry/index.ts';
import type { FrameModel } from './model.ts';

/** Which node moves each node, and from where. */
export interface Masters {
  /** Index of the node whose movements are unknowns; a node of its own holds its own index. */
  readonly leader: Int32Array;
  /** From the leader to the node [m], three numbers a node. */
  readonly arm: Float64Array;
}

/** Follows chains of rigid links to the node that leads; the links must not run in a circle. */
export function findMasters(
  model: FrameModel,
  ids: readonly string[],
  indexOf: ReadonlyMap<string, number>,
): Masters {
  const masterOf = new Map((model.links ?? []).map(({ leader, follower }) => [follower, leader]));
  const leader = new Int32Array(ids.length);
  const arm = new Float64Array(ids.length * 3);
  ids.forEach((id, node) => {
    let lead = id;
    for (let next = masterOf.get(lead); next !== undefined; next = masterOf.get(lead)) lead = next;
    leader[node] = indexOf.get(lead)!;
    const { x, y, z } = subtract3(positionOf(model, id), positionOf(model, lead));
    arm.set([x, y, z], node * 3);
  });
  return { leader, arm };
}

function positionOf(model: FrameModel, id: string): Point3 {
  const at = model.nodes[id];
  if (at === undefined) throw new Error(`no node "${id}"`);
  return at;
}

/** Movements of a node from those of its leader, in place of six numbers at `node`: u + θ × r. */
export function followMaster({ leader, arm }: Masters, node: number, moved: Float64Array): void {
  const lead = leader[node]! * 6;
  const own = node * 6;
  const rx = arm[node * 3]!;
  const ry = arm[node * 3 + 1]!;
  const rz = arm[node * 3 + 2]!;
  const tx = moved[lead + 3]!;
  const ty = moved[lead + 4]!;
  const tz = moved[lead + 5]!;
  moved[own] = moved[lead]! + ty * rz - tz * ry;
  moved[own + 1] = moved[lead + 1]! + tz * rx - tx * rz;
  moved[own + 2] = moved[lead + 2]! + tx * ry - ty * rx;
  moved[own + 3] = tx;
  moved[own + 4] = ty;
  moved[own + 5] = tz;
}

/** Adds the force and moment at `node` (six numbers from `at` in `forces`) to its leader's in `sums`. */
export function bringToMaster(
  { leader, arm }: Masters,
  node: number,
  forces: Float64Array,
  at: number,
  sums: Float64Array,
): void {
  const lead = leader[node]! * 6;
  const rx = arm[node * 3]!;
  const ry = arm[node * 3 + 1]!;
  const rz = arm[node * 3 + 2]!;
  const fx = forces[at]!;
  const fy = forces[at + 1]!;
  const fz = forces[at + 2]!;
  sums[lead] = sums[lead]! + fx;
  sums[lead + 1] = sums[lead + 1]! + fy;
  sums[lead + 2] = sums[lead + 2]! + fz;
  sums[lead + 3] = sums[lead + 3]! + forces[at + 3]! + ry * fz - rz * fy;
  sums[lead + 4] = sums[lead + 4]! + forces[at + 4]! + rz * fx - rx * fz;
  sums[lead + 5] = sums[lead + 5]! + forces[at + 5]! + rx * fy - ry * fx;
}

/** Hᵀ·k·H in place: rows and columns of one end (from `at`) of a `size` × `size` matrix brought to the leader. */
export function matrixToMaster(
  leaders: Masters,
  node: number,
  k: Float64Array,
  at: number,
  size: number,
): void {
  const [rx, ry, rz] = [0, 1, 2].map((i) => leaders.arm[node * 3 + i]!) as [number, number, number];
  if (rx === 0 && ry === 0 && rz === 0) return;
  // [moment row, force row, lever]: moment of the forces about the leader.
  const levers: readonly (readonly [number, number, number])[] = [
    [3, 2, ry],
    [3, 1, -rz],
    [4, 0, rz],
    [4, 2, -rx],
    [5, 1, rx],
    [5, 0, -ry],
  ];
  for (const [moment, force, lever] of levers)
    for (let i = 0; i < size; i++) {
      const column = i * size + at;
      k[column + moment] = k[column + moment]! + lever * k[column + force]!;
    }
  for (const [moment, force, lever] of levers)
    for (let j = 0; j < size; j++) {
      const row = (at + moment) * size + j;
      k[row] = k[row]! + lever * k[(at + force) * size + j]!;
    }
}
