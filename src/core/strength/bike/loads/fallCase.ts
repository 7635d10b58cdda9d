import { type Point3, scale3 } from '../../../geometry/index.ts';
import { derived } from '../../../quantity/index.ts';
import type { FrameMasses } from './balance.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { newtons } from './tireLoads.ts';
import { GRAVITY } from './wholeBike.ts';

/** Lean at which a bike that falls over lies on its peg. @source practice */
const FALLEN = Math.PI / 4;

/** The bare bike falls over and is stopped by its peg. */
export function fallCase({ frame, settings }: CasesInput, holds: Holds, bare: FrameMasses): Draft {
  const peg = frame.draft.nodes.get(frame.pegs[0])!;
  const fall = ((bare.total * GRAVITY) / 2) * (1 + settings.dropHeight / settings.pegGive);
  const up: Point3 = { x: 0, y: -Math.sin(FALLEN), z: Math.cos(FALLEN) };
  return {
    id: 'side-drop',
    name: 'fall onto the left peg',
    basis: `Without rider, half the mass falls ${(settings.dropHeight * 1000).toFixed(0)} mm onto the peg and stops within ${(settings.pegGive * 1000).toFixed(0)} mm: ${newtons(fall)}.`,
    source: derived('m·g·(1 + h/s), work of a fall'),
    applied: [
      {
        what: 'ground on the left peg',
        carrier: { by: 'node', node: frame.pegs[0] },
        at: peg,
        force: scale3(up, fall),
      },
    ],
    hold: holds.standing,
    withRider: false,
  };
}
