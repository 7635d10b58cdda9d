import type { BearingSeat, PlateOf } from '../../build/index.ts';
import { type Circle, hullLoop, type Loop, type Point, polar2, segments } from '../../geometry/index.ts';
import { bad, good, type Issue, mm, type Outcome, type SourceRef } from '../../quantity/index.ts';
import { findBearing } from '../../standards/index.ts';
import {
  bendStart,
  type Flange,
  flangeBendLine,
  flangePoint,
  onFlange,
  planBend,
  withFlange,
} from '../bends.ts';
import { standingFrame, standingY } from '../frames.ts';
import { atPath, type BoltHole, boltHole, holePlan } from '../openings.ts';
import { cornersLoop } from '../outlines.ts';
import type { CheckLength } from '../pattern.ts';
import { materialOf, type OpeningPlan, type PlateContext, type PlateShape } from '../plan.ts';

type Entry = PlateOf<'countershaft-plate'> | PlateOf<'outboard-support'>;

/** Bolt holes of a flange bearing are bigger than the bolt by 0.5 to 1 mm, so that the shaft sets its own line [m]. */
const FLANGE_PLAY = mm(1);
const SQUARE = Math.PI / 2;
const DOWN: Point = { x: 0, y: -1 };

/**
 * Plate that carries a bearing at its origin and stands on a foot below it; an outboard support has a window that
 * leaves two uprights. The outline is the hull of the bearing seat and the foot.
 * @source derived, hull of circles; practice, clearance of flange bolts
 */
export function bearingPlate(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const shaft = entry.shaft ?? 'countershaft';
  const seat = seatOpenings(entry);
  if (!seat.ok) return seat;
  const y = standingY(context, shaft, entry);
  const foot = standOnFoot(entry, seat.value.head, y ?? 1);
  if (!foot.ok) return foot;
  const window =
    entry.recipe === 'outboard-support' ? uprightWindow(entry, foot.value.body, seat.value.head) : undefined;
  if (window && !window.ok) return window;
  return good({
    title: entry.recipe === 'outboard-support' ? 'Outboard support' : 'Countershaft plate',
    outline: foot.value.outline,
    openings: [...seat.value.openings, ...foot.value.openings],
    windows: window ? [window.value] : [],
    bends: foot.value.bends,
    checks: [...seatChecks(seat.value.openings), ...footChecks(foot.value.openings)],
    up: { direction: { x: 0, y: 1 }, says: 'UP' },
    ...standingFrame(context, shaft, y, entry.thickness),
    notes: seat.value.notes,
    sources: seat.value.sources,
  });
}

interface Seat {
  readonly openings: readonly OpeningPlan[];
  /** Circles the outline must reach round. */
  readonly head: readonly Circle[];
  readonly notes: readonly string[];
  readonly sources: readonly SourceRef[];
}

const seatOpenings = (entry: Entry): Outcome<Seat> =>
  entry.seat.kind === 'bore' ? boredSeat(entry, entry.seat) : flangeSeat(entry, entry.seat);

function boredSeat(entry: Entry, seat: Extract<BearingSeat, { kind: 'bore' }>): Outcome<Seat> {
  const bearing = atPath(findBearing(seat.bearing), 'seat.bearing');
  if (!bearing.ok) return bearing;
  const fit = seat.fit ?? (materialOf(entry) === 'aluminum-6061' ? 'P7' : 'N7');
  const finish = seat.finish ?? (entry.make === 'torch' ? 'bored' : 'by-hand');
  const center = { x: 0, y: 0 };
  const bore: OpeningPlan = {
    id: 'bearing',
    kind: 'bore',
    center,
    diameter: bearing.value.outside,
    for: `bearing ${bearing.value.designation}, ${fit}`,
    carries: 'bearing',
    fit,
    system: 'metric',
    finish,
  };
  return good({
    openings: [bore],
    head: [{ center, radius: bearing.value.outside / 2 + entry.margin }],
    notes:
      finish === 'by-hand'
        ? ['The bearing hole is cut under size and opened until the bearing just seats.']
        : [],
    sources: [bearing.value.sources.dimensions],
  });
}

