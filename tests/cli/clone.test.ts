import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { worksheets } from '../../src/core/worksheets/index.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** The command line as a person runs it: the built program in its own process. */
function jigwright(args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['bin/jigwright.mjs', ...args], {
    cwd: ROOT,
    input,
    encoding: 'utf8',
    maxBuffer: 64_000_000,
  });
  return { status, stdout, stderr };
}

let room: string;
beforeEach(() => {
  room = mkdtempSync(join(tmpdir(), 'jigwright-clone-'));
});
afterEach(() => rmSync(room, { recursive: true, force: true }));

describe('the command line from a clone', () => {
  test('npm run -s jigwright prints the result and nothing else', () => {
    const { stdout, status } = spawnSync('npm', ['run', '-s', 'jigwright', '--', '--version'], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect({ status, stdout }).toEqual({ status: 0, stdout: `jigwright ${manifest.version}\n` });
  });

  test.each(worksheets.map((sheet) => [sheet.id, sheet] as const))(
    'worksheet %s runs its example',
    (id, sheet) => {
      const { status, stdout } = jigwright(
        ['worksheet', 'run', id, '--json'],
        JSON.stringify(sheet.example.input),
      );
      expect(status).toBe(0);
      expect(JSON.parse(stdout).figures.length).toBeGreaterThan(0);
    },
  );

  test('a pipe that is closed early is no failure', () => {
    const { status, stdout, stderr } = spawnSync('sh', ['-c', `node bin/jigwright.mjs schema | head -c 10`], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect({ status, stdout, stderr }).toEqual({ status: 0, stdout: '{\n  "$sche', stderr: '' });
  });

  test.each([
    [['nonsense'], 3],
    [['check', 'no/such.json'], 2],
    [['check', '-'], 2],
  ])('%j ends with exit code %i, its words on stderr', (args, code) => {
    const { status, stdout, stderr } = jigwright(args);
    expect({ status, stdout }).toEqual({ status: code, stdout: '' });
    expect(stderr).not.toBe('');
  });
});

const demos = readdirSync(join(ROOT, 'demo')).filter((name) => name.endsWith('.build.json'));

describe('from a build file to a pack', () => {
  test('there are demo builds, one of them deliberately wrong', () => {
    expect(demos).toEqual(
      expect.arrayContaining(['heavy.build.json', 'light.build.json', 'wrong.build.json']),
    );
  });

  // Independent check: a general JSON Schema validator reads the published schema and the files.
  test.each(demos)('%s is valid by the published schema', (name) => {
    const schema = JSON.parse(readFileSync(join(ROOT, 'schema/build.schema.json'), 'utf8'));
    const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
    expect(
      ajv.validate(schema, JSON.parse(readFileSync(join(ROOT, 'demo', name), 'utf8'))),
      ajv.errorsText(),
    ).toBe(true);
  });

  test.each(demos)('%s: check and pack agree, and the same day gives the same bytes', (name) => {
    const file = join('demo', name);
    const checked = jigwright(['check', file, '--json']);
    const { counts } = JSON.parse(checked.stdout);
    expect(checked.status).toBe(counts.stop > 0 ? 1 : 0);
    const packs = ['a', 'b'].map((folder) =>
      jigwright(['pack', file, '-o', join(room, folder), '--date', '2026-01-02', '--json']),
    );
    const [a, b] = packs.map((ran) => JSON.parse(ran.stdout));
    expect(a.counts).toEqual(counts);
    expect(a.files).toEqual(b.files);
    const paths = a.files.map((one: { path: string }) => one.path);
    for (const wanted of [
      'book.pdf',
      'templates-a4.pdf',
      'templates-letter.pdf',
      'parts.csv',
      'cutlist.csv',
      'report.json',
      'bike.glb',
    ]) {
      expect(paths).toContain(wanted);
    }
  });

  test('the starter build reads without an issue and can be packed', () => {
    const file = join(room, 'mine.build.json');
    expect(jigwright(['new', file]).status).toBe(0);
    expect([0, 1]).toContain(jigwright(['check', file]).status);
    expect([0, 1]).toContain(jigwright(['pack', file, '-o', join(room, 'out')]).status);
  });
});
