import { solve } from '../src/core/index.ts';
import {
  bikeFrame,
  lineStrengths,
  loadCases,
  loadSettings,
  slowStrength,
  solveBikeFrame,
  strengthOf,
} from '../src/core/strength/index.ts';
import { bench, checksumOf, demoBuild } from './bench.ts';

function framed(name: 'light' | 'heavy') {
  const solution = solve(demoBuild(name));
  const settings = loadSettings(solution.build);
  const frame = bikeFrame(solution, settings);
  const { cases } = loadCases({ ...solution, frame, settings });
  return { solution, settings, frame, cases, strengths: lineStrengths(solution.bike, settings) };
}

const demos = (['light', 'heavy'] as const)
  .map((name) => ({ name, ...framed(name) }))
  .map((one) => ({
    ...one,
    proved: strengthOf(one.solution),
  }));

export const benches = demos.flatMap(({ name, solution, settings, frame, cases, strengths, proved }) => [
  bench({
    name: `${name} demo frame, ${frame.model.members.length} members: assembly, factor, ${cases.length} load cases, stresses`,
    warmUps: 20,
    runs: 41,
    target: 10,
    run: () => solveBikeFrame(frame, cases, strengths, settings),
    checksum: (outcome) => {
      if (!outcome.ok) throw new Error('the frame is a mechanism');
      return checksumOf(outcome.value.rows.map((row) => Number(row.utilization.toPrecision(6))));
    },
  }),
  bench({
    name: `${name} demo: strength from the placed bike, remedies tried`,
    warmUps: 3,
    runs: 11,
    run: () => strengthOf(solution),
    checksum: (strength) => checksumOf(strength.rows.map((row) => Number(row.utilization.toPrecision(6)))),
  }),
  bench({
    name: `${name} demo: ten natural frequencies and buckling of the frame`,
    warmUps: 3,
    runs: 11,
    target: 250,
    run: () => slowStrength(proved, solution.build),
    checksum: ({ frequencies }) =>
      checksumOf(frequencies.map(({ angularFrequency }) => Number(angularFrequency.toPrecision(6)))),
  }),
]);
