import type { Point3 } from '../../geometry/index.ts';
import { solveLdlt } from '../../numerics/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import type { AssembledFrame } from './assemble.ts';
import { rotateToGlobal, rotateToLocal, toLocalAxes } from './axes.ts';
import { fixedEndForces } from './beam.ts';
import { loadIssues } from './check.ts';
import type { FrameElement } from './element.ts';
import { bringToMaster } from './links.ts';
import { nodalMovements } from './mechanism.ts';
import { DIRECTIONS, type FrameLoads } from './model.ts';
import { condenseForces } from './release.ts';

/** What one load case does. Vectors hold six numbers a node in the order of `AssembledFrame.nodeIds`. */
export interface FrameSolution {
  /** Displacements [m] and rotations [rad], global axes. */
  readonly displacements: Float64Array;
  /** Forces [N] and moments [N·m] that supports and springs exert on the frame; 0 at free movements. */
  readonly reactions: Float64Array;
  /**
   * Twelve a member in the order of the model: force [N] and moment [N·m] on its start, then its end, exerted by
   * the joints on the member, local axes.
   */
  readonly memberForces: Float64Array;
  /** Uniform load of each member in local axes [N/m], three a member. */
  readonly memberLoads: Float64Array;
  /** Largest unbalanced force or moment at a joint against the largest in the frame [-]; moments count by
   * the size of the frame. */
  readonly residual: number;
}

/**
 * Solves load cases on one factorization, each corrected once.
 * @returns a solution for each case
 * @issue unknown-name, conflict: a load on what is not there, a settlement of what is not held
 * @source przemieniecki-1968, chapter 6
 */
export function solveFrame(
  frame: AssembledFrame,
  cases: readonly FrameLoads[],
): Outcome<readonly FrameSolution[]> {
  const [first, ...more] = cases.flatMap((loads) => loadIssues(frame.model, loads));
  if (first !== undefined) return bad(first, ...more);
  return good(cases.map((loads) => solveCase(frame, loads)));
}

/**
 * Corrections after the first solution. Each takes the unbalanced forces of the members themselves, so that
 * rounding of large movements of stiff short members does not stay in the forces.
 */
const CORRECTIONS = 1;

function solveCase(frame: AssembledFrame, loads: FrameLoads): FrameSolution {
  const applied = appliedForces(frame, loads);
  const memberLoads = localLoads(frame, loads);
  const displacements = settlementsOf(frame, loads);
  const memberForces = endForces(frame.elements, displacements);
  frame.elements.forEach((element, m) => {
    const w = memberLoads.subarray(m * 3, m * 3 + 3);
    if (w[0] !== 0 || w[1] !== 0 || w[2] !== 0) addTo(memberForces, heldEnds(element, w), m * 12);
  });
  const springs = springForces(frame, displacements);
  for (let round = 0; round <= CORRECTIONS; round++) {
    const step = movementsBy(frame, unbalanced(frame, { memberForces, springs, applied }));
    addTo(displacements, step);
    addTo(memberForces, endForces(frame.elements, step));
    addTo(springs, springForces(frame, step));
  }
  const balance = balanceOf(frame, { memberForces, springs, applied });
  return { displacements, memberForces, memberLoads, ...balance };
}

/** All that acts at the joints. */
interface Acting {
  readonly memberForces: Float64Array;
  readonly springs: Float64Array;
  readonly applied: Float64Array;
}

/** What is missing for balance at each joint, brought to the leaders: positive where a support must push. */
function unbalanced(frame: AssembledFrame, { memberForces, springs, applied }: Acting): Float64Array {
  const bySprings = atMasters(frame, springs);
  const sums = jointForces(frame, memberForces);
  for (let i = 0; i < sums.length; i++) sums[i] = sums[i]! - applied[i]! - bySprings[i]!;
  return sums;
}

/** Movements that the missing forces cause where nothing holds. */
function movementsBy({ factor, equations, leaders }: AssembledFrame, missing: Float64Array): Float64Array {
  const rhs = new Float64Array(equations.count);
  for (let i = 0; i < missing.length; i++) {
    const row = equations.of[i]!;
    if (row >= 0) rhs[row] = -missing[i]!;
  }
  return nodalMovements(solveLdlt(factor, rhs), equations, leaders);
}

function addTo(sums: Float64Array, more: Float64Array, at = 0): void {
  for (let i = 0; i < more.length; i++) sums[at + i] = sums[at + i]! + more[i]!;
}

/** Loads on nodes, brought to their leaders. */
function appliedForces({ nodeIndex, leaders, nodeIds }: AssembledFrame, loads: FrameLoads): Float64Array {
  const sums = new Float64Array(nodeIds.length * 6);
  for (const { node, force, moment } of loads.nodes ?? []) {
    const six = Float64Array.of(...three(force), ...three(moment));
    bringToMaster(leaders, nodeIndex.get(node)!, six, 0, sums);
  }
  return sums;
}

const three = (v: Point3 | undefined): readonly [number, number, number] =>
  v === undefined ? [0, 0, 0] : [v.x, v.y, v.z];

