import table from '../../../data/standards/brake-figures.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

/** One line of a published stopping requirement; for reference only. */
export interface StoppingFigure {
  readonly id: string;
  readonly vehicle: string;
  readonly brake: 'front' | 'rear' | 'each';
  /** Test speed [m/s]. */
  readonly testSpeed: number;
  /** Divisor of V² with V in km/h [-]. */
  readonly divisor: number;
  /** Mean fully developed deceleration asked for [m/s²]. */
  readonly deceleration: number;
  /** Longest stopping distance at the test speed [m]. */
  readonly distance: number;
}

/** Lowest, usual and highest value of something that a builder can seldom measure. */
export interface UsualRange {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

export type PadKind = 'organic' | 'sintered' | 'unknown' | 'bandLining';

/** km/h in one m/s. */
const KMH = 3.6;

/**
 * S = delay·V + V²/divisor [m].
 * @param speed [m/s]
 * @source ece-93-14, appendix 1, section 2
 */
export const allowedDistance = (speed: number, divisor: number): number =>
  table.delayMetersPerKmh * speed * KMH + (speed * KMH) ** 2 / divisor;

export const stoppingFigures: readonly StoppingFigure[] = table.rows.map((row) => ({
  id: row.id,
  vehicle: row.vehicle,
  brake: row.brake as StoppingFigure['brake'],
  testSpeed: row.testKmh / KMH,
  divisor: row.divisor,
  deceleration: row.decelerationMPerS2,
  distance: allowedDistance(row.testKmh / KMH, row.divisor),
}));

/** Friction of pads and linings: the range that the kind spans, its middle as usual. */
export function padFriction(kind: PadKind): UsualRange {
  const [low, high] = table.padFriction[kind] as [number, number];
  return { low, usual: (low + high) / 2, high };
}

const range = ({ values, usual }: { readonly values: number[]; readonly usual: number }): UsualRange => ({
  low: values[0]!,
  usual,
  high: values[1]!,
});

export const brakeFacts = {
  cableEfficiency: range(table.cableEfficiency),
  drumFactor: range(table.drumFactor),
  /** c of a steel disc [J/(kg·K)]. */
  heatCapacity: table.disc.heatCapacityJPerKgK,
  /** Heat given to the air by a disc in the open [W/(m²·K)]: lowest and highest. */
  cooling: table.disc.coolingWPerM2K as readonly number[],
  /** Ceilings of control force [N]. */
  hand: table.controlForces.handN,
  foot: table.controlForces.footN,
  /** Planning figures of deceleration [m/s²]. */
  planning: { dry: table.planning.dryMPerS2, wet: table.planning.wetMPerS2, best: table.planning.bestMPerS2 },
} as const;

export const brakeSources = {
  figures: table.source,
  controlForces: table.controlForces.source,
  padFriction: table.padFriction.source,
  cable: table.cableEfficiency.source,
  drum: table.drumFactor.source,
  disc: table.disc.source,
  planning: table.planning.source,
} satisfies Record<string, SourceRef>;
