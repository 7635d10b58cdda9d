import { reverseCuthillMckee } from '../../numerics/index.ts';
import type { Masters } from './links.ts';
import { DIRECTIONS, type FrameModel } from './model.ts';

/** Which movement is which unknown. */
export interface Equations {
  /** Unknowns [-]. */
  readonly count: number;
  /** Six a node: the unknown of its movement, or -1 where it is fixed or follows a leader. */
  readonly of: Int32Array;
  /** Skyline: first row of each column. */
  readonly top: Int32Array;
}

/**
 * Numbers the free movements so that the skyline of the stiffness is low.
 * @param pairs nodes (leaders) that each member connects
 */
export function numberEquations(
  model: FrameModel,
  indexOf: ReadonlyMap<string, number>,
  { leader }: Masters,
  pairs: readonly (readonly [number, number])[],
): Equations {
  const fixed = new Uint8Array(leader.length * 6);
  for (const { node, fixed: names } of model.supports)
    for (const name of names) fixed[indexOf.get(node)! * 6 + DIRECTIONS.indexOf(name)] = 1;
  const of = new Int32Array(leader.length * 6).fill(-1);
  let count = 0;
  for (const node of reverseCuthillMckee(neighborsOf(pairs, leader.length))) {
    if (leader[node] !== node) continue;
    for (let i = node * 6; i < node * 6 + 6; i++) if (!fixed[i]) of[i] = count++;
  }
  return { count, of, top: skylineOf(of, count, pairs) };
}

function neighborsOf(pairs: readonly (readonly [number, number])[], count: number): number[][] {
  const sets = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    sets[a]!.add(b);
    sets[b]!.add(a);
  }
  return sets.map((set) => [...set]);
}

function skylineOf(of: Int32Array, count: number, pairs: readonly (readonly [number, number])[]): Int32Array {
  const top = Int32Array.from({ length: count }, (_, j) => j);
  const couple = (nodes: readonly number[]) => {
    const rows = nodes.flatMap((node) => [...of.subarray(node * 6, node * 6 + 6)]).filter((row) => row >= 0);
    const first = Math.min(...rows);
    for (const row of rows) top[row] = Math.min(top[row]!, first);
  };
  for (let node = 0; node * 6 < of.length; node++) couple([node]);
  for (const pair of pairs) couple(pair);
  return top;
}
