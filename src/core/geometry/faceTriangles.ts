import earcut from 'earcut';
import type { Point } from './point.ts';
import { cross2, distance2, dot2, subtract2 } from './vec2.ts';

/** Three corner numbers. */
export type Triangle = readonly [number, number, number];

/** A corner this near to an edge lies on it, as a share of the edge's length. */
const ON_EDGE = 1e-9;

/**
 * Triangles of a flat face, counterclockwise, corners numbered through all rims in order. The first rim runs
 * counterclockwise, the holes clockwise. Every edge inside the face is shared by two triangles.
 */
export function faceTriangles(rims: readonly (readonly Point[])[]): Triangle[] {
  const corners = rims.flat();
  const starts = rims.map((_, i) => rims.slice(0, i).reduce((sum, rim) => sum + rim.length, 0));
  const ears = earcut(
    corners.flatMap((p) => [p.x, p.y]),
    starts.length > 1 ? starts.slice(1) : undefined,
  );
  const triangles = Array.from({ length: ears.length / 3 }, (_, k): Triangle => {
    const [a, b, c] = [ears[3 * k]!, ears[3 * k + 1]!, ears[3 * k + 2]!];
    return turns(corners, a, b, c) > 0 ? [a, b, c] : [a, c, b];
  });
  return splitAtCorners(triangles, corners, rimEdges(rims, starts));
}

const edgeKey = (a: number, b: number): string => `${a}-${b}`;

const turns = (p: readonly Point[], a: number, b: number, c: number): number =>
  cross2(subtract2(p[b]!, p[a]!), subtract2(p[c]!, p[a]!));

function rimEdges(rims: readonly (readonly Point[])[], starts: readonly number[]): Set<string> {
  return new Set(
    rims.flatMap((rim, i) => rim.map((_, k) => edgeKey(starts[i]! + k, starts[i]! + ((k + 1) % rim.length)))),
  );
}

/**
 * Ear clipping leaves out corners that lie on a straight line with their neighbors, so that a long edge faces two short
 * ones. Each such edge is split at the corner on it.
 */
function splitAtCorners(
  triangles: readonly Triangle[],
  corners: readonly Point[],
  rim: ReadonlySet<string>,
): Triangle[] {
  const done: Triangle[] = [];
  let open = [...triangles];
  while (open.length > 0) {
    const used = new Set(
      [...done, ...open].flatMap(([a, b, c]) => [edgeKey(a, b), edgeKey(b, c), edgeKey(c, a)]),
    );
    const next: Triangle[] = [];
    for (const triangle of open) {
      const halves = splitOnce(
        triangle,
        corners,
        (a, b) => rim.has(edgeKey(a, b)) || used.has(edgeKey(b, a)),
      );
      if (halves) next.push(...halves);
      else done.push(triangle);
    }
    open = next;
  }
  return done;
}

function splitOnce(
  triangle: Triangle,
  corners: readonly Point[],
  isMatched: (a: number, b: number) => boolean,
): readonly Triangle[] | undefined {
  for (const k of [0, 1, 2]) {
    const [a, b, c] = [triangle[k]!, triangle[(k + 1) % 3]!, triangle[(k + 2) % 3]!];
    if (isMatched(a, b)) continue;
    const v = cornerBetween(corners, a, b);
    if (v !== undefined) {
      return [
        [a, v, c],
        [v, b, c],
      ];
    }
  }
  return undefined;
}

/** The corner on the edge from a to b that lies nearest to a. */
function cornerBetween(corners: readonly Point[], a: number, b: number): number | undefined {
  const [p, q] = [corners[a]!, corners[b]!];
  const d = subtract2(q, p);
  const squared = dot2(d, d);
  let best: number | undefined;
  corners.forEach((v, i) => {
    const w = subtract2(v, p);
    const share = dot2(w, d) / squared;
    const isOn = share > ON_EDGE && share < 1 - ON_EDGE && Math.abs(cross2(d, w)) <= ON_EDGE * squared;
    if (isOn && (best === undefined || distance2(p, v) < distance2(p, corners[best]!))) best = i;
  });
  return best;
}
