/**
 * `npm start`: sets up, writes the shop packs of the demo builds into `out/`, serves the app on this machine alone.
 * `--port N` wants another port, `--no-serve` ends after the packs.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { ROOT } from './fresh.mjs';
import { serveFolder } from './serve.mjs';
import { setUp } from './setup.mjs';

const FINDINGS_THAT_STOP = 1;

const options = readOptions();
let failed = false;
try {
  setUp();
  failed = !writeDemoPacks();
  if (options.serve) await serveApp(options.port);
} catch (error) {
  console.error(`jigwright: ${error.message}`);
  failed = true;
}
if (failed) process.exitCode = 1;

function readOptions() {
  try {
    const { values } = parseArgs({ options: { port: { type: 'string' }, 'no-serve': { type: 'boolean' } } });
    const port = Number(values.port ?? 4173);
    if (!Number.isInteger(port) || port < 0 || port > 65535)
      throw new Error(`--port wants a number up to 65535, found "${values.port}"`);
    return { port, serve: !values['no-serve'] };
  } catch (error) {
    console.error(`jigwright: ${error.message}\nusage: npm start -- [--port N] [--no-serve]`);
    process.exit(3);
  }
}

/** A build with findings that stop still has a pack, so that the findings can be seen in place. */
function writeDemoPacks() {
  const builds = readdirSync(join(ROOT, 'demo')).filter((name) => name.endsWith('.build.json'));
  return builds
    .map((build) => {
      const out = join('out', basename(build, '.build.json'));
      const args = [join(ROOT, 'bin/jigwright.mjs'), 'pack', join('demo', build), '-o', out];
      const { status } = spawnSync(process.execPath, args, {
        cwd: ROOT,
        stdio: ['ignore', 'inherit', 'inherit'],
      });
      if (status === 0 || status === FINDINGS_THAT_STOP) return true;
      console.error(`jigwright: no pack of demo/${build} (exit code ${status})`);
      return false;
    })
    .every(Boolean);
}

async function serveApp(port) {
  const { address, close } = await serveFolder(join(ROOT, 'dist/app'), port);
  console.log(`\nJigwright is at ${address}  (on this machine only; Ctrl-C ends it)`);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, async () => {
      await close();
      process.exit(failed ? 1 : 0);
    });
  }
}
