import type { PDFDocument } from '@cantoo/pdf-lib';

/** What the PDF library asks of a parser of font files. */
export type FontParser = Parameters<PDFDocument['registerFontkit']>[0];

type ParsedFont = Extract<Awaited<ReturnType<FontParser['create']>>, { layout: unknown }>;

/**
 * A parser that parses each file once, for all PDFs of a pack, and whose fonts set text letter by letter: no ligature or
 * fraction feature changes what the widths promise, and none has to be looked for.
 */
export function letterFonts(parser: FontParser): FontParser {
  const parsed = new Map<Uint8Array, Promise<ParsedFont>>();
  return {
    create: (bytes) => {
      const font = parsed.get(bytes) ?? letterFont(parser, bytes);
      parsed.set(bytes, font);
      return font;
    },
  };
}

async function letterFont(parser: FontParser, bytes: Uint8Array): Promise<ParsedFont> {
  const font = await parser.create(bytes);
  if (!font || !('layout' in font)) throw new Error('not a file of one font');
  const layout: ParsedFont['layout'] = (text) => ({
    glyphs: Array.from(text, (char) => font.glyphForCodePoint(char.codePointAt(0) as number)).filter(
      (glyph) => glyph !== null,
    ),
  });
  return Object.assign(font, { layout });
}
