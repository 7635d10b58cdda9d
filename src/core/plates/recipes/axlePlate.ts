import type { PlateOf } from '../../build/index.ts';
import {
  type Circle,
  distance2,
  dot2,
  hullLoop,
  type Loop,
  left2,
  type Point,
  polar2,
  scale2,
} from '../../geometry/index.ts';
import { bad, good, mm, type Outcome } from '../../quantity/index.ts';
import {
  bendStart,
  type Flange,
  flangeBendLine,
  flangePoint,
  onFlange,
  planBend,
  withFlange,
} from '../bends.ts';
import { shaftDiameter, standingFrame, standingY } from '../frames.ts';
import { boltHole, holePlan, tappedHole } from '../openings.ts';
import { materialOf, type OpeningPlan, type PlateContext, type PlateShape } from '../plan.ts';
import { plateSlot } from '../slots.ts';

type Entry = PlateOf<'axle-plate'>;

/** Slot wider than the axle by (common practice) [m]. */
const AXLE_PLAY = mm(0.5);
const SQUARE = Math.PI / 2;

/**
 * Plate with the slot of an axle: the outline reaches round both slot ends and round the tube ends that land on it;
 * behind the tight end, if wanted, a flange bent square with the adjuster bolt.
 * @source derived, hull of circles; practice, slot = axle + 0.5 mm wide
 */
export function axlePlate(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const shaft = entry.shaft ?? 'rearAxle';
  const axle = shaftDiameter(context, shaft, entry.axle);
  if (axle === undefined)
    return bad({ code: 'missing', path: 'axle', wanted: `the diameter of ${shaft}, here or in its stack` });
  const slide = context.build.driveline.shafts[shaft]?.slide;
  const need = context.needs.find((one) => one.shaft === shaft);
  const direction = need?.direction ?? slide?.direction ?? Math.PI;
  const slot = plateSlot(context, shaft, entry.travel, direction);
  const opening: OpeningPlan = {
    id: 'axle',
    kind: slot.travel > 0 ? 'slot' : 'hole',
    center: polar2({ x: 0, y: 0 }, slot.middle, direction),
    diameter: axle + (entry.clearance ?? AXLE_PLAY),
    ...(slot.travel > 0 ? { travel: slot.travel, direction, slides: shaft } : {}),
    for: 'axle',
    carries: 'bolt',
    system: 'metric',
  };
  const landings = landingCircles(context, entry, shaft);
  if (!landings.ok) return landings;
  const outer = standingY(context, shaft, entry) ?? 1;
  const shape = entry.adjuster
    ? adjustedShape(entry, opening, direction, landings.value, outer)
    : plainShape(entry, opening, landings.value, direction);
  if (!shape.ok) return shape;
  return good({
    title: 'Axle plate',
    ...shape.value,
    punches: landings.value.map(({ center, at }) => ({ at: center, for: `tube end at ${at}` })),
    checks: landings.value
      .filter(({ center }) => distance2(center, opening.center) > 0)
      .map(({ center, at }) => ({ name: `slot middle to ${at}`, from: opening.center, to: center })),
    up: { direction: { x: 0, y: 1 }, says: 'UP' },
    ...standingFrame(context, shaft, standingY(context, shaft, entry), entry.thickness),
    flaws: slot.flaws,
  });
}

interface Landing extends Circle {
  readonly at: string;
}

function landingCircles(context: PlateContext, entry: Entry, shaft: string): Outcome<readonly Landing[]> {
  const center = context.bike.layout.shafts[shaft];
  const circles: Landing[] = [];
  for (const [i, landing] of entry.landings.entries()) {
    const node = context.bike.layout.points[landing.at];
    const tube = context.build.frame.tubing[landing.tubing];
    if (!node || !center)
      return bad({
        code: 'unknown-name',
        path: `landings[${i}].at`,
        given: landing.at,
        wanted: 'frame node',
      });
    if (!tube)
      return bad({
        code: 'unknown-name',
        path: `landings[${i}].tubing`,
        given: landing.tubing,
        wanted: 'tubing',
      });
    circles.push({
      at: landing.at,
      center: { x: node.x - center.x, y: node.z - center.z },
      radius: tube.outside / 2 + (landing.margin ?? tube.outside / 2),
    });
  }
  return good(circles);
}

type Drawn = Pick<PlateShape, 'outline' | 'openings' | 'bends'>;

const slotEnds = (opening: OpeningPlan, direction: number): readonly [Point, Point] => [
  polar2(opening.center, -(opening.travel ?? 0) / 2, direction),
  polar2(opening.center, (opening.travel ?? 0) / 2, direction),
];

function plainShape(
  entry: Entry,
  opening: OpeningPlan,
  landings: readonly Landing[],
  direction: number,
): Outcome<Drawn> {
  const radius = opening.diameter / 2 + entry.margin;
  const ends = slotEnds(opening, direction).map((center) => ({ center, radius }));
  return good({ outline: hullLoop([...ends, ...landings]), openings: [opening] });
}

function adjustedShape(
  entry: Entry,
  opening: OpeningPlan,
  direction: number,
  landings: readonly Landing[],
  y: number,
): Outcome<Drawn> {
  const adjuster = entry.adjuster!;
  const bend = planBend(
    { angle: SQUARE, insideRadius: adjuster.insideRadius },
    { thickness: entry.thickness, material: materialOf(entry) },
    'adjuster',
  );
  if (!bend.ok) return bend;
  const bolt = adjuster.tapped
    ? tappedHole(adjuster.bolt, 'adjuster.bolt')
    : boltHole(adjuster.bolt, 'adjuster.bolt');
  if (!bolt.ok) return bolt;
  const u = { x: Math.cos(direction), y: Math.sin(direction) };
  const [slack, tight] = slotEnds(opening, direction);
  const flange: Flange = {
    direction: u,
    across: 0,
    width: adjuster.width,
    face: dot2(tight, u) + opening.diameter / 2 + (adjuster.behind ?? entry.margin),
    length: adjuster.length,
    bend: bend.value,
  };
  const outline = flangedHull(entry, opening, [slack, tight], landings, flange);
  if (!outline.ok) return outline;
  // z of a plate that stands fore and aft points to the right, so outside is down on the left and up on the right.
  const outside = y >= 0 ? 'down' : 'up';
  const inside = y >= 0 ? 'up' : 'down';
  return good({
    outline: outline.value,
    openings: [
      opening,
      holePlan('adjuster', flangePoint(flange, onFlange(flange, adjuster.out), 0), bolt.value),
    ],
    bends: [flangeBendLine(flange, adjuster.toward === 'inside' ? inside : outside)],
  });
}

/** Hull round slack end and landings that ends flat where the flange begins, with the flange added. */
function flangedHull(
  entry: Entry,
  opening: OpeningPlan,
  [slack, tight]: readonly [Point, Point],
  landings: readonly Landing[],
  flange: Flange,
): Outcome<Loop> {
  const radius = opening.diameter / 2 + entry.margin;
  const start = bendStart(flange);
  const across = scale2(left2(flange.direction), radius);
  const flat = (p: Point): Circle => ({ center: p, radius: 0 });
  const hull = hullLoop([
    { center: slack, radius },
    ...landings,
    flat({ x: tight.x + across.x, y: tight.y + across.y }),
    flat({ x: tight.x - across.x, y: tight.y - across.y }),
    flat(flangePoint(flange, start, -flange.width / 2)),
    flat(flangePoint(flange, start, flange.width / 2)),
  ]);
  return withFlange(hull, flange, 'adjuster');
}
