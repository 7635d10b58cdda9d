import { solve } from '../src/core/solve.ts';
import { bench, checksumOf, demoBuild } from './bench.ts';

/** A checked build to the placed and judged bike: what a change of one number in the window waits for. */
export const benches = (['light', 'heavy', 'wrong'] as const).map((demo) => {
  const build = demoBuild(demo);
  return bench({
    name: `solve, ${demo} demo`,
    warmUps: 60,
    runs: 200,
    target: 10,
    run: () => solve(build),
    checksum: checksumOf,
  });
});
