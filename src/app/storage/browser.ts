import { isObject, type JsonObject } from '../store/json.ts';
import type { UnitSystem } from '../worker/messages.ts';

/** The only module that keeps anything: the last edits, on this machine alone. */
const KEY = 'jigwright.last';
/** Form of what is kept; a newer one is left alone, so that going back to an older program loses nothing. */
const VERSION = 1;

export interface Kept {
  readonly name: string;
  readonly file: JsonObject;
  readonly units: UnitSystem;
}

export type Recall =
  | { readonly state: 'found'; readonly kept: Kept }
  | { readonly state: 'none' }
  | { readonly state: 'unreadable'; readonly reason: string };

export function recall(storage: Storage): Recall {
  try {
    const text = storage.getItem(KEY);
    if (text === null) return { state: 'none' };
    const value: unknown = JSON.parse(text);
    if (!isObject(value)) return unreadable('they are damaged');
    if (typeof value.version !== 'number' || value.version > VERSION)
      return unreadable('they were kept by a newer version of this program');
    const { name, file, units } = value;
    if (typeof name !== 'string' || !isObject(file)) return unreadable('they are damaged');
    return { state: 'found', kept: { name, file, units: units === 'in' || units === 'mm' ? units : 'both' } };
  } catch (error) {
    return unreadable((error as Error).message);
  }
}

/** False when the browser keeps nothing, as with storage turned off or full. */
export function keep(storage: Storage, kept: Kept): boolean {
  try {
    const before = recall(storage);
    if (before.state === 'unreadable' && before.reason.includes('newer version')) return false;
    storage.setItem(KEY, JSON.stringify({ version: VERSION, ...kept }));
    return true;
  } catch {
    return false;
  }
}

/** Text of the file as it is downloaded; reads back to the same value. */
export const fileText = (file: JsonObject): string => `${JSON.stringify(file, undefined, 2)}\n`;

/** Hands a file to the browser's own download. */
export function download(name: string, text: string, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has taken hold of the data once the click is handled.
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}

const unreadable = (reason: string): Recall => ({ state: 'unreadable', reason });
