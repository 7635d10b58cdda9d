import type { PlateOf } from '../../build/index.ts';
import { add2, type Circle, hullLoop, type Point, polar2 } from '../../geometry/index.ts';
import { bad, derived, good, mm, type Outcome } from '../../quantity/index.ts';
import { shaftDiameter, standingFrame } from '../frames.ts';
import { boltHole, holePlan, tappedHole } from '../openings.ts';
import type { CheckLength, PlateFlaw } from '../pattern.ts';
import type { OpeningPlan, PlateContext, PlateShape } from '../plan.ts';

type Entry = PlateOf<'caliper-bracket'>;

/** Room of the axle in the bracket's hole (common practice) [m]. */
const AXLE_PLAY = mm(0.25);
/** Pads may lose this much overlap before it is said [m]. */
const OVERLAP_LOST = mm(1);
const ORIGIN: Point = { x: 0, y: 0 };

/**
 * Bracket of a disc caliper. Lug holes lie half the mount spacing to either side of the point at `lugRadius` from the
 * axle in the direction of the caliper, square to that direction.
 * @source derived, coordinates from axle center, lug radius, clock and mount spacing
 */
export function caliperBracket(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const brake = context.build.brakes[entry.brake];
  if (brake?.kind !== 'disc')
    return bad({ code: 'conflict', path: 'brake', reason: `the ${entry.brake} brake is not a disc brake` });
  const { caliper } = brake;
  const boltName = boltText(caliper.bolt);
  const lug = entry.tappedLugs ? tappedHole(boltName, 'caliper.bolt') : boltHole(boltName, 'caliper.bolt');
  if (!lug.ok) return lug;
  const lugs = [1, -1].map((side, i) => {
    const out = polar2(ORIGIN, caliper.lugRadius, caliper.clock);
    const across = polar2(ORIGIN, (side * caliper.mountSpacing) / 2, caliper.clock + Math.PI / 2);
    return holePlan(`lug-${i + 1}`, add2(out, across), lug.value);
  });
  const anchors = anchorHoles(entry);
  if (!anchors.ok) return anchors;
  const axle = axleHole(context, entry);
  if (!axle.ok) return axle;
  const openings = [...axle.value, ...lugs, ...anchors.value];
  const circles: Circle[] = openings.map(({ center, diameter }) => ({
    center,
    radius: diameter / 2 + (entry.margin ?? diameter),
  }));
  return good({
    title: `Caliper bracket, ${entry.brake}`,
    outline: hullLoop(circles),
    openings,
    punches: axle.value.length > 0 ? [] : [{ at: ORIGIN, for: 'axle center' }],
    checks: bracketChecks(lugs, anchors.value),
    up: { direction: { x: 0, y: 1 }, says: 'UP' },
    ...standingFrame(context, `${entry.brake}Axle`, entry.y ?? bracketY(context, entry), entry.thickness),
    sources: [lug.value.source],
    flaws: overlapFlaws(context, entry, caliper.clock),
  });
}

/** Bolt of a diameter: metric where it is a whole number of millimeters, else inch fractions. */
function boltText(diameter: number): string {
  const millimeters = diameter * 1e3;
  if (Math.abs(millimeters - Math.round(millimeters)) < 0.02) return `M${Math.round(millimeters)}`;
  const sixteenths = Math.round((diameter / 0.0254) * 16);
  const divisor = [8, 4, 2, 1].find((d) => sixteenths % d === 0) ?? 1;
  return `${sixteenths / divisor}/${16 / divisor}`;
}

function axleHole(context: PlateContext, entry: Entry): Outcome<readonly OpeningPlan[]> {
  if (entry.axleHole === false) return good([]);
  const shaft = `${entry.brake}Axle`;
  const axle = shaftDiameter(context, shaft, entry.axle) ?? context.build.wheels[entry.brake].hub.bore;
  return good([
    {
      id: 'axle',
      kind: 'hole',
      center: ORIGIN,
      diameter: axle + AXLE_PLAY,
      for: 'axle',
      carries: 'bolt',
      system: 'metric',
    },
  ]);
}

function anchorHoles(entry: Entry): Outcome<readonly OpeningPlan[]> {
  const plans: OpeningPlan[] = [];
  for (const [i, anchor] of (entry.anchors ?? []).entries()) {
    const hole = boltHole(anchor.bolt, `anchors[${i}].bolt`);
    if (!hole.ok) return hole;
    plans.push(holePlan(`anchor-${i + 1}`, polar2(ORIGIN, anchor.radius, anchor.clock), hole.value));
  }
  if (entry.axleHole === false && plans.length === 0)
    return bad({
      code: 'missing',
      path: 'anchors',
      wanted: 'the bolts that hold a bracket that does not hang on the axle',
    });
  return good(plans);
}

/** Middle of the bracket: it lies against the lug face, on the side of the wheel. */
function bracketY(context: PlateContext, entry: Entry): number | undefined {
  const brake = context.build.brakes[entry.brake];
  const placed = context.bike.brakes.find((one) => one.wheel === entry.brake && one.kind === 'disc');
  if (brake?.kind !== 'disc' || !placed) return undefined;
  const outward = brake.side === 'left' ? 1 : -1;
  return placed.y - outward * (brake.caliper.lugOffset + entry.thickness / 2);
}

/** A bracket fixed to the frame loses pad overlap when the axle slides: the part of the slide along the caliper's radius. */
function overlapFlaws(context: PlateContext, entry: Entry, clock: number): readonly PlateFlaw[] {
  const need = context.needs.find((one) => one.shaft === 'rearAxle');
  const slide = context.build.driveline.shafts.rearAxle?.slide;
  const travel = need?.length ?? slide?.travel;
  if (entry.brake !== 'rear' || entry.axleHole !== false || travel === undefined) return [];
  const direction = need?.direction ?? slide?.direction ?? Math.PI;
  const lost = travel * Math.abs(Math.cos(clock - direction));
  if (lost <= OVERLAP_LOST) return [];
  return [
    {
      plate: context.id,
      rule: 'pad-overlap',
      features: ['lug-1', 'lug-2'],
      value: lost,
      limit: OVERLAP_LOST,
      kind: 'length',
      severity: 'stop',
      remedy:
        'Hang the bracket on the axle with a reaction arm to the frame, so that it moves with the wheel.',
      source: derived('part of the axle slide along the radius of the caliper'),
    },
  ];
}

function bracketChecks(lugs: readonly OpeningPlan[], anchors: readonly OpeningPlan[]): CheckLength[] {
  const [first, second] = lugs;
  return [
    { name: 'lug to lug', from: first!.center, to: second!.center },
    { name: 'axle to lug 1', from: ORIGIN, to: first!.center },
    { name: 'axle to lug 2', from: ORIGIN, to: second!.center },
    ...anchors.map(({ id, center }) => ({ name: `axle to ${id}`, from: ORIGIN, to: center })),
  ];
}
