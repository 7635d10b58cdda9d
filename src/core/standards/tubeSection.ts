import type { Area, Length } from '../quantity/index.ts';

/** A round tube's cross-section. */
export interface TubeSection {
  /** A, area of the metal [m²]. */
  readonly area: Area;
  /** I, second moment of area about a diameter [m⁴]. */
  readonly secondMoment: number;
  /** J, polar second moment; also the torsion constant of a round tube [m⁴]. */
  readonly polarMoment: number;
  /** I / (D/2), section modulus [m³]. */
  readonly sectionModulus: number;
}

/**
 * A = π/4·(D² − d²), I = π/64·(D⁴ − d⁴), J = 2·I, with d = D − 2·t.
 * @param outside D, outside diameter [m], > 0
 * @param wall t, wall [m], 0 < t ≤ D/2 (D/2 is a solid bar)
 * @source machinerys-handbook-31, moments of inertia of hollow circular sections
 */
export function tubeSection(outside: number, wall: number): TubeSection {
  if (!(outside > 0 && wall > 0 && wall <= outside / 2)) {
    throw new RangeError('a tube has a wall above 0 and at most half its diameter');
  }
  const inside = outside - 2 * wall;
  const secondMoment = (Math.PI / 64) * (outside ** 4 - inside ** 4);
  return {
    area: ((Math.PI / 4) * (outside ** 2 - inside ** 2)) as Area,
    secondMoment,
    polarMoment: 2 * secondMoment,
    sectionModulus: secondMoment / (outside / 2),
  };
}

/** Outside diameter and wall as a section of solid bar [m]. */
export const solidBar = (diameter: Length): TubeSection => tubeSection(diameter, diameter / 2);
