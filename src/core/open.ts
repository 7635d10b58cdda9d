import { type Build, type ReadOptions, readBuildValue, readJsonText } from './build/index.ts';
import { placeable } from './fit/index.ts';
import type { Outcome } from './quantity/index.ts';

/**
 * The reader of a build file: what the build room reads, and that the bike's fixed points can be found. Only what
 * comes through here can be solved: a tire that the bike can't stand on, or a direction between two points in one
 * place, shows only once points are laid out, and it belongs to the file like a misspelled name does.
 * @returns the build, or all issues with path, line and column
 */
export function openBuild(text: string, options: ReadOptions = {}): Outcome<Build> {
  const json = readJsonText(text);
  if (!json.ok) return json;
  const opened = openBuildValue(json.value.value, options);
  return opened.ok ? opened : { ok: false, issues: json.value.place(opened.issues) };
}

/** The same for a file that is already a value, whose issues have no line and column. */
export function openBuildValue(value: unknown, options: ReadOptions = {}): Outcome<Build> {
  const read = readBuildValue(value, options);
  if (!read.ok) return read;
  const placed = placeable(read.value);
  return placed.ok ? read : placed;
}
