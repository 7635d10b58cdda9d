import type { Point3 } from '../../../geometry/index.ts';
import type { LoadSettings } from './assumptions.ts';
import type { CasesInput } from './caseTypes.ts';
import type { Whole } from './wholeBike.ts';

/** How much of his weight a standing rider brings on the pegs as the bike lands. @source practice */
export const KNEES = 2;

export function landing(whole: Whole, { dropHeight, tireRate }: LoadSettings) {
  const bare = whole.bareFront + whole.bareRear;
  const rider = KNEES * (whole.weight - bare);
  const machine = bare * (1 + Math.sqrt(1 + (2 * dropHeight * 2 * tireRate) / bare));
  return { rider, total: machine + rider };
}

export const riderCenter = ({ frame, bike }: CasesInput): Point3 =>
  frame.bodies.find((body) => body.carrier.by === 'rider')?.center ?? bike.layout.places.seat;
