import type { Bounds, Point3 } from '../../../geometry/index.ts';
import {
  frameView,
  type LoadArrow,
  largestMovement,
  loadArrows,
  type MemberView,
  type Strength,
} from '../../../strength/index.ts';
import { arrowhead } from '../../arrow.ts';
import { type LabelRequest, type Obstacle, placeLabels } from '../../labelPlace.ts';
import { circle, line, type PaperRect, polygon } from '../../shapes.ts';
import type { PaperPoint, SheetItem } from '../../sheet.ts';
import { type View, viewCircle, viewLine } from '../../view.ts';
import type { DrawingContext } from '../context.ts';
import { printed } from '../rideWords.ts';
import { type Projector, projector } from '../scene.ts';
import { percent } from './strengthWords.ts';

/** Width of a member's line that is not used, and of one that is used up [mm]. */
const LEAST_WIDE = 0.25;
const FULL_WIDE = 1.9;
/** Longest arrow of a case, and the shortest that is drawn [mm]. */
export const LONGEST_ARROW = 15;
const LEAST_ARROW = 3;
/** Largest movement as drawn, of the width of the bike's wheelbase. */
const MOVED_SHARE = 0.06;
const LABELS = 3;
/** More arrows than this are written in newtons alone. */
const MOST_IN_BOTH = 4;
/** Forces below this share of the largest are left out of the picture. */
const LEAST_FORCE = 0.02;

/** How many times larger than it is a movement is drawn: 1, 2 or 5 by tens. */
export function movementScale(strength: Strength, caseId: string, wheelbase: number): number {
  const most = largestMovement(strength, caseId);
  if (!(most > 0)) return 1;
  const wanted = (MOVED_SHARE * wheelbase) / most;
  const tens = 10 ** Math.floor(Math.log10(wanted));
  const step = [5, 2, 1].find((one) => one * tens <= wanted) ?? 1;
  return Math.max(1, step * tens);
}

/** Frame from its side: faint as it stands, over it as it gives, thicker where more is used; arrows of what acts on it. */
export function caseDrawing(
  context: DrawingContext,
  strength: Strength,
  caseId: string,
  on: { readonly view: View; readonly area: PaperRect; readonly times: number },
): readonly SheetItem[] {
  const { view, area, times } = on;
  const p = projector(view, 'side');
  const members = frameView(strength, caseId, times);
  const arrows = drawnArrows(p, loadArrows(strength, caseId));
  // Two units at each of many arrows would hide the frame.
  const labeled: DrawingContext =
    context.system === 'both' && arrows.length > MOST_IN_BOTH ? { ...context, system: 'mm' } : context;
  const moved = members.map(({ moved: [a, b] }): Obstacle => [p.point(a), p.point(b)]);
  const requests: readonly LabelRequest[] = [
    ...worstEnds(members).map(
      ({ at, use }): LabelRequest => ({
        at: p.point(at),
        clear: 1.2,
        text: percent(use),
        style: { size: 2.8, weight: 'bold', ...(use > 1 ? { tone: 'accent' } : {}) },
      }),
    ),
    ...arrows.map(
      ({ tail, force }): LabelRequest => ({
        at: tail,
        clear: 0.8,
        text: printed(labeled, force, 'force', 1),
        style: { size: 2.6 },
      }),
    ),
  ];
  return [
    ...surroundings(context, view),
    ...members.map(({ from, to }) => line(p.point(from), p.point(to), 'dimension')),
    ...members.flatMap((member) => usedLine(p, member)),
    ...worstEnds(members).map(({ at, use }) =>
      circle(p.point(at), 1, use > 1 ? 'accent' : 'thin', use > 1 ? 'accent' : 'paper'),
    ),
    ...arrows.flatMap(({ items }) => items),
    ...placeLabels(requests, [...moved, ...arrows.map(({ tail, tip }): Obstacle => [tail, tip])], area),
  ];
}

/** What a case's picture must hold [m]: wheels, frame and the give drawn, the arrows come on top. */
export function caseBounds({ scene }: DrawingContext, strength: Strength): Bounds {
  const { rear, front } = scene.bike.layout.fitted;
  const [back, ahead] = [scene.bike.shafts.rearAxle!, scene.bike.shafts.frontAxle!];
  const points = frameView(strength).flatMap(({ from, to }) => [from, to]);
  const give = MOVED_SHARE * (ahead.x - back.x);
  return {
    minX: Math.min(back.x - rear.radius, ...points.map(({ x }) => x - give)),
    maxX: Math.max(ahead.x + front.radius, ...points.map(({ x }) => x + give)),
    minY: 0,
    maxY: Math.max(
      back.z + rear.radius,
      ahead.z + front.radius,
      ...points.map(({ z }) => z + give),
      ...strength.cases.flatMap(({ applied }) => applied.map(({ at }) => at.z)),
    ),
  };
}

