import { printQuantity, type QuantityKind } from '../../core/quantity/index.ts';
import type { Printed } from './messages.ts';

/** A length or clearance below this [m] is printed to a micrometer: fits are told in them. */
const FINE_BELOW = 0.5e-3;
const FINE = { resolution: 0.001 };

/** A value in SI as text in each unit system. */
export function printed(value: number, kind: QuantityKind): Printed {
  const options = kind === 'length' && value !== 0 && Math.abs(value) < FINE_BELOW ? FINE : {};
  return {
    in: printQuantity(value, kind, options === FINE ? 'mm' : 'in', options),
    mm: printQuantity(value, kind, 'mm', options),
    both: printQuantity(value, kind, options === FINE ? 'mm' : 'both', options),
  };
}

/** The same where there may be no value. */
export const maybePrinted = (
  value: number | undefined,
  kind: QuantityKind | undefined,
): Printed | undefined => (value === undefined ? undefined : printed(value, kind ?? 'ratio'));
