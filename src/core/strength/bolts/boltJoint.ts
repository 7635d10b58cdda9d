import type { Force, Length, Pressure, Stiffness, Torque } from '../../quantity/index.ts';

/** T = K·F·d [N·m]. @source shigley-9, equation 8-27 */
export const torqueForPreload = (preload: Force, torqueFactor: number, diameter: Length): Torque =>
  (torqueFactor * preload * diameter) as Torque;

/** F = T/(K·d) [N]. @source shigley-9, equation 8-27 */
export const preloadOfTorque = (torque: Torque, torqueFactor: number, diameter: Length): Force =>
  (torque / (torqueFactor * diameter)) as Force;

/** Friction in thread and under the head, for the long form of the tightening torque. */
export interface TighteningInput {
  /** F [N]. */
  readonly preload: Force;
  /** d [m]. */
  readonly diameter: Length;
  /** dm, mean diameter of the thread flank [m]. */
  readonly meanDiameter: Length;
  /** Lead, the pitch of a single thread [m]. */
  readonly lead: Length;
  /** f, thread friction [-]. */
  readonly threadFriction: number;
  /** fc, friction under head or nut [-]. */
  readonly headFriction: number;
}

/** Half the thread angle, 30°. */
const FLANK = Math.PI / 6;
/** Mean diameter under a hexagon head, by that of the bolt: (1.5·d + d)/2. */
const COLLAR = 1.25;

/**
 * T = F·dm/2·(tan λ + f·sec α)/(1 − f·tan λ·sec α) + F·fc·1.25·d/2, α = 30°.
 * @source shigley-9, equation 8-26
 */
export function tighteningTorque(input: TighteningInput): Torque {
  const { preload, diameter, meanDiameter, lead, threadFriction, headFriction } = input;
  const slope = lead / (Math.PI * meanDiameter);
  const friction = threadFriction / Math.cos(FLANK);
  const thread = ((preload * meanDiameter) / 2) * ((slope + friction) / (1 - slope * friction));
  return (thread + (preload * headFriction * COLLAR * diameter) / 2) as Torque;
}

/** Pitch diameter d2 = d − 0.649519·p [m]. @source machinerys-handbook-31, ISO and Unified thread form */
export const pitchDiameterOf = (major: Length, pitch: Length): Length => (major - 0.649519 * pitch) as Length;

/** kb = Ad·At·E/(Ad·lt + At·ld) [N/m], shank and thread in series. @source shigley-9, equation 8-17 */
export function boltStiffness(of: {
  readonly elasticModulus: Pressure;
  readonly diameter: Length;
  readonly stressArea: number;
  /** ld, shank within the grip [m]. */
  readonly shank: Length;
  /** lt, thread within the grip [m]. */
  readonly thread: Length;
}): Stiffness {
  const shankArea = (Math.PI / 4) * of.diameter ** 2;
  const flexibility = of.thread * shankArea + of.shank * of.stressArea;
  return ((shankArea * of.stressArea * of.elasticModulus) / flexibility) as Stiffness;
}

/**
 * km = 0.5774·π·E·d/(2·ln(5·(0.5774·l + 0.5·d)/(0.5774·l + 2.5·d))) [N/m]: a grip of one material, heads of 1.5·d.
 * @source shigley-9, equation 8-22
 */
export function gripStiffness(elasticModulus: Pressure, diameter: Length, grip: Length): Stiffness {
  const ratio = (5 * (0.5774 * grip + 0.5 * diameter)) / (0.5774 * grip + 2.5 * diameter);
  return ((0.5774 * Math.PI * elasticModulus * diameter) / (2 * Math.log(ratio))) as Stiffness;
}

export interface TensionJointInput {
  /** Fi, preload [N]. */
  readonly preload: Force;
  /** P, outer load on one bolt, pulling the joint apart [N]. */
  readonly load: Force;
  /** C = kb/(kb + km), share of the load that the bolt feels [-]. */
  readonly jointConstant: number;
  /** At [m²]. */
  readonly stressArea: number;
  /** Sp [Pa]. */
  readonly proof: Pressure;
}

