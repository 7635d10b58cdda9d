import { scale3, subtract3, unit3 } from '../../../geometry/index.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import type { AppliedLoad, RiderHold } from './balance.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, rest } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** Hands pull toward the shoulders, the feet push back. */
export function barPull({ bike, frame, settings }: CasesInput, whole: Whole, holds: Holds): Draft {
  const { shoulder } = bike.rider;
  const loads = frame.grips.flatMap((node, i): AppliedLoad[] => {
    const at = frame.draft.nodes.get(node)!;
    const aim = { ...shoulder, y: (i === 0 ? 1 : -1) * Math.abs(shoulder.y) };
    const force = scale3(unit3(subtract3(aim, at)), settings.barPull);
    return [
      { what: 'hand', carrier: { by: 'node', node }, at, force, inner: true },
      { what: 'seat and feet', carrier: { by: 'rider' }, at, force: scale3(force, -1), inner: true },
    ];
  });
  return {
    id: 'bar-pull',
    name: 'pull on the bars',
    basis: `${newtons(settings.barPull)} at each grip toward the shoulders, held against by seat and feet.`,
    source: { key: 'memory', where: 'bicycle bar tests' },
    applied: [...rest(whole), ...loads],
    hold: holds.standing.filter(({ node }) => !frame.grips.includes(node)).concat(seatOnly(holds, frame)),
  };
}

const seatOnly = (holds: Holds, frame: BikeFrame): RiderHold =>
  holds.seated.filter(({ node }) => frame.seats.some((seat) => seat.node === node));
