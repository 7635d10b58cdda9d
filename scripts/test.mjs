/**
 * `npm test`: every check of the repository, in order, none left out because an earlier one failed.
 * `node scripts/test.mjs NAME ...` runs only the steps named. The last line is `N passed, N failed`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { installCheckPackages } from './debian.mjs';
import { ROOT } from './fresh.mjs';
import { setUp } from './setup.mjs';

const env = { ...process.env, PATH: join(ROOT, 'node_modules/.bin') + delimiter + process.env.PATH };

const STEPS = [
  { name: 'set-up', run: setUpStep },
  { name: 'debian', run: debianStep },
  { name: 'types', run: () => command('tsc', '-p', 'tsconfig.json') },
  { name: 'types-core', run: () => command('tsc', '-p', 'src/core/tsconfig.json') },
  { name: 'style', run: () => command('biome', 'check', '.') },
  { name: 'directions', run: () => command('tsx', 'scripts/lintImports.ts') },
  { name: 'dead-code', run: () => command('knip', '--no-progress') },
  { name: 'schema', run: schemaStep },
  { name: 'docs', run: docsStep },
  { name: 'vitest', run: vitestStep },
];

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !STEPS.some((step) => step.name === name));
if (unknown.length > 0) {
  console.error(
    `no such step: ${unknown.join(', ')}; there are ${STEPS.map((step) => step.name).join(', ')}`,
  );
  process.exit(3);
}

const results = [];
for (const { name, run } of STEPS.filter((step) => asked.length === 0 || asked.includes(step.name))) {
  console.log(`\n== ${name}`);
  const start = performance.now();
  const result = attempt(run);
  results.push({ name, ...result, seconds: (performance.now() - start) / 1000 });
}
report(results);

function attempt(run) {
  try {
    return run();
  } catch (error) {
    console.error(error.message);
    return { passed: 0, failed: 1, skipped: 0 };
  }
}

function verdict(ok) {
  return { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 };
}

function command(program, ...args) {
  const { status, error } = spawnSync(program, args, {
    cwd: ROOT,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (error) console.error(`${program}: ${error.message}`);
  return verdict(status === 0);
}

function setUpStep() {
  setUp();
  console.log('packages as locked; command line and app built');
  return verdict(true);
}

/** A check that cannot run has failed: nothing is skipped because a program is missing. */
function debianStep() {
  const { missing, advice } = installCheckPackages();
  console.log(missing.length === 0 ? 'Chromium and the independent readers are there' : advice);
  return verdict(missing.length === 0);
}

/** The published schema is what the program prints, byte for byte. */
function schemaStep() {
  const printed = spawnPrinter(process.execPath, join(ROOT, 'bin/jigwright.mjs'), 'schema');
  return freshVerdict('schema/build.schema.json', printed, 'npm run schema');
}

/** So is the page of the worksheets. */
function docsStep() {
  return freshVerdict('docs/worksheets.md', spawnPrinter('tsx', 'scripts/worksheetDocs.ts'), 'npm run docs');
}

/** What a program prints; undefined when it fails. */
function spawnPrinter(program, ...args) {
  const { status, stdout } = spawnSync(program, args, {
    cwd: ROOT,
    env,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return status === 0 ? stdout : undefined;
}

function freshVerdict(path, printed, writer) {
  const file = join(ROOT, path);
  const isFresh = printed !== undefined && existsSync(file) && readFileSync(file, 'utf8') === printed;
  console.log(isFresh ? `${path} is fresh` : `${path} is stale; write it with: ${writer}`);
  return verdict(isFresh);
}

function vitestStep() {
  const folder = mkdtempSync(join(tmpdir(), 'jigwright-test-'));
  const file = join(folder, 'vitest.json');
  try {
    const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
    const { status } = spawnSync('vitest', args, { cwd: ROOT, env, stdio: ['ignore', 'inherit', 'inherit'] });
    if (!existsSync(file)) return verdict(false);
    return countsOf(JSON.parse(readFileSync(file, 'utf8')), status === 0);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function countsOf(json, exitedWell) {
  const passed = json.numPassedTests;
  // A file that could not even be loaded holds no test that could fail; it counts as one.
  const unloaded = json.testResults.filter(
    (one) => one.status === 'failed' && one.assertionResults.every((test) => test.status !== 'failed'),
  );
  const failed = json.numFailedTests + unloaded.length;
  const skipped = json.numPendingTests + json.numTodoTests;
  // An error outside any test (a rejected promise left alone) shows only in the exit code; so does a run of nothing.
  const unheard = failed === 0 && (!exitedWell || passed === 0) ? 1 : 0;
  return { passed, failed: failed + unheard, skipped };
}

function report(all) {
  console.log('');
  for (const { name, passed, failed, skipped, seconds } of all) {
    const word = failed > 0 ? 'FAILED' : 'ok';
    const counts =
      passed + failed + skipped === 1 ? '' : `  ${passed} passed, ${failed} failed, ${skipped} skipped`;
    console.log(`${word.padEnd(7)}${name.padEnd(12)}${seconds.toFixed(1).padStart(7)} s${counts}`);
  }
  const sum = (key) => all.reduce((total, one) => total + one[key], 0);
  const skipped = sum('skipped') > 0 ? `, ${sum('skipped')} skipped` : '';
  if (sum('failed') > 0) process.exitCode = 1;
  console.log(`${sum('passed')} passed, ${sum('failed')} failed${skipped}`);
}
