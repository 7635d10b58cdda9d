import type { Use } from '../build/index.ts';
import { practice, type QuantityKind, type SourceRef } from '../quantity/index.ts';

/** A value that the build file does not give and that was taken instead. */
export interface Assumption {
  /** Path of the field that would replace it; '' where there is none. */
  readonly path: string;
  readonly name: string;
  /** In the SI unit of `kind`. */
  readonly value: number;
  readonly kind: QuantityKind;
  readonly source: SourceRef;
}

/** Rolling resistance and grip by ground. Roads: inflated tires .012 to .020; soft lug tires .02 to .04; turf adds .05 to .1. */
export const GROUNDS: Readonly<
  Record<NonNullable<Use['ground']>, { readonly rollingCoefficient: number; readonly grip: number }>
> = {
  road: { rollingCoefficient: 0.015, grip: 0.8 },
  path: { rollingCoefficient: 0.03, grip: 0.5 },
  grass: { rollingCoefficient: 0.08, grip: 0.4 },
  sand: { rollingCoefficient: 0.12, grip: 0.3 },
};
export const GROUND_SOURCE: SourceRef = {
  key: 'memory',
  where: 'rolling resistance of small tires; grip: dry road 0.7 to 0.9 locked, less on loose ground',
};

/** Upright rider on a small naked machine, .45 to .65 m²; bracketed by the coast-down table of the emission test. */
export const DRAG_AREA = 0.55;
export const DRAG_SOURCE: SourceRef = {
  key: 'cfr-40-86-529',
  where: 'drag areas that follow from figure F98-9',
};

/** One roller chain stage, clean, small sprockets: .96 to .98. */
export const CHAIN_EFFICIENCY = 0.96;
/** Rubber belt in variable sheaves: .70 to .88, worst at low torque. */
export const BELT_EFFICIENCY = 0.8;
/** Bearings, seals and brakes that drag, of the whole bike. */
export const OTHER_EFFICIENCY = 0.96;
export const EFFICIENCY_SOURCE: SourceRef = { key: 'memory', where: 'losses of chains, belts and bearings' };

/** Lock-up of a centrifugal clutch over its first bite: 2600 over 2000 rpm. */
export const LOCK_OVER_BITE = 1.3;
export const CLUTCH_SOURCE = practice('bite 2000, lock-up 2600 rpm');

/** Engine speed while a belt shifts, as a share of the governed speed: 3400 of 3600 rpm. */
export const SHIFT_SHARE = 3400 / 3600;
export const SHIFT_SOURCE = practice('belt sets shift a little below the governed speed');

/** Steepest hill of a yard or path to start on. */
export const GRADE = 0.15;
export const GRADE_SOURCE = practice('steep path, 15 %');
/** Riding speed of a yard [m/s]. */
export const YARD_SPEED = 20 / 3.6;
export const SPEED_SOURCE = practice('yard riding, 20 km/h');
