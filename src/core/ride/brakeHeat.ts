/** Repeated stops from one speed, a time apart. */
export interface RepeatedStops {
  /** m, bike with rider [kg]. */
  readonly mass: number;
  /** v, at the start of each stop [m/s]. */
  readonly speed: number;
  /** Share of the energy that this disc takes [-], 0 to 1. */
  readonly share: number;
  /** m_d [kg], > 0. */
  readonly discMass: number;
  /** c [J/(kg·K)], > 0. */
  readonly heatCapacity: number;
  /** Both faces [m²], ≥ 0. */
  readonly discArea: number;
  /** Heat given to the air [W/(m²·K)], ≥ 0. */
  readonly cooling: number;
  /** From stop to stop [s], > 0. */
  readonly interval: number;
  readonly stops: number;
}

export interface DiscHeat {
  /** E of one stop into the disc [J]. */
  readonly energy: number;
  /** ΔT of one stop [K], the disc warmed through and giving nothing off meanwhile. */
  readonly rise: number;
  /** Rise over the air after each stop [K]. */
  readonly after: readonly number[];
  /** What it comes to after many stops [K]; absent without cooling. */
  readonly limit?: number;
}

/**
 * ΔT = ½·m·v²·share/(m_d·c) a stop; between stops the rise over the air falls by e^(−h·A·t/(m_d·c)), so after n stops
 * it is ΔT·(1 − qⁿ)/(1 − q). A lump: the pad face runs hotter for moments.
 * @source derived, energy of the bike and Newton's law of cooling
 */
export function discHeat(stops: RepeatedStops): DiscHeat {
  const energy = 0.5 * stops.mass * stops.speed ** 2 * stops.share;
  const capacity = stops.discMass * stops.heatCapacity;
  const rise = energy / capacity;
  const left = Math.exp((-stops.cooling * stops.discArea * stops.interval) / capacity);
  const after: number[] = [];
  for (let n = 0; n < stops.stops; n += 1) after.push((after.at(-1) ?? 0) * left + rise);
  return { energy, rise, after, ...(left < 1 ? { limit: rise / (1 - left) } : {}) };
}

/** What a stop does to the face of the disc. */
export interface FaceHeat {
  /** q₀, heat flow into the face at the start of the stop [W/m²]; it falls to 0 evenly. */
  readonly flow: number;
  /** t_s, time of the stop [s]. */
  readonly time: number;
  /** ρ [kg/m³], c [J/(kg·K)], k [W/(m·K)]. */
  readonly density: number;
  readonly heatCapacity: number;
  readonly conductivity: number;
}

/**
 * Highest rise of the face in one stop, the disc thick against the depth the heat reaches: ΔT = √(8/(9π))·q₀·√t_s/√(ρck),
 * at half of the stop. A handbook rounds the constant to √(5/18), 0.9 % lower.
 * @returns ΔT [K]
 * @source limpert, semi-infinite disc under a linearly falling flow (from memory); derived, the exact constant
 */
export const facePeak = ({ flow, time, density, heatCapacity, conductivity }: FaceHeat): number =>
  (Math.sqrt(8 / (9 * Math.PI)) * flow * Math.sqrt(time)) / Math.sqrt(density * heatCapacity * conductivity);
