import { emptySkyline, type SkylineMatrix } from '../../numerics/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import { type AssembledFrame, addElement } from './assemble.ts';
import { beamGeometricStiffness } from './beam.ts';
import { nodalMovements } from './mechanism.ts';
import { provenLargest } from './provenLargest.ts';
import { condenseMatrix } from './release.ts';
import type { FrameSolution } from './solution.ts';

/** A shape in which the frame gives way when all loads of a case grow together. */
export interface BucklingMode {
  /** Load factor at which it happens [-], > 0. */
  readonly factor: number;
  /** Six a node as in displacements; its size has no meaning: the largest component is 1. */
  readonly shape: Float64Array;
}

/** Normal force at the middle of each member [N], tension positive. */
export function normalForces({ memberForces }: Pick<FrameSolution, 'memberForces'>): Float64Array {
  return Float64Array.from(
    { length: memberForces.length / 12 },
    (_, m) => (memberForces[m * 12 + 6]! - memberForces[m * 12]!) / 2,
  );
}

/**
 * Kg over the unknowns, with its sign turned: what the normal forces of a case take from the stiffness.
 * @source przemieniecki-1968, section 15.2
 */
export function lostStiffness(
  frame: AssembledFrame,
  solution: Pick<FrameSolution, 'memberForces'>,
): SkylineMatrix {
  const forces = normalForces(solution);
  const matrix = emptySkyline(frame.equations.top);
  frame.elements.forEach((element, m) => {
    const lost = beamGeometricStiffness(element.member, element.length, -forces[m]!);
    addElement(
      matrix,
      frame,
      element,
      element.released ? condenseMatrix(element.released.follow, lost) : lost,
    );
  });
  return matrix;
}

/**
 * Lowest linear buckling factors of a load case: K·x = -λ·Kg·x with Kg from the normal forces of that case.
 * Displacements before buckling, plasticity and imperfections are left out, so real frames give way earlier.
 * A member that buckles between its nodes must be divided: one element overestimates its factor (by 22 % with
 * held rotation-free ends), four are within 0.1 %.
 * @param count factors wanted [-]
 * @returns lowest first; fewer where nothing more can buckle
 * @issue conflict: the iteration did not settle
 * @source bathe-1996, section 6.8.2; przemieniecki-1968, section 15.2
 */
export function buckleFrame(
  frame: AssembledFrame,
  solution: Pick<FrameSolution, 'memberForces'>,
  count: number,
): Outcome<readonly BucklingMode[]> {
  const matrix = lostStiffness(frame, solution);
  if (matrix.values.every((value) => value === 0)) return good([]);
  const outcome = provenLargest(frame, matrix, count);
  if (!outcome.ok)
    return bad({
      code: 'conflict',
      path: 'buckling',
      reason: 'the search for buckling factors did not settle',
    });
  return good(
    outcome.pairs.map(({ value, vector }) => ({
      factor: 1 / value,
      shape: largestOne(nodalMovements(vector, frame.equations, frame.leaders)),
    })),
  );
}

/** Scaled so that the component of the largest size is +1. */
export function largestOne(shape: Float64Array): Float64Array {
  const most = shape.reduce((best, value) => (Math.abs(value) > Math.abs(best) ? value : best), 0);
  return most === 0 ? shape : shape.map((value) => value / most);
}
