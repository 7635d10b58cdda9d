import type { AngularSpeed, Force, Length } from '../../quantity/index.ts';
import {
  type AxialFactorRow,
  type AxialRule,
  axialFactorTable,
  bearingConstants,
} from '../../standards/index.ts';

/** Ratings of a single-row deep groove ball bearing. */
export interface BearingRating {
  /** C, basic dynamic load rating [N]. */
  readonly dynamicRating: Force;
  /** C0, basic static load rating [N]. */
  readonly staticRating: Force;
  /** f0 [-]; used by ISO 281's table only. */
  readonly f0: number;
}

export interface BearingLoad {
  /** Fr [N], ≥ 0. */
  readonly radial: Force;
  /** Fa [N], ≥ 0; either direction. */
  readonly axial: Force;
}

/** How X and Y are taken; ISO 281 has no factor for a turning outer ring, old textbooks have V = 1.2. */
export interface EquivalentRule {
  readonly rule: AxialRule;
  /** V [-]: 1, or 1.2 by the textbook when the outer ring turns. */
  readonly rotationFactor: number;
}

export interface EquivalentLoad {
  /** f0·Fa/C0 or Fa/C0 [-]. */
  readonly relativeAxial: number;
  readonly e: number;
  readonly x: number;
  readonly y: number;
  /** P [N]. */
  readonly load: Force;
  /** Off the ends of the table the end row is used: below it that is on the heavy side, above it it is not. */
  readonly table: 'inside' | 'below' | 'above';
}

export const ISO_281: EquivalentRule = { rule: 'iso-281', rotationFactor: 1 };

/** Exponent of ball bearings. */
const BALL = 3;

/**
 * P = V·Fr while Fa/(V·Fr) ≤ e, else X·V·Fr + Y·Fa; e and Y on the straight line between the rows of the table.
 * @source iso-281, table 3; shigley-9, table 11-1
 */
export function equivalentLoad(
  { radial, axial }: BearingLoad,
  rating: BearingRating,
  { rule, rotationFactor: v }: EquivalentRule = ISO_281,
): EquivalentLoad {
  const relativeAxial = ((rule === 'iso-281' ? rating.f0 : 1) * axial) / rating.staticRating;
  const { e, y, table } = axialFactors(axialFactorTable[rule].rows, relativeAxial);
  const isRadial = axial <= e * v * radial;
  const [x, yUsed] = isRadial ? [1, 0] : [bearingConstants.x, y];
  const load = (x * v * radial + yUsed * axial) as Force;
  return { relativeAxial, e, x, y: yUsed, load, table };
}

/** L10 = (C/P)³ [million revolutions]; Infinity without load. @source iso-281, basic rating life */
export const ratingLife = (rating: Force, load: Force): number => (rating / load) ** BALL;

/** L10h = L10·10⁶/(60·n) [h]; Infinity at standstill. @source iso-281, basic rating life */
export const lifeHours = (millionRevolutions: number, speed: AngularSpeed): number =>
  (millionRevolutions * 1e6) / ((speed / (2 * Math.PI)) * 3600);

/** C that gives so many hours [N]. @source iso-281, basic rating life solved for C */
export const requiredRating = (load: Force, speed: AngularSpeed, hours: number): Force =>
  (load * Math.cbrt((hours * 3600 * (speed / (2 * Math.PI))) / 1e6)) as Force;

/** P0 = max(Fr, 0.6·Fr + 0.5·Fa) [N]. @source iso-76, single-row deep groove ball bearings */
export const staticLoad = ({ radial, axial }: BearingLoad): Force =>
  Math.max(radial, bearingConstants.static.x0 * radial + bearingConstants.static.y0 * axial) as Force;

/**
 * Share of the L10 life that is reached with probability R: x0 + (θ − x0)·(ln 1/R)^(1/b).
 * @source shigley-9, section 11-4, three-parameter Weibull
 */
export function reliabilityFactor(reliability: number): number {
  const { x0, theta, b } = bearingConstants.weibull;
  return x0 + (theta - x0) * Math.log(1 / reliability) ** (1 / b);
}

/**
 * a1, the share of the L10 life that is reached with a reliability; ISO 281 gives it at some only.
 * @returns undefined between and outside them
 * @source iso-281, table of a1 for reliability, 2007; from memory
 */
export const isoReliabilityFactor = (reliability: number): number | undefined =>
  bearingConstants.lifeReliabilities.find((one) => Math.abs(one.reliability - reliability) < 1e-9)?.a1;

/** One part of a duty. */
export interface DutyPart {
  /** P of this part [N]. */
  readonly load: Force;
  /** n [rad/s]. */
  readonly speed: AngularSpeed;
  /** Share of the time [-]; the shares need not sum to 1. */
  readonly share: number;
}

/** Pm = ∛(ΣP³·n·t/Σn·t), nm = Σn·t/Σt. @source iso-281, mean load of a varying duty */
export function meanDuty(parts: readonly DutyPart[]): {
  readonly load: Force;
  readonly speed: AngularSpeed;
} {
  const time = parts.reduce((sum, { share }) => sum + share, 0);
  const turns = parts.reduce((sum, { speed, share }) => sum + speed * share, 0);
  const damage = parts.reduce((sum, { load, speed, share }) => sum + load ** BALL * speed * share, 0);
  return {
    load: (turns > 0 ? Math.cbrt(damage / turns) : 0) as Force,
    speed: (time > 0 ? turns / time : 0) as AngularSpeed,
  };
}

/** n of n·dm = 500 000 (grease) or 300 000 (sealed) mm/min [rad/s]. @source memory, maker practice of deep groove bearings */
export function speedLimit(bore: Length, outside: Length, seal: 'grease' | 'sealed'): AngularSpeed {
  const factor = bearingConstants.speedFactors.find(({ name }) => name === seal)!.nDmMmPerMin;
  const meanDiameterMm = ((bore + outside) / 2) * 1000;
  return ((factor / meanDiameterMm / 60) * 2 * Math.PI) as AngularSpeed;
}

/** Axial load that a deep groove bearing should not pass: C0/2, C0/4 to a 12 mm bore [N]. @source bearing-catalogs, axial load */
export function axialLimit(staticRating: Force, bore: Length): Force {
  const row = bearingConstants.axialLimits.find(
    ({ upToBoreMm }) => upToBoreMm === undefined || bore * 1000 <= upToBoreMm + 1e-9,
  )!;
  return (row.shareOfC0 * staticRating) as Force;
}

function axialFactors(
  rows: readonly AxialFactorRow[],
  ratio: number,
): { readonly e: number; readonly y: number; readonly table: EquivalentLoad['table'] } {
  const [first, last] = [rows[0]!, rows.at(-1)!];
  if (ratio <= first.ratio) return { ...first, table: ratio < first.ratio ? 'below' : 'inside' };
  if (ratio >= last.ratio) return { ...last, table: ratio > last.ratio ? 'above' : 'inside' };
  const k = rows.findIndex((row) => row.ratio >= ratio);
  const [a, b] = [rows[k - 1]!, rows[k]!];
  const t = (ratio - a.ratio) / (b.ratio - a.ratio);
  return { e: a.e + t * (b.e - a.e), y: a.y + t * (b.y - a.y), table: 'inside' };
}
