import type { Length, Pressure, Torque } from '../../quantity/index.ts';

/** Bending and torsion at a section, amplitude and mean, with the notch they meet. */
export interface SectionLoad {
  /** Ma, amplitude of bending [N·m], ≥ 0: all of it on a turning shaft with a steady load. */
  readonly bendingAmplitude: Torque;
  /** Mm, mean bending [N·m], ≥ 0. */
  readonly bendingMean: Torque;
  /** Ta, amplitude of torque [N·m], ≥ 0. */
  readonly torqueAmplitude: Torque;
  /** Tm, mean torque [N·m], ≥ 0. */
  readonly torqueMean: Torque;
  /** Kf, fatigue stress concentration in bending [-], ≥ 1. */
  readonly bendingFactor: number;
  /** Kfs, in torsion [-], ≥ 1. */
  readonly torsionFactor: number;
}

export interface SectionStrength {
  /** Se, endurance limit of the part, all modifiers in [Pa]. */
  readonly endurance: Pressure;
  /** Sut [Pa]. */
  readonly tensile: Pressure;
  /** Sy [Pa]. */
  readonly yield: Pressure;
}

/** Distortion energy with a straight or curved line between amplitude and mean. */
export type FatigueCriterion = 'goodman' | 'gerber' | 'asme-elliptic' | 'soderberg';

export interface SectionFactors {
  /** n, fatigue factor by each criterion [-]; Infinity without any load. */
  readonly fatigue: Readonly<Record<FatigueCriterion, number>>;
  /** ny, against first-cycle yield at the notch's peak [-]; Infinity without any load. */
  readonly yield: number;
}

/** A = √(4(Kf·Ma)² + 3(Kfs·Ta)²), B likewise of the means [N·m]. @source shigley-9, section 7-4 */
export function equivalentMoments(load: SectionLoad): { readonly amplitude: number; readonly mean: number } {
  const { bendingFactor: kf, torsionFactor: kfs } = load;
  const of = (bending: number, torque: number): number =>
    Math.sqrt(4 * (kf * bending) ** 2 + 3 * (kfs * torque) ** 2);
  return {
    amplitude: of(load.bendingAmplitude, load.torqueAmplitude),
    mean: of(load.bendingMean, load.torqueMean),
  };
}

/**
 * Factors of a round section: 16/(π·d³) times A/Se + B/Sut (Goodman), A/Se + B/Sy (Soderberg),
 * √((A/Se)² + (B/Sy)²) (ASME elliptic), ½(A/Se + √((A/Se)² + (2B/Sut)²)) (Gerber) is 1/n; a bore di makes
 * d³ into d³·(1 − (di/d)⁴).
 * @source shigley-9, equations 7-7 to 7-16
 */
export function sectionFactors(
  load: SectionLoad,
  strength: SectionStrength,
  diameter: Length,
  bore = 0 as Length,
): SectionFactors {
  const modulus = sectionCube(diameter, bore) * (Math.PI / 16);
  const demand = demands(load, strength);
  const max = equivalentMoments({
    ...load,
    bendingAmplitude: (load.bendingAmplitude + load.bendingMean) as Torque,
    torqueAmplitude: (load.torqueAmplitude + load.torqueMean) as Torque,
  }).amplitude;
  return {
    fatigue: {
      goodman: modulus / demand.goodman,
      gerber: modulus / demand.gerber,
      'asme-elliptic': modulus / demand['asme-elliptic'],
      soderberg: modulus / demand.soderberg,
    },
    yield: (modulus * strength.yield) / max,
  };
}

/** d of a solid section for a factor n by one criterion [m]. @source shigley-9, equations 7-8 to 7-14 */
export function sectionDiameter(
  load: SectionLoad,
  strength: SectionStrength,
  factor: number,
  criterion: FatigueCriterion,
): Length {
  return Math.cbrt(((16 * factor) / Math.PI) * demands(load, strength)[criterion]) as Length;
}

/**
 * d by the old shaft code: d³ = 16/(π·τ)·√((kb·M)² + (kt·T)²), τ = min(0.30·Sy, 0.18·Sut), times 0.75 with a keyseat.
 * @source memory, ASA B17c code for transmission shafting
 */
export function codeDiameter(of: {
  readonly bending: Torque;
  readonly torque: Torque;
  readonly bendingShock: number;
  readonly torqueShock: number;
  readonly tensile: Pressure;
  readonly yield: Pressure;
  readonly hasKeyseat: boolean;
}): Length {
  const allowable = Math.min(0.3 * of.yield, 0.18 * of.tensile) * (of.hasKeyseat ? 0.75 : 1);
  const moment = Math.hypot(of.bendingShock * of.bending, of.torqueShock * of.torque);
  return Math.cbrt((16 / (Math.PI * allowable)) * moment) as Length;
}

const sectionCube = (diameter: number, bore: number): number => diameter ** 3 * (1 - (bore / diameter) ** 4);

/** 1/n for 16/(π·d³) = 1 [m³]. */
function demands(load: SectionLoad, strength: SectionStrength): Record<FatigueCriterion, number> {
  const { amplitude, mean } = equivalentMoments(load);
  const a = amplitude / strength.endurance;
  const ultimate = mean / strength.tensile;
  const plastic = mean / strength.yield;
  return {
    goodman: a + ultimate,
    soderberg: a + plastic,
    'asme-elliptic': Math.hypot(a, plastic),
    gerber: (a + Math.hypot(a, 2 * ultimate)) / 2,
  };
}
