import {
  type Build,
  issuesOfVariant,
  type ReadOptions,
  readBuildValue,
  readJsonText,
} from './build/index.ts';
import { type Placeable, placeable } from './fit/index.ts';
import { knownParts, madeIssues } from './madeIssues.ts';
import { bad, type Issue, type Outcome } from './quantity/index.ts';

/**
 * The reader of a build file: what the build room reads, and that the bike's fixed points can be found. Only what
 * comes through here can be solved: a tire that the bike can't stand on, or a direction between two points in one
 * place, shows only once points are laid out, and it belongs to the file like a misspelled name does. So does a name
 * under `made` that is no part's, which shows only once the parts are placed.
 * @returns the build, or all issues with path, line and column
 */
export function openBuild(text: string, options: ReadOptions = {}): Outcome<Build> {
  const json = readJsonText(text);
  if (!json.ok) return json;
  const opened = openBuildValue(json.value.value, { whole: true, ...options });
  return opened.ok ? opened : { ok: false, issues: json.value.place(opened.issues) };
}

/**
 * The same for a file that is already a value, whose issues have no line and column; `whole` reads its other variants
 * and the names under `made` too.
 */
export function openBuildValue(value: unknown, options: ReadOptions = {}): Outcome<Build> {
  const read = readBuildValue(value, options);
  if (!read.ok) return read;
  const placed = placeable(read.value);
  const [first, ...more] = placed.ok
    ? options.whole
      ? unknownMade(placed.value, value, options)
      : []
    : inVariant(placed.issues, value, options);
  return first ? bad(first, ...more) : read;
}

/** What shows only with the variant applied is told at its changes. */
function inVariant(issues: readonly Issue[], file: unknown, { variant }: ReadOptions): readonly Issue[] {
  const plain = variant === undefined ? undefined : openBuildValue(file);
  const before = plain === undefined || plain.ok ? [] : plain.issues;
  const own = variant === undefined ? issues : issuesOfVariant(variant, issues, before);
  return [...before, ...own];
}

/** A part that a variant takes out of the bike is made all the same: names of the file without it count too. */
function unknownMade(placed: Placeable, file: unknown, { variant }: ReadOptions): readonly Issue[] {
  const { made } = placed.build;
  if (made === undefined || Object.keys(made).length === 0) return [];
  const own = knownParts(placed);
  const issues = madeIssues(made, own);
  if (issues.length === 0 || variant === undefined) return issues;
  const plain = readBuildValue(file);
  const base = plain.ok ? placeable(plain.value) : plain;
  if (!base.ok) return issues;
  const before = knownParts(base.value);
  return madeIssues(made, {
    names: [...own.names, ...before.names],
    figures: [...own.figures, ...before.figures],
  });
}
