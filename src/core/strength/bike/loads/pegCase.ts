import type { AppliedLoad } from './balance.ts';
import type { CasesInput } from './caseTypes.ts';
import { onWheel } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** The load on the left peg, and the wheels under it. */
export function pegLoads({ frame, settings }: CasesInput, whole: Whole): AppliedLoad[] {
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