function flangeSeat(entry: Entry, seat: Extract<BearingSeat, { kind: 'flange' }>): Outcome<Seat> {
  const bolt = boltHole(seat.bolt, 'seat.bolt');
  if (!bolt.ok) return bolt;
  const hole: BoltHole = {
    ...bolt.value,
    diameter: mm(1e3 * (bolt.value.boltDiameter + (seat.clearance ?? FLANGE_PLAY))),
  };
  const origin = { x: 0, y: 0 };
  const opening: OpeningPlan = {
    id: 'opening',
    kind: 'hole',
    center: origin,
    diameter: seat.opening,
    for: seat.bearing ? `shaft and housing of ${seat.bearing}` : 'shaft and bearing housing',
    carries: 'nothing',
    system: bolt.value.system,
  };
  const centers = Array.from({ length: seat.bolts }, (_, i) =>
    polar2(origin, seat.boltCircle / 2, (seat.turn ?? 0) + (2 * Math.PI * i) / seat.bolts),
  );
  return good({
    openings: [opening, ...centers.map((center, i) => holePlan(`flange-${i + 1}`, center, hole))],
    head: [
      { center: origin, radius: seat.opening / 2 + entry.margin },
      ...centers.map((center) => ({ center, radius: hole.diameter / 2 + entry.margin })),
    ],
    notes: [
      'Fit the flange bolts finger tight, spin the shaft and tap it so that it finds its line, then tighten.',
    ],
    sources: [bolt.value.source],
  });
}

interface Foot {
  readonly outline: Loop;
  /** Outline without the bent foot. */
  readonly body: Loop;
  readonly openings: readonly OpeningPlan[];
  readonly bends: NonNullable<PlateShape['bends']>;
}

function standOnFoot(entry: Entry, head: readonly Circle[], y: number): Outcome<Foot> {
  const { foot } = entry;
  const flange = footFlange(entry);
  if (!flange.ok) return flange;
  const bolts = footBolts(entry, flange.value);
  if (!bolts.ok) return bolts;
  const bottom = flange.value ? -bendStart(flange.value) : -foot.height;
  const across = foot.forward ?? 0;
  const body = hullLoop([
    ...head,
    { center: { x: across - foot.width / 2, y: bottom }, radius: 0 },
    { center: { x: across + foot.width / 2, y: bottom }, radius: 0 },
  ]);
  if (!flange.value) return good({ outline: body, body, openings: bolts.value, bends: [] });
  const outline = withFlange(body, flange.value, 'foot.flange');
  if (!outline.ok) return outline;
  const outside = y >= 0 ? 'down' : 'up';
  const inside = y >= 0 ? 'up' : 'down';
  const bends = [flangeBendLine(flange.value, foot.flange?.toward === 'inside' ? inside : outside)];
  return good({ outline: outline.value, body, openings: bolts.value, bends });
}

/** The bent foot; its outside face is the bottom that the plate stands on. */
function footFlange(entry: Entry): Outcome<Flange | undefined> {
  const { foot } = entry;
  if (!foot.flange) return good(undefined);
  const bend = planBend(
    { angle: SQUARE, insideRadius: foot.flange.insideRadius },
    { thickness: entry.thickness, material: materialOf(entry) },
    'foot.flange',
  );
  if (!bend.ok) return bend;
  return good({
    direction: DOWN,
    // Left of down is ahead.
    across: foot.forward ?? 0,
    width: foot.width,
    face: foot.height,
    length: foot.flange.length,
    bend: bend.value,
  });
}

