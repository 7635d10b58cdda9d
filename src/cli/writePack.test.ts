import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { diskFs, type PackFs } from './packFs.ts';
import { MANIFEST_NAME } from './packManifest.ts';
import { type PackFile, PackNotWritten, writePack } from './writePack.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const pack = (mark: string): PackFile[] => [
  { path: 'book.pdf', bytes: bytes(`book ${mark}`) },
  { path: 'cut/plate.dxf', bytes: bytes(`plate ${mark}`) },
  { path: `cut/only-${mark}.svg`, bytes: bytes(mark) },
];

let room: string;
let out: string;
beforeEach(() => {
  room = mkdtempSync(join(tmpdir(), 'jigwright-pack-'));
  out = join(room, 'out');
});
afterEach(() => rmSync(room, { recursive: true, force: true }));

/** Which pack stands there whole: each file as it was given, none too many, none missing. */
function standing(folder = out): string {
  if (!existsSync(folder)) return 'none';
  for (const mark of ['old', 'new']) {
    const wanted = pack(mark);
    const whole = wanted.every(({ path, bytes: wantedBytes }) => {
      const file = join(folder, path);
      return existsSync(file) && Buffer.from(wantedBytes).equals(readFileSync(file));
    });
    const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
    if (whole && files.length === wanted.length + 1) return mark;
  }
  return 'broken';
}

const refusal = async (run: Promise<unknown>): Promise<string> => {
  const error = await run.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(PackNotWritten);
  return (error as PackNotWritten).message;
};

const diskError = (code: string): Error => Object.assign(new Error(code), { code });

/** A file system whose n-th operation fails; after a kill nothing more happens, not even cleaning up. */
function failingFs(
  failAt: number,
  then: 'goes on' | 'is dead',
  code = 'ENOSPC',
): PackFs & { readonly calls: () => number } {
  let calls = 0;
  const guarded = Object.fromEntries(
    Object.entries(diskFs).map(([name, run]) => [
      name,
      (...args: never[]) => {
        const call = calls++;
        if (call === failAt || (then === 'is dead' && call > failAt)) return Promise.reject(diskError(code));
        return (run as (...given: never[]) => unknown)(...args);
      },
    ]),
  );
  return { ...(guarded as unknown as PackFs), calls: () => calls };
}

describe('writePack', () => {
  test('writes a pack with a manifest that lists it, into folders that did not exist', async () => {
    const deep = join(out, 'a', 'b');
    const { files } = await writePack(deep, pack('old'));
    expect(standing(deep)).toBe('old');
    expect(files.map((file) => file.path)).toEqual(pack('old').map((file) => file.path));
    const manifest = JSON.parse(readFileSync(join(deep, MANIFEST_NAME), 'utf8'));
    expect(manifest.files).toEqual(files);
    // Independent check: the system's own tool gives the same sum.
    const sum = spawnSync('sha256sum', [join(deep, 'book.pdf')], { encoding: 'utf8' }).stdout.split(' ')[0];
    expect(manifest.files[0].sha256).toBe(sum);
  });

  test('replaces its own pack whole, with nothing of the old one and nothing left beside it', async () => {
    await writePack(out, pack('old'));
    await writePack(out, pack('new'));
    expect(standing()).toBe('new');
    expect(readdirSync(room)).toEqual(['out']);
  });

  test('replaces its own pack when a file of it is gone', async () => {
    await writePack(out, pack('old'));
    rmSync(join(out, 'book.pdf'));
    await writePack(out, pack('new'));
    expect(standing()).toBe('new');
  });

  test('takes an empty folder and a link to a folder', async () => {
    mkdirSync(join(room, 'real'));
    symlinkSync(join(room, 'real'), out);
    await writePack(out, pack('new'));
    expect(standing(join(room, 'real'))).toBe('new');
    expect(standing()).toBe('new');
  });

  test('takes files one by one as they are made', async () => {
    async function* made(): AsyncGenerator<PackFile> {
      for (const file of pack('new')) yield file;
    }
    await writePack(out, made());
    expect(standing()).toBe('new');
  });
});

