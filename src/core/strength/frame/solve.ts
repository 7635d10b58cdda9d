import { solveLdlt } from '../../numerics/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import type { AssembledFrame } from './assemble.ts';
import { type Acting, balanceOf, springForces, unbalanced } from './balance.ts';
import { appliedForces, localLoads, settlementsOf } from './caseLoads.ts';
import { loadIssues } from './check.ts';
import { addEndForces, addHeldEnds } from './endForces.ts';
import { nodalMovements } from './mechanism.ts';
import type { FrameLoads } from './model.ts';

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
  const [first, ...more] = cases.flatMap((loads) => loadIssues(frame, loads));
  if (first !== undefined) return bad(first, ...more);
  return good(cases.map((loads) => solveCase(frame, loads)));
}

/**
 * Corrections after the first solution. Each takes the unbalanced forces of the members themselves, so that
 * rounding of large movements of stiff short members does not stay in the forces.
 */
const CORRECTIONS = 1;

function solveCase(frame: AssembledFrame, loads: FrameLoads): FrameSolution {
  const { elements } = frame;
  const memberLoads = localLoads(frame, loads);
  const memberForces = new Float64Array(elements.length * 12);
  addHeldEnds(elements, memberLoads, memberForces);
  const displacements = settlementsOf(frame, loads);
  const isSettled = displacements.some((by) => by !== 0);
  if (isSettled) addEndForces(elements, displacements, memberForces);
  const springs = springForces(frame, displacements);
  const acting: Acting = { memberForces, springs, applied: appliedForces(frame, loads) };
  for (let round = 0; round <= CORRECTIONS; round++) {
    const step = movementsBy(frame, unbalanced(frame, acting));
    for (let i = 0; i < step.length; i++) displacements[i] = displacements[i]! + step[i]!;
    addEndForces(elements, step, memberForces);
    const more = springForces(frame, step);
    for (let i = 0; i < more.length; i++) springs[i] = springs[i]! + more[i]!;
  }
  return { displacements, memberForces, memberLoads, ...balanceOf(frame, acting) };
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
