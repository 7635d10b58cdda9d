import type { OperationName, Shop } from '../build/index.ts';
import { mm, practice, type SourceRef } from '../quantity/index.ts';

/** What one way of making a plate can do in this shop. */
export interface OperationLimits {
  /** Smallest hole, whatever the thickness [m]. */
  readonly smallestHole: number;
  /** Smallest hole over plate thickness; below it a hole is only marked, and drilled. */
  readonly smallestHolePerThickness: number;
  /** From this multiple of the thickness up a hole is cut to size; between the two it is cut under size and drilled. */
  readonly cleanHolePerThickness: number;
  /** Largest hole [m]. */
  readonly largestHole: number;
  /** Width of the cut [m]. */
  readonly kerf: number;
  /** What outline and hole places can be held to, plus or minus [m]. */
  readonly holds: number;
  /** How far a hole or bore is left under size on the diameter [m]. */
  readonly undersize: number;
  readonly source: SourceRef;
}

/** Clean cut holes start at twice the smallest one: 1.5 and 3 thicknesses in the trade. */
const CLEAN_OVER_SMALLEST = 2;

/** Used for every field that the build's `shop` leaves out. */
export const shopDefaults: Readonly<Record<OperationName, OperationLimits>> = {
  drill: {
    smallestHole: mm(1.5),
    smallestHolePerThickness: 0,
    cleanHolePerThickness: 0,
    largestHole: mm(25),
    kerf: 0,
    holds: mm(0.5),
    undersize: mm(1),
    source: practice(
      'hand drill: a bit wanders by up to a quarter of its size; larger holes by hole saw or chain drilling',
    ),
  },
  torch: {
    smallestHole: mm(3),
    smallestHolePerThickness: 1.5,
    cleanHolePerThickness: 3,
    largestHole: mm(500),
    kerf: mm(1.8),
    holds: mm(1),
    undersize: mm(1),
    source: practice(
      'flame or plasma: hole at least 1.5 thicknesses, clean from 3; kerf 1.3 to 3.5 mm; 0.75 to 1.5 mm',
    ),
  },
  saw: {
    smallestHole: mm(1.5),
    smallestHolePerThickness: 0,
    cleanHolePerThickness: 0,
    largestHole: mm(25),
    kerf: mm(1.5),
    holds: mm(0.5),
    undersize: mm(1),
    source: practice('band saw or jig saw to the line, holes drilled'),
  },
};

/** Limits of one operation: what the build's shop says, and the default for the rest. */
export function operationLimits(shop: Shop | undefined, make: OperationName): OperationLimits {
  const given = shop?.[make];
  const base = shopDefaults[make];
  const ratio = given?.smallestHolePerThickness;
  return {
    smallestHole: given?.smallestHole ?? base.smallestHole,
    smallestHolePerThickness: ratio ?? base.smallestHolePerThickness,
    cleanHolePerThickness: ratio === undefined ? base.cleanHolePerThickness : CLEAN_OVER_SMALLEST * ratio,
    largestHole: given?.largestHole ?? base.largestHole,
    kerf: given?.kerf ?? base.kerf,
    holds: given?.holds ?? base.holds,
    undersize: given?.undersize ?? base.undersize,
    source: base.source,
  };
}
