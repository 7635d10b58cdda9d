import type { Issue, Outcome } from '../quantity/index.ts';
import { bad } from '../quantity/index.ts';

/** An outcome whose issues name the worksheet's field, where the function asked knew only its own argument. */
export function atPath<T>(outcome: Outcome<T>, path: string): Outcome<T> {
  if (outcome.ok) return outcome;
  const [first, ...rest] = outcome.issues;
  const placed = (issue: Issue): Issue => ({ ...issue, path });
  return bad(placed(first), ...rest.map(placed));
}
