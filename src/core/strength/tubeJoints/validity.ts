import type { Angle, Length } from '../../quantity/index.ts';
import type { ChordWall } from './chordWall.ts';
import { wallRatio } from './chordWall.ts';

/** A limit within which the rules were tested, and what the joint has instead. */
export interface OutsideRule {
  /** In words, e.g. `diameter over wall of the chord`. */
  readonly what: string;
  readonly value: number;
  readonly kind: 'ratio' | 'angle' | 'length' | 'pressure';
  readonly least?: number;
  readonly most?: number;
  /** Whether the rules lose strength over it; else it is a limit of scope. */
  readonly weakens: boolean;
}

/** The rules count for this much where a limit is not kept. @source tube-joint-guide, section 2.1.1 */
export const OUTSIDE_SHARE = 0.85;

const LEAST_ANGLE = Math.PI / 6;
/** The thinnest wall and the strongest steel of the rules. @source en-1993-1-8, section 7.1.1; from memory */
const LEAST_WALL = 0.0025;
const MOST_YIELD = 460e6;

/** What of a list lies outside its limits. */
export const outsideOf = (limits: readonly OutsideRule[]): readonly OutsideRule[] =>
  limits.filter(
    ({ value, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY }) =>
      // Sizes in inches and back must not fall a rounding outside.
      value < least * (1 - 1e-9) || value > most * (1 + 1e-9),
  );

/** Share of the resistance that counts: less where a limit of the tests is not kept [-]. */
export const shareOutside = (outside: readonly OutsideRule[]): number =>
  outside.some(({ weakens }) => weakens) ? OUTSIDE_SHARE : 1;

/** Limits on the chord itself. @source en-1993-1-8, table 7.1; tube-joint-sheets; X joints from memory */
export function chordLimits(chord: ChordWall, isCross: boolean): readonly OutsideRule[] {
  return [
    {
      what: 'diameter over wall of the chord',
      value: 2 * wallRatio(chord),
      kind: 'ratio',
      least: 10,
      most: isCross ? 40 : 50,
      weakens: true,
    },
    { what: 'wall of the chord', value: chord.wall, kind: 'length', least: LEAST_WALL, weakens: false },
    { what: 'yield of the chord', value: chord.yield, kind: 'pressure', most: MOST_YIELD, weakens: true },
  ];
}

/** Limits on a brace and its angle. @source en-1993-1-8, table 7.1 and section 7.1.2; tube-joint-sheets */
export function braceLimits(
  chord: ChordWall,
  brace: { readonly outside: Length; readonly wall: Length; readonly angle: Angle },
): readonly OutsideRule[] {
  return [
    {
      what: 'diameter of the brace over that of the chord',
      value: brace.outside / chord.outside,
      kind: 'ratio',
      least: 0.2,
      most: 1,
      weakens: true,
    },
    {
      what: 'diameter over wall of the brace',
      value: brace.outside / brace.wall,
      kind: 'ratio',
      most: 50,
      weakens: true,
    },
    {
      what: 'angle between brace and chord',
      value: brace.angle,
      kind: 'angle',
      least: LEAST_ANGLE,
      weakens: true,
    },
  ];
}
