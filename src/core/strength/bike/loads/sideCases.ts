import type { FrameMasses } from './balance.ts';
import { barPull } from './barPull.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import { fallCase } from './fallCase.ts';
import type { Holds } from './riderHolds.ts';
import { standCase } from './standCase.ts';
import { CHASSIS, onWheel } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** What pushes the bike sideways: a corner, a fall, the rider's arms and the stand. */
export function sideCases(input: CasesInput, whole: Whole, holds: Holds, bare: FrameMasses): Draft[] {
  const side = input.settings.cornering;
  return [
    {
      id: 'cornering',
      name: 'side force on both wheels',
      basis: `${side} times the load at rest sideways on each wheel, bike upright: more across the frame than a leaned corner gives.`,
      source: CHASSIS,
      applied: [
        onWheel('front', whole.contact.front, { y: side * whole.front, z: whole.front }),
        onWheel('rear', whole.contact.rear, { y: side * whole.rear, z: whole.rear }),
      ],
      hold: holds.seated,
    },
    fallCase(input, holds, bare),
    barPull(input, whole, holds),
    ...standCase(input, whole, holds),
  ];
}
