import type { AssembledFrame } from './assemble.ts';
import { rotateToLocal } from './axes.ts';
import { bringToMaster } from './links.ts';
import { nodalMovements } from './mechanism.ts';
import { DIRECTIONS, type FrameLoads } from './model.ts';

/** Loads on nodes, brought to their leaders: six a node, global axes. */
export function appliedForces(
  { nodeIndex, leaders, nodeIds }: AssembledFrame,
  loads: FrameLoads,
): Float64Array {
  const sums = new Float64Array(nodeIds.length * 6);
  const six = new Float64Array(6);
  for (const { node, force, moment } of loads.nodes ?? []) {
    six[0] = force?.x ?? 0;
    six[1] = force?.y ?? 0;
    six[2] = force?.z ?? 0;
    six[3] = moment?.x ?? 0;
    six[4] = moment?.y ?? 0;
    six[5] = moment?.z ?? 0;
    bringToMaster(leaders, nodeIndex.get(node)!, six, 0, sums);
  }
  return sums;
}

/** Uniform loads of members in their local axes: three a member. */
export function localLoads({ elements, memberIndex }: AssembledFrame, loads: FrameLoads): Float64Array {
  const sums = new Float64Array(elements.length * 3);
  const local = new Float64Array(3);
  for (const { member, w, axes } of loads.members ?? []) {
    const m = memberIndex.get(member)!;
    local[0] = w.x;
    local[1] = w.y;
    local[2] = w.z;
    if (axes !== 'local') rotateToLocal(elements[m]!.axes, local, 0, local, 0);
    for (let i = 0; i < 3; i++) sums[m * 3 + i] = sums[m * 3 + i]! + local[i]!;
  }
  return sums;
}

/** Movements of supports, and of what follows them: six a node, global axes. */
export function settlementsOf(
  { nodeIndex, nodeIds, leaders }: AssembledFrame,
  { settlements = [] }: FrameLoads,
): Float64Array {
  const forced = new Float64Array(nodeIds.length * 6);
  if (settlements.length === 0) return forced;
  for (const { node, by } of settlements)
    DIRECTIONS.forEach((direction, i) => {
      const place = nodeIndex.get(node)! * 6 + i;
      forced[place] = forced[place]! + (by[direction] ?? 0);
    });
  return followed(forced, leaders);
}

/** Fixed nodes may lead others. */
function followed(forced: Float64Array, leaders: AssembledFrame['leaders']): Float64Array {
  const own = new Int32Array(forced.length).fill(-1);
  for (let i = 0; i < own.length; i++) {
    const node = Math.floor(i / 6);
    if (leaders.leader[node] === node) own[i] = i;
  }
  return nodalMovements(forced, { count: forced.length, of: own, top: own }, leaders);
}
