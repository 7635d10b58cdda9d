import { placePoint } from '../../bike/index.ts';
import type { PlateOf } from '../../build/index.ts';
import { add3, hullLoop, type Loop, type Point, type Point3, scale3 } from '../../geometry/index.ts';
import { bad, good, type Outcome } from '../../quantity/index.ts';
import { middleFrame, planeAxes } from '../frames.ts';
import { atPath, boltHole, holePlan } from '../openings.ts';
import type { OpeningPlan, PlateContext, PlateShape } from '../plan.ts';

type Entry = PlateOf<'peg-tab'> | PlateOf<'stand-tab'>;

/**
 * Round-nosed tab on a tube, origin at the hole center, y away from the tube. The base is straight, along the tube, or
 * hollowed to the tube's radius where the tab stands square to it.
 * @source derived, hull of nose and base; saddle: arc of the tube's radius with sweep 2·asin(base / tube)
 */
export function tab(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const hole = boltHole(entry.bolt, 'bolt', 'close');
  if (!hole.ok) return hole;
  const place = atPath(placePoint(context.bike.layout.points, entry.place), 'place');
  if (!place.ok) return place;
  const outline = tabLoop(entry);
  if (!outline.ok) return outline;
  const stop: OpeningPlan[] =
    entry.recipe === 'stand-tab' && entry.stop
      ? [
          {
            id: 'stop',
            kind: 'hole',
            center: { x: entry.stop.x, y: entry.stop.y },
            diameter: entry.stop.diameter,
            for: 'stop pin',
            carries: 'bolt',
            system: 'metric',
          },
        ]
      : [];
  return good({
    title: entry.recipe === 'peg-tab' ? 'Peg tab' : 'Side stand tab',
    outline: outline.value,
    openings: [holePlan('pivot', { x: 0, y: 0 }, hole.value), ...stop],
    checks: [{ name: 'hole to tube', from: { x: 0, y: 0 }, to: { x: 0, y: -entry.height } }],
    frame: tabFrame(entry, place.value),
    sources: [hole.value.source],
  });
}

function tabLoop(entry: Entry): Outcome<Loop> {
  const refuse = (path: string, reason: string) => bad({ code: 'conflict', path, reason });
  const base = entry.base ?? 2 * entry.noseRadius;
  const saddle = entry.seat === 'saddle';
  if (!(entry.height > entry.noseRadius))
    return refuse(
      'height',
      'the round nose reaches into the tube: stand the hole farther off or make the nose smaller',
    );
  if (saddle && !(base < entry.tube)) return refuse('base', 'a saddle must be narrower than its tube');
  const half = base / 2;
  const r = entry.tube / 2;
  const drop = saddle ? r - Math.sqrt(r * r - half * half) : 0;
  const corner = (x: number): Point => ({ x, y: -entry.height - drop });
  const hull = hullLoop([
    { center: { x: 0, y: 0 }, radius: entry.noseRadius },
    { center: corner(-half), radius: 0 },
    { center: corner(half), radius: 0 },
  ]);
  if (!saddle) return good(hull);
  // From the left corner over the crown of the tube to the right one: clockwise about the tube.
  const bulge = -Math.tan(Math.asin(half / r) / 2);
  const start = corner(-half);
  return good(
    hull.map((v) => (Math.hypot(v.x - start.x, v.y - start.y) < 1e-9 && v.bulge === 0 ? { ...v, bulge } : v)),
  );
}

/** Hole center out from the tube's axis along the way the tab stands; the plate's middle passes through it. */
function tabFrame(entry: Entry, at: Point3) {
  const [a, b] = planeAxes[entry.plane ?? 'side'];
  const turn = entry.stands ?? Math.PI / 2;
  const y = add3(scale3(a, Math.cos(turn)), scale3(b, Math.sin(turn)));
  const x = add3(scale3(a, Math.sin(turn)), scale3(b, -Math.cos(turn)));
  return middleFrame(add3(at, scale3(y, entry.tube / 2 + entry.height)), x, y, entry.thickness);
}
