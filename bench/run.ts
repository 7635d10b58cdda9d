/**
 * Times everything in `bench/*.bench.ts`: `npm run bench [words of a name …] [-- --record]`.
 * `--record` adds the figures to `history.md`.
 */
import { appendFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
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
  readonly remark?: string;
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
const remarks: string[] = [];
let failed = false;
for (const one of await allBenches()) {
  if (asked.length > 0 && !asked.some((part) => inWords(one.name).includes(inWords(part)))) continue;
  const line = await lineOf(one);
  lines.push(line);
  process.stdout.write(`${line}\n`);
}
if (remarks.length > 0) {
  lines.push('', ...remarks);
  process.stdout.write(`\n${remarks.join('\n')}\n`);
}
if (record) {
  const date = new Date().toISOString().slice(0, 10);
  appendFileSync(pathOf('bench/history.md'), `\n## ${date}\n\n${machine}${remark}\n\n${lines.join('\n')}\n`);
}
if (failed) process.exitCode = 1;

async function allBenches(): Promise<Bench[]> {
  const names = readdirSync(pathOf('bench'))
    .filter((name) => name.endsWith('.bench.ts'))
    .map((name) => name.replace(/\.ts$/, ''))
    .sort();
  const folder = await bundled(names);
  try {
    const modules = await Promise.all(
      names.map((name) => import(pathToFileURL(join(folder, `${name}.mjs`)).href)),
    );
    return (modules as readonly { readonly benches?: readonly Bench[] }[]).flatMap(({ benches }, i) => {
      if (!benches) throw new Error(`${names[i]} exports no list of benches`);
      return [...benches];
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * The benches in one bundle, as the program is that people run: from source the loader names every function anew and
 * each module stands alone, which costs a third.
 * @returns a folder that is the caller's to remove
 */
async function bundled(names: readonly string[]): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'jigwright-bench-'));
  await build({
    configFile: false,
    root: pathOf('.'),
    logLevel: 'warn',
    // Files that benches read are found from the folder they are in.
    define: { 'import.meta.url': JSON.stringify(import.meta.url) },
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: 'oxc',
      rolldownOptions: {
        input: Object.fromEntries(names.map((name) => [name, pathOf(`bench/${name}.ts`)])),
        output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
    ssr: { noExternal: true, target: 'node' },
  });
  return outDir;
}

/** One that fails is told in its line, and the others still run. */
async function lineOf(one: Bench): Promise<string> {
  const hindrance = one.hindrance?.();
  if (hindrance !== undefined) return `| ${one.name} | left out: ${hindrance} |  |  |  |  |`;
  try {
    const { name, least, median, spread, target, checksum, remark } = await timed(one);
    if (remark !== undefined) remarks.push(`- ${name}: ${remark}`);
    const cells = [name, ms(least), ms(median), ms(spread), target === undefined ? '' : ms(target), checksum];
    return `| ${cells.join(' | ')} |`;
  } catch (error) {
    failed = true;
    return `| ${one.name} | failed: ${String(error).split('\n').slice(0, 3).join(' ')} |  |  |  |  |`;
  }
}

async function timed({ name, warmUps, runs, target, run, checksum, remark }: Bench): Promise<Figures> {
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
    ...(remark ? { remark: remark(last) } : {}),
  };
}

function describeMachine(): string {
  const processor = cpus()[0]?.model.trim() ?? 'unknown processor';
  const memory = (totalmem() / 2 ** 30).toFixed(0);
  return `${availableParallelism()} × ${processor}, ${memory} GiB, ${process.platform} ${process.arch}, node ${process.version}`;
}

/** Whole words alone: `solve` is not a part of `solver`. */
function inWords(text: string): string {
  return ` ${text.replace(/\W+/g, ' ').trim()} `;
}

function ms(value: number): string {
  return value.toFixed(value < 100 ? 2 : 0);
}
