import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { CHASSIS, onWheel, rest } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** A wheel that rides up on something, and one that falls into it. */
export function bumpCases({ settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { bumpFactor: n, potholeRearward } = settings;
  const basis = (where: string) => `${n} times the load at rest on the ${where} wheel, the other as at rest.`;
  return [
    {
      id: 'bump-front',
      name: 'bump at the front wheel',
      basis: basis('front'),
      source: CHASSIS,
      applied: rest(whole, n, 1),
      hold: holds.seated,
    },
    {
      id: 'bump-rear',
      name: 'bump at the rear wheel',
      basis: basis('rear'),
      source: CHASSIS,
      applied: rest(whole, 1, n),
      hold: holds.seated,
    },
    {
      id: 'pothole',
      name: 'pothole at the front wheel',
      basis: `${n} times the load at rest up and ${potholeRearward} times rearward on the front wheel, at the axle.`,
      source: CHASSIS,
      applied: [
        ...rest(whole, n, 1),
        onWheel(
          'front',
          { ...whole.contact.front, z: whole.frontAxleHeight },
          { x: -potholeRearward * whole.front },
        ),
      ],
      hold: holds.seated,
    },
  ];
}
