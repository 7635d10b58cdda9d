import { randomBytes } from 'node:crypto';
import { basename, dirname, join, resolve } from 'node:path';
import { diskFs, errorCode, type PackFs } from './packFs.ts';
import {
  MANIFEST_NAME,
  type ManifestEntry,
  manifestBytes,
  manifestEntry,
  strangersIn,
} from './packManifest.ts';

export interface PackFile {
  /** Path in the pack, relative, with `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

export interface WrittenPack {
  readonly folder: string;
  readonly files: readonly ManifestEntry[];
}

/** A pack could not be written, and what was there before is as it was. The message says why, for a person. */
export class PackNotWritten extends Error {}

/**
 * Writes a pack all or nothing: into a fresh folder beside `folder`, then into its place by renaming. The old pack
 * is removed only after the new one stands. A run that is killed leaves the old or the new pack whole; what else
 * it leaves beside it is cleaned up, and a pack that was caught between two places put back, by the next run.
 * Only a folder that is absent, empty, or a pack as we wrote it is replaced.
 * @throws PackNotWritten
 */
export async function writePack(
  folder: string,
  files: Iterable<PackFile> | AsyncIterable<PackFile>,
  fs: PackFs = diskFs,
): Promise<WrittenPack> {
  try {
    const target = await realTarget(folder, fs);
    await recover(target, fs);
    await checkReplaceable(target, fs);
    const fresh = siblingName(target, 'new');
    try {
      const written = await writeFresh(fresh, files, fs);
      await moveIn(fresh, target, fs);
      return { folder: target, files: written };
    } catch (error) {
      await fs.removeAll(fresh).catch(() => undefined);
      throw error;
    }
  } catch (error) {
    throw readable(error, folder);
  }
}

/** A link to a folder stands for the folder: that is what gets replaced, not the link. */
async function realTarget(folder: string, fs: PackFs): Promise<string> {
  const target = resolve(folder);
  if ((await fs.kindOf(target)) === 'other') return fs.resolve(target);
  await fs.makeFolder(dirname(target));
  return join(await fs.resolve(dirname(target)), basename(target));
}

async function checkReplaceable(target: string, fs: PackFs): Promise<void> {
  const kind = await fs.kindOf(target);
  if (kind === 'none') return;
  if (kind !== 'folder') throw new PackNotWritten(`${target} is not a folder; choose another with -o`);
  const strangers = await strangersIn(target, fs);
  if (strangers.length === 0) return;
  const SHOWN = 5;
  const names =
    strangers.slice(0, SHOWN).join(', ') +
    (strangers.length > SHOWN ? ` and ${strangers.length - SHOWN} more` : '');
  throw new PackNotWritten(
    `${target} holds what no pack of ours put there or what was changed since: ${names}. ` +
      'Nothing was touched; move that away or choose another folder with -o',
  );
}

async function writeFresh(
  fresh: string,
  files: Iterable<PackFile> | AsyncIterable<PackFile>,
  fs: PackFs,
): Promise<ManifestEntry[]> {
  const entries: ManifestEntry[] = [];
  const folders = new Set([fresh]);
  const taken = new Set([MANIFEST_NAME.toLowerCase()]);
  await fs.makeFolder(fresh);
  for await (const { path, bytes } of files) {
    checkPath(path, taken);
    const file = join(fresh, path);
    for (let at = dirname(file); !folders.has(at); at = dirname(at)) folders.add(at);
    await fs.makeFolder(dirname(file));
    await fs.write(file, bytes);
    entries.push(manifestEntry(path, bytes));
  }
  await fs.write(join(fresh, MANIFEST_NAME), manifestBytes(entries));
  for (const one of folders) await fs.syncFolder(one);
  return entries;
}

/** A path that leaves the pack, or that two files share on some system, is a fault of the caller. */
function checkPath(path: string, taken: Set<string>): void {
  const parts = path.split('/');
  const isPlain = parts.every(
    (part) => part !== '' && part !== '.' && part !== '..' && !/[\\:\0]/.test(part),
  );
  const key = path.toLowerCase();
  if (!isPlain) throw new Error(`not a path within a pack: "${path}"`);
  if (taken.has(key)) throw new Error(`two files of a pack are called "${path}"`);
  taken.add(key);
}

/** The only moment without a pack in its place is between two renames; `recover` closes it after a kill. */
async function moveIn(fresh: string, target: string, fs: PackFs): Promise<void> {
  // Someone may have put a file there while we wrote.
  await checkReplaceable(target, fs);
  if ((await fs.kindOf(target)) === 'none') {
    await fs.rename(fresh, target);
    await confirm(target, fs);
    return;
  }
  const old = siblingName(target, 'old');
  await fs.rename(target, old);
  try {
    await fs.rename(fresh, target);
  } catch (error) {
    await putBack(old, target, fs);
    throw error;
  }
  await confirm(target, fs);
  // The new pack stands; what can't be removed now is removed by a later run.
  await fs.removeAll(old).catch(() => undefined);
}

async function confirm(target: string, fs: PackFs): Promise<void> {
  try {
    await fs.syncFolder(dirname(target));
  } catch (cause) {
    throw new PackNotWritten(`the pack is at ${target}, but the disk did not confirm it; check the disk`, {
      cause,
    });
  }
}

async function putBack(old: string, target: string, fs: PackFs): Promise<void> {
  try {
    await fs.rename(old, target);
  } catch (cause) {
    throw new PackNotWritten(`${target} could not be replaced; the old pack is whole, but now at ${old}`, {
      cause,
    });
  }
}

type SiblingRole = 'new' | 'old';

function siblingName(target: string, role: SiblingRole): string {
  const name = `.${basename(target)}.jigwright-${role}-${process.pid}-${randomBytes(4).toString('hex')}`;
  return join(dirname(target), name);
}

/** Clears what dead runs left beside `target`; a run that still lives is left alone. */
async function recover(target: string, fs: PackFs): Promise<void> {
  const parent = dirname(target);
  const prefix = `.${basename(target)}.jigwright-`;
  for (const name of await fs.list(parent)) {
    const match = name.startsWith(prefix)
      ? /^(new|old)-(\d+)-[0-9a-f]{8}$/.exec(name.slice(prefix.length))
      : null;
    if (!match || isAlive(Number(match[2]))) continue;
    const left = join(parent, name);
    if (match[1] === 'old' && (await fs.kindOf(target)) === 'none') await fs.rename(left, target);
    else await fs.removeAll(left);
  }
}

function isAlive(pid: number): boolean {
  if (pid === process.pid) return false; // Our number, but not our run: names carry a random part.
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) !== 'ESRCH';
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EACCES: 'no permission to write there',
  EPERM: 'no permission to write there',
  EROFS: 'the disk is read-only',
  EEXIST: 'a part of the path is a file, not a folder',
  ENOTDIR: 'a part of the path is a file, not a folder',
  ENAMETOOLONG: 'the name is too long',
  EIO: 'the disk reports an error',
  EBUSY: 'the folder is in use',
};

/** A failing disk is told in a sentence; a fault of the program stays what it is. */
function readable(error: unknown, folder: string): unknown {
  if (error instanceof PackNotWritten) return error;
  const code = errorCode(error);
  if (code === undefined || !(error instanceof Error)) return error;
  const reason = REASONS[code] ?? error.message;
  return new PackNotWritten(
    `the pack could not be written to ${folder}: ${reason}. What was there is as it was`,
    { cause: error },
  );
}
