import type { QuantityKind, SourceRef } from '../quantity/index.ts';
import { derived, practice } from '../quantity/index.ts';
import type { SprocketPair } from './chainLength.ts';
import { greatestCommonDivisor } from './linkCounts.ts';
import { outsideDiameter } from './sprocket.ts';

export type ChainCautionCode =
  | 'few-teeth'
  | 'many-teeth'
  | 'ratio'
  | 'wrap'
  | 'sprockets-touch'
  | 'short-center'
  | 'long-center'
  | 'steep'
  | 'hunting'
  | 'offset-link';

/** A layout rule that a chain drive is outside of; data for a finding, not a verdict. */
export interface ChainCaution {
  readonly code: ChainCautionCode;
  /** What was found, SI, by `kind`. */
  readonly value: number;
  /** What the rule asks for, SI, by `kind`. */
  readonly limit: number;
  /** `min`: value should be at least `limit`; `max`: at most. */
  readonly bound: 'min' | 'max';
  readonly kind: QuantityKind;
  readonly source: SourceRef;
}

export interface CautionQuestion extends SprocketPair {
  /** C [m]. */
  readonly center: number;
  /** L, links chosen; a count that is not whole says nothing on hunting or offset links. */
  readonly links: number;
  /** Wrap on the smaller sprocket [rad]. */
  readonly smallWrap: number;
  /** Line of centers above the horizontal [rad], if known. */
  readonly inclination?: number;
}

const DEGREE = Math.PI / 180;
/** Layout rules of the trade; see the room's README for where each was found. */
const LIMITS = {
  teethMin: 17,
  teethMax: 120,
  ratio: 7,
  wrap: 120 * DEGREE,
  centerMinPitches: 30,
  centerMaxPitches: 50,
  inclination: 60 * DEGREE,
} as const;

/**
 * Layout rules that the drive is outside of: 17 teeth, at most 120, ratio 7, wrap 120°, centers of 30 to 50
 * pitches and more than half the sum of the outside diameters, line of centers up to 60°, teeth and links
 * without a common factor, no offset link.
 * @source practice, chain makers' and textbooks' layout rules
 */
export function chainCautions(question: CautionQuestion): readonly ChainCaution[] {
  const { pitch, driverTeeth, drivenTeeth, center, links } = question;
  const small = Math.min(driverTeeth, drivenTeeth);
  const large = Math.max(driverTeeth, drivenTeeth);
  const touching = (outsideDiameter(pitch, driverTeeth) + outsideDiameter(pitch, drivenTeeth)) / 2;
  const rule = practice('chain layout rules');
  const whole = Number.isInteger(links);
  const rows: readonly ChainCaution[] = [
    {
      code: 'sprockets-touch',
      value: center,
      limit: touching,
      bound: 'min',
      kind: 'length',
      source: derived('half the sum of the outside diameters'),
    },
    { code: 'few-teeth', value: small, limit: LIMITS.teethMin, bound: 'min', kind: 'count', source: rule },
    { code: 'many-teeth', value: large, limit: LIMITS.teethMax, bound: 'max', kind: 'count', source: rule },
    { code: 'ratio', value: large / small, limit: LIMITS.ratio, bound: 'max', kind: 'ratio', source: rule },
    {
      code: 'wrap',
      value: question.smallWrap,
      limit: LIMITS.wrap,
      bound: 'min',
      kind: 'angle',
      source: rule,
    },
    {
      code: 'short-center',
      value: center,
      limit: LIMITS.centerMinPitches * pitch,
      bound: 'min',
      kind: 'length',
      source: rule,
    },
    {
      code: 'long-center',
      value: center,
      limit: LIMITS.centerMaxPitches * pitch,
      bound: 'max',
      kind: 'length',
      source: rule,
    },
    {
      code: 'steep',
      value: Math.abs(question.inclination ?? 0),
      limit: LIMITS.inclination,
      bound: 'max',
      kind: 'angle',
      source: rule,
    },
    {
      code: 'hunting',
      value: whole ? greatestCommonDivisor(small, links) : 1,
      limit: 1,
      bound: 'max',
      kind: 'count',
      source: practice('odd teeth with an even number of links, no common factor'),
    },
    {
      code: 'offset-link',
      value: whole ? links % 2 : 0,
      limit: 0,
      bound: 'max',
      kind: 'count',
      source: rule,
    },
  ];
  return rows.filter(({ value, limit, bound }) => (bound === 'min' ? value < limit : value > limit));
}
