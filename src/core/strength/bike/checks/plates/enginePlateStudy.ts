import { toLocal } from '../../../../geometry/index.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import { cutPlate, type Holder, heldBy, type PointLoad } from '../../../plates/index.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { wholeFlat } from './outlineOf.ts';
import { enteringAt, type PlacedPlate, sharedBy, sumAt } from './plateAxes.ts';
import { courseOf, fromPlace, metalOf, type NotStudied, type PlateStudy, throughOpenings } from './study.ts';

/** @source practice, a bolt's own stiffness against turning hardly counts beside the spread of four */
const BOLT_RADIUS = 2.5e-3;

/**
 * The engine pulls on its bolts by the bolt group, in the plane and out of it; the rails hold by theirs. Between the two
 * rows the plate bends.
 */
export function enginePlateStudy(
  input: JointInput,
  plate: PlacedPlate,
  cases: readonly ReadonlyMap<string, readonly NodeLoad[]>[],
): PlateStudy | NotStudied {
  const { frame, bike } = input;
  const { pattern } = plate;
  const rails = pattern.openings.filter(({ id }) => id.startsWith('rail-')).map(({ center }) => center);
  const bolts = bike.engine.holes.map((hole) => {
    const { x, y } = toLocal(plate.frame, hole);
    return { x, y };
  });
  if (rails.length < 2 || bolts.length === 0)
    return { plate: pattern.id, why: 'it has no bolts on both sides' };
  const middle = {
    x: bolts.reduce((sum, { x }) => sum + x, 0) / bolts.length,
    y: bolts.reduce((sum, { y }) => sum + y, 0) / bolts.length,
  };
  const holders = rails.map((at): Holder => ({ by: 'point', at }));
  const own = `mass:plates.${pattern.id}`;
  return {
    plate,
    makeCuts: () => cutPlate(wholeFlat(pattern), { spots: [...bolts, ...rails] }),
    loads: (c) => {
      const loads = cases[c]!.get(frame.engine) ?? [];
      const at = (load: NodeLoad) => ({ ...load, at: frame.draft.nodes.get(load.node)! });
      const engine = loads.filter(({ node }) => node !== own);
      if (engine.length === 0) return undefined;
      const weight = loads
        .filter(({ node }) => node === own)
        .map((load): PointLoad => enteringAt(plate, pattern.centroid, at(load)));
      const pull = sumAt(
        middle,
        engine.map((load) => enteringAt(plate, middle, at(load))),
      );
      const points = [...weight, ...sharedBy(pull, bolts, BOLT_RADIUS)];
      return {
        points: [...points, ...heldBy({ points, lines: [] }, holders, BOLT_RADIUS).points],
        lines: [],
      };
    },
    where: (section) =>
      `${courseOf(section, { x: 'fore and aft', y: 'straight across' })} ${fromPlace(section.centroid.x - middle.x, ['ahead of', 'behind'], 'the middle of the engine bolts')}, ${fromPlace(section.centroid.y - middle.y, ['left of', 'right of'], 'it')}${throughOpenings(plate, section)}${metalOf(section)}`,
    source: {
      key: 'shigley-9',
      where: 'sections 3-10 to 3-12, beam stress in straight cuts; 8-12 for the bolts',
    },
    note: 'The engine is taken to hold by its bolts alone; its foot stiffens the plate between them, which is left out.',
  };
}
