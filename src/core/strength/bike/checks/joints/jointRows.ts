import type { UtilizationRow } from '../utilizationRow.ts';
import { axleSlots } from './axleSlots.ts';
import { caliperBolts } from './caliperBolts.ts';
import { engineBolts } from './engineBolts.ts';
import { footWelds } from './footWelds.ts';
import type { JointInput } from './jointInput.ts';
import { tubeWelds } from './tubeWelds.ts';

/** Bolts, brackets and welds under the cases that load them most. */
export function jointRows(input: JointInput): readonly UtilizationRow[] {
  return [
    ...engineBolts(input),
    ...caliperBolts(input),
    ...axleSlots(input),
    ...footWelds(input),
    ...tubeWelds(input),
  ];
}
