import type { QuantityKind } from '../quantity/index.ts';
import type { Finding } from './finding.ts';

/**
 * What a limit is to its value: `min`, the least; `max`, the most; `within`, the most on either side of zero; `equal`,
 * what it should be; `none`, value and limit are no comparison and are not told.
 */
export type Bound = 'min' | 'max' | 'within' | 'equal' | 'none';

/** How a rule is told. */
export interface RuleText<Flaw> {
  readonly bound: Bound;
  /** The sentence, without its first words and its period. */
  readonly what: (flaw: Flaw) => string;
  readonly why: string;
}

interface Measured {
  readonly value: number;
  readonly limit: number;
}

/** Margin in the unit of both; 0 or more is within the limit. */
export function marginBy(bound: Exclude<Bound, 'none'>, { value, limit }: Measured): number {
  switch (bound) {
    case 'min':
      return value - limit;
    case 'max':
      return limit - value;
    case 'within':
      return limit - Math.abs(value);
    case 'equal':
      return value === limit ? 0 : -Math.abs(value - limit);
  }
}

/** Value, limit and margin as a finding carries them. */
export function judgedBy(
  bound: Bound,
  measured: Measured,
  kind: QuantityKind,
): Pick<Finding, 'value' | 'limit' | 'margin' | 'kind'> {
  if (bound === 'none') return {};
  const { value, limit } = measured;
  return { value, limit, margin: marginBy(bound, measured), kind };
}
