#!/usr/bin/env node
/** Runs the built command line; in a clone it is built first when the sources have changed. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';

// The engine compiles what runs often to fast code, on threads beside ours. A run of two seconds never earns that back for
// most functions: with the usual budget a third of a pack's processor time went there. This one is four times as large.
setFlagsFromString('--interrupt-budget=600000');

const at = (path) => new URL(`../${path}`, import.meta.url);

if (existsSync(at('src/cli/main.ts'))) {
  const { isFresh } = await import('../scripts/fresh.mjs');
  const { TARGETS } = await import('../scripts/targets.mjs');
  if (!isFresh(fileURLToPath(at(TARGETS.cli.stamp)), TARGETS.cli.inputs)) {
    const { setUp } = await import('../scripts/setup.mjs');
    try {
      setUp(['cli']);
    } catch (error) {
      process.stderr.write(`jigwright: ${error.message}\n`);
      process.exit(2);
    }
  }
}
const { runFromProcess } = await import(at('dist/cli/main.mjs').href);
await runFromProcess();
