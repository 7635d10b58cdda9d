import { readFile } from 'node:fs/promises';
import manifest from '../../package.json' with { type: 'json' };
import { type Command, parseCommand, UsageError } from './args.ts';
import type { Core } from './core.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { helpText } from './help.ts';
import { errorCode } from './packFs.ts';
import { NotReadable, type Terminal } from './terminal.ts';
import { PackNotWritten } from './writePack.ts';

/** Runs one command line. Everything that can go wrong ends as a text on stderr and an exit code. */
export async function run(
  argv: readonly string[],
  terminal: Terminal,
  loadCore: () => Promise<Core> = bundledCore,
): Promise<ExitCode> {
  try {
    return await dispatch(parseCommand(argv), terminal, loadCore);
  } catch (error) {
    const [code, text] = explain(error);
    terminal.err(`jigwright: ${text}\n`);
    return code;
  }
}

/** Runs the command line of this process. */
export async function runFromProcess(): Promise<void> {
  // A reader that has seen enough (head, less) closes the pipe; that is no failure of ours.
  process.stdout.on('error', (error) => {
    if (errorCode(error) === 'EPIPE') process.exit(EXIT.done);
    throw error;
  });
  process.exitCode = await run(process.argv.slice(2), processTerminal);
}

/** Verbs are loaded when asked for: help and version need none of the core. */
async function dispatch(
  command: Command,
  terminal: Terminal,
  loadCore: () => Promise<Core>,
): Promise<ExitCode> {
  switch (command.verb) {
    case 'version':
      terminal.out(`jigwright ${manifest.version}\n`);
      return EXIT.done;
    case 'help':
      return help(command.about, terminal);
    case 'check':
      return (await import('./check.ts')).check(command, await loadCore(), terminal);
    case 'pack':
      return (await import('./pack.ts')).pack(command, await loadCore(), terminal);
    case 'new':
      return (await import('./newBuild.ts')).newBuild(command, terminal);
    case 'schema':
      return (await import('./schema.ts')).schema(await loadCore(), terminal);
    case 'worksheet':
      return (await import('./worksheet.ts')).worksheet(command, terminal);
  }
}

function help(about: string | undefined, terminal: Terminal): ExitCode {
  const text = helpText(about);
  if (text === undefined) throw new UsageError(`there is no verb "${about}"; jigwright help lists them`);
  terminal.out(text);
  return EXIT.done;
}

function explain(error: unknown): readonly [ExitCode, string] {
  if (error instanceof UsageError)
    return [EXIT.usage, `${error.message}\njigwright help tells how it is used`];
  if (error instanceof NotReadable) return [EXIT.badInput, error.message];
  if (error instanceof PackNotWritten) return [EXIT.notWritten, error.message];
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return [EXIT.fault, `a fault of the program, not of your file; nothing was written\n${detail}`];
}

async function bundledCore(): Promise<Core> {
  return (await import('./realCore.ts')).realCore;
}

const processTerminal: Terminal = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  readStdin: async () => {
    const chunks: Buffer[] = [];
    for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
    return Buffer.concat(chunks).toString('utf8');
  },
  now: () => performance.now(),
  today: () => new Date().toISOString().slice(0, 10),
  // The build puts them beside the program.
  readFonts: async () => {
    const read = (name: string): Promise<Uint8Array> => readFile(new URL(`./fonts/${name}`, import.meta.url));
    const [regular, bold] = await Promise.all([
      read('DejaVuSansCondensed.ttf'),
      read('DejaVuSansCondensed-Bold.ttf'),
    ]);
    return { regular, bold };
  },
};
