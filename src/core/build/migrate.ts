import { bad, good, type Outcome } from '../quantity/index.ts';
import { BUILD_VERSION } from './schema/index.ts';

/** Turns a file of version `n` into one of version `n + 1`; keyed by `n`. */
export type Migrations = Readonly<
  Record<number, (file: Readonly<Record<string, unknown>>) => Record<string, unknown>>
>;

/** Version 1 is the first, so there is nothing to migrate from yet; a later version adds its step here. */
const MIGRATIONS: Migrations = {};

/**
 * Brings a file up to the newest version, one version at a time. The version field itself is kept up here.
 * @issue missing, wrong-type — no whole-number `version`
 * @issue version — newer than this program, or older than the first migration
 */
export function migrate(
  file: Readonly<Record<string, unknown>>,
  migrations: Migrations = MIGRATIONS,
  newest: number = BUILD_VERSION,
): Outcome<Readonly<Record<string, unknown>>> {
  const version = file.version;
  if (version === undefined)
    return bad({ code: 'missing', path: 'version', wanted: `the file version, ${newest}` });
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return bad({
      code: 'wrong-type',
      path: 'version',
      given: JSON.stringify(version),
      wanted: 'a whole number',
    });
  }
  let current = file;
  for (let at = version; at !== newest; at += 1) {
    const step = at < newest ? migrations[at] : undefined;
    if (!step) return bad({ code: 'version', path: 'version', given: String(version), newest });
    current = { ...step(current), version: at + 1 };
  }
  return good(current);
}
