import type { Force, Length, Pressure, Torque } from '../../quantity/index.ts';

/** One of the two bodies of a press fit. */
export interface FitBody {
  /** E [Pa]. */
  readonly elasticModulus: Pressure;
  /** ν [-]. */
  readonly poisson: number;
}

export interface PressFitInput {
  /** d, diameter of the seat [m]. */
  readonly diameter: Length;
  /** δ, diametral interference [m], > 0. */
  readonly interference: Length;
  /** di, bore of the inner part [m]; 0 is solid. */
  readonly innerBore: Length;
  /** Do, outside of the hub [m]; Infinity is a wide plate. */
  readonly hubOutside: Length;
  /** L, length of the seat [m]. */
  readonly length: Length;
  /** µ [-]. */
  readonly friction: number;
  readonly hub: FitBody;
  readonly inner: FitBody;
}

export interface PressFit {
  /** p, pressure in the joint [Pa]. */
  readonly pressure: Pressure;
  /** σθ at the hub's bore [Pa], tension. */
  readonly hubHoop: Pressure;
  /** von Mises at the hub's bore [Pa]. */
  readonly hubEquivalent: Pressure;
  /** σθ at the bore of the inner part [Pa], compression is negative; of a solid one everywhere. */
  readonly innerHoop: Pressure;
  /** F = π·d·L·µ·p, at the end of the stroke [N]. */
  readonly pushForce: Force;
  /** T = ½·π·d²·L·µ·p [N·m]. */
  readonly slipTorque: Torque;
  /** By how much the bore of the inner part gets smaller [m]; 0 for a solid one. */
  readonly boreShrink: Length;
}

/**
 * Lamé's thick rings in plane stress: p = δ/{d·[((Do² + d²)/(Do² − d²) + νo)/Eo + ((d² + di²)/(d² − di²) − νi)/Ei]}.
 * Elastic, even all round; a plate that is not round counts as the largest circle around the seat that it holds.
 * di < d < Do.
 * @source shigley-9, section 3-16; derived, agrees with the boundary values of both rings
 */
export function pressFit(input: PressFitInput): PressFit {
  const { diameter: d, interference, innerBore: di, hubOutside, length, friction, hub, inner } = input;
  const ratio = (d / hubOutside) ** 2;
  const hubShape = (1 + ratio) / (1 - ratio);
  const bore = (di / d) ** 2;
  const innerShape = (1 + bore) / (1 - bore);
  const give =
    (hubShape + hub.poisson) / hub.elasticModulus + (innerShape - inner.poisson) / inner.elasticModulus;
  const p = interference / (d * give);
  const hoop = p * hubShape;
  return {
    pressure: p as Pressure,
    hubHoop: hoop as Pressure,
    hubEquivalent: Math.sqrt(hoop ** 2 + hoop * p + p ** 2) as Pressure,
    innerHoop: (di > 0 ? (-2 * p) / (1 - bore) : -p) as Pressure,
    pushForce: (Math.PI * d * length * friction * p) as Force,
    slipTorque: ((Math.PI / 2) * d * d * length * friction * p) as Torque,
    boreShrink: ((2 * p * di) / (inner.elasticModulus * (1 - bore))) as Length,
  };
}

/** ΔT = (δ + clearance)/(α·d) [K], to drop the inner part in. @source derived, thermal expansion */
export const heatingForAssembly = (
  interference: Length,
  clearance: Length,
  expansion: number,
  diameter: Length,
): number => (interference + clearance) / (expansion * diameter);

/** Raceway of a ball bearing's outer ring, (4·D + d)/5: the bore that a housing fit makes smaller [m]. @source memory, usual estimate */
export const outerRaceway = (bore: Length, outside: Length): Length => ((4 * outside + bore) / 5) as Length;
