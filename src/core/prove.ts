import { type Finding, rideFindings, strengthFindings, worstFirst } from './findings/index.ts';
import type { Figure } from './quantity/index.ts';
import { type Riding, ridingOf } from './ride/index.ts';
import type { Solution } from './solve.ts';
import { type Strength, strengthOf } from './strength/index.ts';

/** A solution with what takes longer than placing it: whether it holds and how it rides. */
export interface Proof extends Solution {
  readonly strength: Strength;
  readonly riding: Riding;
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/** Works out whether a solved bike holds under its load cases and how it rides, and adds the findings and figures. */
export function prove(solution: Solution): Proof {
  const strength = strengthOf(solution);
  const riding = ridingOf(solution);
  return {
    ...solution,
    strength,
    riding,
    figures: [...solution.figures, ...strength.figures, ...riding.figures],
    findings: worstFirst([...solution.findings, ...strengthFindings(strength), ...rideFindings(riding)]),
  };
}
