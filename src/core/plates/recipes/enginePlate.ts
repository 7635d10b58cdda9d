import type { PlateOf } from '../../build/index.ts';
import { boundsOfPoints, type Frame3, type Point, roundedRectangleLoop } from '../../geometry/index.ts';
import { good, type Outcome } from '../../quantity/index.ts';
import { LEFT } from '../frames.ts';
import { atPath, type BoltHole, boltHole, holePlan, openingEnds, SLOT_PLAY } from '../openings.ts';
import type { CheckLength } from '../pattern.ts';
import type { OpeningPlan, PlateContext, PlateShape } from '../plan.ts';
import { type PlateSlot, plateSlot } from '../slots.ts';

type Entry = PlateOf<'engine-plate'>;

/** Names of the four holes, front to rear, left before right. */
const CORNER_NAMES = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;

/**
 * Plate between engine and rails: the engine's four holes, slotted along the plate as far as the drives need, and two
 * rows of rail bolts; a rectangle with the margin outside the outermost centers.
 * @source practice, slot = bolt + 0.5 mm wide; edge 1.5 to 2 diameters
 */
export function enginePlate(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const mount = boltHole(context.build.engine.mount.bolt, 'engine.mount.bolt');
  if (!mount.ok) return mount;
  const rail = boltHole(entry.rails.bolt, 'rails.bolt');
  if (!rail.ok) return rail;
  const tilt = context.build.engine.tilt ?? 0;
  const asked = entry.slotted ?? (context.build.driveline.shafts.engine?.slide ? 'engine' : 'none');
  const slot = asked === 'none' ? undefined : plateSlot(context, 'engine', entry.travel, tilt);
  const engine = patternOpenings(
    engineCenters(context, entry),
    CORNER_NAMES,
    mount.value,
    'engine',
    asked === 'engine' ? slot : undefined,
  );
  // Slotted rails move with the plate, so the bolts stand the other way in them.
  const onRails = asked === 'rails' && slot ? { ...slot, middle: -slot.middle } : undefined;
  const rails = patternOpenings(railCenters(context, entry), railNames(entry), rail.value, 'rail', onRails);
  const openings = [...engine, ...rails];
  const margin = entry.margin ?? 2 * Math.max(mount.value.boltDiameter, rail.value.boltDiameter);
  const box = boundsOfPoints(openings.flatMap((opening) => [...openingEnds(opening)]));
  const outline = atPath(
    roundedRectangleLoop(
      { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
      box.maxX - box.minX + 2 * margin,
      box.maxY - box.minY + 2 * margin,
      entry.corner ?? margin,
    ),
    'corner',
  );
  if (!outline.ok) return outline;
  return good({
    title: 'Engine plate',
    outline: outline.value,
    openings,
    checks: [...rectangleChecks(engine, 'engine'), ...rectangleChecks(endsOfRows(rails), 'rail')],
    up: { direction: { x: 1, y: 0 }, says: 'FORWARD' },
    frame: engineFrame(context, tilt, entry.thickness),
    sources: [mount.value.source, rail.value.source],
    flaws: slot ? slot.flaws : [],
  });
}

/** The engine's holes in its own order; turned a quarter, the long spacing goes across. */
function engineCenters(context: PlateContext, entry: Entry): readonly Point[] {
  const { alongBike, acrossBike } = context.build.engine.mount;
  const [along, across] = entry.turned ? [acrossBike, alongBike] : [alongBike, acrossBike];
  return [1, -1].flatMap((x) => [1, -1].map((y) => ({ x: (x * along) / 2, y: (y * across) / 2 })));
}

/** Rails lie either side of the bike's center plane, wherever the engine stands across it. */
function railCenters({ bike }: PlateContext, entry: Entry): readonly Point[] {
  const { spacing, pitch, bolts, forward = 0 } = entry.rails;
  const engineY = bike.layout.points.engineBase?.y ?? 0;
  return [1, -1].flatMap((side) =>
    Array.from({ length: bolts }, (_, i) => ({
      x: forward + ((bolts - 1) / 2 - i) * pitch,
      y: (side * spacing) / 2 - engineY,
    })),
  );
}

const railNames = (entry: Entry): readonly string[] =>
  ['left', 'right'].flatMap((side) =>
    Array.from({ length: entry.rails.bolts }, (_, i) => `${side}-${i + 1}`),
  );

function patternOpenings(
  centers: readonly Point[],
  names: readonly string[],
  hole: BoltHole,
  prefix: string,
  slot: PlateSlot | undefined,
): OpeningPlan[] {
  return centers.map((center, i) => {
    const round = holePlan(`${prefix}-${names[i]}`, center, hole);
    if (!slot || slot.travel === 0) return round;
    return {
      ...round,
      kind: 'slot',
      center: { x: center.x + slot.middle, y: center.y },
      diameter: hole.boltDiameter + SLOT_PLAY,
      travel: slot.travel,
      direction: 0,
      slides: 'engine',
    };
  });
}

/** First and last hole of each rail row, in the order of the engine's corners. */
function endsOfRows(rails: readonly OpeningPlan[]): readonly OpeningPlan[] {
  const n = rails.length / 2;
  return n < 2 ? [] : [rails[0]!, rails[n]!, rails[n - 1]!, rails[2 * n - 1]!];
}

/** Both sides and both diagonals: equal diagonals prove the pattern square. */
function rectangleChecks(holes: readonly OpeningPlan[], name: string): CheckLength[] {
  if (holes.length !== 4) return [];
  const [fl, fr, rl, rr] = holes.map((hole) => hole.center) as [Point, Point, Point, Point];
  return [
    { name: `${name} along`, from: rl, to: fl },
    { name: `${name} across`, from: fr, to: fl },
    { name: `${name} diagonal`, from: rr, to: fl },
    { name: `${name} other diagonal`, from: rl, to: fr },
  ];
}

/** The base of the engine lies on the plate's upper face. */
function engineFrame(context: PlateContext, tilt: number, thickness: number): Frame3 {
  const base = context.bike.layout.points.engineBase ?? context.bike.engine.base;
  const x = { x: Math.cos(tilt), y: 0, z: Math.sin(tilt) };
  const z = { x: -Math.sin(tilt), y: 0, z: Math.cos(tilt) };
  return {
    origin: { x: base.x - thickness * z.x, y: base.y, z: base.z - thickness * z.z },
    x,
    y: LEFT,
    z,
  };
}
