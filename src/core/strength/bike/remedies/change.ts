import type { UtilizationRow } from '../checks/utilizationRow.ts';
import { type StrengthInput, strengthCore } from '../strengthCore.ts';

/** One change to try. */
export interface Change {
  /** In the imperative: what to change. */
  readonly what: string;
  /** Every comparison that the change may move, worked out anew. */
  readonly rows: () => readonly UtilizationRow[];
}

/** A changed bike, checked from its start. */
export const wholeCheck = (what: string, input: StrengthInput): Change => ({
  what,
  rows: () => strengthCore(input).rows,
});