function localLoads({ elements, memberIndex }: AssembledFrame, loads: FrameLoads): Float64Array {
  const sums = new Float64Array(elements.length * 3);
  for (const { member, w, axes } of loads.members ?? []) {
    const m = memberIndex.get(member)!;
    const given = Float64Array.of(w.x, w.y, w.z);
    const local = axes === 'local' ? given : toLocalAxes(elements[m]!.axes, given);
    local.forEach((value, i) => {
      sums[m * 3 + i] = sums[m * 3 + i]! + value;
    });
  }
  return sums;
}

/** End forces of a loaded member whose joints are held still. */
function heldEnds({ length, follow }: FrameElement, w: Float64Array): Float64Array {
  const ends = fixedEndForces(length, [w[0]!, w[1]!, w[2]!]);
  return follow === undefined ? ends : condenseForces(follow, ends);
}

function settlementsOf({ nodeIndex, nodeIds, leaders }: AssembledFrame, loads: FrameLoads): Float64Array {
  const forced = new Float64Array(nodeIds.length * 6);
  for (const { node, by } of loads.settlements ?? [])
    DIRECTIONS.forEach((direction, i) => {
      const place = nodeIndex.get(node)! * 6 + i;
      forced[place] = forced[place]! + (by[direction] ?? 0);
    });
  // Fixed nodes may lead others.
  return followed(forced, leaders);
}

function followed(forced: Float64Array, leaders: AssembledFrame['leaders']): Float64Array {
  if (forced.every((by) => by === 0)) return forced;
  const own = new Int32Array(forced.length).fill(-1);
  for (let i = 0; i < own.length; i++) {
    const node = Math.floor(i / 6);
    if (leaders.leader[node] === node) own[i] = i;
  }
  return nodalMovements(forced, { count: forced.length, of: own, top: own }, leaders);
}

/** k·u, member by member in local axes. */
function endForces(elements: readonly FrameElement[], moved: Float64Array): Float64Array {
  const all = new Float64Array(elements.length * 12);
  const u = new Float64Array(12);
  for (let m = 0; m < elements.length; m++) {
    const { from, to, axes, stiffness } = elements[m]!;
    for (let i = 0; i < 6; i += 3) {
      rotateToLocal(axes, moved, from * 6 + i, u, i);
      rotateToLocal(axes, moved, to * 6 + i, u, 6 + i);
    }
    for (let i = 0; i < 12; i++) {
      let sum = 0;
      for (let j = 0; j < 12; j++) sum += stiffness[i * 12 + j]! * u[j]!;
      all[m * 12 + i] = sum;
    }
  }
  return all;
}

/** Sum of what the joints exert on members, at the leaders, six a node, global axes. */
function jointForces({ elements, leaders, nodeIds }: AssembledFrame, ends: Float64Array): Float64Array {
  const sums = new Float64Array(nodeIds.length * 6);
  const global = new Float64Array(12);
  for (let m = 0; m < elements.length; m++) {
    const { from, to, axes } = elements[m]!;
    for (let i = 0; i < 12; i += 3) rotateToGlobal(axes, ends, m * 12 + i, global, i);
    bringToMaster(leaders, from, global, 0, sums);
    bringToMaster(leaders, to, global, 6, sums);
  }
  return sums;
}

/** What springs to the ground exert on their nodes. */
function springForces({ springs }: AssembledFrame, moved: Float64Array): Float64Array {
  const forces = new Float64Array(moved.length);
  for (let i = 0; i < moved.length; i++) if (springs[i] !== 0) forces[i] = -springs[i]! * moved[i]!;
  return forces;
}

function atMasters({ leaders, nodeIds }: AssembledFrame, forces: Float64Array): Float64Array {
  const sums = new Float64Array(forces.length);
  for (let node = 0; node < nodeIds.length; node++) bringToMaster(leaders, node, forces, node * 6, sums);
  return sums;
}

function balanceOf(frame: AssembledFrame, acting: Acting): Pick<FrameSolution, 'reactions' | 'residual'> {
  const { equations, leaders } = frame;
  const reactions = acting.springs.slice();
  const scale = forceScale(frame, Object.values(acting));
  let residual = 0;
  const left = unbalanced(frame, acting);
  for (let i = 0; i < left.length; i++) {
    const node = Math.floor(i / 6);
    if (leaders.leader[node] !== node) continue;
    const value = left[i]!;
    if (equations.of[i]! < 0) reactions[i] = value;
    else if (value !== 0) residual = Math.max(residual, Math.abs(value) / scale[i % 6 < 3 ? 0 : 1]);
  }
  return { reactions, residual };
}

/** Largest force, a moment over the size of the frame counting as one, and that force times the size. */
function forceScale({ size }: AssembledFrame, lists: readonly Float64Array[]): readonly [number, number] {
  const lever = size > 0 ? size : 1;
  let most = 0;
  for (const list of lists)
    for (let i = 0; i < list.length; i++) {
      const size = Math.abs(list[i]!);
      most = Math.max(most, i % 6 < 3 ? size : size / lever);
    }
  return [most, most * lever];
}
