import type { QuantityKind, SourceRef } from '../quantity/index.ts';

/** `stop`: do not build on until it is dealt with; `caution`: look at it; `note`: good to know. */
export type Severity = 'stop' | 'caution' | 'note';

/** A verdict on the bike: what was checked, against which limit. Never says that something is safe. */
export interface Finding {
  /** Stable: rule and part, e.g. `chain-line.offset:final`. */
  readonly id: string;
  readonly severity: Severity;
  /** Which of the four questions it belongs to. */
  readonly question: 'together' | 'hold' | 'ride' | 'make';
  /** Part or place it is about, as named in the build file. */
  readonly part: string;
  /** Path in the build file to change, where there is one. */
  readonly path?: string;
  /** One sentence: what is wrong. */
  readonly what: string;
  /** Value, limit and margin in SI of `kind`; margin ≥ 0 is within the limit. */
  readonly value?: number;
  readonly limit?: number;
  readonly margin?: number;
  readonly kind?: QuantityKind;
  /** Why it matters. */
  readonly why: string;
  /** What to do about it. */
  readonly remedy?: string;
  readonly source: SourceRef;
}
