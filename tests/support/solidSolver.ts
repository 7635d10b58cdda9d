import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A general finite-element solver: its beams are rows of 20-node bricks, nothing of a beam theory. */
const SOLVER = '/usr/bin/ccx';

export const hasSolidSolver = (): boolean => existsSync(SOLVER);

/** What the solver found, by the numbers of nodes in its file. */
export interface SolidAnswer {
  /** Along x, y and z, in the deck's unit of length. */
  readonly moved: ReadonlyMap<number, readonly number[]>;
  /** Shear y, shear z, normal, torque, moment y, moment z. */
  readonly forces: ReadonlyMap<number, readonly number[]>;
}

/** Runs the solver on a deck of one linear step that writes movements and section forces. */
export function solveSolid(deck: string): SolidAnswer {
  const folder = mkdtempSync(join(tmpdir(), 'solid-frame-'));
  try {
    writeFileSync(join(folder, 'frame.inp'), deck);
    runSolid(folder, 'frame');
    const lines = readFileSync(join(folder, 'frame.frd'), 'utf8').split('\n');
    return { moved: block(lines, 'DISP', 3), forces: block(lines, 'STRESS', 6) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs the solver on `name`.inp in a folder; gives what it prints. */
export function runSolid(folder: string, name: string): string {
  const run = spawnSync(SOLVER, [name], { cwd: folder, encoding: 'utf8' });
  if (run.error) throw new Error('this check needs a finite-element solver: apt-get install calculix-ccx');
  if (run.status !== 0) throw new Error(`the solver failed: ${run.stdout.slice(-2000)}`);
  return run.stdout;
}

/** Values of one block of the result file by node. */
function block(lines: readonly string[], title: string, columns: number): Map<number, readonly number[]> {
  const from = lines.findIndex((line) => line.startsWith(` -4  ${title}`));
  if (from < 0) throw new Error(`the solver wrote no ${title}`);
  const rows = lines.slice(from, lines.indexOf(' -3', from)).filter((line) => line.startsWith(' -1'));
  return new Map(
    rows.map((line) => [
      Number(line.slice(3, 13)),
      Array.from({ length: columns }, (_, i) => Number(line.slice(13 + 12 * i, 25 + 12 * i))),
    ]),
  );
}
