import { lstat, mkdir, open, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/** The few file operations a pack is written with, so that a test can let any one of them fail. */
export interface PackFs {
  /** What stands at a path itself (a link is not followed). */
  readonly kindOf: (path: string) => Promise<'file' | 'folder' | 'other' | 'none'>;
  readonly list: (folder: string) => Promise<readonly string[]>;
  readonly read: (file: string) => Promise<Uint8Array>;
  readonly makeFolder: (folder: string) => Promise<void>;
  /** Writes a new file and waits until it is on the disk. */
  readonly write: (file: string, bytes: Uint8Array) => Promise<void>;
  /** Waits until the names in a folder are on the disk. */
  readonly syncFolder: (folder: string) => Promise<void>;
  readonly rename: (from: string, to: string) => Promise<void>;
  readonly removeAll: (folder: string) => Promise<void>;
  /** The path with links followed, of what exists. */
  readonly resolve: (path: string) => Promise<string>;
}

export const diskFs: PackFs = {
  kindOf: async (path) => {
    try {
      const found = await lstat(path);
      return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : 'other';
    } catch (error) {
      if (errorCode(error) === 'ENOENT') return 'none';
      throw error;
    }
  },
  list: (folder) => readdir(folder),
  read: (file) => readFile(file),
  makeFolder,
  write: async (file, bytes) => {
    const handle = await open(file, 'wx');
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
  syncFolder: async (folder) => {
    // Windows can't open a folder to sync it.
    if (process.platform === 'win32') return;
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
  rename,
  removeAll: (folder) => rm(folder, { recursive: true, force: true }),
  resolve: realpath,
};

/** Folder by folder: Node's own recursive way reports a read-only disk as a missing folder. */
async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    const code = errorCode(error);
    if (code === 'ENOENT' && dirname(folder) !== folder) {
      await makeFolder(dirname(folder));
      await mkdir(folder);
    } else if (code !== 'EEXIST' || !(await stat(folder)).isDirectory()) throw error;
  }
}

export function errorCode(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}
