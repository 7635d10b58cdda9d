import table from '../../../data/standards/chainRating.json' with { type: 'json' };
import type { AngularSpeed, Length, Pressure, SourceRef } from '../quantity/index.ts';

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

/** What a joint may carry, and whether the table has its pitch. */
export interface JointPressureLimit {
  readonly pressure: Pressure;
  /** A pitch below those of the table takes its smallest, which is on the heavy side. */
  readonly table: 'inside' | 'smaller-pitch';
  readonly source: SourceRef;
}

/**
 * Allowable mean pressure in the joints by the speed of the small sprocket, on the straight line between rows, times
 * 1 + 0.01·(z − 17).
 * @returns undefined for a larger pitch or a higher speed than the table has
 * @source memory, table of design handbooks
 */
export function jointPressureLimit(
  pitch: Length,
  speed: AngularSpeed,
  teeth: number,
): JointPressureLimit | undefined {
  const found = table.jointPressures.find(({ pitchToMm }) => pitch * 1000 <= pitchToMm + 1e-6);
  const rpm = (speed * 60) / (2 * Math.PI);
  if (!found || rpm > found.rows.at(-1)!.rpm) return undefined;
  const k = found.rows.findIndex((row) => row.rpm >= rpm);
  const [a, b] = [found.rows[Math.max(0, k - 1)]!, found.rows[k]!];
  const share = b.rpm > a.rpm ? (rpm - a.rpm) / (b.rpm - a.rpm) : 0;
  const { perTooth, baseTeeth } = table.pressureToothFactor;
  const megapascals = (a.mpa + share * (b.mpa - a.mpa)) * (1 + perTooth * (teeth - baseTeeth));
  return {
    pressure: (megapascals * 1e6) as Pressure,
    table:
      pitch * 1000 < found.pitchFromMm - 1e-6 && found === table.jointPressures[0]
        ? 'smaller-pitch'
        : 'inside',
    source: found.source,
  };
}

/** Share of the minimum strength that no pull may pass, not even once. */
export const onceShare: { readonly share: number; readonly source: SourceRef } = table.onceShare;
