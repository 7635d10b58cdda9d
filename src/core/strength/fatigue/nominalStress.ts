import type { Pressure } from '../../quantity/index.ts';
import { categorySteps } from '../../standards/index.ts';

/** Whose S-N line: the knees differ. */
export type FatigueRule = 'en-1993-1-9' | 'iiw';

/** Stress ranges Δσ of one line through ΔσC at 2 million cycles. */
export interface StressLife {
  /** ΔσC or FAT, over the partial factor [Pa]. */
  readonly category: Pressure;
  /** m1, slope of the steep branch [-]: 3 for normal stress, 5 for shear and hollow-section nodes. */
  readonly slope: number;
  /** Range at the knee [Pa]: below it alone no damage under constant amplitude. */
  readonly constantAmplitudeLimit: Pressure;
  readonly kneeCycles: number;
  /** Range below which nothing counts [Pa]; IIW has none for a mixed spectrum. */
  readonly cutOff: Pressure;
}

/** One block of a spectrum. */
export interface StressBlock {
  /** Δσ, largest less smallest [Pa], ≥ 0. */
  readonly range: Pressure;
  /** n, cycles in one repeat of the spectrum [-], ≥ 0. */
  readonly cycles: number;
}

const REFERENCE_CYCLES = 2e6;
const SECOND_SLOPE = 5;
const CUT_OFF_CYCLES = 1e8;
const KNEE: Readonly<Record<FatigueRule, number>> = { 'en-1993-1-9': 5e6, iiw: 1e7 };

/**
 * The S-N line of a category: N = 2·10⁶·(ΔσC/Δσ)^m to the knee (5·10⁶ by EN, 10⁷ by IIW), slope 5 beyond it, cut off at
 * 10⁸ (EN). A line of slope 5 has no knee (EN: shear and lattice nodes).
 * @source en-1993-1-9, section 7.1; iiw-fatigue, section 3.2
 */
export function stressLife(
  category: Pressure,
  slope: number,
  rule: FatigueRule,
  partialFactor = 1,
): StressLife {
  const reduced = category / partialFactor;
  const oneSlope = slope >= SECOND_SLOPE;
  const kneeCycles = oneSlope ? CUT_OFF_CYCLES : KNEE[rule];
  const knee = reduced * (REFERENCE_CYCLES / kneeCycles) ** (1 / slope);
  const cutOff = knee * (kneeCycles / CUT_OFF_CYCLES) ** (1 / SECOND_SLOPE);
  return {
    category: reduced as Pressure,
    slope,
    constantAmplitudeLimit: knee as Pressure,
    kneeCycles,
    cutOff: (rule === 'en-1993-1-9' || oneSlope ? cutOff : 0) as Pressure,
  };
}

/** N at a range [cycles]; Infinity at or under the cut-off. @source en-1993-1-9, section 7.1 */
export function cyclesToFailure(line: StressLife, range: Pressure): number {
  if (range <= line.cutOff) return Number.POSITIVE_INFINITY;
  if (range >= line.constantAmplitudeLimit) return REFERENCE_CYCLES * (line.category / range) ** line.slope;
  return line.kneeCycles * (line.constantAmplitudeLimit / range) ** SECOND_SLOPE;
}

/** D = Σ n/N of one repeat of the spectrum. @source en-1993-1-9, annex A.5; Palmgren-Miner */
export const minerDamage = (line: StressLife, spectrum: readonly StressBlock[]): number =>
  spectrum.reduce((sum, { range, cycles }) => sum + cycles / cyclesToFailure(line, range), 0);

export interface FatigueEstimate {
  /** Damage of one repeat on the category as given [-]. */
  readonly damage: number;
  /** Repeats to D = 1: category as given; Infinity when nothing counts. */
  readonly repeats: number;
  /** One category lower, with the partial factor. */
  readonly low: { readonly category: Pressure; readonly repeats: number };
  /** One category higher, without it. */
  readonly high: { readonly category: Pressure; readonly repeats: number };
  /** Largest range over the knee range of the category as given: ≤ 1 means under the constant-amplitude limit. */
  readonly limitShare: number;
  readonly line: StressLife;
}

/**
 * Life of a welded detail as a range. The class of a hand-made weld is not known to a step, so the life one category
 * up and down is told too; on the low side with the partial factor of the consequence.
 * @source en-1993-1-9, sections 3, 7.1 and A.5; iiw-fatigue, section 3.2
 */
export function fatigueEstimate(of: {
  readonly category: Pressure;
  readonly slope: number;
  readonly rule: FatigueRule;
  /** γMf [-], ≥ 1. */
  readonly partialFactor: number;
  readonly spectrum: readonly StressBlock[];
}): FatigueEstimate {
  const { category, slope, rule, spectrum } = of;
  const line = stressLife(category, slope, rule);
  const repeatsOf = (step: Pressure, factor: number): number =>
    1 / minerDamage(stressLife(step, slope, rule, factor), spectrum);
  const lower = neighbor(category, -1);
  const higher = neighbor(category, 1);
  const damage = minerDamage(line, spectrum);
  const largest = spectrum.reduce((most, { range }) => Math.max(most, range), 0);
  return {
    damage,
    repeats: 1 / damage,
    low: { category: lower, repeats: repeatsOf(lower, of.partialFactor) },
    high: { category: higher, repeats: repeatsOf(higher, 1) },
    limitShare: largest / line.constantAmplitudeLimit,
    line,
  };
}

/** Ladder step above the last or below the first, and about one step everywhere. */
const STEP = 1.12;

/** The next category of the ladder up or down; beyond its ends 12 % further, which is about one step. */
export function neighbor(category: Pressure, direction: 1 | -1): Pressure {
  const near = 1e-9 * category;
  const found =
    direction > 0
      ? categorySteps.find((step) => step > category + near)
      : [...categorySteps].reverse().find((step) => step < category - near);
  return (found ?? category * STEP ** direction) as Pressure;
}
