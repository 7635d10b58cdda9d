import type { PDFFont } from '@cantoo/pdf-lib';
import { strToU8, zlibSync } from 'fflate';
import { arcCubics, pathPieces } from './pathPieces.ts';
import { type FontParser, letterFonts } from './pdfFonts.ts';
import { fillColors, penStyles, toneColors } from './pens.ts';
import type { CircleItem, FillRole, PathItem, PenRole, Sheet, SheetItem, TextItem } from './sheet.ts';
import { printable, textWidth } from './textMetrics.ts';

/** Bytes of the two font files that `sheetFont.files` names; the core reads no files. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfMeta {
  readonly title: string;
  /** ISO 8601; written as the date of the file, so that the same sheets give the same bytes. */
  readonly date: string;
}

const POINTS_PER_MM = 72 / 25.4;
/** Finest step written: a tenth of a micrometer, as parts of a millimeter. */
const STEPS = 1e4;

/** Packs bytes in the zlib format of RFC 1950. */
export type Deflate = (bytes: Uint8Array) => Uint8Array;

/** Makes a PDF of sheets. */
export type PdfWriter = (sheets: readonly Sheet[], meta: PdfMeta) => Promise<Uint8Array>;

/**
 * A writer of any number of PDFs in these fonts, which are parsed once.
 * @param deflate a faster packer than that of the core, where the program runs on one
 */
export async function pdfWriter(fonts: SheetFonts, deflate: Deflate = deflated): Promise<PdfWriter> {
  // Loaded when first needed: the writer is larger than the rest of the program.
  const pdfLib = await import('@cantoo/pdf-lib');
  const parser = letterFonts((await import('@cantoo/fontkit')).default);
  return (sheets, meta) => writePdf(sheets, meta, { fonts, parser, pdfLib, deflate });
}

/**
 * A PDF of vector pages, one per sheet, each exactly as large as its sheet, with the fonts subset and inside, and with
 * page scaling off for viewers that heed it. Same input, same bytes.
 */
export const pdfOfSheets = async (
  sheets: readonly Sheet[],
  meta: PdfMeta,
  fonts: SheetFonts,
): Promise<Uint8Array> => (await pdfWriter(fonts))(sheets, meta);

interface Tools {
  readonly fonts: SheetFonts;
  readonly parser: FontParser;
  readonly pdfLib: typeof import('@cantoo/pdf-lib');
  readonly deflate: Deflate;
}

async function writePdf(
  sheets: readonly Sheet[],
  meta: PdfMeta,
  { fonts, parser, pdfLib: { PDFDocument, PDFName, PrintScaling }, deflate }: Tools,
): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  doc.registerFontkit(parser);
  const date = new globalThis.Date(meta.date);
  if (Number.isNaN(date.getTime())) throw new RangeError(`not a date: ${meta.date}`);
  doc.setTitle(meta.title, { showInWindowTitleBar: true });
  doc.setCreationDate(date);
  doc.setModificationDate(date);
  doc.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const regular = await doc.embedFont(fonts.regular, { subset: true });
  const bold = await doc.embedFont(fonts.bold, { subset: true });
  const glyphs = { regular: glyphWriter(regular), bold: glyphWriter(bold) };
  for (const sheet of sheets) {
    const page = doc.addPage([sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM]);
    page.node.setFontDictionary(PDFName.of('R'), regular.ref);
    page.node.setFontDictionary(PDFName.of('B'), bold.ref);
    const packed = deflate(strToU8(pageOperators(sheet, glyphs), true));
    const stream = doc.context.stream(packed, { Filter: 'FlateDecode' });
    page.node.set(PDFName.of('Contents'), doc.context.register(stream));
  }
  return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

/** Pages are a few percent larger than at level 6, and take a third of its time. */
const PACKING = 3;
const deflated: Deflate = (bytes) => zlibSync(bytes, { level: PACKING });

type GlyphWriter = (text: string) => string;

/** Text as glyph numbers, as the document's part of the font counts them. */
function glyphWriter(font: PDFFont): GlyphWriter {
  const known = new Map<string, string>();
  return (content) => {
    let hex = '';
    for (const char of printable(content)) {
      let code = known.get(char);
      if (code === undefined) {
        code = font.encodeText(char).asString();
        known.set(char, code);
      }
      hex += code;
    }
    return hex;
  };
}

