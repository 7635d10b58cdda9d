/**
 * One calculation by itself: run it with `npx tsx examples/runAWorksheet.ts`. What it prints is written down in
 * `runAWorksheet.txt`, and a test compares.
 */
import {
  describeIssue,
  printQuantity,
  runWorksheet,
  type Worksheet,
  worksheetNamed,
} from '../src/core/index.ts';

/** Plain numbers are in edge units, here millimeters; a text may have any unit of the kind. */
const INPUTS = [
  { chain: '#40', driverTeeth: 9, drivenTeeth: 72, centerDistance: 545 },
  { chain: '#35', driverTeeth: 12, drivenTeeth: 48, centerDistance: '11 1/2 in' },
  { chain: '#40', driverTeeth: 9, drivenTeeth: 72, centerDistance: '545 kg' },
];

/** What is read of the result here; `docs/worksheets.md` lists all of it. Numbers are in edge units. */
interface ChainDriveResult {
  readonly links: number;
  readonly alternatives: readonly { readonly links: number; readonly centerDistance: number }[];
}

export function runAWorksheet(): string {
  const chainDrive = worksheetNamed('chain-drive');
  if (!chainDrive) throw new Error('there is no worksheet chain-drive');
  return INPUTS.map((input) => `${input.chain}, ${input.centerDistance}\n${answer(chainDrive, input)}`).join(
    '',
  );
}

function answer(worksheet: Worksheet, input: unknown): string {
  const run = runWorksheet(worksheet, input);
  // Input that cannot be is data, not an exception.
  if (!run.ok) return run.issues.map((issue) => `  ${describeIssue(issue)}\n`).join('');
  const { links, alternatives } = run.value.result as ChainDriveResult;
  const choices = alternatives.map((one) => `  ${one.links} links: ${one.centerDistance.toFixed(2)} mm\n`);
  // Figures are in SI, with what it takes to follow them.
  const wrap = run.value.figures.find(({ symbol }) => symbol === 'θ1');
  const working = wrap
    ? `  ${wrap.name}: ${printQuantity(wrap.value, wrap.kind, 'both')}, from ${wrap.source.key}, ${wrap.source.where}\n`
    : '';
  return `  ${links.toFixed(3)} links, not rounded\n${choices.join('')}${working}`;
}

if (process.argv[1]?.endsWith('runAWorksheet.ts')) process.stdout.write(runAWorksheet());
