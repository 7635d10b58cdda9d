import type { Force, Length } from '../../../../quantity/index.ts';
import { materialStrength } from '../../../../standards/index.ts';
import { plateBearing } from '../../../bolts/boltJoint.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';

/** Pressure of the axle on its slots, and tearing out of the plate beyond them. */
export function axleSlots({ build, patterns, frame, cases, settings }: JointInput): UtilizationRow[] {
  const axle = frame.draft.lines.get('rearAxle');
  return patterns.flatMap((pattern): UtilizationRow[] => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'axle-plate' || (entry.shaft ?? 'rearAxle') !== 'rearAxle' || !axle) return [];
    const worst = cases
      .map((one) => ({ one, load: axleLoad(frame, one) }))
      .sort((a, b) => b.load - a.load)[0];
    if (!worst) return [];
    const diameter = axle.stock.outside as Length;
    const stress = plateBearing({
      load: worst.load as Force,
      diameter,
      hole: (diameter + (entry.clearance ?? 5e-4)) as Length,
      thickness: pattern.thickness as Length,
      edge: (entry.margin + diameter / 2) as Length,
    });
    const allowed = materialStrength(pattern.material).yield / settings.yieldFactor;
    return slotRows({ part: pattern.id, case: worst.one.id }, stress, allowed);
  });
}

const slotRows = (
  of: Pick<UtilizationRow, 'part' | 'case'>,
  { bearing, tearOut }: ReturnType<typeof plateBearing>,
  allowed: number,
): UtilizationRow[] => [
  {
    ...of,
    where: 'slot of the axle',
    check: 'slotBearing',
    quantity: 'pressure on the slot',
    value: bearing,
    limit: allowed,
    kind: 'pressure',
    utilization: bearing / allowed,
    source: { key: 'shigley-9', where: 'section 8-12, bearing' },
  },
  {
    ...of,
    where: 'beyond the slot',
    check: 'slotTearOut',
    quantity: 'shear by tearing out',
    value: tearOut,
    limit: 0.577 * allowed,
    kind: 'pressure',
    utilization: tearOut / (0.577 * allowed),
    source: { key: 'shigley-9', where: 'section 8-12, tear-out' },
  },
];

/** Larger of the two hub forces of the rear wheel [N]. */
function axleLoad(frame: BikeFrame, one: LoadCase): number {
  return Math.max(
    ...frame.wheels.rear.hub.map((node) => {
      const sum = { x: 0, z: 0 };
      for (const load of one.balanced.loads.nodes ?? []) {
        if (load.node !== node || !load.force) continue;
        sum.x += load.force.x;
        sum.z += load.force.z;
      }
      return Math.hypot(sum.x, sum.z);
    }),
  );
}
