import { combineSkylines, emptySkyline, factorLdlt, type SkylineMatrix } from '../../numerics/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import { type AssembledFrame, addElement, addNode } from './assemble.ts';
import { beamMass } from './beamMass.ts';
import { largestOne } from './buckling.ts';
import { nodalMovements } from './mechanism.ts';
import type { FrameMass } from './model.ts';
import { provenLargest } from './provenLargest.ts';
import { condenseMatrix } from './release.ts';

/** A free vibration of the frame without damping. */
export interface VibrationMode {
  /** ω [rad/s], > 0. */
  readonly angularFrequency: number;
  /** Six a node as in displacements; its size has no meaning: the largest component is 1. */
  readonly shape: Float64Array;
}

/**
 * Mass of the frame over its unknowns: members with a density as consistent mass, lumps at their nodes.
 * @source przemieniecki-1968, section 11.4
 */
export function massMatrix(frame: AssembledFrame): SkylineMatrix {
  const matrix = emptySkyline(frame.equations.top);
  for (const element of frame.elements) {
    if (!element.member.density) continue;
    const mass = beamMass(element.member, element.length);
    addElement(
      matrix,
      frame,
      element,
      element.released ? condenseMatrix(element.released.follow, mass) : mass,
    );
  }
  for (const lump of frame.model.masses ?? [])
    addNode(matrix, frame, frame.nodeIndex.get(lump.node)!, lumpMatrix(lump));
  return matrix;
}

function lumpMatrix({ mass, inertia }: FrameMass): Float64Array {
  const [xx, yy, zz, xy, yz, xz] = inertia ?? [0, 0, 0, 0, 0, 0];
  const matrix = new Float64Array(36);
  for (let i = 0; i < 3; i++) matrix[i * 7] = mass;
  matrix.set([xx, xy, xz], 21);
  matrix.set([xy, yy, yz], 27);
  matrix.set([xz, yz, zz], 33);
  return matrix;
}

/**
 * Lowest natural frequencies: K·x = ω²·M·x. Between its nodes a member moves as it bends under static end
 * movements; divide members where a mode has more than a quarter wave in one of them.
 * @param count frequencies wanted [-]
 * @returns lowest first; fewer where there is no more mass to move
 * @issue conflict: no mass at all, or the iteration did not settle
 * @source bathe-1996, chapter 11
 */
export function vibrateFrame(frame: AssembledFrame, count: number): Outcome<readonly VibrationMode[]> {
  const mass = massMatrix(frame);
  if (mass.values.every((value) => value === 0))
    return bad({ code: 'conflict', path: 'members', reason: 'nothing that can move has a mass' });
  const outcome = provenLargest(frame, mass, count);
  if (!outcome.ok)
    return bad({
      code: 'conflict',
      path: 'frequencies',
      reason: 'the search for frequencies did not settle',
    });
  return good(
    outcome.pairs.map(({ value, vector }) => ({
      angularFrequency: Math.sqrt(1 / value),
      shape: largestOne(nodalMovements(vector, frame.equations, frame.leaders)),
    })),
  );
}

/**
 * How many natural frequencies lie below a limit, by the signs of the pivots of K - ω²·M: proof that a list of
 * them is complete.
 * @param angularFrequency ω, the limit [rad/s], not itself a natural frequency
 * @source bathe-1996, section 11.4.3, Sturm sequence check
 */
export function frequenciesBelow(frame: AssembledFrame, angularFrequency: number): number {
  const shifted = combineSkylines(frame.stiffness, -(angularFrequency ** 2), massMatrix(frame));
  return factorLdlt(shifted, { indefinite: true }).negativePivots;
}
