/**
 * From a build file to a checked bike: run it with `npx tsx examples/solveABuild.ts`. What it prints is written down in
 * `solveABuild.txt`, and a test compares.
 */
import { readFileSync } from 'node:fs';
import { describeIssue, printQuantity, prove, readBuild, solve } from '../src/core/index.ts';

/** Figures to show, by id; `jigwright check FILE --working` lists all of a bike. */
const SHOWN = [
  'steering.design.trail',
  'stack.rear.spacer-left.length',
  'drive.final.centerDistance',
  'line.final.offset',
  'mass.total',
  'ride.topSpeed',
];

export function solveABuild(): string {
  const text = readFileSync(new URL('../demo/light.build.json', import.meta.url), 'utf8');
  const build = readBuild(text);
  // A file that cannot be read gives every issue at once, each with its path, line and column.
  if (!build.ok) return build.issues.map(describeIssue).join('\n');

  // `solve` places the bike and checks that it goes together; `prove` adds how it rides.
  const { bike, patterns, figures, findings } = prove(solve(build.value));

  const shown = figures.filter(({ id }) => SHOWN.includes(id));
  const worst = findings.filter(({ severity }) => severity !== 'note');
  return [
    `${build.value.about.name}: ${bike.tubes.length} tubes, ${patterns.length} plates`,
    ...shown.map(({ name, value, kind }) => `  ${name}: ${printQuantity(value, kind, 'both')}`),
    ...worst.map(({ severity, what }) => `  ${severity}: ${what}`),
    '',
  ].join('\n');
}

if (process.argv[1]?.endsWith('solveABuild.ts')) process.stdout.write(solveABuild());
