import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

const TURN = 2 * Math.PI;

/** One end of the bike on its spring; forces and travel at the wheel, upright. */
export interface SpringEnd {
  /** W, weight that the spring carries at rest [N], ≥ 0. */
  readonly load: number;
  /** k_w, at the wheel [N/m], > 0. */
  readonly wheelRate: number;
  /** Compression of the spring before any load, as it counts at the wheel [m], ≥ 0. */
  readonly preload: number;
  /** Full travel of the wheel [m]; left out: none known. */
  readonly travel?: number;
}

export interface SpringEndResult {
  /** Sag with the load on [m], ≥ 0; 0 where the preload carries all of it. */
  readonly sag: number;
  /** Sag over travel [-]. */
  readonly sagShare?: number;
  /** f [Hz]; preload does not change it. */
  readonly frequency: number;
  /** Load over rest load at which the travel is used up [-]. */
  readonly bottomsAt?: number;
}

/**
 * k_w = k_s·MR², MR travel of the shock over travel of the wheel (taken as constant) [N/m].
 * @source derived, virtual work
 */
export const wheelRate = (springRate: number, motionRatio: number): number => springRate * motionRatio ** 2;

/**
 * Vertical rate at the wheel of a telescopic fork: k/cos²ε, k of both legs along the axis [N/m].
 * @source derived, frictionless fork at rake ε
 */
export const forkWheelRate = (axialRate: number, rake: number): number => axialRate / Math.cos(rake) ** 2;

/**
 * Axial load of a telescopic fork: W·cos ε [N].
 * @source derived, frictionless fork at rake ε
 */
export const forkLoad = (load: number, rake: number): number => load * Math.cos(rake);

/**
 * f = √(k/m)/(2π) [Hz].
 * @source derived, mass on a spring
 */
export const naturalFrequency = (rate: number, mass: number): number => Math.sqrt(rate / mass) / TURN;

/**
 * Sag W/k_w less the preload, frequency, and the load that uses up the travel.
 * @source derived, mass on a linear spring
 */
export function springEnd({ load, wheelRate: rate, preload, travel }: SpringEnd): SpringEndResult {
  const sag = Math.max(0, load / rate - preload);
  const frequency = naturalFrequency(rate, load / STANDARD_GRAVITY);
  if (travel === undefined) return { sag, frequency };
  return { sag, frequency, sagShare: sag / travel, bottomsAt: (rate * (travel + preload)) / load };
}

/** The whole bike on two springs. */
export interface BouncePitchInput {
  /** m, sprung [kg], > 0. */
  readonly mass: number;
  /** I_y, sprung, about its center [kg·m²], > 0. */
  readonly inertia: number;
  /** From the center to the front and the rear wheel [m]. */
  readonly toFront: number;
  readonly toRear: number;
  /** k, at the wheels [N/m]. */
  readonly frontRate: number;
  readonly rearRate: number;
}

export interface BouncePitch {
  /** The two natural frequencies [Hz], the slower one first. */
  readonly frequencies: readonly [number, number];
  /** Of each, the node: where the bike does not move, ahead of the center [m]; absent: it moves all alike. */
  readonly nodes: readonly [number | undefined, number | undefined];
}

/**
 * Bounce and pitch of a rigid bike on two springs: ω² from m·I·ω⁴ − (m·K_θθ + I·K_zz)·ω² + K_zz·K_θθ − K_zθ² = 0 with
 * K_zz = k_f + k_r, K_zθ = k_f·l_f − k_r·l_r, K_θθ = k_f·l_f² + k_r·l_r². Damping left out.
 * @source derived, two degrees of freedom
 */
export function bouncePitch(input: BouncePitchInput): BouncePitch {
  const { mass, inertia, toFront, toRear, frontRate, rearRate } = input;
  const heave = (frontRate + rearRate) / mass;
  const turn = (frontRate * toFront ** 2 + rearRate * toRear ** 2) / inertia;
  const mixed = frontRate * toFront - rearRate * toRear;
  const middle = (heave + turn) / 2;
  const half = Math.hypot((heave - turn) / 2, mixed / Math.sqrt(mass * inertia));
  const squares = [middle - half, middle + half] as const;
  // z·(heave − ω²) + (mixed/m)·θ = 0 with θ nose up; the point x ahead moves z + x·θ.
  const node = (square: number): number | undefined => {
    const slope = heave - square;
    const lift = mixed / mass;
    return Math.abs(slope) <= 1e-12 * middle
      ? lift === 0
        ? undefined
        : 0
      : lift === 0
        ? undefined
        : lift / slope;
  };
  return {
    frequencies: [Math.sqrt(squares[0]) / TURN, Math.sqrt(squares[1]) / TURN],
    nodes: [node(squares[0]), node(squares[1])],
  };
}

/** A drop onto a spring. */
export interface Drop {
  /** x, compression from the free spring [m]. */
  readonly compression: number;
  /** F, largest force [N]. */
  readonly force: number;
  /** n = F/W [-]. */
  readonly factor: number;
}

/**
 * Free fall from a height onto a spring without damping: n = 1 + √(1 + 2·h/δ), δ = W/k.
 * @param mass [kg] @param rate k [N/m] @param height h, of the fall [m], ≥ 0
 * @source derived, energy
 */
export function dropOn(mass: number, rate: number, height: number): Drop {
  const weight = mass * STANDARD_GRAVITY;
  const rest = weight / rate;
  const factor = 1 + Math.sqrt(1 + (2 * height) / rest);
  return { compression: factor * rest, force: factor * weight, factor };
}

/**
 * Height of the free fall that gives a load factor: h = δ·((n − 1)² − 1)/2 [m].
 * @param factor n, ≥ 2
 * @source derived, energy
 */
export const heightForFactor = (mass: number, rate: number, factor: number): number =>
  ((mass * STANDARD_GRAVITY) / rate) * (((factor - 1) ** 2 - 1) / 2);

/**
 * Movement passed on over movement of the ground: √((1 + (2ζr)²)/((1 − r²)² + (2ζr)²)).
 * @param ratio r, exciting over natural frequency @param damping ζ
 * @source derived, base-excited mass on spring and damper
 */
export const transmissibility = (ratio: number, damping: number): number => {
  const drag = (2 * damping * ratio) ** 2;
  return Math.sqrt((1 + drag) / ((1 - ratio ** 2) ** 2 + drag));
};

/** Two springs one on the other: k₁·k₂/(k₁ + k₂) [N/m]. @source derived, one force through both */
export const inSeries = (first: number, second: number): number => (first * second) / (first + second);
