import type { NullMode } from '../../numerics/index.ts';
import type { Equations } from './equations.ts';
import { followMaster, type Masters } from './links.ts';
import { DIRECTIONS, type Direction } from './model.ts';

/** A movement that nothing in the frame resists. */
export interface Mechanism {
  /** The node that moves most. */
  readonly node: string;
  /** Its largest displacement, or largest rotation where nodes only turn on the spot; global axes. */
  readonly direction: Direction;
  /** Movements of all nodes, six a node in the order of the model's nodes; the largest displacement is 1 m, or the largest rotation 1 rad. */
  readonly shape: Float64Array;
}

/** A displacement below this share of rotation × size of the frame is rounding. */
const ON_THE_SPOT = 1e-6;

const WORDS: Readonly<Record<Direction, string>> = {
  ux: 'moves along x',
  uy: 'moves along y',
  uz: 'moves along z',
  rx: 'turns about x',
  ry: 'turns about y',
  rz: 'turns about z',
};

/** The mechanism in words: `node "b" moves along z with nothing to hold it`. */
export const describeMechanism = ({ node, direction }: Mechanism): string =>
  `node "${node}" ${WORDS[direction]} with nothing to hold it: the frame is a mechanism`;

/**
 * Reads a mode without resistance as movements of nodes.
 * @param size of the frame [m], to compare displacements with rotations
 */
export function mechanismOf(
  mode: NullMode,
  ids: readonly string[],
  equations: Equations,
  leaders: Masters,
  size: number,
): Mechanism {
  const moved = nodalMovements(mode.vector, equations, leaders);
  const displacement = largest(moved, 0);
  const rotation = largest(moved, 3);
  const turnsOnly = displacement.size <= ON_THE_SPOT * rotation.size * size;
  const { node, size: most, component } = turnsOnly ? rotation : displacement;
  return {
    node: ids[node]!,
    direction: DIRECTIONS[component]!,
    shape: moved.map((value) => value / most),
  };
}

/** All nodal movements from the unknowns; fixed ones are 0. */
export function nodalMovements(x: Float64Array, { of }: Equations, leaders: Masters): Float64Array {
  const moved = new Float64Array(of.length);
  for (let i = 0; i < of.length; i++) {
    const row = of[i]!;
    if (row >= 0) moved[i] = x[row]!;
  }
  const { leader } = leaders;
  for (let node = 0; node < leader.length; node++)
    if (leader[node] !== node) followMaster(leaders, node, moved);
  return moved;
}

/** The node with the largest vector of three from `shift`, and the largest of the three. */
function largest(moved: Float64Array, shift: number) {
  let best = { node: 0, size: -1, component: shift };
  for (let node = 0; node * 6 < moved.length; node++) {
    const three = [0, 1, 2].map((i) => Math.abs(moved[node * 6 + shift + i]!));
    const size = Math.hypot(...three);
    // Ties of symmetric frames go to the first node, not to rounding.
    if (size > best.size * (1 + 1e-9))
      best = { node, size, component: shift + three.indexOf(Math.max(...three)) };
  }
  return best;
}
