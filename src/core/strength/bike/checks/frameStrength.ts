import type { Issue } from '../../../quantity/index.ts';
import {
  type AssembledFrame,
  assembleFrame,
  describeMechanism,
  type FrameSolution,
  solveFrame,
} from '../../frame/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame, ModelFlaw } from '../model/frameTypes.ts';
import { type FrameStress, stressesOf } from './frameStress.ts';
import type { LineStrength } from './lineStrength.ts';

export interface FrameResults extends FrameStress {
  readonly assembled: AssembledFrame;
  readonly solutions: readonly FrameSolution[];
  /** Largest unbalanced force of all cases against their load [-]. */
  readonly residual: number;
  /** Largest support reaction of all cases against their load [-]. */
  readonly reaction: number;
}

export type FrameOutcome =
  | { readonly ok: true; readonly value: FrameResults }
  | { readonly ok: false; readonly issues: readonly Issue[]; readonly flaws: readonly ModelFlaw[] };

/** Solves all cases on one factorization and finds the worst stress around each tube at both ends of each member. */
export function solveBikeFrame(
  frame: BikeFrame,
  cases: readonly LoadCase[],
  strengths: ReadonlyMap<string, LineStrength>,
  settings: LoadSettings,
): FrameOutcome {
  const assembled = assembleFrame(frame.model);
  if (!assembled.ok) {
    const flaws = assembled.mechanisms.map(
      (mechanism): ModelFlaw => ({
        rule: 'mechanism',
        part: frame.draft.places.get(mechanism.node)?.line ?? mechanism.node,
        reason: describeMechanism(mechanism),
      }),
    );
    return { ok: false, issues: assembled.issues, flaws };
  }
  const solved = solveFrame(
    assembled.value,
    cases.map(({ balanced }) => balanced.loads),
  );
  if (!solved.ok) return { ok: false, issues: solved.issues, flaws: [] };
  return {
    ok: true,
    value: {
      assembled: assembled.value,
      solutions: solved.value,
      ...stressesOf({
        frame,
        assembled: assembled.value,
        cases,
        solutions: solved.value,
        strengths,
        settings,
      }),
      ...leftOver(cases, solved.value),
    },
  };
}

function leftOver(cases: readonly LoadCase[], solutions: readonly FrameSolution[]) {
  let [residual, reaction] = [0, 0];
  solutions.forEach((solution, c) => {
    residual = Math.max(residual, solution.residual);
    let most = 0;
    const { reactions } = solution;
    for (let i = 0; i < reactions.length; i++) most = Math.max(most, Math.abs(reactions[i]!));
    reaction = Math.max(reaction, most / cases[c]!.balanced.scale);
  });
  return { residual, reaction };
}
