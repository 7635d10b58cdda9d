import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { prove, readBuildValue, solve } from '../../src/core/index.ts';
import { firstNotFinite, seeded } from '../support/mutate.ts';

/** Every case is a whole proof, a tenth of a second. */
const CASES = 120;

const demos: readonly unknown[] = ['light', 'heavy'].map((name) =>
  JSON.parse(readFileSync(`demo/${name}.build.json`, 'utf8')),
);

type Path = readonly (string | number)[];

/** Places of all numbers and of texts that begin with one. */
function numbersIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path];
  if (typeof value === 'string') return /^-?\d/.test(value) ? [path] : [];
  if (Array.isArray(value)) return value.flatMap((one, i) => numbersIn(one, [...path, i]));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, one]) => numbersIn(one, [...path, key]));
}

/** A builder's slip or second thought: another size of the same thing. */
function changed(value: unknown, [key, ...rest]: Path, factor: number): unknown {
  if (key !== undefined) {
    const copy: Record<string | number, unknown> = Array.isArray(value)
      ? ([...value] as never)
      : { ...(value as object) };
    copy[key] = changed(copy[key], rest, factor);
    return copy;
  }
  if (typeof value === 'number') return value * factor;
  return String(value).replace(/^-?\d+(\.\d+)?/, (digits) =>
    String(Number((Number(digits) * factor).toFixed(3))),
  );
}

test(`${CASES} demos with one to three sizes changed are refused, or proved with every number finite`, () => {
  let proved = 0;
  for (let i = 0; i < CASES; i++) {
    const random = seeded(7_000 + i);
    let value: unknown = demos[i % 2];
    const places = numbersIn(value).filter((path) => path[0] !== 'variants' && path[0] !== 'version');
    for (let k = 0; k <= i % 3; k++) {
      const place = places[Math.floor(random() * places.length)]!;
      const factor = [-1, 0, 0.3, 0.7, 1.3, 2, 4][Math.floor(random() * 7)]!;
      value = changed(value, place, factor);
    }
    const read = readBuildValue(value);
    if (!read.ok) continue;
    proved += 1;
    let proof: ReturnType<typeof prove>;
    try {
      proof = prove(solve(read.value));
    } catch (error) {
      throw new Error(`a proof threw for case ${i}`, { cause: error });
    }
    const { figures, findings, strength } = proof;
    const bad = firstNotFinite({ figures, findings, rows: strength.rows });
    if (bad !== undefined) throw new Error(`not a finite number at ${bad} for case ${i}`);
  }
  expect(proved).toBeGreaterThan(CASES / 3);
}, 300_000);
