import type { Point3 } from '../../../../geometry/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import { slipHoles } from '../../../../standards/index.ts';
import { platePoint } from '../../model/contact.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { boltOf } from './boltSetting.ts';
import type { JointInput } from './jointInput.ts';
import { boltPulls, clampNeeded } from './slip.ts';

/** Bolts that hold one face of the engine's plate. */
interface BoltGroup {
  readonly face: 'engine' | 'rails';
  readonly name: string;
  readonly size: string;
  readonly points: readonly Point3[];
  readonly isSlotted: boolean;
}

/** Engine and rail bolts hold the chain pull and the engine's own swing by friction alone. */
export function engineBolts(input: JointInput): UtilizationRow[] {
  const plate = input.patterns.find((pattern) => pattern.recipe === 'engine-plate');
  return plate ? boltGroups(input, plate).flatMap((group) => slipRow(input, plate.id, group)) : [];
}

function boltGroups({ build, bike }: JointInput, plate: FlatPattern): BoltGroup[] {
  const entry = build.plates[plate.id];
  if (entry?.recipe !== 'engine-plate') return [];
  const slotted = entry.slotted ?? 'engine';
  return [
    {
      face: 'engine',
      name: 'engine bolts',
      size: build.engine.mount.bolt,
      points: [...bike.engine.holes],
      isSlotted: slotted === 'engine',
    },
    {
      face: 'rails',
      name: 'rail bolts',
      size: entry.rails.bolt,
      points: plate.openings
        .filter(({ id }) => id.startsWith('rail-'))
        .map(({ center }) => platePoint(plate, 0, center)),
      isSlotted: slotted === 'rails',
    },
  ];
}

function slipRow(input: JointInput, plate: string, group: BoltGroup): UtilizationRow[] {
  const engine = input.frame.bodies.find(({ id }) => id === 'engine');
  const bolt = boltOf(input, plate, group.size);
  if (!bolt || group.points.length === 0 || !engine) return [];
  const hole = group.isSlotted ? 'long-slot-along' : 'normal';
  const holeFactor = slipHoles.find(({ name }) => name === hole)!.value;
  const worst = input.cases
    .filter(({ id }) => id === 'driving' || id === 'chain-pull')
    .map((one) => {
      const { across, along } = boltPulls(one, engine, group.points);
      return { one, needed: clampNeeded(across, along, bolt.friction, holeFactor) };
    })
    .sort((a, b) => b.needed - a.needed)[0];
  if (!worst) return [];
  return [
    {
      part: plate,
      case: worst.one.id,
      where: `${group.name}${group.isSlotted ? ', slotted' : ''}`,
      check: 'boltSlip',
      place: group.face,
      quantity: 'tension that the most loaded bolt needs against slip',
      value: worst.needed,
      limit: bolt.preload,
      kind: 'force',
      utilization: worst.needed / bolt.preload,
      source: { key: 'en-1993-1-8', where: 'section 3.9, ks of table 3.6, without its partial factor' },
    },
  ];
}
