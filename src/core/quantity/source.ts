/** Where a fact comes from: a key of `data/sources.json` and the place in that source. */
export interface SourceRef {
  /** Key in `data/sources.json`; `practice` marks a common practice with no published source. */
  readonly key: string;
  /** Page, table, clause or section. */
  readonly where: string;
}

/** Common trade practice with no published source. */
export const practice = (where: string): SourceRef => ({ key: 'practice', where });

/** Follows from geometry or statics; the derivation is the formula itself. */
export const derived = (where: string): SourceRef => ({ key: 'derived', where });
