import { strToU8 } from 'fflate';
import { pdfOfSheets, type Sheet, type SheetFonts } from '../drawings/index.ts';
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
  readonly onProgress?: (what: string) => void;
}

/** Every file of the shop pack, one after the other so that a writer need not hold them all. */
export async function* packFiles(input: PackInput, options: PackOptions): AsyncGenerator<PackedFile> {
  const tell = options.onProgress ?? (() => {});
  const text = (path: string, content: string): PackedFile => ({
    path,
    bytes: strToU8(content),
  });
  const pdf = async (path: string, title: string, sheets: readonly Sheet[]): Promise<PackedFile> => ({
    path,
    bytes: await pdfOfSheets(
      sheets,
      { title: `${input.build.about.name}: ${title}`, date: input.date },
      options.fonts,
    ),
  });
  tell('drawing the book');
  yield await pdf('book.pdf', 'shop pack', bookSheets(input));
  for (const name of ['a4', 'letter'] as const) {
    tell(`drawing the templates for ${name}`);
    yield await pdf(`templates-${name}.pdf`, 'templates', templateBook(input, name));
  }
  for (const pattern of input.patterns) {
    tell(`cutting file of ${pattern.id}`);
    for (const file of await cutFilesOf(pattern, kerfOf(input, pattern.make)))
      yield text(file.path, file.text);
  }
  yield text('parts.csv', partsCsv(input));
  yield text('cutlist.csv', cutListCsv(input));
  yield text('report.json', reportJson(input));
  tell('building the model');
  yield { path: 'bike.glb', bytes: await modelGlb(input) };
}

function kerfOf(input: PackInput, make: 'drill' | 'torch' | 'saw'): number | undefined {
  return input.build.shop?.[make]?.kerf;
}
