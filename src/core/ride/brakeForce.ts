/** A hydraulic line from the lever to the pads. */
export interface HydraulicChain {
  /** F, at the lever or pedal [N], ≥ 0. */
  readonly force: number;
  /** i, lever or pedal ratio [-], > 0. */
  readonly leverRatio: number;
  /** Bore of the master cylinder [m], > 0. */
  readonly masterBore: number;
  /** Diameter of a caliper piston [m], > 0. */
  readonly pistonDiameter: number;
  /** Pistons that press on one pad: half of them in an opposed caliper, all of them in a sliding one. */
  readonly pistonsOneSide: number;
  /** μ, pad on disc [-]. */
  readonly padFriction: number;
  /** r_e [m]. */
  readonly effectiveRadius: number;
  /** R, tire [m], > 0. */
  readonly tireRadius: number;
}

export interface HydraulicForces {
  /** p [Pa]. */
  readonly pressure: number;
  /** N, of one pad on the disc [N]. */
  readonly clamp: number;
  /** T [N·m]. */
  readonly torque: number;
  /** At the ground [N]. */
  readonly tireForce: number;
  /** Piston area of one side over master area [-]. */
  readonly areaRatio: number;
}

/**
 * p = F·i/A_mc; N = p·A_one side; T = 2·μ·N·r_e (two faces); F_tire = T/R. No losses in a hydraulic line.
 * @source derived, Pascal's law and Coulomb friction
 */
export function hydraulicForces(chain: HydraulicChain): HydraulicForces {
  const master = circle(chain.masterBore);
  const side = circle(chain.pistonDiameter) * chain.pistonsOneSide;
  const pressure = (chain.force * chain.leverRatio) / master;
  const clamp = pressure * side;
  const torque = discTorque(clamp, chain.padFriction, chain.effectiveRadius);
  return { pressure, clamp, torque, tireForce: torque / chain.tireRadius, areaRatio: side / master };
}

/** T = 2·μ·N·r_e of one caliper, both faces [N·m]. @source derived, Coulomb friction */
export const discTorque = (clamp: number, padFriction: number, effectiveRadius: number): number =>
  2 * padFriction * clamp * effectiveRadius;

/** r_e of a pad from r_i to r_o: worn in (ro + ri)/2, new ⅔·(ro³ − ri³)/(ro² − ri²) [m]. */
export interface EffectiveRadius {
  readonly wornIn: number;
  readonly new: number;
}

/**
 * Effective radius of an annular pad; a worn-in pad has even wear, a new one even pressure.
 * @source shigley-9, section 16-6 (from memory); derived, integrals over the pad
 */
export const effectiveRadius = (inside: number, outside: number): EffectiveRadius => ({
  wornIn: (outside + inside) / 2,
  new: ((2 / 3) * (outside ** 3 - inside ** 3)) / (outside ** 2 - inside ** 2),
});

/** A pad that is a sector of a ring. */
export interface SectorPad {
  /** r_i and r_o [m], 0 < inside < outside. */
  readonly inside: number;
  readonly outside: number;
  /** θ₂ − θ₁ [rad], the sector centered on the line of the piston. */
  readonly angle: number;
  /** μ [-]. */
  readonly friction: number;
}

export interface SectorForces {
  /** p_a, largest pressure [Pa]. */
  readonly pressure: number;
  /** F, actuating force [N]. */
  readonly force: number;
  /** r_e [m]. */
  readonly effectiveRadius: number;
  /** r̄, place of the actuating force [m]. */
  readonly forceRadius: number;
}

/**
 * Pressure and force of one sector pad for the torque of its one face, worn in: T = θ·μ·p_a·r_i·(r_o² − r_i²)/2,
 * F = θ·p_a·r_i·(r_o − r_i), r̄ = 2·sin(θ/2)/θ·r_e.
 * @param torque of this face [N·m]
 * @source shigley-9, section 16-6 (from memory)
 */
export function sectorForces(pad: SectorPad, torque: number): SectorForces {
  const { inside: ri, outside: ro, angle, friction } = pad;
  const pressure = torque / ((angle * friction * ri * (ro ** 2 - ri ** 2)) / 2);
  const radius = (ro + ri) / 2;
  return {
    pressure,
    force: angle * pressure * ri * (ro - ri),
    effectiveRadius: radius,
    forceRadius: ((2 * Math.sin(angle / 2)) / angle) * radius,
  };
}

/**
 * The same for a new pad, pressed evenly: T = θ·μ·p·(r_o³ − r_i³)/3, F = θ·p·(r_o² − r_i²)/2.
 * @source shigley-9, section 16-6 (from memory)
 */
export function newSectorForces(pad: SectorPad, torque: number): SectorForces {
  const { inside: ri, outside: ro, angle, friction } = pad;
  const pressure = torque / ((angle * friction * (ro ** 3 - ri ** 3)) / 3);
  const radius = effectiveRadius(ri, ro).new;
  return {
    pressure,
    force: (angle * pressure * (ro ** 2 - ri ** 2)) / 2,
    effectiveRadius: radius,
    forceRadius: ((2 * Math.sin(angle / 2)) / angle) * radius,
  };
}

/** A band round a drum, one end anchored, the other pulled. */
export interface BandBrake {
  /** Pull on the free end [N]. */
  readonly pull: number;
  /** θ, wrap [rad], > 0. */
  readonly wrap: number;
  /** μ, lining on drum [-], > 0. */
  readonly friction: number;
  /** r, drum [m], > 0. */
  readonly radius: number;
  /** The pulled end is the slack one: the drum's turning wraps the band on. */
  readonly selfWraps: boolean;
}

/**
 * Torque of a band: tight over slack tension is e^(μθ). Pulled at the slack end T = P·r·(e^(μθ) − 1), at the tight
 * end T = P·r·(1 − e^(−μθ)); the first is what a band does going forward when its open end faces the turning.
 * @returns T [N·m]
 * @source derived, capstan equation
 */
export const bandTorque = ({ pull, wrap, friction, radius, selfWraps }: BandBrake): number =>
  pull * radius * (selfWraps ? Math.expm1(friction * wrap) : -Math.expm1(-friction * wrap));

const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2;
