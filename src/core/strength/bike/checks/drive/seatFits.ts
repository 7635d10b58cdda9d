import type { FlatPattern, Opening } from '../../../../plates/index.ts';
import type { Length, Pressure } from '../../../../quantity/index.ts';
import {
  type Bearing,
  bearingRingLimits,
  boreMethods,
  findBearing,
  type Interference,
  internalClearance,
  materialStrength,
} from '../../../../standards/index.ts';
import { fitPair } from '../../../fits/fitPair.ts';
import { outerRaceway, type PressFit, pressFit } from '../../../fits/pressFit.ts';
import type { DriveInput, SeatFit } from './driveTypes.ts';

/** Of bearing steel. @source memory, usual values */
const RING = { elasticModulus: 206e9 as Pressure, poisson: 0.3 };
/** Ring pushed into steel, oiled. @source memory, 0.10 to 0.15 */
const FRICTION = 0.12;
/** How a bore that is opened by hand is brought to size. */
const BY_HAND = 'file-to-gauge';

/** Every bearing that is pressed into a plate. */
export function seatFits({ build, patterns }: DriveInput, notChecked: string[]): readonly SeatFit[] {
  return patterns.flatMap((pattern) =>
    pattern.openings
      .filter(({ kind, fit, carries }) => kind === 'bore' && fit !== undefined && carries === 'bearing')
      .flatMap((bore) => {
        const entry = build.plates[pattern.id];
        const seat = entry && 'seat' in entry && typeof entry.seat === 'object' ? entry.seat : undefined;
        const margin = entry && 'margin' in entry ? entry.margin : undefined;
        const named = seat?.bearing ?? bore.for;
        const bearing = findBearing(named);
        const found =
          bearing.ok && margin !== undefined
            ? seatOf(pattern, bore, { bearing: bearing.value, named, margin })
            : undefined;
        if (!found) notChecked.push(`fit of the bearing in "${pattern.id}": it is not in the tables`);
        return found ? [found] : [];
      }),
  );
}

interface SeatOf {
  readonly bearing: Bearing;
  /** As written, with its suffixes. */
  readonly named: string;
  /** Least plate round the bore [m]. */
  readonly margin: number;
}

function seatOf(
  pattern: FlatPattern,
  bore: Opening,
  { bearing, named, margin }: SeatOf,
): SeatFit | undefined {
  const isByHand = bore.steps.some((step) => step.do === 'open-by-hand');
  const interference = interferenceIn(bearing, bore.fit!, isByHand);
  if (!interference) return undefined;
  const material = materialStrength(pattern.material);
  const fitAt = (amount: number): PressFit | undefined =>
    amount > 0
      ? pressFit({
          diameter: bearing.outside,
          interference: amount as Length,
          innerBore: outerRaceway(bearing.bore, bearing.outside),
          hubOutside: (bearing.outside + 2 * margin) as Length,
          length: Math.min(pattern.thickness, bearing.width) as Length,
          friction: FRICTION,
          hub: {
            elasticModulus: material.elasticModulus,
            poisson: material.elasticModulus / (2 * material.shearModulus) - 1,
          },
          inner: RING,
        })
      : undefined;
  const tightest = fitAt(interference.most);
  const group = /\bC3\b/i.test(named) ? 'C3' : 'N';
  const clearance = internalClearance(bearing.bore, group);
  return {
    plate: pattern.id,
    designation: bearing.designation,
    fit: isByHand ? 'opened by hand until it just seats' : bore.fit!,
    isByHand,
    interference,
    ...(tightest ? { tightest } : {}),
    clearanceLoss: {
      most: tightest?.boreShrink ?? 0,
      middle: fitAt((interference.least + interference.most) / 2)?.boreShrink ?? 0,
    },
    ...(clearance ? { clearance: { group, ...clearance } } : {}),
    yield: material.yield,
  };
}

/** Of the ISO class, or of a bore that is opened to the ring and keeps to the band of its method about it. */
function interferenceIn(bearing: Bearing, fit: string, isByHand: boolean): Interference | undefined {
  if (!isByHand) {
    const pair = fitPair(bearing.outside, fit, 'bearing');
    return pair.ok ? pair.value.interference : undefined;
  }
  const ring = bearingRingLimits(bearing.outside, 'outside');
  const band = boreMethods.find(({ method }) => method === BY_HAND)?.spread;
  if (!ring || band === undefined) return undefined;
  // The maker tries the very ring, so its own tolerance does not add to the band.
  return { least: (-band / 2) as Length, most: (band / 2) as Length };
}
