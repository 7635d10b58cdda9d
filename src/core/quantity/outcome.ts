import type { Issue } from './issue.ts';

/** A value, or every reason why there is none. Bad input is data and never throws. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly [Issue, ...Issue[]] };

export const good = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const bad = (
  first: Issue,
  ...rest: readonly Issue[]
): { readonly ok: false; readonly issues: readonly [Issue, ...Issue[]] } => ({
  ok: false,
  issues: [first, ...rest],
});
