import { solveLdltAll } from '../../numerics/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import type { AssembledFrame } from './assemble.ts';
import { type Acting, addSpringForces, balanceOf, unbalanced } from './balance.ts';
import { appliedForces, localLoads, settlementsOf } from './caseLoads.ts';
import { loadIssues } from './check.ts';
import { addEndForces, addHeldEnds } from './endForces.ts';
import { nodalMovements } from './mechanism.ts';
import type { FrameLoads } from './model.ts';
import type { FrameSolution } from './solution.ts';

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
  const all = cases.map((loads) => heldStill(frame, loads));
  for (let round = 0; round <= CORRECTIONS; round++) {
    const missing = all.map((one) => missingForces(frame, one));
    solveLdltAll(frame.factor, missing).forEach((step, c) => {
      moveBy(frame, all[c]!, nodalMovements(step, frame.equations, frame.leaders));
    });
  }
  return good(
    all.map(({ displacements, memberForces, memberLoads, springs, applied }) => ({
      displacements,
      memberForces,
      memberLoads,
      ...balanceOf(frame, { memberForces, springs, applied }),
    })),
  );
}

/**
 * Corrections after the first solution. Each takes the unbalanced forces of the members themselves, so that
 * rounding of large movements of stiff short members does not stay in the forces.
 */
const CORRECTIONS = 1;

/** A case on its way to balance. */
interface Moving extends Acting {
  readonly displacements: Float64Array;
  readonly memberLoads: Float64Array;
}

/** A case before anything moves but what settles. */
function heldStill(frame: AssembledFrame, loads: FrameLoads): Moving {
  const { elements } = frame;
  const memberLoads = localLoads(frame, loads);
  const memberForces = new Float64Array(elements.length * 12);
  addHeldEnds(elements, memberLoads, memberForces);
  const displacements = settlementsOf(frame, loads);
  const springs = new Float64Array(displacements.length);
  if (loads.settlements?.length) {
    addEndForces(elements, displacements, memberForces);
    addSpringForces(frame, displacements, springs);
  }
  return { displacements, memberLoads, memberForces, springs, applied: appliedForces(frame, loads) };
}

/** What is missing for balance, over the unknowns. */
function missingForces(frame: AssembledFrame, acting: Acting): Float64Array {
  const { of, count } = frame.equations;
  const rhs = new Float64Array(count);
  const missing = unbalanced(frame, acting);
  for (let i = 0; i < missing.length; i++) {
    const row = of[i]!;
    if (row >= 0) rhs[row] = -missing[i]!;
  }
  return rhs;
}

function moveBy(frame: AssembledFrame, { displacements, memberForces, springs }: Moving, step: Float64Array) {
  for (let i = 0; i < step.length; i++) displacements[i] = displacements[i]! + step[i]!;
  addEndForces(frame.elements, step, memberForces);
  addSpringForces(frame, step, springs);
}
