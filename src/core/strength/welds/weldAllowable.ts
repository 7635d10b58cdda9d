import type { Force, Length, Outcome, Pressure } from '../../quantity/index.ts';
import { bad, good } from '../../quantity/index.ts';
import { allowableWeldShare, weldCorrelations } from '../../standards/index.ts';

/** 0.30·FEXX in the throat [Pa]. @source shigley-9, table 9-6; AISC allowable stress */
export const allowableThroat = (filler: Pressure): Pressure =>
  (allowableWeldShare.throatOfFiller * filler) as Pressure;

/** 0.40·Sy in shear of the base metal, on the leg [Pa]. @source shigley-9, table 9-4 */
export const allowableBase = (baseYield: Pressure): Pressure =>
  (allowableWeldShare.legOfBaseYield * baseYield) as Pressure;

/** 1 + 0.5·sin^1.5 θ, θ between the force and the weld's line. @source aisc-360, section J2.4 */
export const directionalFactor = (loadAngle: number): number => 1 + 0.5 * Math.sin(loadAngle) ** 1.5;

/** φ·0.60·FEXX·(1 + 0.5·sin^1.5 θ)·throat·length, φ = 0.75 [N]. @source aisc-360, section J2.4 */
export const designStrength = (filler: Pressure, throat: Length, length: Length, loadAngle: number): Force =>
  (0.75 * 0.6 * filler * directionalFactor(loadAngle) * throat * length) as Force;

/** γM2 of EN 1993-1-8. */
const PARTIAL_FACTOR = 1.25;

/**
 * fu/(√3·βw·γM2), shear strength of the weld in design by the simplified method: for loads with their own partial factors [Pa].
 * @source en-1993-1-8, section 4.5.3.3; βw from memory
 */
export const simplifiedDesignShear = (baseTensile: Pressure, correlation: number): Pressure =>
  (baseTensile / (Math.sqrt(3) * correlation * PARTIAL_FACTOR)) as Pressure;

/** A structural steel as the simplified method takes it. */
export interface WeldedGrade {
  /** βw [-]. */
  readonly correlation: number;
  /** fu up to 40 mm [Pa]. */
  readonly tensile: Pressure;
}

/**
 * βw and fu of S235, S275 or S355. S355 has 490 MPa, the lower of two editions (510 in older print).
 * @issue not-in-table
 * @source en-1993-1-8, table 4.1; EN 1993-1-1, table 3.1; both from memory
 */
export function weldedGrade(grade: string): Outcome<WeldedGrade> {
  const found = weldCorrelations.find((one) => one.grade === grade.trim().toUpperCase());
  if (found) return good({ correlation: found.betaW, tensile: (found.tensileMpa * 1e6) as Pressure });
  return bad({
    code: 'not-in-table',
    path: '',
    given: grade,
    nearest: weldCorrelations.map((one) => one.grade),
  });
}
