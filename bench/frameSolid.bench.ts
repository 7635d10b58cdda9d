import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { assembleFrame, type FrameLoads, solveFrame } from '../src/core/strength/index.ts';
import { solidDeck } from '../tests/support/solidDeck.ts';
import { type SolidFrame, solidDemo } from '../tests/support/solidFrame.ts';
import { hasSolidSolver, runSolid } from '../tests/support/solidSolver.ts';
import { bench } from './bench.ts';

/** As many as the demos have. */
const CASES = 15;

/** The loads of the comparison with the general solver, each case with other shares of them. */
function casesOf({ loads }: SolidFrame): SolidFrame['loads'][] {
  return Array.from({ length: CASES }, (_, c) =>
    loads.map(({ node, force }, i) => {
      const share = Math.cos(c * (i + 1));
      return { node, force: { x: share * force!.x, y: share * force!.y, z: share * force!.z } };
    }),
  );
}

/** Runs the general solver on a deck: its own time [ms], from its last line, and its unknowns. */
function general(deck: string): { readonly time: number; readonly unknowns: number } {
  const folder = mkdtempSync(join(tmpdir(), 'bench-frame-'));
  try {
    writeFileSync(join(folder, 'frame.inp'), deck);
    const printed = runSolid(folder, 'frame');
    const time = Number(/Total \w+ Time:\s*([\d.]+)/.exec(printed)?.[1]) * 1000;
    const unknowns = Number(/number of equations\s+(\d+)/.exec(printed)?.[1]);
    if (!(time > 0 && unknowns > 0))
      throw new Error(`no time in what the solver printed: ${printed.slice(-300)}`);
    return { time, unknowns };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One bar: what the solver needs to start, read and write. */
const TRIVIAL = [
  ...['*NODE, NSET=all', '1, 0., 0., 0.', '2, 50., 0., 0.', '3, 100., 0., 0.'],
  ...['*ELEMENT, TYPE=B32R, ELSET=E', '1, 1, 2, 3', '*MATERIAL, NAME=M', '*ELASTIC', '200000., 0.'],
  ...['*BEAM SECTION, ELSET=E, MATERIAL=M, SECTION=RECT', '10., 10.', '0., 0., 1.', '*STEP', '*STATIC'],
  ...['*BOUNDARY', '1, 1, 6', '*CLOAD', '3, 3, 1.', '*NODE FILE, OUTPUT=2D', 'U', '*END STEP', ''],
].join('\n');

/** Least of many runs when warm [ms]. */
function ownTime({ model }: SolidFrame, cases: readonly FrameLoads[]) {
  let least = Number.POSITIVE_INFINITY;
  let unknowns = 0;
  for (let run = 0; run < 150; run++) {
    const start = performance.now();
    const assembled = assembleFrame(model);
    if (!assembled.ok || !solveFrame(assembled.value, cases).ok) throw new Error('the frame is refused');
    if (run >= 50) least = Math.min(least, performance.now() - start);
    unknowns = assembled.value.equations.count;
  }
  return { least, unknowns };
}

export const benches = (['light', 'heavy'] as const).map((name) => {
  const frame = solidDemo(name);
  const cases = casesOf(frame);
  const { text } = solidDeck(frame, cases);
  return bench({
    name: `${name} demo frame as bricks in a general finite-element solver, ${CASES} load cases`,
    warmUps: 1,
    runs: 3,
    hindrance: () =>
      hasSolidSolver() ? undefined : 'needs a finite-element solver: apt-get install calculix-ccx',
    run: () => general(text),
    checksum: ({ unknowns }) => `${unknowns} unknowns`,
    remark: ({ unknowns }) => {
      const [many, one, start] = [text, solidDeck(frame).text, TRIVIAL].map((deck) =>
        Math.min(...[1, 2, 3].map(() => general(deck).time)),
      ) as [number, number, number];
      const own = ownTime(
        frame,
        cases.map((nodes) => ({ nodes })),
      );
      const ownOne = ownTime(frame, [{ nodes: frame.loads }]);
      const ratio = (theirs: number, ours: number) => ((theirs - start) / ours).toFixed(0);
      return (
        `the general solver by its own clock, ${start.toFixed(0)} ms of start taken off, takes ` +
        `${ratio(many, own.least)} times as long as assembly, factor and cases here ` +
        `(${many.toFixed(0)} against ${own.least.toFixed(2)} ms), ${ratio(one, ownOne.least)} times for one case ` +
        `(${one.toFixed(0)} against ${ownOne.least.toFixed(2)} ms). It makes bricks of bars, ${unknowns} unknowns ` +
        `against ${own.unknowns}, factors anew for each case, and writes its answers to a file.`
      );
    },
  });
});
