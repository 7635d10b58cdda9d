/**
 * A number as written: whole with fraction (`8 3/16`, `8-3/16`, but not `8 -3/16`, which may mean less), fraction, or decimal.
 * The sign stands apart. Built for use inside larger patterns: exactly one capturing group.
 */
export const NUMBER = String.raw`(\d+(?: | - |- ?)\d+ ?\/ ?\d+|\d+ ?\/ ?\d+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)`;

/** No measure of the shop needs more; anything beyond is a slip of the hand or an attack. */
const LARGEST_EXPONENT = 9;
const LARGEST_NUMBER = 1e12;

export type NumberFault =
  | 'not a number'
  | 'a denominator above 0'
  | 'a fraction below 1 after a whole number'
  | `a power of ten within ${number}`
  | 'a number below a million million';

/** Value of a text that {@link NUMBER} matches, or what is wrong with it. */
export function readNumber(text: string): number | NumberFault {
  const fraction = /^(?:(\d+)(?: | - |- ?))?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction)
    return readFraction(Number(fraction[1] ?? '0'), Number(fraction[2]), Number(fraction[3]), !!fraction[1]);
  const exponent = /[eE]([+-]?\d+)$/.exec(text)?.[1];
  if (exponent !== undefined && !(Math.abs(Number(exponent)) <= LARGEST_EXPONENT))
    return `a power of ten within ${LARGEST_EXPONENT}`;
  return bounded(Number(text));
}

function readFraction(whole: number, top: number, bottom: number, isMixed: boolean): number | NumberFault {
  if (bottom === 0) return 'a denominator above 0';
  if (isMixed && top >= bottom) return 'a fraction below 1 after a whole number';
  return bounded(whole + top / bottom);
}

function bounded(value: number): number | NumberFault {
  if (Number.isNaN(value)) return 'not a number';
  return value <= LARGEST_NUMBER ? value : 'a number below a million million';
}
