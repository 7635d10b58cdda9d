import { originalName } from '../../../build/index.ts';
import type { SourceRef } from '../../../quantity/index.ts';

/** What is compared, by a name that figures and remedies keep: one kind of part has each of them. */
export type Check =
  | 'vonMises'
  | 'buckling'
  | 'tubeWeld'
  | 'footWeld'
  | 'shaftStress'
  | 'keyseatFatigue'
  | 'keyShear'
  | 'keyBearing'
  | 'bearingTilt'
  | 'bearingLife'
  | 'bearingStatic'
  | 'bearingSpeed'
  | 'criticalSpeed'
  | 'chainTension'
  | 'chainPower'
  | 'chainShock'
  | 'chainPressure'
  | 'chainSpeed'
  | 'beltWrap'
  | 'beltSlip'
  | 'beltTension'
  | 'seatStress'
  | 'seatClearance'
  | 'axleBending'
  | 'axleFatigue'
  | 'axleThread'
  | 'wheelBearingLife'
  | 'wheelBearingStatic'
  | 'boltSlip'
  | 'threadShear'
  | 'holeBearing'
  | 'holeTearOut'
  | 'boltLift'
  | 'plateStress'
  | 'wallUnderTube'
  | 'wallUnderPlate'
  | 'slotBearing'
  | 'slotTearOut';

/** One line of the table of utilizations. */
export interface UtilizationRow {
  /** Part as named in the build file. */
  readonly part: string;
  readonly check: Check;
  /** Item, end or bolts that the check is about, where one part has several of them. */
  readonly place?: string;
  /** Id of the load case. */
  readonly case: string;
  readonly where: string;
  /** What is compared: stress, force, torque … in SI of `kind`. */
  readonly quantity: string;
  readonly value: number;
  readonly limit: number;
  readonly kind: 'pressure' | 'force' | 'ratio' | 'angle' | 'angularSpeed' | 'torque' | 'length';
  /** value/limit, or limit/value where the limit is a least; over 1 is less margin than was asked for [-]. */
  readonly utilization: number;
  /** What the number takes for granted, in a sentence. */
  readonly note?: string;
  readonly source: SourceRef;
}

/** The same check of a part and of its mirror image is one comparison, wherever on them it is worst. */
export const comparisonOf = ({ part, check }: Pick<UtilizationRow, 'part' | 'check'>): string =>
  `${originalName(part)} ${check}`;

/** Ratings of wear, for thousands of hours of full power, and the play of a bearing: what is over them wears sooner. */
const WEARS: readonly Check[] = ['chainPower', 'chainPressure', 'seatClearance'];

/** Whether going over this limit shortens life by wear, and does not by itself break, bend or let go. */
export const isWear = ({ check }: Pick<UtilizationRow, 'check'>): boolean => WEARS.includes(check);
