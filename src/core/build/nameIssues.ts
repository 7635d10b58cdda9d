import { type Issue, nearestName, type Outcome } from '../quantity/index.ts';

/** The issue of a name that is none of those known, with the nearest of them; none where it is known. */
export function unknownName(path: string, given: string, known: readonly string[], wanted: string): Issue[] {
  if (known.includes(given)) return [];
  const nearest = nearestName(given, known);
  return [{ code: 'unknown-name', path, given, wanted, ...(nearest ? { nearest } : {}) }];
}

/** Issues of a look-up, at their place in the file. */
export const issuesAt = (outcome: Outcome<unknown>, path: string): Issue[] =>
  outcome.ok ? [] : outcome.issues.map((issue) => ({ ...issue, path }));