function pageOperators(sheet: Sheet, glyphs: Readonly<Record<TextItem['weight'], GlyphWriter>>): string {
  const k = POINTS_PER_MM.toFixed(10);
  const state = { pen: '', fill: '' };
  return [`${k} 0 0 ${k} 0 0 cm 1 j`, ...sheet.items.map((item) => itemOperators(item, state, glyphs))].join(
    '\n',
  );
}

interface DrawState {
  pen: string;
  fill: string;
}

function itemOperators(
  item: SheetItem,
  state: DrawState,
  glyphs: Readonly<Record<TextItem['weight'], GlyphWriter>>,
): string {
  if (item.type === 'text') return textOperators(item, state, glyphs[item.weight]);
  const paint = paintOperator(item);
  if (paint === '') return '';
  const shape = item.type === 'path' ? pathOperators(item) : circleOperators(item);
  return setPen(item.pen, state) + setFill(item.fill, state) + shape + paint;
}

/** Even-odd, so that a path that meets itself fills the same in every writer. */
function paintOperator(item: PathItem | CircleItem): string {
  if (item.fill === 'none') return item.pen === 'none' ? '' : 'S';
  return item.pen === 'none' ? 'f*' : 'B*';
}

function setPen(pen: PenRole | 'none', state: DrawState): string {
  if (pen === 'none' || pen === state.pen) return '';
  state.pen = pen;
  const style = penStyles[pen];
  return `${rgb(style.color)} RG ${num(style.width)} w [${style.dash.map(num).join(' ')}] 0 d\n`;
}

function setFill(fill: FillRole, state: DrawState): string {
  return fill === 'none' ? '' : setFillColor(fillColors[fill], state);
}

function setFillColor(color: string, state: DrawState): string {
  if (color === state.fill) return '';
  state.fill = color;
  return `${rgb(color)} rg\n`;
}

function pathOperators(path: PathItem): string {
  const [first] = path.vertices;
  if (!first) return '';
  const pieces = pathPieces(path).map((piece) =>
    piece.kind === 'line'
      ? `${num(piece.to.x)} ${num(piece.to.y)} l`
      : arcCubics(piece.center, piece.radius, piece.startAngle, piece.sweep).map(cubicOperator).join(' '),
  );
  return `${num(first.x)} ${num(first.y)} m ${pieces.join(' ')}${path.closed ? ' h' : ''} `;
}

function circleOperators(item: CircleItem): string {
  const { center, radius } = item;
  const cubics = arcCubics(center, radius, 0, 2 * Math.PI)
    .map(cubicOperator)
    .join(' ');
  return `${num(center.x + radius)} ${num(center.y)} m ${cubics} h `;
}

const cubicOperator = (cubic: readonly { readonly x: number; readonly y: number }[]): string =>
  `${cubic.map((p) => `${num(p.x)} ${num(p.y)}`).join(' ')} c`;

function textOperators(item: TextItem, state: DrawState, glyphs: GlyphWriter): string {
  const turn = (item.turn * Math.PI) / 180;
  const width = item.anchor === 'start' ? 0 : textWidth(item.text, item.size, item.weight);
  const shift = item.anchor === 'middle' ? width / 2 : width;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = { x: item.at.x - shift * c, y: item.at.y - shift * s };
  const matrix = `${num(c)} ${num(s)} ${num(-s)} ${num(c)} ${num(at.x)} ${num(at.y)} Tm`;
  const font = item.weight === 'bold' ? 'B' : 'R';
  return `${setFillColor(toneColors[item.tone], state)}BT /${font} ${num(item.size)} Tf ${matrix} <${glyphs(item.text)}> Tj ET`;
}

const rgb = (hex: string): string =>
  [1, 3, 5].map((i) => num(Number.parseInt(hex.slice(i, i + 2), 16) / 255)).join(' ');

/** Plain decimal with no exponent; a number that is not finite is a broken promise of who drew it. */
function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot draw ${value}`);
  return String(Math.round(value * STEPS) / STEPS + 0);
}
