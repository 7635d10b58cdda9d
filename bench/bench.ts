import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Build, readBuild } from '../src/core/build/index.ts';

/**
 * One thing to time. Each `bench/*.bench.ts` exports a list of these as `benches`; `run.ts` finds the files by their
 * names.
 */
export interface Bench<Result = unknown> {
  /** What is timed, as the history lists it. */
  readonly name: string;
  /** Runs before those that count: the engine compiles what it finds hot. */
  readonly warmUps: number;
  readonly runs: number;
  /** Median that is aimed at with the machine idle [ms]. */
  readonly target?: number;
  /** What is timed; everything it needs is made ready before. */
  readonly run: () => Result | Promise<Result>;
  /** Of the last result, outside the timed part: shows that the work was done, and when results change. */
  readonly checksum: (result: Result) => string;
  /** What else is to be said of it, below the table; outside the timed part. */
  readonly remark?: (result: Result) => string;
  /** Why it cannot run here; left out then. */
  readonly hindrance?: () => string | undefined;
}

/** Keeps the result's type between `run` and what follows it, which a list of benches forgets. */
export function bench<Result>({ remark, ...one }: Bench<Result>): Bench {
  return {
    ...one,
    checksum: (result) => one.checksum(result as Result),
    ...(remark ? { remark: (result) => remark(result as Result) } : {}),
  };
}

/** Path of a file of the repository. */
export const pathOf = (name: string): string => fileURLToPath(new URL(`../${name}`, import.meta.url));

/** A demo build as it is read from its file. */
export function demoBuild(name: 'light' | 'heavy' | 'wrong'): Build {
  const read = readBuild(readFileSync(pathOf(`demo/${name}.build.json`), 'utf8'));
  if (!read.ok) throw new Error(`demo/${name}.build.json: ${JSON.stringify(read.issues)}`);
  return read.value;
}

/** Of data, with numbers to nine figures so that rounding of the last digits doesn't show. */
export const checksumOf = (data: unknown): string =>
  shortHash(
    JSON.stringify(data, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(9)) : value)),
  );

export const shortHash = (text: string | Uint8Array): string =>
  createHash('sha256').update(text).digest('hex').slice(0, 12);
