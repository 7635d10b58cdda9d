import type { Force, Length, Torque } from '../../../../quantity/index.ts';
import { materialStrength } from '../../../../standards/index.ts';
import { type FrameSolution, sectionForces } from '../../../frame/index.ts';
import type { WeldLoad } from '../../../welds/weldGroup.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';
import { legOf, weldRow } from './weldRow.ts';

/** Fillets all round coped and landed tube ends, leg as the wall, under the end forces of the member. */
export function tubeWelds(input: JointInput): UtilizationRow[] {
  const { bike, frame, results, cases, settings } = input;
  const best = new Map<string, UtilizationRow>();
  for (const weld of frame.welds) {
    const line = frame.draft.lines.get(weld.line);
    const tube = bike.tubes.find(({ id }) => id === weld.line);
    if ((weld.kind !== 'cope' && weld.kind !== 'landing') || !line || !tube) continue;
    const member = frame.model.members.findIndex(
      ({ id, from, to }) => id.startsWith(`${weld.line}#`) && (from === weld.node || to === weld.node),
    );
    if (member < 0) continue;
    const atStart = frame.model.members[member]!.from === weld.node;
    const trunk = weld.kind === 'cope' ? (frame.draft.lines.get(weld.with)?.stock.outside ?? 0) / 2 : 0;
    const { length } = results.assembled.elements[member]!;
    const inset = Math.min(trunk, length / 2);
    const x = atStart ? inset : length - inset;
    const found = cases
      .map((one, c) => ({
        one,
        load: endLoad(results.solutions[c]!, member, x),
        radius: line.stock.outside / 2,
      }))
      .sort((a, b) => demand(b.load, b.radius) - demand(a.load, a.radius))[0];
    if (!found) continue;
    const row = weldRow({
      part: weld.line,
      check: 'tubeWeld',
      where: `weld round the tube at "${weld.with}"`,
      one: found.one,
      lines: [{ center: [0 as Length, 0 as Length], radius: (line.stock.outside / 2) as Length }],
      leg: legOf(input, line.stock.wall),
      load: found.load,
      yield: materialStrength(tube.material).weldedYield,
      settings,
    });
    if (row.utilization > (best.get(weld.line)?.utilization ?? -1)) best.set(weld.line, row);
  }
  return [...best.values()];
}

function endLoad({ memberForces, memberLoads }: FrameSolution, member: number, x: number): WeldLoad {
  const f = sectionForces(
    memberForces.subarray(member * 12, member * 12 + 12),
    memberLoads.subarray(member * 3, member * 3 + 3),
    x,
  );
  return {
    force: [f.normal as Force, f.shearY as Force, f.shearZ as Force],
    at: [0 as Length, 0 as Length, 0 as Length],
    moment: [f.torque as Torque, f.momentY as Torque, f.momentZ as Torque],
  };
}

/** Rough order of the load on a round weld, to pick the case that is worked out. */
const demand = ({ force, moment }: WeldLoad, radius: number): number =>
  Math.hypot(...force) / 2 + Math.hypot(moment[0] / 2, moment[1], moment[2]) / radius;
