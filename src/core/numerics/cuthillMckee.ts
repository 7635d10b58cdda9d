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
  const byDegree = Array.from({ length: count }, (_, vertex) => vertex).sort(
    (a, b) => degree(neighbors, a) - degree(neighbors, b),
  );
  let filled = 0;
  for (const seed of byDegree) {
    if (isPlaced[seed]) continue;
    for (const vertex of sweep(neighbors, farEnd(neighbors, seed)).reached) {
      isPlaced[vertex] = 1;
      order[filled++] = vertex;
    }
  }
  return order.reverse();
}

const degree = (neighbors: Neighbors, vertex: number): number => neighbors[vertex]?.length ?? 0;

/** A vertex as far out as possible: walks to the last level until the levels get no more. */
function farEnd(neighbors: Neighbors, seed: number): number {
  let from = seed;
  let { last, levels } = sweep(neighbors, from);
  for (;;) {
    const next = sweep(neighbors, last);
    if (next.levels <= levels) return from;
    from = last;
    ({ last, levels } = next);
  }
}

/** Breadth first from `start`, low degree first within what each vertex adds. */
function sweep(neighbors: Neighbors, start: number) {
  const level = new Map<number, number>([[start, 0]]);
  const reached = [start];
  for (let k = 0; k < reached.length; k++) {
    const vertex = reached[k]!;
    const next = (neighbors[vertex] ?? []).filter((one) => !level.has(one));
    next.sort((a, b) => degree(neighbors, a) - degree(neighbors, b));
    for (const one of next) {
      if (level.has(one)) continue;
      level.set(one, level.get(vertex)! + 1);
      reached.push(one);
    }
  }
  const levels = level.get(reached.at(-1)!)!;
  const outermost = reached.filter((vertex) => level.get(vertex) === levels);
  const last = outermost.reduce((a, b) => (degree(neighbors, b) < degree(neighbors, a) ? b : a));
  return { reached, levels, last };
}
