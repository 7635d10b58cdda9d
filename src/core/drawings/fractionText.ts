const READY_MADE: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};
const SUPERSCRIPT = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPT = '₀₁₂₃₄₅₆₇₈₉';
const FRACTION_SLASH = '\u2044';
const THIN_SPACE = '\u2009';

/**
 * Sets common fractions of a text as fraction glyphs: `8 7/16 in` becomes 8 ⁷⁄₁₆ in. A whole number before it
 * stays close by a thin space. Only a power of two up to 128 is taken as a denominator, so that `1/300`,
 * `2/10` or a date stay as they are.
 */
export function fractionText(text: string): string {
  return text.replace(
    /(?<![\d./\u2044])(?:(\d+)[ -])?(\d+)\/(2|4|8|16|32|64|128)(?![\d./])/g,
    (_, whole: string | undefined, over: string, under: string) =>
      (whole === undefined ? '' : whole + THIN_SPACE) +
      (READY_MADE[`${over}/${under}`] ?? composed(over, under)),
  );
}

function composed(over: string, under: string): string {
  const set = (digits: string, glyphs: string): string =>
    [...digits].map((d) => glyphs.charAt(Number(d))).join('');
  return set(over, SUPERSCRIPT) + FRACTION_SLASH + set(under, SUBSCRIPT);
}
