import { readFile } from 'node:fs/promises';
import type { PackOptions } from './core.ts';
import { errorCode } from './packFs.ts';

/** Where a verb reads and writes, so that a test can stand in for the process. */
export interface Terminal {
  /** Results, and nothing else. */
  readonly out: (text: string) => void;
  /** Progress and errors. */
  readonly err: (text: string) => void;
  readonly readStdin: () => Promise<string>;
  /** Milliseconds that only ever grow. */
  readonly now: () => number;
  /** Today, as ISO 8601. */
  readonly today: () => string;
  readonly readFonts: () => Promise<PackOptions['fonts']>;
}

/** A file that could not be read; the message is for a person. */
export class NotReadable extends Error {}

/** The text of a file, or of standard input for `-`. */
export async function readText(file: string, terminal: Terminal): Promise<string> {
  if (file === '-') return terminal.readStdin();
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(await readFile(file));
  } catch (error) {
    throw new NotReadable(`${file}: ${unreadableReason(error)}`);
  }
}

function unreadableReason(error: unknown): string {
  switch (errorCode(error)) {
    case 'ENOENT':
      return 'there is no such file';
    case 'EISDIR':
      return 'that is a folder; a build file is wanted';
    case 'EACCES':
      return 'no permission to read it';
    case 'ERR_ENCODING_INVALID_ENCODED_DATA':
      return 'it is not UTF-8 text';
    default:
      return error instanceof Error ? error.message : String(error);
  }
}
