import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bench, pathOf, shortHash } from './bench.ts';

/** The whole shop pack of the heavy demo as a user waits for it: start of the process, files written. */
export const benches = [
  bench({
    name: 'pack, heavy demo, with process start',
    warmUps: 1,
    runs: 7,
    target: 3000,
    run: writePack,
    checksum: packChecksum,
  }),
];

const folder = mkdtempSync(join(tmpdir(), 'jigwright-bench-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

/** Into one folder again and again, as a user does after a change. */
function writePack(): string {
  const out = join(folder, 'pack');
  const verb = [pathOf('bin/jigwright.mjs'), 'pack', pathOf('demo/heavy.build.json'), '-o', out];
  execFileSync(process.execPath, verb, { stdio: ['ignore', 'ignore', 'pipe'] });
  return out;
}

function packChecksum(out: string): string {
  const files = readdirSync(out, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const names = files.map((file) => join(file.parentPath, file.name)).sort();
  if (names.length === 0) throw new Error('the pack came out empty');
  return shortHash(
    names.map((name) => `${name.slice(out.length)} ${shortHash(readFileSync(name))}`).join('\n'),
  );
}
