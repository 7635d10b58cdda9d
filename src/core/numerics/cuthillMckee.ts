/** Neighbors of each vertex of an undirected graph: `neighbors[a]` holds b exactly when `neighbors[b]` holds a. */
export type Neighbors = readonly (readonly number[])[];

/**
 * Order of the vertices that keeps connected ones close together, by reverse Cuthill-McKee from an end of each
 * connected piece: it makes the skyline of a matrix low.
 * @param neighbors the graph; vertices without neighbors are taken too
 * @returns `order[k]`, the vertex that comes k-th; each vertex once
 * @source cuthill-mckee-1969, whole paper; reversal: bathe-1996, section 8.2.3
 */
export function reverseCuthillMckee(neighbors: Neighbors): Int32Array {
  const count = neighbors.length;
  const order = new Int32Array(count);
  const isPlaced = new Uint8Array(count);
  const level = new Int32Array(count).fill(-1);
  const byDegree = Array.from({ length: count }, (_, vertex) => vertex).sort(
    (a, b) => degree(neighbors, a) - degree(neighbors, b),
  );
  let filled = 0;
  for (const seed of byDegree) {
    if (isPlaced[seed]) continue;
    for (const vertex of sweep(neighbors, level, farEnd(neighbors, level, seed)).reached) {
      isPlaced[vertex] = 1;
      order[filled++] = vertex;
    }
  }
  return order.reverse();
}

const degree = (neighbors: Neighbors, vertex: number): number => neighbors[vertex]?.length ?? 0;

/** A vertex as far out as possible: walks to the last level until the levels get no more. */
function farEnd(neighbors: Neighbors, level: Int32Array, seed: number): number {
  let from = seed;
  let { last, levels } = sweep(neighbors, level, from);
  for (;;) {
    const next = sweep(neighbors, level, last);
    if (next.levels <= levels) return from;
    from = last;
    ({ last, levels } = next);
  }
}

/**
 * Breadth first from `start`, low degree first within what each vertex adds.
 * @param level room for the level of each vertex; holds -1 before and after
 */
function sweep(neighbors: Neighbors, level: Int32Array, start: number) {
  level[start] = 0;
  const reached = [start];
  for (let k = 0; k < reached.length; k++) {
    const vertex = reached[k]!;
    const next = (neighbors[vertex] ?? []).filter((one) => level[one]! < 0);
    next.sort((a, b) => degree(neighbors, a) - degree(neighbors, b));
    for (const one of next) {
      if (level[one]! >= 0) continue;
      level[one] = level[vertex]! + 1;
      reached.push(one);
    }
  }
  const levels = level[reached.at(-1)!]!;
  const outermost = reached.filter((vertex) => level[vertex] === levels);
  const last = outermost.reduce((a, b) => (degree(neighbors, b) < degree(neighbors, a) ? b : a));
  for (const vertex of reached) level[vertex] = -1;
  return { reached, levels, last };
}
