import type { Command } from './args.ts';
import { exitOf, solveText } from './check.ts';
import type { Core, PackOptions, ShopFiles } from './core.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { toJson } from './issues.ts';
import { startProgress } from './progress.ts';
import { countBySeverity, countLine } from './report.ts';
import { readText, type Terminal } from './terminal.ts';
import { type PackFile, type WrittenPack, writePack } from './writePack.ts';

type PackCommand = Extract<Command, { verb: 'pack' }>;

/** Reads, solves, draws and writes the pack; a build with findings that stop gets its pack all the same. */
export async function pack(command: PackCommand, core: Core, terminal: Terminal): Promise<ExitCode> {
  const text = await readText(command.file, terminal);
  const options: PackOptions = {
    fonts: await terminal.readFonts(),
    date: command.date ?? terminal.today(),
    units: command.units,
  };
  // What parts are made by is drawn on a second processor while this one finds out what there is to tell.
  const shop = core.startShopFiles({ ...options, text, variant: command.variant });
  try {
    return await packBook(command, { text, options, shop, core, terminal });
  } finally {
    await shop.stop();
  }
}

interface PackWork {
  readonly text: string;
  readonly options: PackOptions;
  readonly shop: ShopFiles;
  readonly core: Core;
  readonly terminal: Terminal;
}

async function packBook(command: PackCommand, work: PackWork): Promise<ExitCode> {
  const { text, options, shop, core, terminal } = work;
  const solved = solveText(command, text, core, terminal);
  if (solved === undefined) return EXIT.badInput;
  const onProgress = startProgress(terminal);
  const book = core.bookFiles(solved, { ...options, onProgress });
  const written = await writePack(command.folder, told([book, shop.files], onProgress));
  terminal.out(
    command.json
      ? toJson({ folder: written.folder, files: written.files, counts: countBySeverity(solved.findings) })
      : `${packLine(written)}\n${countLine(solved.findings)}\n`,
  );
  return exitOf(solved);
}

function packLine({ folder, files }: WrittenPack): string {
  const kilobytes = files.reduce((sum, file) => sum + file.bytes, 0) / 1000;
  return `${folder}: ${files.length} files, ${kilobytes.toFixed(0)} kB`;
}

async function* told(
  parts: readonly (AsyncIterable<PackFile> | Iterable<PackFile>)[],
  tell: (what: string) => void,
): AsyncGenerator<PackFile> {
  for (const files of parts)
    for await (const file of files) {
      tell(`writing ${file.path}`);
      yield file;
    }
}
