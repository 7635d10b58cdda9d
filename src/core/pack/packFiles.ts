import { strToU8 } from 'fflate';
import { type Deflate, type PdfWriter, pdfWriter, type Sheet, type SheetFonts } from '../drawings/index.ts';
import { bookSheets } from './book.ts';
import { cutFilesOf } from './cutFiles.ts';
import { modelGlb } from './model.ts';
import type { PackInput } from './packInput.ts';
import { reportJson } from './report.ts';
import { cutListCsv, partsCsv } from './tables.ts';
import { templateBook } from './templates.ts';

/** One file of a pack, with its path inside the pack's folder. */
export interface PackedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

export interface PackOptions {
  readonly fonts: SheetFonts;
  /** Left out: the core's own. */
  readonly deflate?: Deflate;
  readonly onProgress?: (what: string) => void;
}

/** Every file of the shop pack, one after the other so that a writer need not hold them all. */
export async function* packFiles(input: PackInput, options: PackOptions): AsyncGenerator<PackedFile> {
  yield* bookFiles(input, options);
  yield* shopFiles(input, options);
}

/** The files that tell what was found: the book and the report. They want a solution that was proved. */
export async function* bookFiles(input: PackInput, options: PackOptions): AsyncGenerator<PackedFile> {
  options.onProgress?.('drawing the book');
  const write = await pdfWriter(options.fonts, options.deflate);
  yield await pdfFile('book.pdf', 'shop pack', bookSheets(input), input, write);
  yield textFile('report.json', reportJson(input));
}

/** The files that parts are bought and made by: templates, cut files, lists, model. The placed bike is enough for them. */
export async function* shopFiles(input: PackInput, options: PackOptions): AsyncGenerator<PackedFile> {
  const tell = options.onProgress ?? (() => {});
  const write = await pdfWriter(options.fonts, options.deflate);
  for (const name of ['a4', 'letter'] as const) {
    tell(`drawing the templates for ${name}`);
    yield await pdfFile(`templates-${name}.pdf`, 'templates', templateBook(input, name), input, write);
  }
  for (const pattern of input.patterns) {
    tell(`cutting file of ${pattern.id}`);
    for (const file of await cutFilesOf(pattern, kerfOf(input, pattern.make)))
      yield textFile(file.path, file.text);
  }
  yield textFile('parts.csv', partsCsv(input));
  yield textFile('cutlist.csv', cutListCsv(input));
  tell('building the model');
  yield { path: 'bike.glb', bytes: await modelGlb(input) };
}

const textFile = (path: string, content: string): PackedFile => ({ path, bytes: strToU8(content) });

async function pdfFile(
  path: string,
  title: string,
  sheets: readonly Sheet[],
  { build, date }: PackInput,
  write: PdfWriter,
): Promise<PackedFile> {
  return { path, bytes: await write(sheets, { title: `${build.about.name}: ${title}`, date }) };
}

function kerfOf(input: PackInput, make: 'drill' | 'torch' | 'saw'): number | undefined {
  return input.build.shop?.[make]?.kerf;
}