function footBolts(entry: Entry, flange: Flange | undefined): Outcome<readonly OpeningPlan[]> {
  const { foot } = entry;
  if (foot.bolts === 0) return good([]);
  const missing = (key: 'bolt' | 'pitch', wanted: string): Issue => ({
    code: 'missing',
    path: `foot.${key}`,
    wanted,
  });
  if (foot.bolt === undefined) return bad(missing('bolt', 'the bolt of the foot, e.g. M8'));
  if (foot.bolts > 1 && foot.pitch === undefined)
    return bad(missing('pitch', 'the distance from bolt to bolt'));
  const hole = boltHole(foot.bolt, 'foot.bolt');
  if (!hole.ok) return hole;
  const edge = foot.edge ?? 2 * hole.value.boltDiameter;
  const y = flange ? flangePoint(flange, onFlange(flange, flange.length - edge), 0).y : -foot.height + edge;
  return good(
    Array.from({ length: foot.bolts }, (_, i) => {
      const x = (foot.forward ?? 0) + (i - (foot.bolts - 1) / 2) * (foot.pitch ?? 0);
      return holePlan(`foot-${i + 1}`, { x, y }, hole.value);
    }),
  );
}

/**
 * The window between two uprights: below the seat, above the sill, `upright` away from each flank measured square
 * to it.
 */
function uprightWindow(
  entry: PlateOf<'outboard-support'>,
  body: Loop,
  head: readonly Circle[],
): Outcome<Loop> {
  const refuse = (reason: string) => bad({ code: 'conflict', path: 'upright', reason });
  const top = Math.min(...head.map((circle) => circle.center.y - circle.radius));
  const bottom = -entry.foot.height + (entry.sill ?? 2 * entry.upright);
  if (!(top - bottom > entry.upright)) return refuse('no height is left for a window between seat and sill');
  const flanks = [outlineAt(body, top), outlineAt(body, bottom)];
  const [upper, lower] = flanks;
  if (!upper || !lower) return refuse('the plate has no flanks to cut a window between');
  const inset = (a: number, b: number): number => entry.upright * Math.hypot(1, (a - b) / (top - bottom));
  const left = inset(upper[0], lower[0]);
  const right = inset(upper[1], lower[1]);
  const corners = [
    { x: lower[0] + left, y: bottom },
    { x: lower[1] - right, y: bottom },
    { x: upper[1] - right, y: top },
    { x: upper[0] + left, y: top },
  ];
  const widths = [corners[1]!.x - corners[0]!.x, corners[2]!.x - corners[3]!.x];
  const least = Math.min(...widths, top - bottom);
  if (!(least > entry.thickness)) return refuse('no width is left for a window between the uprights');
  const radius = least / 5;
  return atPath(
    cornersLoop(
      corners.map((corner) => ({ ...rounded(corner, radius) })),
      'window',
    ),
    'upright',
  );
}

// The build's corners are branded lengths; these come from numbers worked out here.
const rounded = (p: Point, radius: number) => ({
  x: mm(p.x * 1e3),
  y: mm(p.y * 1e3),
  radius: mm(radius * 1e3),
});

/** Leftmost and rightmost crossing of the outline's straight flanks with a level line. */
function outlineAt(loop: Loop, y: number): readonly [number, number] | undefined {
  const xs = segments(loop).flatMap((piece) => {
    const { from, to } = piece;
    if (piece.kind === 'arc' || (from.y - y) * (to.y - y) > 0 || from.y === to.y) return [];
    return [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
  });
  return xs.length < 2 ? undefined : [Math.min(...xs), Math.max(...xs)];
}

function seatChecks(openings: readonly OpeningPlan[]): CheckLength[] {
  const bolts = openings.filter((opening) => opening.id.startsWith('flange-'));
  const [first, second] = bolts;
  if (!first || !second) return [];
  return [{ name: 'flange bolt to bolt', from: first.center, to: second.center }];
}

function footChecks(openings: readonly OpeningPlan[]): CheckLength[] {
  const origin = { x: 0, y: 0 };
  const [first, last] = [openings[0], openings.at(-1)];
  if (!first || !last) return [];
  const toShaft = openings.length > 1 ? [first, last] : [first];
  return [
    ...toShaft.map(({ id, center }) => ({ name: `shaft to ${id}`, from: origin, to: center })),
    ...(first === last ? [] : [{ name: 'foot bolts', from: first.center, to: last.center }]),
  ];
}
