import type { SourceRef } from '../../../quantity/index.ts';

/** One line of the table of utilizations. */
export interface UtilizationRow {
  /** Part as named in the build file. */
  readonly part: string;
  /** Id of the load case. */
  readonly case: string;
  readonly where: string;
  /** What is compared: stress, force, torque … in SI of `kind`. */
  readonly quantity: string;
  readonly value: number;
  readonly limit: number;
  readonly kind: 'pressure' | 'force' | 'ratio' | 'angle' | 'angularSpeed' | 'torque' | 'length';
  /** value/limit, or limit/value where the limit is a least; over 1 is less margin than was asked for [-]. */
  readonly utilization: number;
  readonly source: SourceRef;
}