describe('writePack leaves alone what is not its own', () => {
  test.each([
    ['a folder of other files', () => mkdirSync(out), 'notes.txt'],
    ['a pack with a file added', () => writePack(out, pack('old')), 'cut/my-own.dxf'],
    ['a pack with a file changed', () => writePack(out, pack('old')), 'book.pdf'],
  ])('%s', async (_what, prepare, stranger) => {
    await prepare();
    writeFileSync(join(out, stranger), 'mine');
    const before = readdirSync(out, { recursive: true });
    expect(await refusal(writePack(out, pack('new')))).toContain(stranger);
    expect(readFileSync(join(out, stranger), 'utf8')).toBe('mine');
    expect(readdirSync(out, { recursive: true })).toEqual(before);
    expect(readdirSync(room)).toEqual(['out']);
  });

  test.each([
    ['an empty folder within', () => mkdirSync(join(out, 'plans'))],
    ['a link within', () => symlinkSync('/', join(out, 'root'))],
    [
      'a manifest that is not ours',
      () => writeFileSync(join(out, MANIFEST_NAME), '{"program":"other","files":[]}'),
    ],
    ['a manifest cut short', () => writeFileSync(join(out, MANIFEST_NAME), '{"program":"jig')],
  ])('%s', async (_what, prepare) => {
    mkdirSync(out);
    prepare();
    await refusal(writePack(out, pack('new')));
    expect(readdirSync(out)).toHaveLength(1);
  });

  test('a file where the folder should be', async () => {
    writeFileSync(out, 'mine');
    expect(await refusal(writePack(out, pack('new')))).toContain('not a folder');
    expect(await refusal(writePack(join(out, 'below'), pack('new')))).toContain('a file, not a folder');
    expect(readFileSync(out, 'utf8')).toBe('mine');
  });

  test('a file put there while the pack is being made', async () => {
    await writePack(out, pack('old'));
    async function* slow(): AsyncGenerator<PackFile> {
      for (const file of pack('new')) yield file;
      writeFileSync(join(out, 'late.txt'), 'mine');
    }
    expect(await refusal(writePack(out, slow()))).toContain('late.txt');
    expect(readFileSync(join(out, 'late.txt'), 'utf8')).toBe('mine');
    expect(readdirSync(room)).toEqual(['out']);
  });

  test.each([['../escape'], ['/etc/passwd'], ['a//b'], ['a\\..\\b'], ['.'], ['BOOK.PDF'], [MANIFEST_NAME]])(
    'no path leads out of the pack or is used twice: %s',
    async (path) => {
      await writePack(out, pack('old'));
      await expect(writePack(out, [...pack('new'), { path, bytes: bytes('x') }])).rejects.toThrow(/pack/);
      expect(standing()).toBe('old');
      expect(readdirSync(room)).toEqual(['out']);
    },
  );
});

