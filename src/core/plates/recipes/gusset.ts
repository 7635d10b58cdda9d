import type { PlateOf } from '../../build/index.ts';
import {
  add2,
  add3,
  angleBetween3,
  bulgeOfSweep,
  cross3,
  distance2,
  dot3,
  type Loop,
  type Point,
  type Point3,
  polar2,
  scale2,
  scale3,
  subtract3,
  unit3,
} from '../../geometry/index.ts';
import { bad, good, type Outcome, practice } from '../../quantity/index.ts';
import { middleFrame } from '../frames.ts';
import type { PlateContext, PlateShape } from '../plan.ts';

type Entry = PlateOf<'gusset'>;

/** Tubes nearer to in line or folded back than this take no gusset between them [rad]: 5 degrees. */
const LEAST_ANGLE = (5 * Math.PI) / 180;
const ORIGIN: Point = { x: 0, y: 0 };

interface Arm {
  /** Unit vector away from the joint. */
  readonly direction: Point3;
  /** [m] */
  readonly radius: number;
}

/**
 * Gusset in the plane of two tube axes, its legs on the tubes' sides: they meet at the origin, r1 and r2 away from the
 * axes. The nose is relieved over the weld of the joint, the ends are blunt, square to the tube.
 * @source derived, lines parallel to the axes; practice, a gusset ends on the side of the tube
 */
export function gusset(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const arms = armsOf(context, entry);
  if (!arms.ok) return arms;
  const [first, second] = arms.value;
  const angle = angleBetween3(first.direction, second.direction);
  if (!(angle > LEAST_ANGLE && angle < Math.PI - LEAST_ANGLE))
    return bad({
      code: 'conflict',
      path: 'between',
      reason: 'the two tubes are in line: there is no corner for a gusset',
    });
  const outline = gussetLoop(entry, angle);
  if (!outline.ok) return outline;
  return good({
    title: 'Gusset',
    outline: outline.value,
    openings: [],
    punches: [],
    checks: [
      { name: `leg on ${entry.between[0]}`, from: nosePoint(entry, 0), to: polar2(ORIGIN, entry.legs[0], 0) },
      {
        name: `leg on ${entry.between[1]}`,
        from: nosePoint(entry, angle),
        to: polar2(ORIGIN, entry.legs[1], angle),
      },
    ],
    frame: gussetFrame(context.bike.layout.points[entry.at]!, first, second, angle, entry.thickness),
    notes: ['Both ends stop on the side of the tube; do not run the weld round the ends across it.'],
    sources: [practice('gusset ends on the side of the tube')],
  });
}

const noseOf = (entry: Entry): number => entry.nose ?? 2 * entry.thickness;
const nosePoint = (entry: Entry, angle: number): Point => polar2(ORIGIN, noseOf(entry), angle);

function gussetLoop(entry: Entry, angle: number): Outcome<Loop> {
  const [l1, l2] = entry.legs;
  const end = entry.end ?? 3 * entry.thickness;
  const nose = noseOf(entry);
  if (!(nose < Math.min(l1, l2)))
    return bad({ code: 'conflict', path: 'nose', reason: 'the relief over the weld is longer than a leg' });
  const p1 = polar2(ORIGIN, l1, 0);
  const p2 = polar2(ORIGIN, l2, angle);
  const q1 = { x: l1, y: end };
  const q2 = add2(p2, scale2({ x: Math.sin(angle), y: -Math.cos(angle) }, end));
  const chord = distance2(q1, q2);
  const hollow = entry.hollow ?? 0;
  if (hollow > chord / 2)
    return bad({ code: 'conflict', path: 'hollow', reason: 'the hollow is deeper than half the free edge' });
  const corner = (p: Point, bulge = 0) => ({ x: p.x, y: p.y, bulge });
  const loop = [corner(p1), corner(q1, hollow === 0 ? 0 : (-2 * hollow) / chord), corner(q2), corner(p2)];
  if (nose === 0) return good([corner(ORIGIN), ...loop]);
  // Back round the joint clockwise, hollow toward it.
  return good([corner(nosePoint(entry, 0)), ...loop, corner(nosePoint(entry, angle), bulgeOfSweep(-angle))]);
}

function armsOf(context: PlateContext, entry: Entry): Outcome<readonly [Arm, Arm]> {
  if (!context.bike.layout.points[entry.at])
    return bad({ code: 'unknown-name', path: 'at', given: entry.at, wanted: 'frame node' });
  const [a, b] = entry.between.map((name) => armChoices(context, entry.at, name)) as [
    readonly Arm[],
    readonly Arm[],
  ];
  if (a.length === 0 || b.length === 0) {
    const i = a.length === 0 ? 0 : 1;
    const reason = `tube "${entry.between[i]}" does not pass node "${entry.at}"`;
    return bad({ code: 'conflict', path: `between[${i}]`, reason });
  }
  // A tube that passes through the joint leaves it both ways; the gusset sits in the sharper corner.
  const pairs = a.flatMap((p) => b.map((q) => [p, q] as const));
  const sharpest = pairs.reduce((best, pair) =>
    dot3(pair[0].direction, pair[1].direction) > dot3(best[0].direction, best[1].direction) + 1e-9
      ? pair
      : best,
  );
  return good(sharpest);
}

/** Ways in which a tube, or the neck, leaves a node. */
function armChoices(context: PlateContext, at: string, name: string): readonly Arm[] {
  const { points, steeringAxis } = context.bike.layout;
  if (name === 'neck') {
    const radius = context.build.steering.neck.outside / 2;
    return [scale3(steeringAxis, -1), steeringAxis].map((direction) => ({ direction, radius }));
  }
  const tube = context.build.frame.tubes[name];
  const here = points[at];
  const tubing = tube && context.build.frame.tubing[tube.tubing];
  if (!tube || !tubing || !here) return [];
  return tube.through.flatMap((node, i) =>
    node !== at
      ? []
      : [tube.through[i - 1], tube.through[i + 1]].flatMap((next): Arm[] => {
          const there = next === undefined ? undefined : points[next];
          return there ? [{ direction: unit3(subtract3(there, here)), radius: tubing.outside / 2 }] : [];
        }),
  );
}

/** Frame on the point where the tube sides meet; x along the first tube, plate in the middle of the tubes. */
function gussetFrame(node: Point3, first: Arm, second: Arm, angle: number, thickness: number) {
  const normal = unit3(cross3(first.direction, second.direction));
  const y = cross3(normal, first.direction);
  // Side of tube 1 is y = r1; side of tube 2 is its axis moved r2 toward tube 1: (sin, −cos)·r2.
  const x0 = (second.radius + first.radius * Math.cos(angle)) / Math.sin(angle);
  const origin = add3(node, add3(scale3(first.direction, x0), scale3(y, first.radius)));
  return middleFrame(origin, first.direction, y, thickness);
}
