import type { AssembledFrame } from '../../frame/index.ts';

/** What of a shape moves most. */
export interface MovedMost {
  /** Node of the model. */
  readonly node: string;
  /** Part of the build file as far as the node tells: `upperRail.right`, `grip.left`, `bodies.exhaust`. */
  readonly part: string;
  /** Its twin on the other side moves alike. */
  readonly isPair: boolean;
  readonly direction: 'fore and aft' | 'sideways' | 'up and down';
}

const WAYS = ['fore and aft', 'sideways', 'up and down'] as const;
/** A twin that moves this much of the other moves alike [-]. */
const ALIKE = 0.9;

/**
 * The node that moves furthest, its part and its main direction.
 * @param within member that a node inside one belongs to
 * @param counts nodes to look at; left out: all
 */
export function movedMost(
  { nodeIds, nodeIndex }: Pick<AssembledFrame, 'nodeIds' | 'nodeIndex'>,
  shape: Float64Array,
  within: ReadonlyMap<string, string>,
  counts: (node: string) => boolean = () => true,
): MovedMost | undefined {
  const sizeOf = (i: number): number => Math.hypot(shape[i * 6]!, shape[i * 6 + 1]!, shape[i * 6 + 2]!);
  let best = -1;
  nodeIds.forEach((node, i) => {
    if (counts(node) && (best < 0 || sizeOf(i) > sizeOf(best) * (1 + 1e-9))) best = i;
  });
  const node = nodeIds[best];
  if (node === undefined) return undefined;
  const twin = nodeIndex.get(otherSide(node));
  const moves = [0, 1, 2].map((k) => Math.abs(shape[best * 6 + k]!));
  return {
    node,
    part: partOfNode(within.get(node) ?? node),
    isPair: twin !== undefined && twin !== best && sizeOf(twin) >= ALIKE * sizeOf(best),
    direction: WAYS[moves.indexOf(Math.max(...moves))]!,
  };
}

/** Name of the node of the other side: `grip.left`, `upperRail.right@120.0`, `plate:stay.left`. */
function otherSide(node: string): string {
  const swapped = node.replace(/\.(left|right)(?=$|[@#])/, (_, side) =>
    side === 'left' ? '.right' : '.left',
  );
  return swapped === node
    ? node.replace(/(?=[@#])/, '.right')
    : swapped.replace('.left@', '@').replace('.left#', '#');
}

const partOfNode = (node: string): string =>
  node
    .replace(/^(mass|plate|bearing):/, '')
    .split(/[@#]/)[0]!
    .replace(/^(stacks\.[^.]+)\..*$/, '$1');
