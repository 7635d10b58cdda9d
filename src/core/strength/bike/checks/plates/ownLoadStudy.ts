import { type Point, scale3 } from '../../../../geometry/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import {
  cutPlate,
  type Holder,
  heldBy,
  type PlateLoads,
  type PlateWeld,
  type PointLoad,
} from '../../../plates/index.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { contactEdges } from './contactEdges.ts';
import { flatBody, wholeFlat } from './outlineOf.ts';
import { enteringAt, type PlacedPlate, pressedIn, sharedBy, sumAt } from './plateAxes.ts';
import { courseOf, fromPlace, metalOf, type NotStudied, type PlateStudy, throughOpenings } from './study.ts';

type Cases = readonly ReadonlyMap<string, readonly NodeLoad[]>[];

const ORIGIN: Point = { x: 0, y: 0 };
/** Middle of a bolt head's bearing face by the hole: from half to three quarters of a diameter. @source practice */
const HEAD_RADIUS = 0.63;
/** Bolts hold a moment of their own about as a ring of half their diameter does. @source practice */
const BOLT_RADIUS = 2.5e-3;

/**
 * A plate that stands on tubes and carries something: what acts on it is known without the frame, whatever else is in the
 * same stiff body; its edge on the tubes, or its bolts, hold it.
 */
export function ownLoadStudy(input: JointInput, plate: PlacedPlate, cases: Cases): PlateStudy | NotStudied {
  const { pattern } = plate;
  const holders = holdersOf(input, plate);
  if (holders.length === 0) return { plate: pattern.id, why: 'it is not known where it is held' };
  const entries = entriesOf(pattern);
  const isBolted = holders.every(({ by }) => by === 'point');
  const radius = isBolted ? BOLT_RADIUS : pattern.thickness / Math.sqrt(12);
  const welds = holders.filter((one): one is Extract<Holder, { by: 'line' }> => one.by === 'line');
  return {
    plate,
    makeCuts: () =>
      cutPlate(isStanding(pattern) ? flatBody(pattern) : wholeFlat(pattern), {
        spots: [...entries, ...holders.flatMap((one) => (one.by === 'point' ? [one.at] : []))],
        welds: welds.map(({ from, to }): PlateWeld => ({ from, to })),
      }),
    loads: (c) => {
      const acts = actsOn(input, plate, cases[c]!.get(plate.node) ?? [], entries);
      if (acts.points.length === 0) return undefined;
      const held = heldBy(acts, holders, radius);
      return { points: [...acts.points, ...held.points], lines: held.lines };
    },
    where: (section) => placeIn(input, plate, section) + throughOpenings(plate, section) + metalOf(section),
    source: { key: 'shigley-9', where: 'sections 3-10 to 3-12, beam stress in straight cuts' },
    note: noteOf(pattern, isBolted, input.build.plates[pattern.id]?.count ?? 1),
  };
}

const isStanding = ({ recipe }: FlatPattern): boolean =>
  recipe === 'countershaft-plate' || recipe === 'outboard-support';

const isSeat = ({ recipe }: FlatPattern): boolean => recipe.startsWith('seat-mount');

function noteOf(pattern: FlatPattern, isBolted: boolean, count: number): string {
  const held = isBolted ? 'Held by its bolts.' : 'Taken as welded all along where its edge lies on the tube.';
  const bent =
    !isStanding(pattern) && pattern.bends.length > 0
      ? ' Bends are looked at in the flat, which makes levers of loads square to the plate a little long.'
      : '';
  const shared = count > 1 ? ` The ${count} alike share the load evenly.` : '';
  return `${held}${bent}${shared} What the frame passes through the plate by bending with it is left out.`;
}

/** Where loads enter: flange bolts, bearing bore, pivot, seat bolts; else the bolts of the plate or its middle. */
function entriesOf(pattern: FlatPattern): readonly Point[] {
  const named = (start: string): Point[] =>
    pattern.openings.filter(({ id }) => id.startsWith(start)).map(({ center }) => center);
  if (isStanding(pattern)) return named('flange-').length > 0 ? named('flange-') : [ORIGIN];
  if (isSeat(pattern)) return named('seat-');
  if (pattern.recipe === 'peg-tab' || pattern.recipe === 'stand-tab') return named('pivot');
  const bolts = pattern.openings.filter(({ carries }) => carries === 'bolt').map(({ center }) => center);
  return bolts.length > 0 ? bolts : [pattern.centroid];
}

