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
  const neighbors = Array.from({ length: count }, (): number[] => []);
  for (const [a, b] of pairs) {
    if (a === b || neighbors[a]!.includes(b)) continue;
    neighbors[a]!.push(b);
    neighbors[b]!.push(a);
  }
  return neighbors;
}

function skylineOf(of: Int32Array, count: number, pairs: readonly (readonly [number, number])[]): Int32Array {
  // The unknowns of a node follow one another: its first stands for all.
  const nodes = of.length / 6;
  const first = new Int32Array(nodes).fill(count);
  for (let i = 0; i < of.length; i++) {
    const node = Math.floor(i / 6);
    if (of[i]! >= 0) first[node] = Math.min(first[node]!, of[i]!);
  }
  const reach = first.slice();
  for (const [a, b] of pairs) {
    reach[a] = Math.min(reach[a]!, first[b]!);
    reach[b] = Math.min(reach[b]!, first[a]!);
  }
  const top = new Int32Array(count);
  for (let i = 0; i < of.length; i++) if (of[i]! >= 0) top[of[i]!] = reach[Math.floor(i / 6)]!;
  return top;
}
