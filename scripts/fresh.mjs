import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the repository. */
export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/**
 * Is what `stamp` was written for still what lies in `inputs`? Size and time of each file answer in
 * milliseconds; only when they differ (a fresh clone, a touched file) are the contents compared.
 */
export function isFresh(stamp, inputs) {
  if (!existsSync(stamp)) return false;
  const files = filesIn(inputs);
  const known = readStamp(stamp);
  if (known?.quick === quickHash(files)) return true;
  if (known?.content !== contentHash(files)) return false;
  writeStamp(stamp, inputs);
  return true;
}

/** What isFresh compares with, as it is now; take it before a build, so that an edit during the build is seen. */
export function fingerprint(inputs) {
  const files = filesIn(inputs);
  return { quick: quickHash(files), content: contentHash(files) };
}

export function writeStamp(stamp, inputs, print = fingerprint(inputs)) {
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, `${JSON.stringify(print)}\n`);
}

function readStamp(stamp) {
  try {
    return JSON.parse(readFileSync(stamp, 'utf8'));
  } catch {
    return undefined; // A stamp that was cut short means: build again.
  }
}

function filesIn(inputs) {
  return inputs.flatMap((input) => walk(join(ROOT, input))).sort();
}

function walk(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return [];
  if (stat.isFile()) return [path];
  return readdirSync(path, { withFileTypes: true }).flatMap((entry) => {
    const child = join(path, entry.name);
    if (entry.isDirectory()) return walk(child);
    return entry.name.includes('.test.') ? [] : [child];
  });
}

function quickHash(files) {
  const hash = createHash('sha256');
  for (const file of files) {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${file}\0${size}\0${mtimeMs}\n`);
  }
  return hash.digest('hex');
}

function contentHash(files) {
  const hash = createHash('sha256');
  for (const file of files) {
    const bytes = readFileSync(file);
    hash.update(`${file.slice(ROOT.length)}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}
