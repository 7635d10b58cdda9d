import { derived } from '../../../quantity/index.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import { landingCase } from './landingCase.ts';
import { pegCase } from './pegCase.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, rest } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** At rest, and what the rider and a low drop add to it. */
export function restCases(input: CasesInput, whole: Whole, holds: Holds): Draft[] {
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
    landingCase(input, whole, holds),
    pegCase(input, whole, holds),
  ];
}
