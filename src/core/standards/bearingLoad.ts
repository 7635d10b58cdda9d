import table from '../../../data/standards/bearingLoads.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

/** e and Y at one relative axial load. */
export interface AxialFactorRow {
  readonly ratio: number;
  readonly e: number;
  readonly y: number;
}

/** The two tables in use: `iso-281` goes by f0·Fa/C0, `textbook` by Fa/C0. */
export type AxialRule = 'iso-281' | 'textbook';

export const axialFactorTable: Readonly<
  Record<AxialRule, { readonly rows: readonly AxialFactorRow[]; readonly source: SourceRef }>
> = { 'iso-281': table.iso281, textbook: table.textbook };

/** Constants of a deep groove ball bearing's loads, life scatter and speed. */
export const bearingConstants = {
  x: table.x,
  rotatingOuterRing: table.rotatingOuterRing.v,
  static: table.static,
  /** a1 of ISO 281 by reliability; no others are given there. */
  lifeReliabilities: table.lifeReliabilities,
  weibull: table.weibull,
  axialLimits: table.axialLimits as readonly {
    readonly upToBoreMm?: number;
    readonly shareOfC0: number;
    readonly source: SourceRef;
  }[],
  speedFactors: table.speedFactors,
} as const;
