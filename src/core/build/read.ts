import { bad, type Issue, nearestName, type Outcome, pathText, readWith } from '../quantity/index.ts';
import { readJsonText } from './jsonText.ts';
import { mergePatch } from './mergePatch.ts';
import { migrate } from './migrate.ts';
import { referenceIssues } from './references.ts';
import { type Build, buildSchema } from './schema/index.ts';

export interface ReadOptions {
  /** Name of a variant of the file to apply first. */
  readonly variant?: string;
  /**
   * Also read what the bike asked for does not need: every other variant. A file is read so when it is opened; an edit
   * of a value, at each keystroke, is not, since a reading more costs as much again as the first.
   */
  readonly whole?: boolean;
}

type JsonObject = Readonly<Record<string, unknown>>;

/**
 * Reads a build file: strict JSON, migrated to the newest version, a variant applied when asked for, checked against
 * the schema with and without each of its variants, and every name in it resolved. All issues come back together, each with its path, line and column.
 */
export function readBuild(text: string, options: ReadOptions = {}): Outcome<Build> {
  const json = readJsonText(text);
  if (!json.ok) return json;
  const read = readBuildValue(json.value.value, { whole: true, ...options });
  return read.ok ? read : { ok: false, issues: json.value.place(read.issues) };
}

/** The same for a file that is already a value: the app's edited copy. Its issues have no line and column. */
export function readBuildValue(value: unknown, options: ReadOptions = {}): Outcome<Build> {
  if (!isTable(value)) {
    return bad({
      code: 'wrong-type',
      path: '',
      given: describe(value),
      wanted: 'an object with the sections of a build',
    });
  }
  const migrated = migrate(value);
  if (!migrated.ok) return migrated;
  const asked = withVariant(migrated.value, options.variant);
  if (!asked.ok) return asked;
  const build = readPatched(asked.value);
  if (build.ok && !options.whole) return build;
  const plain = options.variant === undefined ? build : readPatched(migrated.value);
  const [first, ...rest] = [
    ...(plain.ok ? [] : plain.issues),
    ...variantIssues(migrated.value, plain.ok ? [] : plain.issues, options),
  ];
  return first ? bad(first, ...rest) : build;
}

/**
 * Issues of a file with a variant applied, at their place among its changes; those that the file has without it are
 * left out, since they are told there.
 */
export function issuesOfVariant(
  name: string,
  issues: readonly Issue[],
  plain: readonly Issue[],
): readonly Issue[] {
  const known = new Set(plain.map(sameness));
  const start = pathText(['variants', name, 'changes']);
  return issues
    .filter((issue) => !known.has(sameness(issue)))
    .map((issue) => ({ ...issue, path: issue.path === '' ? start : `${start}.${issue.path}` }));
}

const sameness = (issue: Issue): string => JSON.stringify(issue);

function readPatched(file: JsonObject): Outcome<Build> {
  const build = readWith(buildSchema, file);
  if (!build.ok) return build;
  const [first, ...rest] = referenceIssues(build.value);
  return first ? bad(first, ...rest) : build;
}

/** Every variant is read with the file, so that a wrong one is not found only on the day it is asked for. */
function variantIssues(file: JsonObject, plain: readonly Issue[], options: ReadOptions): readonly Issue[] {
  const { variants } = file;
  // What is no table of changes is an issue of the file itself.
  if (!isTable(variants)) return [];
  return Object.entries(variants).flatMap(([name, variant]) => {
    if (!options.whole && name !== options.variant) return [];
    if (!isTable(variant) || !isTable(variant.changes)) return [];
    const changed = withVariant(file, name);
    const read = changed.ok ? readPatched(changed.value) : changed;
    return read.ok ? [] : issuesOfVariant(name, read.issues, plain);
  });
}

const isTable = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The file with the changes of one of its variants; the variants themselves stay as they are. */
export function withVariant(file: JsonObject, name: string | undefined): Outcome<JsonObject> {
  if (name === undefined) return { ok: true, value: file };
  const variants = (file.variants ?? {}) as Readonly<Record<string, { changes?: unknown }>>;
  const variant = Object.hasOwn(variants, name) ? variants[name] : undefined;
  if (variant === undefined || variant === null) {
    const nearest = nearestName(name, Object.keys(variants));
    const issue: Issue = {
      code: 'unknown-name',
      path: 'variants',
      given: name,
      wanted: 'variant',
      ...(nearest ? { nearest } : {}),
    };
    return bad(issue);
  }
  const changed = mergePatch(file, variant.changes ?? {}) as JsonObject;
  return {
    ok: true,
    value: { ...changed, ...(file.variants === undefined ? {} : { variants: file.variants }) },
  };
}

function describe(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'a list' : `${typeof value}`;
}
