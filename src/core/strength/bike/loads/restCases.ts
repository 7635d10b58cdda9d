import { derived } from '../../../quantity/index.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import { KNEES, landing, riderCenter } from './landingCase.ts';
import { pegLoads } from './pegCase.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, rest } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

export function restCases(input: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { settings } = input;
  const { pegLoad, dropHeight, tireRate } = settings;
  const drop = landing(whole, settings);
  return [
    {
      id: 'seated',
      name: 'rider seated',
      basis: `Weight of ${newtons(whole.weight)} at rest, rider on the seat, feet and hands resting.`,
      source: derived('moments about the rear contact'),
      applied: rest(whole),
      hold: holds.seated,
    },
    {
      id: 'standing',
      name: 'rider on the pegs',
      basis: 'At rest, rider standing on both pegs.',
      source: derived('moments about the rear contact'),
      applied: rest(whole),
      hold: holds.standing,
    },
    {
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
    },
    {
      id: 'peg',
      name: 'all weight on one peg',
      basis: `${newtons(pegLoad)} down on the left peg in place of the rider.`,
      source: { key: 'memory', where: 'bicycle frame tests, 1000 to 1200 N on a pedal' },
      applied: pegLoads(input, whole),
      hold: holds.standing,
      withRider: false,
    },
  ];
}