/** What is bolted on comes in through the entries, the plate's own weight at its middle. */
function actsOn(
  { build, frame }: JointInput,
  plate: PlacedPlate,
  loads: readonly NodeLoad[],
  entries: readonly Point[],
): PlateLoads {
  const { pattern } = plate;
  const middle = {
    x: entries.reduce((sum, { x }) => sum + x, 0) / entries.length,
    y: entries.reduce((sum, { y }) => sum + y, 0) / entries.length,
  };
  const own: PointLoad[] = [];
  const carried: PointLoad[] = [];
  for (const load of loads) {
    const at = frame.draft.nodes.get(load.node)!;
    if (load.node.startsWith('mass:plates.')) own.push(enteringAt(plate, pattern.centroid, { ...load, at }));
    else {
      const entering = enteringAt(plate, middle, { ...load, at });
      // The seat rests on its bolts; where the model's node of the mount lies is no lever of it.
      carried.push(isSeat(pattern) ? { at: middle, force: entering.force } : entering);
    }
  }
  if (carried.length === 0) return { points: [], lines: [] };
  const load = shareOf(sumAt(middle, carried), build.plates[pattern.id]?.count ?? 1);
  const entering =
    entries.length > 1 ? sharedBy(load, entries, BOLT_RADIUS) : pressedIn(load, pressRadius(pattern));
  return { points: [...own, ...entering], lines: [] };
}

/** Several alike on one bolt, as the two tabs of a clevis, share evenly. */
const shareOf = ({ at, force, moment }: PointLoad, count: number): PointLoad => ({
  at,
  force: scale3(force, 1 / count),
  ...(moment ? { moment: scale3(moment, 1 / count) } : {}),
});

/** Where a single bolt's head presses, between hole and rim, or the radius of a bearing's bore [m]. */
function pressRadius({ openings, thickness }: FlatPattern): number {
  const [opening] = openings;
  if (!opening) return thickness;
  return opening.kind === 'bore' ? opening.diameter / 2 : HEAD_RADIUS * opening.diameter;
}

function holdersOf({ build, frame }: JointInput, plate: PlacedPlate): readonly Holder[] {
  const { pattern } = plate;
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support')
    return contactEdges(frame, plate);
  const { foot } = entry;
  const bend = pattern.bends[0];
  if (bend) return [{ by: 'line', from: bend.from, to: bend.to }];
  const bolts = pattern.openings.filter(({ id }) => id.startsWith('foot-'));
  if (bolts.length > 0) return bolts.map(({ center }) => ({ by: 'point', at: center }));
  const [ahead, y] = [foot.forward ?? 0, -foot.height];
  return [{ by: 'line', from: { x: ahead - foot.width / 2, y }, to: { x: ahead + foot.width / 2, y } }];
}

function placeIn(
  { build }: JointInput,
  { pattern }: PlacedPlate,
  section: Parameters<PlateStudy['where']>[0],
): string {
  const { centroid } = section;
  const entry = build.plates[pattern.id];
  if (entry?.recipe === 'countershaft-plate' || entry?.recipe === 'outboard-support') {
    const above = centroid.y + entry.foot.height;
    return `${courseOf(section, { x: 'level', y: 'upright' })} ${fromPlace(above, ['above', 'below'], 'its foot')}`;
  }
  if (entry?.recipe === 'peg-tab' || entry?.recipe === 'stand-tab') {
    const away = centroid.y + entry.height;
    return `${courseOf(section, { x: 'across', y: 'lengthwise' })} ${fromPlace(away, ['from', 'inside'], 'the tube')}`;
  }
  if (isSeat(pattern)) {
    const course = courseOf(section, { x: 'fore and aft', y: 'across' });
    const holes = 'the middle of its holes';
    return course.endsWith('aft')
      ? `${course} ${fromPlace(centroid.y, ['left of', 'right of'], holes)}`
      : `${course} ${fromPlace(centroid.x, ['ahead of', 'behind'], holes)}`;
  }
  return courseOf(section, { x: 'along x', y: 'along y' });
}