function surroundings({ scene }: DrawingContext, view: View): readonly SheetItem[] {
  const { rear, front } = scene.bike.layout.fitted;
  const [back, ahead] = [scene.bike.shafts.rearAxle!, scene.bike.shafts.frontAxle!];
  const flat = ({ x, z }: Point3) => ({ x, y: z });
  return [
    viewCircle(view, flat(back), rear.radius, 'dimension'),
    viewCircle(view, flat(ahead), front.radius, 'dimension'),
    viewLine(
      view,
      [
        { x: back.x - rear.radius, y: 0 },
        { x: ahead.x + front.radius, y: 0 },
      ],
      'ground',
    ),
  ];
}

/** A strip along the member as it gives, as wide at each end as that end is used. */
function usedLine(p: Projector, { moved: [a, b], utilization }: MemberView): readonly SheetItem[] {
  const [from, to] = [p.point(a), p.point(b)];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-6) return [];
  const [nx, ny] = [-(to.y - from.y) / length, (to.x - from.x) / length];
  const half = (use: number): number => (LEAST_WIDE + (FULL_WIDE - LEAST_WIDE) * Math.min(use, 1)) / 2;
  const off = (q: PaperPoint, by: number): PaperPoint => ({ x: q.x + nx * by, y: q.y + ny * by });
  const [s, e] = [half(utilization[0]), half(utilization[1])];
  return [polygon([off(from, s), off(to, e), off(to, -e), off(from, -s)], 'none', 'ink')];
}

/** The most used place of each part, the worst few parts; of a mirrored pair the worse. */
function worstEnds(members: readonly MemberView[]): readonly { readonly at: Point3; readonly use: number }[] {
  const worst = new Map<string, { readonly at: Point3; readonly use: number }>();
  for (const { part, moved, utilization } of members) {
    const name = part.replace(/\.(right|left)$/, '');
    for (const k of [0, 1] as const)
      if (utilization[k] > (worst.get(name)?.use ?? 0))
        worst.set(name, { at: moved[k], use: utilization[k] });
  }
  return [...worst.values()].sort((a, b) => b.use - a.use).slice(0, LABELS);
}

interface DrawnArrow {
  readonly tail: PaperPoint;
  readonly tip: PaperPoint;
  /** [N] */
  readonly force: number;
  readonly items: readonly SheetItem[];
}

/** Arrows in the plane end where the force acts; one across it is a ring: with a dot toward the reader, with a cross away. */
function drawnArrows(p: Projector, loads: readonly LoadArrow[]): readonly DrawnArrow[] {
  const sizes = loads.map(({ force }) => Math.hypot(force.x, force.y, force.z));
  const most = Math.max(0, ...sizes);
  return loads.flatMap(({ at, force }, i): DrawnArrow[] => {
    const size = sizes[i]!;
    if (!(size > LEAST_FORCE * most)) return [];
    const tip = p.point(at);
    const flat = p.flat(force);
    const inPlane = Math.hypot(flat.x, flat.y);
    const across = p.near(force);
    const parts: DrawnArrow[] = [];
    if (inPlane > LEAST_FORCE * most) parts.push(planeArrow(p, tip, flat, (LONGEST_ARROW * inPlane) / most));
    if (Math.abs(across) > LEAST_FORCE * most) parts.push(acrossMark(tip, across));
    return parts.map((part, k) => (k === 0 && parts.length === 1 ? { ...part, force: size } : part));
  });
}

function planeArrow(
  p: Projector,
  tip: PaperPoint,
  force: { readonly x: number; readonly y: number },
  long: number,
): DrawnArrow {
  const turn = Math.atan2(force.y, p.view.flipX ? -force.x : force.x);
  const length = Math.max(LEAST_ARROW, long);
  const tail = { x: tip.x - length * Math.cos(turn), y: tip.y - length * Math.sin(turn) };
  return {
    tail,
    tip,
    force: Math.hypot(force.x, force.y),
    items: [line(tail, tip, 'thin'), arrowhead(tip, (turn * 180) / Math.PI, 'thin', 2.2)],
  };
}

function acrossMark(tip: PaperPoint, across: number): DrawnArrow {
  const r = 1.5;
  const d = r * Math.SQRT1_2;
  const mark: readonly SheetItem[] =
    across > 0
      ? [circle(tip, 0.45, 'thin', 'ink')]
      : [
          line({ x: tip.x - d, y: tip.y - d }, { x: tip.x + d, y: tip.y + d }, 'thin'),
          line({ x: tip.x - d, y: tip.y + d }, { x: tip.x + d, y: tip.y - d }, 'thin'),
        ];
  return {
    tail: tip,
    tip,
    force: Math.abs(across),
    items: [circle(tip, r, 'thin', 'paper'), ...mark],
  };
}
