import type { BikeFrame } from '../model/frameTypes.ts';
import type { RiderHold } from './balance.ts';

export type Holds = ReturnType<typeof riderHolds>;

/** Shares of the rider's weight: on the seat with hands and feet resting, or standing. @source practice */
const SEATED = { seat: 0.7, pegs: 0.2, grips: 0.1 };

const STANDING = { seat: 0, pegs: 0.8, grips: 0.2 };

/** Where a seated and a standing rider rests, by weights. */
export function riderHolds(frame: BikeFrame): { readonly seated: RiderHold; readonly standing: RiderHold } {
  const hold = (shares: typeof SEATED): RiderHold =>
    [
      ...frame.seats.map(({ node, weight }) => ({ node, weight: weight * shares.seat })),
      ...frame.pegs.map((node) => ({ node, weight: shares.pegs / 2 })),
      ...frame.grips.map((node) => ({ node, weight: shares.grips / 2 })),
    ].filter(({ weight }) => weight > 0);
  return { seated: hold(SEATED), standing: hold(STANDING) };
}
