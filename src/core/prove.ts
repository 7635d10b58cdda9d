import { type Finding, rideFindings, worstFirst } from './findings/index.ts';
import type { Figure } from './quantity/index.ts';
import { type Riding, ridingOf } from './ride/index.ts';
import type { Solution } from './solve.ts';

/** A solution with what takes longer than a keystroke: how the bike rides. */
export interface Proof extends Solution {
  readonly riding: Riding;
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/** Works out how a solved bike goes, stops, steers and fits its rider, and adds the findings and figures of it. */
export function prove(solution: Solution): Proof {
  const riding = ridingOf(solution);
  return {
    ...solution,
    riding,
    figures: [...solution.figures, ...riding.figures],
    findings: worstFirst([...solution.findings, ...rideFindings(riding)]),
  };
}
