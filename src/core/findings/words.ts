import { printMillimeters, printQuantity, type QuantityKind } from '../quantity/index.ts';

/** A value as a sentence carries it: metric with customary in brackets. */
export const say = (value: number, kind: QuantityKind, resolution?: number): string =>
  printQuantity(value, kind, 'both', resolution === undefined ? {} : { resolution });

/** Below an inch a fraction of 1/64 says too little [m]. */
const SMALL = 0.0254;

/** A length to 0.1 mm and 1/64 in; below an inch finer, so that nothing but 0 is told as 0. */
export const sayLength = (value: number): string =>
  Math.abs(value) < SMALL ? sayFine(value) : say(value, 'length', 0.1);

/** A bore, a wall or a center distance, in decimal inches where it is no fraction. */
export const sayFine = (value: number): string => printQuantity(value, 'length', 'both', { fine: true });

/** A fit to 0.001 mm, where a tape's fractions of an inch would all be 0. */
export const sayFit = (value: number): string => printMillimeters(value, 0.001);

/** `one, two and three`. */
export function sayList(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
