import type { SourceRef } from '../quantity/index.ts';

/** How far a chain may lengthen before it is worn out, and by which rule. */
export interface WearLimit {
  /** Elongation at which the chain is scrap, as a fraction of its length. */
  readonly elongation: number;
  readonly rule: 'general' | 'large-sprocket' | 'fixed-centers' | 'given';
  readonly source: SourceRef;
}

export interface WearQuestion {
  /** Larger tooth count of the drive. */
  readonly largestTeeth: number;
  /** Center distance cannot be set again, or smooth running is wanted. */
  readonly fixedCenters?: boolean;
  /** The builder's own limit as a fraction; it wins over the rules. */
  readonly given?: number;
}

const GENERAL = 0.03;
const FIXED_CENTERS = 0.015;
/** A worn chain rides up the teeth until it jumps; on N teeth that is near 200/N percent. */
const JUMP_PERCENT_TEETH = 200;

/**
 * Wear limit: the least of 3 %, 200/N % (it governs above 66 teeth) and, with fixed centers, 1.5 %.
 * @source practice, chain makers' limits (3 %; 1.5 % for fixed centers; 200/N %)
 */
export function wearLimit(question: WearQuestion): WearLimit {
  if (question.given !== undefined) {
    return {
      elongation: question.given,
      rule: 'given',
      source: { key: 'practice', where: "the builder's own limit" },
    };
  }
  const byTeeth = JUMP_PERCENT_TEETH / question.largestTeeth / 100;
  const source = { key: 'practice', where: "chain makers' wear limits" };
  if (question.fixedCenters && FIXED_CENTERS <= byTeeth) {
    return { elongation: FIXED_CENTERS, rule: 'fixed-centers', source };
  }
  if (byTeeth < GENERAL) return { elongation: byTeeth, rule: 'large-sprocket', source };
  return { elongation: GENERAL, rule: 'general', source };
}
