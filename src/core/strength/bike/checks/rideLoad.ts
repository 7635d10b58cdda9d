import type { AngularSpeed, Force } from '../../../quantity/index.ts';
import { type BearingRating, equivalentLoad, meanDuty } from '../../bearing/bearingLife.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import { bearingLoad, type HubForces } from './hubForces.ts';

export interface RideLoadInput {
  readonly settings: Pick<LoadSettings, 'duty' | 'spectrum'>;
  /** Way of one turn of the wheel [m]. */
  readonly turn: number;
  /** By load case; `seated` is the bike at rest. */
  readonly forces: ReadonlyMap<string, HubForces>;
  /** 0 is the left bearing, 1 the right. */
  readonly side: 0 | 1;
  readonly rating: BearingRating;
}

/** How far a wheel rolls under one load of the spectrum [m]; 0 is one turn of it. @source practice */
const LASTS: Readonly<Record<string, number>> = {
  cornering: 20,
  'braking-front': 15,
  'braking-rear': 15,
  'bump-front': 0,
  'bump-rear': 0,
  pothole: 0,
};
const KILOMETER = 1000;

/**
 * Mean equivalent load of a hub's bearing by distance: what the spectrum lists, each over the way it lasts, and the duty of
 * the drive for the rest of each kilometer. Pm = ∛(ΣP³·s/Σs).
 * @returns Pm [N]
 * @source iso-281, mean load; practice for how long a load lasts
 */
export function rideLoad({ settings, turn, forces, side, rating }: RideLoadInput): Force {
  const { duty, spectrum } = settings;
  const rest = forces.get('seated')!;
  const part = (one: HubForces, share: number) => ({
    load: equivalentLoad(bearingLoad(one, side), rating).load,
    // Every part is weighted by its way, so all turn alike.
    speed: 1 as AngularSpeed,
    share,
  });
  const events = spectrum.flatMap(({ case: id, scale, perKilometer }) => {
    const [lasts, one] = [LASTS[id], forces.get(id)];
    if (lasts === undefined || !one) return [];
    return [part(between(rest, one, scale), ((lasts || turn) * perKilometer) / KILOMETER)];
  });
  // A spectrum so dense that its events fill more than the way leaves nothing over for plain riding.
  const left = Math.max(0, 1 - events.reduce((sum, { share }) => sum + share, 0));
  const way = duty.reduce((sum, { time, speed }) => sum + time * speed, 0);
  const driving = forces.get('driving') ?? rest;
  const rides =
    way > 0
      ? duty.map(({ time, torque, speed }) =>
          part(between(rest, driving, torque), (left * time * speed) / way),
        )
      : [part(rest, left)];
  return meanDuty([...events, ...rides]).load;
}

/** `share` of the way from the bike at rest to a case. */
function between(from: HubForces, to: HubForces, share: number): HubForces {
  const mix = (a: number, b: number): number => a + share * (b - a);
  const side = (k: 0 | 1): readonly [number, number] => [
    mix(from.radial[k][0], to.radial[k][0]),
    mix(from.radial[k][1], to.radial[k][1]),
  ];
  return { radial: [side(0), side(1)], axial: mix(from.axial, to.axial) };
}
