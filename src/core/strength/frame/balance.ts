import type { AssembledFrame } from './assemble.ts';
import { rotateToGlobal } from './axes.ts';
import { bringToMaster } from './links.ts';
import type { FrameSolution } from './solution.ts';

/** All that acts at the joints. */
export interface Acting {
  /** Twelve a member, local axes, exerted by the joints. */
  readonly memberForces: Float64Array;
  /** Six a node, global axes: by springs on their nodes. */
  readonly springs: Float64Array;
  /** Six a node, global axes: by loads, brought to the leaders. */
  readonly applied: Float64Array;
}

/** Adds what springs to the ground exert on nodes that move, six a node. */
export function addSpringForces(
  { springs, sprung }: AssembledFrame,
  moved: Float64Array,
  forces: Float64Array,
): void {
  for (const node of sprung)
    for (let i = node * 6; i < node * 6 + 6; i++) forces[i] = forces[i]! - springs[i]! * moved[i]!;
}

/** What is missing for balance at each joint, brought to the leaders: positive where a support must push. */
export function unbalanced(
  { elements, leaders, sprung }: AssembledFrame,
  { memberForces, springs, applied }: Acting,
): Float64Array {
  const sums = new Float64Array(applied.length);
  for (const node of sprung) bringToMaster(leaders, node, springs, node * 6, sums);
  for (let i = 0; i < sums.length; i++) sums[i] = -applied[i]! - sums[i]!;
  const global = new Float64Array(12);
  for (let m = 0; m < elements.length; m++) {
    const { from, to, axes } = elements[m]!;
    for (let i = 0; i < 12; i += 3) rotateToGlobal(axes, memberForces, m * 12 + i, global, i);
    bringToMaster(leaders, from, global, 0, sums);
    bringToMaster(leaders, to, global, 6, sums);
  }
  return sums;
}

/** Reactions of a solution, and how far it is from balance where nothing holds. */
export function balanceOf(
  frame: AssembledFrame,
  acting: Acting,
): Pick<FrameSolution, 'reactions' | 'residual'> {
  const { equations, leaders, size } = frame;
  const lever = size > 0 ? size : 1;
  const most = largestForce(acting, lever);
  const reactions = acting.springs.slice();
  const left = unbalanced(frame, acting);
  let residual = 0;
  for (let node = 0; node < leaders.leader.length; node++) {
    if (leaders.leader[node] !== node) continue;
    for (let k = 0; k < 6; k++) {
      const i = node * 6 + k;
      const value = left[i]!;
      if (equations.of[i]! < 0) reactions[i] = value;
      else if (value !== 0) residual = Math.max(residual, Math.abs(value) / (k < 3 ? most : most * lever));
    }
  }
  return { reactions, residual };
}

/** Of all forces that act, a moment over the size of the frame counting as one. */
function largestForce({ memberForces, springs, applied }: Acting, lever: number): number {
  return Math.max(largestOf(memberForces, lever), largestOf(springs, lever), largestOf(applied, lever));
}

function largestOf(sixes: Float64Array, lever: number): number {
  let [force, moment] = [0, 0];
  for (let at = 0; at < sixes.length; at += 6)
    for (let i = at; i < at + 3; i++) {
      force = Math.max(force, Math.abs(sixes[i]!));
      moment = Math.max(moment, Math.abs(sixes[i + 3]!));
    }
  return Math.max(force, moment / lever);
}
