import { type Point, polar2, toLocal } from '../../../../geometry/index.ts';
import { cutPlate, heldBy, type PlateLoads, type PointLoad } from '../../../plates/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { padDrag } from '../joints/padDrag.ts';
import { wholeFlat } from './outlineOf.ts';
import { enteringAt, type PlacedPlate, sharedBy, sumAt } from './plateAxes.ts';
import { courseOf, fromPlace, metalOf, type NotStudied, type PlateStudy, throughOpenings } from './study.ts';

const ORIGIN: Point = { x: 0, y: 0 };
const BOLT_RADIUS = 2e-3;

/** Forces of the anchors on the bracket while braking, in its own axes. */
export interface HeldBracket {
  readonly one: LoadCase;
  readonly loads: PlateLoads;
  readonly anchors: readonly { readonly id: string; readonly load: PointLoad }[];
}

/**
 * The drag of the pads, in the plane of the disc, comes in by the two caliper bolts. A bracket on the axle is held from
 * turning by its anchors, each pulling square to its radius, and in every other way by the axle between its spacers;
 * one without an axle hole by its anchors alone.
 * @returns undefined where the brake has no case of its own
 */
export function heldBracket(input: JointInput, plate: PlacedPlate): HeldBracket | undefined {
  const { build, bike } = input;
  const entry = build.plates[plate.pattern.id];
  if (entry?.recipe !== 'caliper-bracket') return undefined;
  const found = padDrag(input, entry.brake);
  const placed = bike.brakes.find(({ wheel, kind }) => wheel === entry.brake && kind === 'disc');
  if (!found || !placed) return undefined;
  const { one, reach, drag } = found;
  const { caliper } = found.brake;
  const [sin, cos] = [Math.sin(caliper.clock), Math.cos(caliper.clock)];
  const lugs = named(plate, 'lug-').map(({ center }) => center);
  const pad = {
    at: { x: placed.center.x + reach * cos, y: placed.y, z: placed.center.z + reach * sin },
    // The top of a wheel that rolls forward goes forward, and takes the pads with it.
    force: { x: drag * sin, y: 0, z: -drag * cos },
  };
  const middle = polar2(ORIGIN, caliper.lugRadius, caliper.clock);
  const acts = sharedBy(sumAt(middle, [enteringAt(plate, middle, pad)]), lugs, BOLT_RADIUS);
  const axle = toLocal(plate.frame, placed.center);
  const anchors = anchorLoads(
    plate,
    acts,
    named(plate, 'axle').length > 0 ? { x: axle.x, y: axle.y } : undefined,
  );
  return {
    one,
    anchors: anchors.anchors,
    loads: { points: [...acts, ...anchors.anchors.map(({ load }) => load), ...anchors.axle], lines: [] },
  };
}

const named = ({ pattern }: PlacedPlate, start: string) =>
  pattern.openings.filter(({ id }) => id.startsWith(start));

function anchorLoads(plate: PlacedPlate, acts: readonly PointLoad[], axle: Point | undefined) {
  const openings = named(plate, 'anchor-');
  const centers = openings.map(({ center }) => center);
  if (!axle) {
    const { points } = heldBy(
      { points: acts, lines: [] },
      centers.map((at) => ({ by: 'point', at })),
      BOLT_RADIUS,
    );
    return { anchors: openings.map(({ id }, i) => ({ id, load: points[i]! })), axle: [] };
  }
  const about = sumMoment(acts, axle);
  const square = centers.reduce((sum, { x, y }) => sum + (x - axle.x) ** 2 + (y - axle.y) ** 2, 0);
  const anchors = openings.map(({ id, center }) => {
    const swing = square > 0 ? -about / square : 0;
    const force = { x: -swing * (center.y - axle.y), y: swing * (center.x - axle.x), z: 0 };
    return { id, load: { at: center, force } };
  });
  const all = [...acts, ...anchors.map(({ load }) => load)];
  return {
    anchors,
    axle: heldBy({ points: all, lines: [] }, [{ by: 'point', at: axle }], BOLT_RADIUS).points,
  };
}

const sumMoment = (loads: readonly PointLoad[], about: Point): number =>
  loads.reduce(
    (sum, { at, force, moment }) =>
      sum + (moment?.z ?? 0) + (at.x - about.x) * force.y - (at.y - about.y) * force.x,
    0,
  );

/** The bracket of a caliper under its own brake. */
export function caliperStudy(input: JointInput, plate: PlacedPlate): PlateStudy | NotStudied {
  const { pattern } = plate;
  const held = heldBracket(input, plate);
  if (!held) return { plate: pattern.id, why: 'no load case brakes with it' };
  const hangs = named(plate, 'axle').length > 0;
  if (hangs && held.anchors.length === 0)
    return { plate: pattern.id, why: 'the file names nothing that keeps it from turning about the axle' };
  return {
    plate,
    makeCuts: () => cutPlate(wholeFlat(pattern), { spots: pattern.openings.map(({ center }) => center) }),
    loads: (c) => (input.cases[c] === held.one ? held.loads : undefined),
    where: (section) =>
      `${courseOf(section, { x: 'level', y: 'upright' })} ${fromPlace(section.centroid.x, ['ahead of', 'behind'], 'the axle')}, ${fromPlace(section.centroid.y, ['above', 'below'], 'it')}${throughOpenings(plate, section)}${metalOf(section)}`,
    source: {
      key: 'shigley-9',
      where: 'sections 3-10 to 3-12, beam stress in straight cuts; 8-12 for the bolts',
    },
    note: hangs
      ? 'Anchors pull square to their radius from the axle; the axle holds the bracket from tilting.'
      : 'Held by its anchors alone.',
  };
}
