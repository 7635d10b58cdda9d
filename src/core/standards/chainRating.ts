import table from '../../../data/standards/chainRating.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

/** Constants of the power rating of one chain. */
export interface ChainRatingRow {
  readonly chain: string;
  /** Of the link plates' fatigue. */
  readonly k1: number;
  /** Of roller and bushing impact. */
  readonly k2: number;
  readonly source: SourceRef;
}

export interface ServiceFactor {
  readonly load: string;
  readonly electric: number;
  readonly hydraulic: number;
  readonly engine: number;
  readonly source: SourceRef;
}

/** Undefined for a chain that the rating formula is not for. */
export const chainRatingRow = (chain: string): ChainRatingRow | undefined =>
  table.rows.find((row) => row.chain === chain);

/** 1.7 for two strands …; undefined over six. */
export const strandFactor = (count: number): number | undefined =>
  table.strands.find((row) => row.count === count)?.factor;

export const serviceFactors: readonly ServiceFactor[] = table.services;

/** Working tension at most 1/share of the minimum strength, by the fit of the joining link's pins. */
export const tensionShares: readonly {
  readonly name: string;
  readonly share: number;
  readonly source: SourceRef;
}[] = table.tensionShares;
