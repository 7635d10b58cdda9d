import type { Point3 } from '../../../geometry/index.ts';
import { derived } from '../../../quantity/index.ts';
import type { LoadSettings } from './assumptions.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, rest } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** How much of his weight a standing rider brings on the pegs as the bike lands. @source practice */
const KNEES = 2;

/** The bike falls onto its tires, the rider onto his legs. */
export function landingCase(input: CasesInput, whole: Whole, holds: Holds): Draft {
  const { dropHeight, tireRate } = input.settings;
  const drop = landing(whole, input.settings);
  return {
    id: 'drop',
    name: 'landing on both wheels',
    basis: `The bike without rider lands from ${(dropHeight * 1000).toFixed(0)} mm on two tires of ${(tireRate / 1000).toFixed(0)} N/mm, and the rider, knees bent, adds ${KNEES} times his weight: ${newtons(drop.total)} on both wheels.`,
    source: derived('m·g·(1 + √(1 + 2·h·k/(m·g))), fall onto a spring'),
    applied: [
      ...rest(whole, drop.total / whole.weight, drop.total / whole.weight),
      {
        what: 'rider on bent knees',
        carrier: { by: 'rider' },
        at: riderCenter(input),
        force: { x: 0, y: 0, z: -drop.rider },
      },
    ],
    hold: holds.standing,
    withRider: false,
  };
}

function landing(whole: Whole, { dropHeight, tireRate }: LoadSettings) {
  const bare = whole.bareFront + whole.bareRear;
  const rider = KNEES * (whole.weight - bare);
  const machine = bare * (1 + Math.sqrt(1 + (2 * dropHeight * 2 * tireRate) / bare));
  return { rider, total: machine + rider };
}

const riderCenter = ({ frame, bike }: CasesInput): Point3 =>
  frame.bodies.find((body) => body.carrier.by === 'rider')?.center ?? bike.layout.places.seat;
