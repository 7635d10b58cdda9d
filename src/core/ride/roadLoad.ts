/** Standard gravity [m/s²]. @source nist-sp-811, appendix B.8 */
export const GRAVITY = 9.80665;

/** What holds the bike back. */
export interface RoadLoad {
  /** Mass with rider [kg]. */
  readonly mass: number;
  /** Drag coefficient times frontal area [m²], ≥ 0. */
  readonly dragArea: number;
  /** [kg/m³], ≥ 0. */
  readonly airDensity: number;
  /** Rolling resistance as a share of the load, ≥ 0. */
  readonly rollingCoefficient: number;
  /** Rise over run; downhill negative. */
  readonly grade: number;
}

/** Resistance as F = rolling + climb + air·v². */
export interface RoadForces {
  /** C·m·g·cos α [N]. */
  readonly rolling: number;
  /** m·g·sin α [N]. */
  readonly climb: number;
  /** ρ·CdA/2 [N·s²/m²]. */
  readonly air: number;
}

/** How the bike stands, for grip and wheel lift. */
export interface RideStance {
  /** p [m]. */
  readonly wheelbase: number;
  /** b, center of mass ahead of the rear contact [m]. */
  readonly centerForward: number;
  /** h, center of mass above the ground [m]. */
  readonly centerHeight: number;
  /** h_a, height at which the air pushes [m]; left out: that of the center of mass. */
  readonly dragHeight?: number;
  /** μ, rear tire on the ground; left out: grip is not looked at. */
  readonly grip?: number;
}

/** Greatest acceleration as a = still + square·v², from one limit [m/s²], [1/m]. */
export interface AccelerationLimit {
  readonly by: 'wheel-lift' | 'grip';
  readonly still: number;
  readonly square: number;
}

/**
 * Resistance of the road: F = C·m·g·cos α + m·g·sin α + ½·ρ·CdA·v², tan α = grade.
 * @source derived, statics and quadratic drag
 */
export function roadForces(road: RoadLoad): RoadForces {
  const slope = Math.hypot(1, road.grade);
  const weight = road.mass * GRAVITY;
  return {
    rolling: (road.rollingCoefficient * weight) / slope,
    climb: (weight * road.grade) / slope,
    air: (road.airDensity * road.dragArea) / 2,
  };
}

/**
 * Greatest acceleration before the front wheel lifts, a = g·(b·cos α/h − sin α) − F_a·h_a/(m·h), and before the rear
 * tire slides, from F_x = μ·N_r with N_r of the same moments. Rolling resistance is taken as pushed by the rear tire.
 * Past p = μ·h the tire grips all that is left before the wheel lifts, so grip is then no limit.
 * @source derived, moments about the contacts
 */
export function accelerationLimits(road: RoadLoad, stance: RideStance): readonly AccelerationLimit[] {
  const { wheelbase: p, centerForward: b, centerHeight: h, grip } = stance;
  const dragHeight = stance.dragHeight ?? h;
  const { rolling, air } = roadForces(road);
  const slope = Math.hypot(1, road.grade);
  const [cosine, sine] = [1 / slope, road.grade / slope];
  const lift: AccelerationLimit = {
    by: 'wheel-lift',
    still: GRAVITY * ((b * cosine) / h - sine),
    square: -(air * dragHeight) / (road.mass * h),
  };
  if (grip === undefined || p - grip * h <= 0) return [lift];
  const share = 1 - (grip * h) / p;
  const load = (GRAVITY * ((p - b) * cosine + h * sine)) / p;
  const slide: AccelerationLimit = {
    by: 'grip',
    still: (grip * load - GRAVITY * sine - rolling / road.mass) / share,
    square: (((grip * dragHeight) / p - 1) * air) / (road.mass * share),
  };
  return [lift, slide];
}

/**
 * Speed and run of a coast-down on a = A + B·v²: t = [atan(v1·√(B/A)) − atan(v2·√(B/A))]/√(A·B), x = ln[(A + B·v1²)/(A + B·v2²)]/2B;
 * with A = 0, t = (1/v2 − 1/v1)/B and x = ln(v1/v2)/B; with B = 0, uniform.
 * @param forces constant part [N] and the part that grows with v² [N·s²/m²]
 * @param from v1 [m/s] @param to v2 [m/s], below v1
 * @returns time [s] and distance [m]
 * @source cfr-40-86-529, F = A + C·v²; integral derived
 */
export function coastDown(
  forces: { readonly constant: number; readonly square: number },
  mass: number,
  range: { readonly from: number; readonly to: number },
): { readonly time: number; readonly distance: number } {
  const [a, b] = [forces.constant / mass, forces.square / mass];
  const { from, to } = range;
  if (b === 0) return { time: (from - to) / a, distance: (from ** 2 - to ** 2) / (2 * a) };
  if (a === 0) return { time: (1 / to - 1 / from) / b, distance: Math.log(from / to) / b };
  const root = Math.sqrt(b / a);
  return {
    time: (Math.atan(from * root) - Math.atan(to * root)) / Math.sqrt(a * b),
    distance: Math.log((a + b * from ** 2) / (a + b * to ** 2)) / (2 * b),
  };
}
