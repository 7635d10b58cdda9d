import type { AngularSpeed, Force, Length, Power, Pressure, Quantity, Speed } from '../../quantity/index.ts';
import { inches, poundsForce } from '../../quantity/index.ts';
import { type Chain, chainRatingRow, strandFactor } from '../../standards/index.ts';

/** 33 000 ft·lbf/min. */
const HORSEPOWER = (33_000 * 12 * inches(1) * poundsForce(1)) / 60;

/** The power a chain is rated for and what limits it. */
export interface ChainRating {
  /** Fatigue of the link plates [W]. */
  readonly plateFatigue: Power;
  /** Impact of rollers and bushings [W]. */
  readonly rollerImpact: Power;
  /** The lesser [W]. */
  readonly rating: Power;
  readonly limitedBy: 'plate-fatigue' | 'roller-impact';
  /** Speed of the small sprocket at which both are equal [rad/s]. */
  readonly crossover: AngularSpeed;
}

/**
 * Rated power of a chain: HP1 = K1·N^1.08·n^0.9·P^(3 − 0.07P), HP2 = 1000·K2·N^1.5·P^0.8/n^1.5 (P in, n rpm, N teeth of
 * the small sprocket), times 1.7, 2.5 … for more strands; rated for smooth load, 15 000 h, good lubrication.
 * @returns undefined for a chain the formula is not for (motorcycle sizes) or more strands than are listed
 * @source roller-chain-sheet, power formula; asme-b29-1, rating tables
 */
export function chainRating(
  chain: Chain,
  teeth: number,
  speed: AngularSpeed,
  strands = 1,
): ChainRating | undefined {
  const row = chainRatingRow(chain.name);
  const multiple = strandFactor(strands);
  if (!row || multiple === undefined) return undefined;
  const p = chain.pitch / inches(1);
  const n = (speed * 60) / (2 * Math.PI);
  const fatigue = row.k1 * teeth ** 1.08 * p ** (3 - 0.07 * p);
  const impact = 1000 * row.k2 * teeth ** 1.5 * p ** 0.8;
  const plateFatigue = fatigue * n ** 0.9 * HORSEPOWER * multiple;
  const rollerImpact = (impact / n ** 1.5) * HORSEPOWER * multiple;
  return {
    plateFatigue: plateFatigue as Power,
    rollerImpact: rollerImpact as Power,
    rating: Math.min(plateFatigue, rollerImpact) as Power,
    limitedBy: plateFatigue <= rollerImpact ? 'plate-fatigue' : 'roller-impact',
    crossover: (((impact / fatigue) ** (1 / 2.4) * 2 * Math.PI) / 60) as AngularSpeed,
  };
}

/** (N/17)^1.08 below the crossover, (N/17)^1.5 above: makes a 17-tooth table one for N teeth. @source memory, Shigley table 17-22 */
export const toothFactor = (teeth: number, limitedBy: ChainRating['limitedBy']): number =>
  (teeth / 17) ** (limitedBy === 'plate-fatigue' ? 1.08 : 1.5);

/** v = N·P·n [m/s]. @source shigley-9, equation 17-29 */
export const chainSpeed = (pitch: Length, teeth: number, speed: AngularSpeed): Speed =>
  ((teeth * pitch * speed) / (2 * Math.PI)) as Speed;

/** F = P/v [N]. @source shigley-9, section 17-5 */
export const chainTension = (power: Power, speed: Speed): Force => (power / speed) as Force;

/** Fc = m·v² [N], pulls the whole chain. @source derived, momentum of the moving chain */
export const centrifugalTension = (lineMass: Quantity<'kg/m'>, speed: Speed): Force =>
  (lineMass * speed * speed) as Force;

/** Bearing pressure in the joint: F/(pin diameter × bushing length), the bushing over both inner plates [Pa]. @source derived, projected area */
export const jointPressure = (
  chain: Pick<Chain, 'pinDiameter' | 'innerWidth' | 'plateThickness'>,
  tension: Force,
  strands = 1,
): Pressure => (tension / (jointArea(chain) * strands)) as Pressure;

/** Projected area of pin in bushing [m²]. */
export const jointArea = ({
  pinDiameter,
  innerWidth,
  plateThickness,
}: Pick<Chain, 'pinDiameter' | 'innerWidth' | 'plateThickness'>): number =>
  pinDiameter * (innerWidth + 2 * plateThickness);

/**
 * Speed of the small sprocket at which pins gall in their bushings, lubricated:
 * n = 1000·[82.5/(7.95^p·1.0278^N·1.323^(F/1000))]^(1/(1.59·lg p + 1.873)), p in, F lbf, n rpm.
 * @source memory, Shigley equation 17-40
 */
export function gallingSpeed(pitch: Length, teeth: number, tension: Force): AngularSpeed {
  const p = pitch / inches(1);
  const pounds = tension / poundsForce(1);
  const inner = 82.5 / (7.95 ** p * 1.0278 ** teeth * 1.323 ** (pounds / 1000));
  const rpm = 1000 * inner ** (1 / (1.59 * Math.log10(p) + 1.873));
  return ((rpm * 2 * Math.PI) / 60) as AngularSpeed;
}
