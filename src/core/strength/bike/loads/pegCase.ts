import type { AppliedLoad } from './balance.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, onWheel } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** All of a rider's weight, and more, on one peg. */
export function pegCase(input: CasesInput, whole: Whole, holds: Holds): Draft {
  const { pegLoad } = input.settings;
  return {
    id: 'peg',
    name: 'all weight on one peg',
    basis: `${newtons(pegLoad)} down on the left peg in place of the rider.`,
    source: { key: 'memory', where: 'bicycle frame tests, 1000 to 1200 N on a pedal' },
    applied: pegLoads(input, whole),
    hold: holds.standing,
    withRider: false,
  };
}

/** The load on the left peg, and the wheels under it. */
function pegLoads({ frame, settings }: CasesInput, whole: Whole): AppliedLoad[] {
  const at = frame.draft.nodes.get(frame.pegs[0])!;
  const down = settings.pegLoad;
  const share = (at.x - whole.contact.rear.x) / whole.wheelbase;
  return [
    {
      what: 'foot on the left peg',
      carrier: { by: 'node', node: frame.pegs[0] },
      at,
      force: { x: 0, y: 0, z: -down },
    },
    onWheel('front', whole.contact.front, { z: whole.bareFront + down * share }),
    onWheel('rear', whole.contact.rear, { z: whole.bareRear + down * (1 - share) }),
  ];
}
