import { bad, type Issue, nearestName, type Outcome, readWith } from '../quantity/index.ts';
import { readJsonText } from './jsonText.ts';
import { mergePatch } from './mergePatch.ts';
import { migrate } from './migrate.ts';
import { referenceIssues } from './references.ts';
import { type Build, buildSchema } from './schema/index.ts';

export interface ReadOptions {
  /** Name of a variant of the file to apply first. */
  readonly variant?: string;
}

type JsonObject = Readonly<Record<string, unknown>>;

/**
 * Reads a build file: strict JSON, migrated to the newest version, a variant applied when asked for, checked against
 * the schema, and every name in it resolved. All issues come back together, each with its path, line and column.
 */
export function readBuild(text: string, options: ReadOptions = {}): Outcome<Build> {
  const json = readJsonText(text);
  if (!json.ok) return json;
  const read = readBuildValue(json.value.value, options);
  return read.ok ? read : { ok: false, issues: json.value.place(read.issues) };
}

/** The same for a file that is already a value: the app's edited copy. Its issues have no line and column. */
export function readBuildValue(value: unknown, options: ReadOptions = {}): Outcome<Build> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return bad({
      code: 'wrong-type',
      path: '',
      given: describe(value),
      wanted: 'an object with the sections of a build',
    });
  }
  const migrated = migrate(value as JsonObject);
  if (!migrated.ok) return migrated;
  const patched = withVariant(migrated.value, options.variant);
  if (!patched.ok) return patched;
  const build = readWith(buildSchema, patched.value);
  if (!build.ok) return build;
  const [first, ...rest] = referenceIssues(build.value);
  return first ? bad(first, ...rest) : build;
}

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
