import type { Point, Point3 } from '../../../../geometry/index.ts';
import { toLocal } from '../../../../geometry/index.ts';
import { rotateToGlobal } from '../../../frame/axes.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import {
  cutPlate,
  type PlateLoads,
  type PlateWeld,
  type PointLoad,
  unbalance,
} from '../../../plates/index.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { flatBody } from './outlineOf.ts';
import { enteringAt, type PlacedPlate } from './plateAxes.ts';
import type { PlateBody } from './plateBodies.ts';
import { courseOf, fromPlace, metalOf, type NotStudied, type PlateStudy, throughOpenings } from './study.ts';

/** Forces on a plate from the frame must be in balance to this share; else something acts on it that is not known. */
const BALANCED = 1e-6;

/** A tube end or an axle end in the plate. */
interface End {
  readonly member: number;
  /** 0 at the start of the member, 6 at its end, in its twelve forces. */
  readonly at: 0 | 6;
  readonly node: string;
  readonly entry: Point;
}

/**
 * The axle plate joins tube ends and the axle: each gives it the opposite of its own end forces, found by the frame. The
 * model's plate is stiff, so bending out of its plane comes out on the high side.
 */
export function axlePlateStudy(
  input: JointInput,
  plate: PlacedPlate,
  body: PlateBody,
  cases: readonly ReadonlyMap<string, readonly NodeLoad[]>[],
): PlateStudy | NotStudied {
  const { frame, bike, build } = input;
  const { pattern } = plate;
  const shaft = build.plates[pattern.id];
  const axle = bike.shafts[(shaft?.recipe === 'axle-plate' ? shaft.shaft : undefined) ?? 'rearAxle'];
  const ends = endsIn(input, plate, body);
  if (ends.length < body.stations.length || !axle)
    return { plate: pattern.id, why: 'tubes in it do not end there, so their forces can not be told apart' };
  const center = toLocal(plate.frame, axle);
  const hub = { x: center.x, y: center.y };
  const size = Math.sqrt(pattern.area);
  const others = body.plates.filter((other) => other !== plate.node);
  const loads = (c: number): PlateLoads | undefined => {
    const points: PointLoad[] = ends.map(({ member, at, node, entry }) =>
      enteringAt(plate, entry, { at: frame.draft.nodes.get(node)!, ...givenBy(input, c, member, at) }),
    );
    const onTubes = (input.cases[c]!.balanced.loads.nodes ?? []).filter(({ node }) =>
      body.stations.includes(node),
    );
    const hung = body.plates.flatMap((one) => cases[c]!.get(one) ?? []);
    for (const load of [...onTubes, ...hung]) {
      const isOwn =
        load.node === `mass:plates.${pattern.id}` || load.node === `mass:plates.${pattern.id}.right`;
      points.push(
        enteringAt(plate, isOwn ? pattern.centroid : hub, { ...load, at: frame.draft.nodes.get(load.node)! }),
      );
    }
    // A bracket on the axle turns against something that the model has not got; its moment is not the plate's.
    if (others.length > 0 && input.cases[c]!.id === 'braking-rear') return undefined;
    return unbalance({ points, lines: [] }, hub, size) < BALANCED ? { points, lines: [] } : undefined;
  };
  return {
    plate,
    makeCuts: () =>
      cutPlate(flatBody(pattern), {
        spots: [hub, ...ends.map(({ entry }) => entry)],
        welds: ends.flatMap((end) => weldsOf(input, end)),
      }),
    loads,
    where: (section) =>
      `${courseOf(section, { x: 'level', y: 'upright' })} ${fromPlace(section.centroid.x - hub.x, ['ahead of', 'behind'], 'the axle')}, ${fromPlace(section.centroid.y - hub.y, ['above', 'below'], 'it')}${throughOpenings(plate, section)}${metalOf(section)}`,
    source: {
      key: 'shigley-9',
      where: 'sections 3-10 to 3-12, beam stress in straight cuts; forces from the frame',
    },
    note: 'The model takes the plate as stiff, so bending out of its plane comes out on the high side.',
  };
}

function endsIn({ frame, results }: JointInput, plate: PlacedPlate, { stations }: PlateBody): readonly End[] {
  const inside = new Set(stations);
  return frame.model.members.flatMap(({ from, to }, member): End[] => {
    const has = [inside.has(from), inside.has(to)];
    if (has[0] === has[1]) return [];
    const node = has[0] ? from : to;
    if (!results.assembled.elements[member]) return [];
    const { x, y } = toLocal(plate.frame, frame.draft.nodes.get(node)!);
    return [{ member, at: has[0] ? 0 : 6, node, entry: { x, y } }];
  });
}

/** What a member gives to the joint at its end: the opposite of what the joint exerts on it. */
function givenBy(
  { results }: JointInput,
  c: number,
  member: number,
  at: 0 | 6,
): { readonly force: Point3; readonly moment: Point3 } {
  const { memberForces } = results.solutions[c]!;
  const six = new Float64Array(6);
  const { axes } = results.assembled.elements[member]!;
  rotateToGlobal(axes, memberForces, member * 12 + at, six, 0);
  rotateToGlobal(axes, memberForces, member * 12 + at + 3, six, 3);
  return {
    force: { x: -six[0]!, y: -six[1]!, z: -six[2]! },
    moment: { x: -six[3]!, y: -six[4]!, z: -six[5]! },
  };
}

/** A tube is welded round its end; the axle is not. */
function weldsOf({ frame }: JointInput, { node, entry }: End): readonly PlateWeld[] {
  const line = frame.draft.places.get(node)?.line;
  const stock = line === undefined ? undefined : frame.draft.lines.get(line)?.stock;
  if (!stock || line === 'rearAxle' || line === 'frontAxle') return [];
  const half = stock.outside / 2;
  return [
    { from: { x: entry.x - half, y: entry.y }, to: { x: entry.x + half, y: entry.y } },
    { from: { x: entry.x, y: entry.y - half }, to: { x: entry.x, y: entry.y + half } },
  ];
}
