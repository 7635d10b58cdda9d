import type { PlateCorner } from '../build/index.ts';
import {
  add2,
  bulgeOfSweep,
  counterclockwise,
  cross2,
  distance2,
  dot2,
  type Loop,
  type LoopVertex,
  type Point,
  scale2,
  subtract2,
  unit2,
} from '../geometry/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** Lengths below this are no lengths [m]. */
const NOTHING = 1e-9;

/**
 * Outline of corners that are rounded by a radius or followed by an arc of a bulge; counterclockwise. A radius wants
 * straight sides: tangent length = r·tan(turn/2).
 * @issue conflict — a radius beside an arc, two corners in one place, radii that need more of a side than it has
 * @source derived, tangent arc in a corner
 */
export function cornersLoop(corners: readonly PlateCorner[], path: string): Outcome<Loop> {
  const n = corners.length;
  const issues: Issue[] = [];
  const cuts = corners.map((corner, i) => {
    const cut = cornerCut(corners[(i + n - 1) % n]!, corner, corners[(i + 1) % n]!);
    if (typeof cut !== 'string') return cut;
    issues.push({ code: 'conflict', path: `${path}[${i}]`, reason: cut });
    return NO_CUT;
  });
  cuts.forEach((cut, i) => {
    const side = distance2(corners[i]!, corners[(i + 1) % n]!);
    const wanted = cut.tangent + cuts[(i + 1) % n]!.tangent;
    if (wanted > side + NOTHING) {
      const reason = `the corner radii on this side need ${(wanted * 1e3).toFixed(2)} mm of its ${(side * 1e3).toFixed(2)} mm`;
      issues.push({ code: 'conflict', path: `${path}[${i}]`, reason });
    }
  });
  if (n === 2 && corners.every((corner) => (corner.bulge ?? 0) === 0))
    issues.push({ code: 'conflict', path, reason: 'two corners enclose nothing unless an arc joins them' });
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const vertices = corners.flatMap((corner, i) =>
    cornerVertices(corners[(i + n - 1) % n]!, corner, corners[(i + 1) % n]!, cuts[i]!),
  );
  const clean = vertices.filter(
    (v, i) => v.bulge !== 0 || distance2(v, vertices[(i + 1) % vertices.length]!) > NOTHING,
  );
  return good(counterclockwise(clean));
}

interface CornerCut {
  readonly tangent: number;
  readonly turn: number;
}

const NO_CUT: CornerCut = { tangent: 0, turn: 0 };

function cornerCut(before: PlateCorner, corner: PlateCorner, after: PlateCorner): CornerCut | string {
  if (distance2(before, corner) <= NOTHING || distance2(corner, after) <= NOTHING)
    return 'two corners lie in one place';
  const radius = corner.radius ?? 0;
  if (radius === 0) return NO_CUT;
  if ((before.bulge ?? 0) !== 0 || (corner.bulge ?? 0) !== 0)
    return 'a corner beside an arc takes no radius; give the arc by its bulge alone';
  const arriving = subtract2(corner, before);
  const leaving = subtract2(after, corner);
  const turn = Math.atan2(cross2(arriving, leaving), dot2(arriving, leaving));
  if (Math.PI - Math.abs(turn) < 1e-9) return 'the outline turns straight back here';
  return { tangent: radius * Math.tan(Math.abs(turn) / 2), turn };
}

function cornerVertices(before: Point, corner: PlateCorner, after: Point, cut: CornerCut): LoopVertex[] {
  const { x, y } = corner;
  if (cut.tangent <= NOTHING) return [{ x, y, bulge: corner.bulge ?? 0 }];
  const back = scale2(unit2(subtract2(before, corner)), cut.tangent);
  const on = scale2(unit2(subtract2(after, corner)), cut.tangent);
  return [
    { ...add2(corner, back), bulge: bulgeOfSweep(cut.turn) },
    { ...add2(corner, on), bulge: 0 },
  ];
}
