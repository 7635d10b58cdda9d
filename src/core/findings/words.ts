import { printMillimeters, printQuantity, type QuantityKind } from '../quantity/index.ts';

/** A value as a sentence carries it: metric with customary in brackets. */
export const say = (value: number, kind: QuantityKind, resolution?: number): string =>
  printQuantity(value, kind, 'both', resolution === undefined ? {} : { resolution });

/** A length to 0.1 mm. */
export const sayLength = (value: number): string => say(value, 'length', 0.1);

/** A fit to 0.001 mm, where a tape's fractions of an inch would all be 0. */
export const sayFit = (value: number): string => printMillimeters(value, 0.001);

/** `one, two and three`. */
export function sayList(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
