import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { PackFs } from './packFs.ts';

/** The file by which a folder is known as a pack of ours: it lists what was written, so that nothing else is replaced. */
export const MANIFEST_NAME = 'jigwright-pack.json';
const MANIFEST_FORMAT = 1;

export interface ManifestEntry {
  /** Path in the pack, with `/`. */
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface Manifest {
  readonly program: 'jigwright';
  readonly format: number;
  readonly files: readonly ManifestEntry[];
}

export function manifestEntry(path: string, bytes: Uint8Array): ManifestEntry {
  return { path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}

export function manifestBytes(files: readonly ManifestEntry[]): Uint8Array {
  const manifest: Manifest = { program: 'jigwright', format: MANIFEST_FORMAT, files };
  return new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`);
}

/**
 * What in `folder` a new pack must not take the place of: files that the manifest does not list, or that were
 * changed since. Empty when the folder is a pack as we wrote it (files that are gone are no loss) or is empty.
 */
export async function strangersIn(folder: string, fs: PackFs): Promise<readonly string[]> {
  const found = await entriesIn(folder, '', fs);
  const manifest = await readManifest(folder, fs);
  const listed = new Map(manifest?.files.map((entry) => [entry.path, entry]));
  const strangers: string[] = [];
  for (const { path, kind } of found) {
    if (manifest && path === MANIFEST_NAME) continue;
    const entry = listed.get(path);
    if (kind !== 'file' || !entry) strangers.push(path);
    else if (manifestEntry(path, await fs.read(join(folder, path))).sha256 !== entry.sha256)
      strangers.push(`${path} (changed)`);
  }
  return strangers;
}

interface FoundEntry {
  readonly path: string;
  readonly kind: 'file' | 'emptyFolder' | 'other';
}

async function entriesIn(root: string, inner: string, fs: PackFs): Promise<FoundEntry[]> {
  const found: FoundEntry[] = [];
  for (const name of [...(await fs.list(join(root, inner)))].sort()) {
    const path = inner === '' ? name : `${inner}/${name}`;
    const kind = await fs.kindOf(join(root, path));
    if (kind === 'file') found.push({ path, kind });
    else if (kind === 'folder') {
      const below = await entriesIn(root, path, fs);
      found.push(...(below.length > 0 ? below : [{ path, kind: 'emptyFolder' as const }]));
    } else if (kind === 'other') found.push({ path, kind });
  }
  return found;
}

async function readManifest(folder: string, fs: PackFs): Promise<Manifest | undefined> {
  const file = join(folder, MANIFEST_NAME);
  if ((await fs.kindOf(file)) !== 'file') return undefined;
  try {
    const json: unknown = JSON.parse(new TextDecoder().decode(await fs.read(file)));
    return isManifest(json) ? json : undefined;
  } catch (error) {
    // Cut short or not JSON: then it is not ours, and nothing here is.
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function isManifest(json: unknown): json is Manifest {
  if (typeof json !== 'object' || json === null) return false;
  const { program, format, files } = json as Partial<Record<keyof Manifest, unknown>>;
  return (
    program === 'jigwright' && format === MANIFEST_FORMAT && Array.isArray(files) && files.every(isEntry)
  );
}

function isEntry(json: unknown): json is ManifestEntry {
  if (typeof json !== 'object' || json === null) return false;
  const { path, sha256 } = json as Partial<Record<keyof ManifestEntry, unknown>>;
  return typeof path === 'string' && typeof sha256 === 'string';
}
