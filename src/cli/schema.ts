import type { Core } from './core.ts';
import { EXIT, type ExitCode } from './exit.ts';
import { toJson } from './issues.ts';
import type { Terminal } from './terminal.ts';

/** Prints the JSON Schema of the build file; `schema/build.schema.json` is this output. */
export function schema(core: Pick<Core, 'buildJsonSchema'>, terminal: Terminal): ExitCode {
  terminal.out(toJson(core.buildJsonSchema()));
  return EXIT.done;
}