export interface TensionJoint {
  /** σi = Fi/At [Pa]. */
  readonly preloadStress: Pressure;
  /** σb = (Fi + C·P)/At [Pa]. */
  readonly boltStress: Pressure;
  /** np = Sp·At/(Fi + C·P) [-]. */
  readonly yieldFactor: number;
  /** n0 = Fi/(P·(1 − C)) [-]; Infinity without load. */
  readonly separationFactor: number;
  /** What still clamps the faces, Fi − (1 − C)·P, not below 0 [N]. */
  readonly clamp: Force;
}

/** A preloaded bolt under an outer pull. Past separation the bolt carries the whole load. @source shigley-9, section 8-7 and 8-9 */
export function tensionJoint(input: TensionJointInput): TensionJoint {
  const { preload, load, jointConstant, stressArea, proof } = input;
  const clamp = preload - (1 - jointConstant) * load;
  const bolt = clamp >= 0 ? preload + jointConstant * load : load;
  return {
    preloadStress: (preload / stressArea) as Pressure,
    boltStress: (bolt / stressArea) as Pressure,
    yieldFactor: (proof * stressArea) / bolt,
    separationFactor: preload / (load * (1 - jointConstant)),
    clamp: Math.max(clamp, 0) as Force,
  };
}

/**
 * Load at which clamped faces slip: ks·µ·ΣF·m, m faces in friction.
 * @source en-1993-1-8, section 3.9, without its partial factor
 */
export const slipLoad = (of: {
  /** ΣF, clamp of all bolts [N]. */
  readonly clamp: Force;
  /** µ [-]. */
  readonly friction: number;
  /** m [-]. */
  readonly faces: number;
  /** ks [-], by the shape of the holes. */
  readonly holeFactor: number;
}): Force => (of.holeFactor * of.friction * of.clamp * of.faces) as Force;

export interface PlateBearingInput {
  /** F on one bolt, toward the edge [N]. */
  readonly load: Force;
  /** d [m]. */
  readonly diameter: Length;
  /** d0, hole [m]. */
  readonly hole: Length;
  /** t [m]. */
  readonly thickness: Length;
  /** e, hole center to the edge along the load [m]. */
  readonly edge: Length;
}

/** Bearing σ = F/(d·t) and tear-out τ = F/(2·t·(e − d0/2)) of the plate [Pa]. @source shigley-9, section 8-12 */
export function plateBearing({ load, diameter, hole, thickness, edge }: PlateBearingInput): {
  readonly bearing: Pressure;
  readonly tearOut: Pressure;
} {
  return {
    bearing: (load / (diameter * thickness)) as Pressure,
    tearOut: (load / (2 * thickness * (edge - hole / 2))) as Pressure,
  };
}

/** Thread length in the nut metal that strips together with the bolt's breaking [m]. */
export interface Engagement {
  readonly boltThread: Length;
  readonly nutThread: Length;
  /** The longer of both. */
  readonly needed: Length;
}

/** Shear strength by tensile strength that the handbook's formula takes. */
const SHEAR_SHARE = 0.5;

/**
 * Le so that neither thread strips before the bolt breaks: At·Sut = 0.5·S·As, basic sizes:
 * loose threads and thin nuts take more, hence a diameter in steel as the least in practice. The bolt's thread is sheared
 * at the nut's minor diameter, π·D1·(½ + 0.57735·(d2 − D1)/p) a length, the nut's at the bolt's major one,
 * π·d·(½ + 0.57735·(d − d2)/p).
 * @source machinerys-handbook-31, length of engagement of mating threads; from memory, basic sizes
 */
export function threadEngagement(of: {
  readonly major: Length;
  readonly pitch: Length;
  readonly stressArea: number;
  readonly boltTensile: Pressure;
  readonly nutTensile: Pressure;
}): Engagement {
  const { major, pitch } = of;
  const pitchDiameter = pitchDiameterOf(major, pitch);
  const minor = major - 1.082532 * pitch;
  const slope = Math.tan(FLANK);
  const boltPerLength = Math.PI * minor * (0.5 + (slope * (pitchDiameter - minor)) / pitch);
  const nutPerLength = Math.PI * major * (0.5 + (slope * (major - pitchDiameter)) / pitch);
  const pull = (of.stressArea * of.boltTensile) / SHEAR_SHARE;
  const boltThread = (pull / (of.boltTensile * boltPerLength)) as Length;
  const nutThread = (pull / (of.nutTensile * nutPerLength)) as Length;
  return { boltThread, nutThread, needed: Math.max(boltThread, nutThread) as Length };
}
