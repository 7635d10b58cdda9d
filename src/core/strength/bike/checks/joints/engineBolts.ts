import type { Force, Length } from '../../../../quantity/index.ts';
import { slipHoles } from '../../../../standards/index.ts';
import { groupForces, type InPlane } from '../../../bolts/boltGroup.ts';
import { slipLoad } from '../../../bolts/boltJoint.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import { platePoint } from '../../model/contact.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type BoltSetting, boltOf } from './boltSetting.ts';
import type { JointInput } from './jointInput.ts';

const GRAVITY = 9.80665;

/** Engine and rail bolts hold the chain pull and the engine's own swing by friction alone. */
export function engineBolts(input: JointInput): UtilizationRow[] {
  const { build, bike, patterns, cases, frame } = input;
  const plate = patterns.find((pattern) => pattern.recipe === 'engine-plate');
  const entry = plate ? build.plates[plate.id] : undefined;
  if (!plate || entry?.recipe !== 'engine-plate') return [];
  const groups = [
    {
      name: 'engine bolts',
      size: build.engine.mount.bolt,
      points: [...bike.engine.holes],
      slotted: entry.slotted ?? 'engine',
      is: 'engine',
    },
    {
      name: 'rail bolts',
      size: entry.rails.bolt,
      points: plate.openings
        .filter(({ id }) => id.startsWith('rail-'))
        .map(({ center }) => platePoint(plate, 0, center)),
      slotted: entry.slotted ?? 'engine',
      is: 'rails',
    },
  ];
  const engine = frame.bodies.find(({ id }) => id === 'engine');
  return groups.flatMap((group): UtilizationRow[] => {
    const bolt = boltOf(input, plate.id, group.size);
    if (!bolt || group.points.length === 0 || !engine) return [];
    const hole = group.slotted === group.is ? 'long-slot-along' : 'normal';
    const holeFactor = slipHoles.find(({ name }) => name === hole)?.value ?? 1;
    const worst = cases
      .filter(({ id }) => id === 'driving' || id === 'chain-pull')
      .map((one) => ({ one, share: slipShare(one, engine, group.points, bolt, holeFactor) }))
      .sort((a, b) => b.share.load - a.share.load)[0];
    if (!worst) return [];
    const { load, limit } = worst.share;
    return [
      {
        part: plate.id,
        case: worst.one.id,
        where: `${group.name}${hole === 'normal' ? '' : ', slotted'}`,
        quantity: 'pull on the most loaded bolt against slip',
        value: load,
        limit,
        kind: 'force',
        utilization: load / limit,
        source: { key: 'en-1993-1-8', where: 'section 3.9, ks of table 3.6, without its partial factor' },
      },
    ];
  });
}

/** In the plane of the plate: the pull as it lies off the bolts' middle; its lift by lever loosens the clamp. */
function slipShare(
  one: LoadCase,
  engine: {
    readonly mass: number;
    readonly center: { readonly x: number; readonly y: number; readonly z: number };
  },
  points: readonly { readonly x: number; readonly y: number; readonly z: number }[],
  bolt: BoltSetting,
  holeFactor: number,
): { readonly load: number; readonly limit: number } {
  const pulls = one.applied.filter(({ what }) => what.endsWith(' on engine'));
  const bolts = points.map(({ x, y }): InPlane<Length> => [x as Length, y as Length]);
  const base = points.reduce((sum, { z }) => sum + z, 0) / points.length;
  const middle = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const each = points.map(() => [0, 0] as [number, number]);
  let tilt = 0;
  let lift = -engine.mass * GRAVITY;
  for (const { force, at } of pulls) {
    groupForces(bolts, [force.x as Force, force.y as Force], [at.x as Length, at.y as Length]).forEach(
      ([x, y], i) => {
        each[i]![0] += x;
        each[i]![1] += y;
      },
    );
    tilt += (at.z - base) * force.x - (at.x - middle) * force.z;
    lift += force.z;
  }
  const reach = points.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
  const far = Math.max(...points.map(({ x }) => Math.abs(x - middle)));
  const pull = Math.max(0, lift / points.length + (reach > 0 ? (Math.abs(tilt) * far) / reach : 0));
  const clamp = Math.max(0, bolt.preload - pull) as Force;
  const limit = slipLoad({ clamp, friction: bolt.friction, faces: 1, holeFactor });
  return { load: Math.max(...each.map(([x, y]) => Math.hypot(x, y))), limit };
}
