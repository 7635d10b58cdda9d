import { writeFile } from 'node:fs/promises';
import type { Command } from './args.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { errorCode } from './packFs.ts';
import { starterBuild } from './starter.ts';
import type { Terminal } from './terminal.ts';

/** Writes a build file to start from; an existing file is replaced only when asked. */
export async function newBuild(
  { file, force }: Extract<Command, { verb: 'new' }>,
  terminal: Terminal,
): Promise<ExitCode> {
  const text = starterBuild();
  if (file === undefined || file === '-') {
    terminal.out(text);
    return EXIT.done;
  }
  try {
    // The system itself refuses an existing file, so that none can slip in between a look and the writing.
    await writeFile(file, text, { flag: force ? 'w' : 'wx' });
  } catch (error) {
    const reason =
      errorCode(error) === 'EEXIST'
        ? 'is there already; --force replaces it'
        : `could not be written: ${reasonOf(error)}`;
    terminal.err(`jigwright: ${file} ${reason}\n`);
    return EXIT.notWritten;
  }
  terminal.err(
    `${file} is written; jigwright check ${file} tells what is left to decide.\n` +
      'jigwright schema > build.schema.json beside it lets an editor complete and check while you type.\n',
  );
  return EXIT.done;
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
