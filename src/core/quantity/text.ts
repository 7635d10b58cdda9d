/** Texts longer than this are no quantity. */
export const LONGEST_TEXT = 64;

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
};

/** One spelling for the many characters that a keyboard, phone or copied page may give. */
export function plainText(text: string): string {
  return text
    .replace(/[\u200b-\u200d\u2060\ufeff]/g, '')
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (glyph) => ` ${VULGAR[glyph]}`)
    .replace(/(?<=\d)(?=[⁰¹²³⁴-⁹]+[⁄∕])/g, ' ')
    .replace(/[″“”„‟˝ʺ]/g, '"')
    .replace(/[′‘’‛ʹʼ´`]/g, "'")
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replace(/''/g, '"')
    .replace(/[−‐‑‒–—―]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

/** A unit as written, in the form the tables hold: `ft. - lb.` and `ft lb` are `ft·lb`, `kg m^2` is `kg·m2`. */
export function unitKey(written: string): string {
  return written
    .normalize('NFKC')
    .replace(/^-|\.$/g, '')
    .replace(/\^/g, '')
    .replace(/ ?\/ ?/g, '/')
    .replace(/\./g, ' ')
    .replace(/(?<=\S)[\s*×·⋅∙•-]+(?=\S)/g, '·');
}
