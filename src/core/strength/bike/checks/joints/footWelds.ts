import type { Force, Length, Torque } from '../../../../quantity/index.ts';
import { materialStrength } from '../../../../standards/index.ts';
import type { WeldLine, WeldLoad } from '../../../welds/weldGroup.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';
import { legOf, weldRow } from './weldRow.ts';

/** Fillets along both sides of a plate's foot, under the force of its bearing. */
export function footWelds(input: JointInput): UtilizationRow[] {
  const { build, patterns, settings } = input;
  return patterns.flatMap((pattern): UtilizationRow[] => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support') return [];
    if ((entry.foot.bolts ?? 0) > 0) return [];
    const found = worstForce(input, pattern.id);
    if (!found) return [];
    const leg = legOf(input, pattern.thickness);
    const half = entry.foot.width / 2;
    const side = pattern.thickness / 2;
    // The weld's plane is level: its y runs along the bike, its z across; its x stands up out of the rail.
    const lines: WeldLine[] = [side, -side].map((z) => ({
      from: [-half as Length, z as Length],
      to: [half as Length, z as Length],
    }));
    const load: WeldLoad = {
      force: [found.force.z as Force, found.force.x as Force, 0 as Force],
      at: [entry.foot.height as Length, -(entry.foot.forward ?? 0) as Length, 0 as Length],
      moment: [0 as Torque, 0 as Torque, 0 as Torque],
    };
    return [
      weldRow({
        part: pattern.id,
        check: 'footWeld',
        where: 'fillets at its foot',
        one: found.one,
        lines,
        leg,
        load,
        yield: materialStrength(pattern.material).weldedYield,
        settings,
      }),
    ];
  });
}

/** The largest force that any case brings on the bearings of a plate. */
const worstForce = ({ frame, cases }: JointInput, plate: string) =>
  frame.bearings
    .filter((bearing) => bearing.plate === plate)
    .flatMap((bearing) =>
      cases.flatMap((one) =>
        (one.balanced.loads.nodes ?? [])
          .filter((load) => load.node === bearing.node && load.force !== undefined)
          .map((load) => ({ one, force: load.force! })),
      ),
    )
    .sort((a, b) => Math.hypot(b.force.x, b.force.z) - Math.hypot(a.force.x, a.force.z))[0];
