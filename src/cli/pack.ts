import type { Command } from './args.ts';
import { exitOf, solveFile } from './check.ts';
import type { Core, PackOptions } from './core.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { toJson } from './issues.ts';
import { startProgress } from './progress.ts';
import { countBySeverity, countLine } from './report.ts';
import type { Terminal } from './terminal.ts';
import { type PackFile, type WrittenPack, writePack } from './writePack.ts';

type PackCommand = Extract<Command, { verb: 'pack' }>;

/** Reads, solves, draws and writes the pack; a build with findings that stop gets its pack all the same. */
export async function pack(command: PackCommand, core: Core, terminal: Terminal): Promise<ExitCode> {
  const solved = await solveFile(command, core, terminal);
  if (solved === undefined) return EXIT.badInput;
  const onProgress = startProgress(terminal);
  const options: PackOptions = {
    fonts: await terminal.readFonts(),
    date: command.date ?? terminal.today(),
    units: command.units,
    onProgress,
  };
  const files = await core.packFiles(solved, options);
  const written = await writePack(command.folder, told(files, onProgress));
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
  files: AsyncIterable<PackFile> | Iterable<PackFile>,
  tell: (what: string) => void,
): AsyncGenerator<PackFile> {
  for await (const file of files) {
    tell(`writing ${file.path}`);
    yield file;
  }
}
