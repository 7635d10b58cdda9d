import { printQuantity, type QuantityKind } from '../../core/quantity/index.ts';
import type { Printed } from './messages.ts';

/** A length from the first to the second [m] is printed finer, in metric: fits and errors are told so. */
const FINE_FROM = 0.5e-6;
const FINE_BELOW = 0.5e-3;
/** Below this [m] to a micrometer, else to a hundredth. */
const FINEST_BELOW = 0.1e-3;

/** A value in SI as text in each unit system. */
export function printed(value: number, kind: QuantityKind): Printed {
  const size = Math.abs(value);
  if (kind === 'length' && size >= FINE_FROM && size < FINE_BELOW) {
    const fine = printQuantity(value, kind, 'mm', { resolution: size < FINEST_BELOW ? 0.001 : 0.01 });
    return { in: fine, mm: fine, both: fine };
  }
  return {
    in: printQuantity(value, kind, 'in'),
    mm: printQuantity(value, kind, 'mm'),
    both: printQuantity(value, kind, 'both'),
  };
}

/** The same where there may be no value. */
export const maybePrinted = (
  value: number | undefined,
  kind: QuantityKind | undefined,
): Printed | undefined => (value === undefined ? undefined : printed(value, kind ?? 'ratio'));
