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
    if (lead === id) return;
    const { x, y, z } = subtract3(positionOf(model, id), positionOf(model, lead));
    arm[node * 3] = x;
    arm[node * 3 + 1] = y;
    arm[node * 3 + 2] = z;
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
  const rx = leaders.arm[node * 3]!;
  const ry = leaders.arm[node * 3 + 1]!;
  const rz = leaders.arm[node * 3 + 2]!;
  if (rx === 0 && ry === 0 && rz === 0) return;
  // Moments of the forces about the leader, first by columns, then by rows.
  for (let row = 0; row < size; row++) bringLine(k, row * size + at, 1, rx, ry, rz);
  for (let column = 0; column < size; column++) bringLine(k, at * size + column, size, rx, ry, rz);
}

/** Six numbers of a matrix, `step` apart: adds r × force to the moments. */
function bringLine(k: Float64Array, at: number, step: number, rx: number, ry: number, rz: number): void {
  const fx = k[at]!;
  const fy = k[at + step]!;
  const fz = k[at + 2 * step]!;
  k[at + 3 * step] = k[at + 3 * step]! + ry * fz - rz * fy;
  k[at + 4 * step] = k[at + 4 * step]! + rz * fx - rx * fz;
  k[at + 5 * step] = k[at + 5 * step]! + rx * fy - ry * fx;
}
