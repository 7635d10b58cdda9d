import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Build, readBuild, readBuildValue, solve } from '../../src/core/index.ts';
import { shopWork } from '../../src/core/shop/index.ts';
import { firstNotFinite, mutatedText, mutatedValue, seeded } from '../support/mutate.ts';
import { everyPlate } from '../support/plateBuild.ts';
import { smallBuildInput } from '../support/smallBuild.ts';

/** Cases at each level; with the small build as the base of most, since a whole demo takes ten times as long to solve. */
const CASES = 5000;
/** A case that takes longer hangs for all that a builder can tell; the slowest honest one takes well under a second [ms]. */
const LONGEST = 10_000;

const demo = (name: string): string =>
  readFileSync(new URL(`../../demo/${name}.build.json`, import.meta.url), 'utf8');
const bases: readonly string[] = [
  JSON.stringify(smallBuildInput, null, 2),
  JSON.stringify(
    { ...smallBuildInput, plates: { engine: everyPlate.engine, free: everyPlate.free } },
    null,
    2,
  ),
  demo('light'),
  demo('heavy'),
];
/** Most cases start from the small ones. */
const baseFor = (i: number): string => bases[i % 20 === 19 ? 3 : i % 20 === 9 ? 2 : i % 2]!;

/** Solves and looks at every number; the seed in the message repeats the case. */
function solveWhole(build: Build, seed: string): void {
  let solution: ReturnType<typeof solve>;
  let work: ReturnType<typeof shopWork>;
  try {
    solution = solve(build);
    work = shopWork(solution);
  } catch (error) {
    throw new Error(`solve threw for case ${seed}`, { cause: error });
  }
  const { figures, findings, patterns, masses, clearances } = solution;
  const bad = firstNotFinite({ figures, findings, patterns, masses, clearances, work });
  if (bad !== undefined) throw new Error(`not a finite number at ${bad} for case ${seed}`);
}

function timed(seed: string, run: () => void): void {
  const started = performance.now();
  run();
  const took = performance.now() - started;
  if (took > LONGEST) throw new Error(`case ${seed} took ${Math.round(took)} ms`);
}

test(`${CASES} build files with their text garbled are read or refused, and what is read is solved`, () => {
  let read = 0;
  for (let i = 0; i < CASES; i++) {
    timed(`text ${i}`, () => {
      const text = mutatedText(baseFor(i), seeded(i + 1));
      const build = readBuild(text);
      if (!build.ok) {
        expect(build.issues.length).toBeGreaterThan(0);
        return;
      }
      read += 1;
      solveWhole(build.value, `text ${i}`);
    });
  }
  // Were all refused, the half that solves would test nothing.
  expect(read).toBeGreaterThan(CASES / 50);
}, 900_000);

test(`${CASES} build files with their values changed are read or refused, and what is read is solved`, () => {
  const values: readonly unknown[] = bases.map((text) => JSON.parse(text));
  let read = 0;
  for (let i = 0; i < CASES; i++) {
    timed(`value ${i}`, () => {
      const base = values[bases.indexOf(baseFor(i))];
      const build = readBuildValue(mutatedValue(base, seeded(1_000_000 + i)));
      if (!build.ok) {
        expect(build.issues.length).toBeGreaterThan(0);
        return;
      }
      read += 1;
      solveWhole(build.value, `value ${i}`);
    });
  }
  expect(read).toBeGreaterThan(CASES / 10);
}, 900_000);
