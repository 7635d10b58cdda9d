import table from '../../../data/standards/boreMaking.json' with { type: 'json' };
import type { Length, SourceRef } from '../quantity/index.ts';

/** How a bore is opened by hand or machine, widest band first. */
export const boreMethods: readonly {
  readonly method: string;
  /** Whole band that it keeps to [m]. */
  readonly spread: Length;
  readonly source: SourceRef;
}[] = table.rows.map(({ method, spreadUm, source }) => ({
  method,
  spread: (spreadUm / 1e6) as Length,
  source,
}));
