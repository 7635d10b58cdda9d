import type { Length } from '../quantity/index.ts';
import type { Chain } from '../standards/index.ts';

/** What of a chain decides a sprocket's shape. */
export type SprocketChain = Pick<Chain, 'pitch' | 'rollerDiameter' | 'innerWidth'>;

export interface SprocketDimensions {
  /** N, number of teeth, ≥ 6. */
  readonly teeth: number;
  /** PD, circle through the roller centers [m]. */
  readonly pitchDiameter: Length;
  /** OD, over the tooth tips, tooth height 0.3 P above the chord line [m]. */
  readonly outsideDiameter: Length;
  /** BD, bottom (root) diameter, under the rollers [m]. */
  readonly rootDiameter: Length;
  /** CD, what a caliper reads across the bottoms; below BD for odd N [m]. */
  readonly caliperDiameter: Length;
  /** MHD, largest hub or groove diameter that clears the link plates [m]; can be ≤ 0 for very few teeth. */
  readonly largestHub: Length;
  /** t, tooth flange thickness of a single-strand sprocket [m]. */
  readonly flangeThickness: Length;
  /** h, depth of the tooth-edge chamfer, from the tip inward [m]. */
  readonly chamferDepth: Length;
  /** g, width of the chamfer, taken from each face [m]. */
  readonly chamferWidth: Length;
}

const INCH = 0.0254;
/** Tooth height over the chord line in pitches: ASME B29.1 outside diameter of a cut sprocket. */
const OUTSIDE_FACTOR = 0.6;
/** Running room between hub and link plates, ASME B29.1. */
const HUB_ROOM = 0.03 * INCH;
/** Tooth flange: 0.93 W − 0.006 in, ASME B29.1 single strand. */
const FLANGE_FACTOR = 0.93;
const FLANGE_ALLOWANCE = 0.006 * INCH;

/**
 * PD = P / sin(180°/N): the circle on which neighboring roller centers are exactly P apart.
 * @returns PD [m]
 * @source asme-b29-1, sprocket diameters
 */
export function pitchDiameter(pitch: Length, teeth: number): Length {
  return (pitch / Math.sin(Math.PI / teeth)) as Length;
}

/**
 * OD = P·(0.6 + cot(180°/N)), the outside diameter of a cut sprocket.
 * @returns OD [m]
 * @source asme-b29-1, sprocket diameters
 */
export function outsideDiameter(pitch: Length, teeth: number): Length {
  return (pitch * (OUTSIDE_FACTOR + 1 / Math.tan(Math.PI / teeth))) as Length;
}

/**
 * Diameters, hub limit and flange of a sprocket: BD = PD − Dr; CD = BD for even N and PD·cos(90°/N) − Dr for
 * odd N; MHD = P·(cot(180°/N) − 1) − 0.030 in; t = 0.93·W − 0.006 in; h = 0.5·P; g = 0.125·P.
 * Motorcycle chains take the same form with their own roller diameter.
 * @source asme-b29-1, sprocket diameters and tooth section
 */
export function sprocketDimensions(chain: SprocketChain, teeth: number): SprocketDimensions {
  const { pitch, rollerDiameter, innerWidth } = chain;
  const half = Math.PI / teeth;
  const diameter = pitchDiameter(pitch, teeth);
  const across = teeth % 2 === 0 ? diameter : diameter * Math.cos(half / 2);
  return {
    teeth,
    pitchDiameter: diameter,
    outsideDiameter: outsideDiameter(pitch, teeth),
    rootDiameter: (diameter - rollerDiameter) as Length,
    caliperDiameter: (across - rollerDiameter) as Length,
    largestHub: (pitch * (1 / Math.tan(half) - 1) - HUB_ROOM) as Length,
    flangeThickness: (FLANGE_FACTOR * innerWidth - FLANGE_ALLOWANCE) as Length,
    chamferDepth: (0.5 * pitch) as Length,
    chamferWidth: (0.125 * pitch) as Length,
  };
}
