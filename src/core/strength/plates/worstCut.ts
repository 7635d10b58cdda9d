import { type ActingLoads, actingLoads } from './actingLoads.ts';
import type { CutPlate } from './cutPlate.ts';
import {
  type CutForces,
  type CutStress,
  cutStress,
  forcesOf,
  largestSquare,
  namedForces,
  type StressScratch,
  stressScratch,
} from './cutStress.ts';
import { sumAhead } from './loadsAhead.ts';
import type { NetSection } from './netSection.ts';
import type { PlateLoads } from './plateLoads.ts';
import { sharpened } from './sharpen.ts';

/** A cut with what acts in it. */
export interface LoadedCut {
  readonly section: NetSection;
  readonly forces: CutForces;
  readonly stress: CutStress;
  /** Stress by the allowed stress of that place [-]. */
  readonly share: number;
}

/** Allowed stress away from welds and beside them [Pa]. */
export interface AllowedStress {
  readonly plain: number;
  readonly welded: number;
}

/** Numbers that a sweep writes again at every cut: sums ahead, forces of two choices. */
interface Scratch extends StressScratch {
  readonly sums: Float64Array;
  readonly forces: Float64Array;
  readonly others: Float64Array;
}

const scratch = (): Scratch => ({
  ...stressScratch(),
  sums: new Float64Array(12),
  forces: new Float64Array(6),
  others: new Float64Array(6),
});

/** Stress of one cut under loads that are in balance. Loads that sit on the cut go to the part that makes it worse. */
export function loadedCut(cut: CutPlate, section: NetSection, loads: PlateLoads): Omit<LoadedCut, 'share'> {
  const work = scratch();
  squareIn(cut, section, actingLoads(cut, loads), work);
  const { forces } = work;
  return { section, forces: namedForces(forces), stress: cutStress(section, forces, cut.plate.thickness) };
}

/** Largest σ² + 3·τ² of a cut; leaves the forces that make it in `work.forces`. */
function squareIn({ plate }: CutPlate, section: NetSection, loads: ActingLoads, work: Scratch): number {
  const { sums, forces, others } = work;
  const hasOnCut = sumAhead(plate, section, loads, sums);
  forcesOf(section, sums, 0, forces);
  const most = largestSquare(section, forces, plate.thickness, work);
  if (!hasOnCut) return most;
  forcesOf(section, sums, 6, others);
  const other = largestSquare(section, others, plate.thickness, work);
  if (other <= most) return most;
  forces.set(others);
  return other;
}

/**
 * The cut with the largest share of its allowed stress: the worst of the sweep, then turned and shifted a little.
 * @returns undefined for a plate without cuts
 */
export function worstCut(cut: CutPlate, loads: PlateLoads, allowed: AllowedStress): LoadedCut | undefined {
  const acting = actingLoads(cut, loads);
  const work = scratch();
  const { at, share } = largestShare(cut, acting, allowed, 1);
  const found = cut.sections[at];
  if (!found) return undefined;
  const { section, square } = sharpened(cut, { section: found, square: share * share }, (one) => {
    const limit = one.isAtWeld ? allowed.welded : allowed.plain;
    return squareIn(cut, one, acting, work) / (limit * limit);
  });
  return { ...loadedCut(cut, section, loads), share: Math.sqrt(square) };
}

/** A first glance at one cut in so many, to tell which of many load cases counts: the largest share found [-]. */
export const glancedShare = (
  cut: CutPlate,
  loads: PlateLoads,
  allowed: AllowedStress,
  every: number,
): number => largestShare(cut, actingLoads(cut, loads), allowed, every).share;

function largestShare(
  cut: CutPlate,
  acting: ActingLoads,
  allowed: AllowedStress,
  every: number,
): { readonly at: number; readonly share: number } {
  const work = scratch();
  const plain = 1 / allowed.plain ** 2;
  const welded = 1 / allowed.welded ** 2;
  let at = -1;
  let most = -1;
  for (let i = 0; i < cut.sections.length; i += every) {
    const section = cut.sections[i]!;
    const share = squareIn(cut, section, acting, work) * (section.isAtWeld ? welded : plain);
    if (share > most) {
      most = share;
      at = i;
    }
  }
  return { at, share: Math.sqrt(Math.max(0, most)) };
}