describe('writePack when the disk or the process fails', () => {
  /** Operations of one replacing run; the sweep below covers each. */
  async function operations(): Promise<number> {
    await writePack(out, pack('old'));
    const fs = failingFs(Number.POSITIVE_INFINITY, 'goes on');
    await writePack(out, pack('new'), fs);
    rmSync(out, { recursive: true });
    return fs.calls();
  }

  test('any one operation that fails leaves the old or the new pack whole', async () => {
    const total = await operations();
    expect(total).toBeGreaterThan(20);
    let refused = 0;
    for (let failAt = 0; failAt < total; failAt++) {
      await writePack(out, pack('old'));
      const run = writePack(out, pack('new'), failingFs(failAt, 'goes on'));
      const error = await run.then(
        () => undefined,
        (reason: unknown) => reason,
      );
      if (error === undefined) expect(standing(), `operation ${failAt}`).toBe('new');
      else {
        expect(error).toBeInstanceOf(PackNotWritten);
        const { message } = error as PackNotWritten;
        const stands = message.includes('did not confirm') ? 'new' : 'old';
        expect(standing(), `operation ${failAt}: ${message}`).toBe(stands);
        refused++;
      }
      rmSync(out, { recursive: true });
    }
    // Only the removal of the old pack, the last operation, may fail unheard.
    expect(refused).toBe(total - 1);
  });

  test('a run that dies at any operation leaves a whole pack, in place or put back by the next run', async () => {
    const total = await operations();
    for (let failAt = 0; failAt < total; failAt++) {
      await writePack(out, pack('old'));
      await writePack(out, pack('new'), failingFs(failAt, 'is dead')).catch(() => undefined);
      const left = standing();
      expect(['old', 'new', 'none'], `operation ${failAt}`).toContain(left);
      // The next run, refused for a reason of its own, still puts back what was caught between two places.
      await writePack(out, [{ path: '..', bytes: bytes('x') }]).catch(() => undefined);
      expect(['old', 'new'], `operation ${failAt}`).toContain(standing());
      expect(readdirSync(room), `operation ${failAt}`).toEqual(['out']);
      rmSync(out, { recursive: true });
    }
  });

  test.each([
    ['EACCES', 'no permission'],
    ['EROFS', 'read-only'],
  ])('%s is told in words', async (code, words) => {
    expect(await refusal(writePack(out, pack('new'), failingFs(3, 'goes on', code)))).toContain(words);
  });

  test('kill -9 in the middle of writing leaves the old pack whole, and the next run cleans up', async () => {
    await writePack(out, pack('old'));
    const script = fileURLToPath(new URL('../../tests/support/endlessPack.ts', import.meta.url));
    const child = spawn(process.execPath, ['--import', 'tsx', script, out], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(child.stdout, 'data');
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect(standing()).toBe('old');
    expect(readdirSync(room).length).toBe(2);
    await writePack(out, pack('new'));
    expect(standing()).toBe('new');
    expect(readdirSync(room)).toEqual(['out']);
  });

  test('leaves alone what a run that still lives has beside it', async () => {
    const theirs = join(room, `.out.jigwright-new-${process.ppid}-0123abcd`);
    mkdirSync(theirs);
    await writePack(out, pack('new'));
    expect(existsSync(theirs)).toBe(true);
  });
});

/** Real limits of a real system: they need root, which the test machines have. */
describe.skipIf(process.getuid?.() !== 0 || process.platform !== 'linux')(
  'writePack on a small disk, as another user',
  () => {
    const mounted: string[] = [];
    const mount = (options: string): string => {
      const disk = join(room, 'disk');
      mkdirSync(disk);
      const { status, stderr } = spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', disk], {
        encoding: 'utf8',
      });
      if (status !== 0) throw new Error(`cannot mount: ${stderr}`);
      mounted.push(disk);
      return disk;
    };
    afterEach(() => {
      for (const disk of mounted.splice(0)) spawnSync('umount', [disk]);
    });

    test('a disk that runs full', async () => {
      const target = join(mount('size=256k'), 'out');
      await writePack(target, pack('old'));
      const big = { path: 'big.pdf', bytes: new Uint8Array(400_000) };
      expect(await refusal(writePack(target, [...pack('new'), big]))).toContain('the disk is full');
      expect(standing(target)).toBe('old');
      expect(readdirSync(join(room, 'disk'))).toEqual(['out']);
    });

    test('a disk that may only be read', async () => {
      const disk = mount('size=256k');
      await writePack(join(disk, 'out'), pack('old'));
      spawnSync('mount', ['-o', 'remount,ro', disk]);
      expect(await refusal(writePack(join(disk, 'out'), pack('new')))).toContain('read-only');
      expect(standing(join(disk, 'out'))).toBe('old');
    });
  },
);
