import type { CutPlate, PlateSection } from './cutPlate.ts';
import { type CutForces, type CutStress, cutForces, cutStress } from './cutStress.ts';
import { loadsAhead } from './partAhead.ts';
import type { PlateLoads } from './plateLoads.ts';

/** A cut with what acts in it. */
export interface LoadedCut {
  readonly section: PlateSection;
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

/** Stress of one cut under loads that are in balance. Loads that sit on the cut go to the part that makes it worse. */
export function loadedCut(
  { plate }: CutPlate,
  section: PlateSection,
  loads: PlateLoads,
): Omit<LoadedCut, 'share'> {
  const { without, withOnes } = loadsAhead(plate, section, loads);
  const forces = cutForces(section, without);
  const first = { section, forces, stress: cutStress(section, forces, plate.thickness) };
  if (!withOnes) return first;
  const more = cutForces(section, withOnes);
  const second = { section, forces: more, stress: cutStress(section, more, plate.thickness) };
  return second.stress.equivalent > first.stress.equivalent ? second : first;
}

/**
 * The cut with the largest share of its allowed stress.
 * @param every looks only at each such cut, for a first glance at which of many load cases counts
 * @returns undefined for a plate without cuts
 */
export function worstCut(
  cut: CutPlate,
  loads: PlateLoads,
  allowed: AllowedStress,
  every = 1,
): LoadedCut | undefined {
  let worst: LoadedCut | undefined;
  for (let i = 0; i < cut.sections.length; i += every) {
    const section = cut.sections[i]!;
    const one = loadedCut(cut, section, loads);
    const share = one.stress.equivalent / (section.isAtWeld ? allowed.welded : allowed.plain);
    if (!worst || share > worst.share) worst = { ...one, share };
  }
  return worst;
}
