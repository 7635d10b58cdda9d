import { placePoint } from '../../bike/index.ts';
import type { PlateOf } from '../../build/index.ts';
import { counterclockwise, type Frame3, mirrorLoop, type Point } from '../../geometry/index.ts';
import { bad, good, mm, type Outcome } from '../../quantity/index.ts';
import { bendStart, type Flange, flangeBendLine, onFlange, planBend } from '../bends.ts';
import { LEFT } from '../frames.ts';
import { atPath, boltHole, holePlan } from '../openings.ts';
import { cornersLoop } from '../outlines.ts';
import type { BendLine } from '../pattern.ts';
import { materialOf, type OpeningPlan, type PlateContext, type PlateShape } from '../plan.ts';

type Entry = PlateOf<'seat-mount-front'> | PlateOf<'seat-mount-rear'>;
type Tongue = NonNullable<Entry['tongue']>;

/** Corner radius where the file gives none [m]. */
const CORNER = mm(6);

/**
 * Seat mount: a flat with the seat's holes and, ahead of a front one or behind a rear one, a tongue that is bent at the
 * edge of the flat.
 * @source derived, outline from its dimensions
 */
export function seatMount(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const hole = boltHole(entry.holePattern.bolt, 'holePattern.bolt');
  if (!hole.ok) return hole;
  const place = atPath(placePoint(context.bike.layout.points, entry.place), 'place');
  if (!place.ok) return place;
  const tongue = tongueShape(entry);
  if (!tongue.ok) return tongue;
  const outline = seatOutline(entry, tongue.value);
  if (!outline.ok) return outline;
  const front = entry.recipe === 'seat-mount-front';
  const turned = (p: Point): Point => (front ? p : { x: -p.x, y: p.y });
  const holes = seatHoles(entry).map((center, i) => holePlan(`seat-${i + 1}`, center, hole.value));
  const openings = [...holes, ...tongue.value.openings].map((one) => ({
    ...one,
    center: turned(one.center),
  }));
  return good({
    title: front ? 'Seat mount, front' : 'Seat mount, rear',
    outline: front
      ? outline.value
      : counterclockwise(mirrorLoop(outline.value, { x: 0, y: 0 }, { x: 0, y: 1 })),
    openings,
    bends: tongue.value.bends.map((bend) => ({ ...bend, from: turned(bend.from), to: turned(bend.to) })),
    checks: holes.slice(1).map((one, i) => ({
      name: `seat hole 1 to ${i + 2}`,
      from: turned(holes[0]!.center),
      to: turned(one.center),
    })),
    up: { direction: { x: 1, y: 0 }, says: 'FORWARD' },
    frame: levelFrame(place.value, entry.tilt ?? 0),
    sources: [hole.value.source],
  });
}

function seatHoles(entry: Entry): readonly Point[] {
  const { across, along } = entry.holePattern;
  const xs = along > 0 ? [along / 2, -along / 2] : [0];
  const ys = across > 0 ? [across / 2, -across / 2] : [0];
  return xs.flatMap((x) => ys.map((y) => ({ x, y })));
}

interface TonguePlan {
  /** Where the flat ends on the tongue's side, and where the tongue ends in the flat pattern [m]. */
  readonly shoulder: number;
  readonly tip: number;
  readonly bends: readonly BendLine[];
  readonly openings: readonly OpeningPlan[];
}

/** The tongue of a front mount; that of a rear one is its mirror image. */
function tongueShape(entry: Entry): Outcome<TonguePlan> {
  const edge = entry.length / 2;
  const { tongue } = entry;
  if (!tongue) return good({ shoulder: edge, tip: edge, bends: [], openings: [] });
  if (tongue.width > entry.width)
    return bad({ code: 'conflict', path: 'tongue.width', reason: 'the tongue is wider than the plate' });
  const flange = tongue.bend ? bentTongue(entry, tongue) : undefined;
  if (flange && !flange.ok) return flange;
  const tip = flange ? onFlange(flange.value, tongue.length) : edge + tongue.length;
  const openings = tongueBolt(tongue, tip);
  if (!openings.ok) return openings;
  return good({
    // The shoulders end where the bend begins, so that they stay flat.
    shoulder: flange ? bendStart(flange.value) : edge,
    tip,
    bends: flange ? [flangeBendLine(flange.value, tongue.bend!.direction)] : [],
    openings: openings.value,
  });
}

function bentTongue(entry: Entry, tongue: Tongue): Outcome<Flange> {
  const bend = planBend(
    tongue.bend!,
    { thickness: entry.thickness, material: materialOf(entry) },
    'tongue.bend',
  );
  if (!bend.ok) return bend;
  if (tongue.length < bend.value.setback) {
    const reason = `the bend alone takes ${(bend.value.setback * 1e3).toFixed(1)} mm of the tongue`;
    return bad({ code: 'conflict', path: 'tongue.length', reason });
  }
  const { width, length } = tongue;
  return good({
    direction: { x: 1, y: 0 },
    across: 0,
    width,
    face: entry.length / 2,
    length,
    bend: bend.value,
  });
}

function tongueBolt(tongue: Tongue, tip: number): Outcome<readonly OpeningPlan[]> {
  if (tongue.bolt === undefined) return good([]);
  const hole = boltHole(tongue.bolt, 'tongue.bolt');
  if (!hole.ok) return hole;
  return good([holePlan('tongue', { x: tip - (tongue.tip ?? tongue.width / 2), y: 0 }, hole.value)]);
}

function seatOutline(entry: Entry, tongue: TonguePlan) {
  const [w, radius] = [entry.width / 2, entry.corner ?? CORNER];
  const back = -entry.length / 2;
  const corner = (x: number, y: number, r: number) => ({
    x: mm(x * 1e3),
    y: mm(y * 1e3),
    radius: mm(r * 1e3),
  });
  if (!entry.tongue) {
    const flat = [
      [back, -w],
      [tongue.shoulder, -w],
      [tongue.shoulder, w],
      [back, w],
    ] as const;
    return atPath(
      cornersLoop(
        flat.map(([x, y]) => corner(x, y, radius)),
        'corner',
      ),
      'corner',
    );
  }
  const v = entry.tongue.width / 2;
  const shoulders = v < w;
  const tipRadius = Math.min(radius, v);
  const corners = [
    corner(back, -w, radius),
    ...(shoulders
      ? [corner(tongue.shoulder, -w, Math.min(radius, w - v)), corner(tongue.shoulder, -v, 0)]
      : []),
    corner(tongue.tip, -v, tipRadius),
    corner(tongue.tip, v, tipRadius),
    ...(shoulders
      ? [corner(tongue.shoulder, v, 0), corner(tongue.shoulder, w, Math.min(radius, w - v))]
      : []),
    corner(back, w, radius),
  ];
  return atPath(cornersLoop(corners, 'corner'), 'corner');
}

/** Lower face at `at`, nose up by `tilt`. */
function levelFrame(at: Frame3['origin'], tilt: number): Frame3 {
  const x = { x: Math.cos(tilt), y: 0, z: Math.sin(tilt) };
  return { origin: at, x, y: LEFT, z: { x: -Math.sin(tilt), y: 0, z: Math.cos(tilt) } };
}
