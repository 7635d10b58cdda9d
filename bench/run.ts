/**
 * Times everything in `bench/*.bench.ts`: `npm run bench [part of a name …] [-- --record]`.
 * `--record` adds the figures to `history.md`.
 */
import { appendFileSync, readdirSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import { performance } from 'node:perf_hooks';
import { type Bench, pathOf } from './bench.ts';

/** From this load by others on, medians say more about the others [1-minute load a processor]. */
const BUSY = 0.5;

interface Figures {
  readonly name: string;
  readonly least: number;
  readonly median: number;
  /** Between the quarter and the three-quarter run [ms]. */
  readonly spread: number;
  readonly target?: number;
  readonly checksum: string;
}

const record = process.argv.includes('--record');
const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const machine = describeMachine();
const load = loadavg()[0]! / availableParallelism();
const remark =
  load > BUSY ? `; busy with ${load.toFixed(1)} of load a processor: look at the least times` : '';
process.stdout.write(`${machine}${remark}\n\n`);

const lines = [
  '| bench | least ms | median ms | middle half ms | aim ms | checksum |',
  '|---|---|---|---|---|---|',
];
process.stdout.write(`${lines.join('\n')}\n`);
let failed = false;
for (const one of await allBenches()) {
  if (asked.length > 0 && !asked.some((part) => one.name.includes(part))) continue;
  const line = await lineOf(one);
  lines.push(line);
  process.stdout.write(`${line}\n`);
}
if (record) {
  const date = new Date().toISOString().slice(0, 10);
  appendFileSync(pathOf('bench/history.md'), `\n## ${date}\n\n${machine}${remark}\n\n${lines.join('\n')}\n`);
}
if (failed) process.exitCode = 1;

async function allBenches(): Promise<Bench[]> {
  const files = readdirSync(pathOf('bench'))
    .filter((name) => name.endsWith('.bench.ts'))
    .sort();
  const modules = await Promise.all(
    files.map(async (file) => ({ file, ...((await import(`./${file}`)) as { benches?: readonly Bench[] }) })),
  );
  return modules.flatMap(({ file, benches }) => {
    if (!benches) throw new Error(`${file} exports no list of benches`);
    return benches;
  });
}

/** One that fails is told in its line, and the others still run. */
async function lineOf(one: Bench): Promise<string> {
  try {
    const { name, least, median, spread, target, checksum } = await timed(one);
    const cells = [name, ms(least), ms(median), ms(spread), target === undefined ? '' : ms(target), checksum];
    return `| ${cells.join(' | ')} |`;
  } catch (error) {
    failed = true;
    return `| ${one.name} | failed: ${String(error).split('\n').slice(0, 3).join(' ')} |  |  |  |  |`;
  }
}

async function timed({ name, warmUps, runs, target, run, checksum }: Bench): Promise<Figures> {
  let last: unknown;
  for (let i = 0; i < warmUps; i++) last = await run();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    last = await run();
    times.push(performance.now() - start);
  }
  const sorted = times.toSorted((a, b) => a - b);
  const share = (part: number): number => sorted[Math.min(runs - 1, Math.floor(part * runs))]!;
  return {
    name,
    least: sorted[0]!,
    median: share(0.5),
    spread: share(0.75) - share(0.25),
    ...(target === undefined ? {} : { target }),
    checksum: checksum(last),
  };
}

function describeMachine(): string {
  const processor = cpus()[0]?.model.trim() ?? 'unknown processor';
  const memory = (totalmem() / 2 ** 30).toFixed(0);
  return `${availableParallelism()} × ${processor}, ${memory} GiB, ${process.platform} ${process.arch}, node ${process.version}`;
}

function ms(value: number): string {
  return value.toFixed(value < 100 ? 2 : 0);
}
