/**
 * Brings a clone to where it runs: npm packages as locked, the command line and the app built.
 * Does nothing when nothing changed. Everything it says goes to stderr, so that a program's own output stays clean.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isFresh, ROOT } from './fresh.mjs';
import { TARGETS } from './targets.mjs';

const say = (text) => process.stderr.write(`${text}\n`);

/** Installs and builds what is missing or stale. Throws with a plain text when it can't. */
export function setUp(targets = Object.keys(TARGETS)) {
  installPackages();
  for (const target of targets) {
    const { stamp, inputs } = TARGETS[target];
    if (isFresh(join(ROOT, stamp), inputs)) continue;
    say(`jigwright: building the ${target} (once after a change) ...`);
    run(
      process.execPath,
      [join(ROOT, 'scripts/build.mjs'), target],
      `The ${target} could not be built; the reason is above.`,
    );
  }
}

function installPackages() {
  const lock = readFileSync(join(ROOT, 'package-lock.json'), 'utf8');
  const hash = createHash('sha256').update(lock).digest('hex');
  const stamp = join(ROOT, 'node_modules/.jigwright-lock-hash');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  if (!installedMatches(JSON.parse(lock))) {
    say('jigwright: installing npm packages (once after a change) ...');
    run(
      'npm',
      ['ci', '--no-audit', '--no-fund', '--loglevel=error'],
      'npm ci failed: is the npm registry reachable?',
    );
  }
  writeFileSync(stamp, hash);
}

/** Packages put there by hand with `npm install` are as good: npm keeps a list of what it installed. */
function installedMatches(lock) {
  const list = join(ROOT, 'node_modules/.package-lock.json');
  if (!existsSync(list)) return false;
  const installed = JSON.parse(readFileSync(list, 'utf8')).packages;
  return Object.entries(lock.packages).every(([path, wanted]) => {
    if (path === '') return true;
    const found = installed[path];
    // Optional packages are those of other systems; npm lists only the ones it took.
    return found
      ? found.version === wanted.version && found.integrity === wanted.integrity
      : wanted.optional === true;
  });
}

function run(command, args, failure) {
  const result = spawnSync(command, args, {
    cwd: ROOT,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32' && command === 'npm',
  });
  if (result.error || result.status !== 0) throw new Error(failure);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    setUp();
  } catch (error) {
    say(`jigwright: ${error.message}`);
    process.exitCode = 1;
  }
}
