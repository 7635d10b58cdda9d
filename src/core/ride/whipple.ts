/** The 25 parameters of the linearized bicycle equations, by their published names; x forward, z down, origin on the ground at the rear contact. */
export interface WhippleParameters {
  /** w, wheelbase [m], > 0. */
  readonly w: number;
  /** c, trail on the ground [m], any sign. */
  readonly c: number;
  /** λ, steering axis from vertical [rad], −π/2 < λ < π/2. */
  readonly lam: number;
  /** g [m/s²], ≥ 0. */
  readonly g: number;
  /** Rear wheel: radius [m], mass [kg], across and spin moment of inertia [kg·m²]. */
  readonly rR: number;
  readonly mR: number;
  readonly IRxx: number;
  readonly IRyy: number;
  /** Rear body with rider: center [m], z < 0 above the ground; mass [kg]; tensor entries about its center [kg·m²]. */
  readonly xB: number;
  readonly zB: number;
  readonly mB: number;
  readonly IBxx: number;
  readonly IBzz: number;
  readonly IBxz: number;
  /** Front assembly, fork and bars: center [m], mass [kg], tensor entries about its center [kg·m²]. */
  readonly xH: number;
  readonly zH: number;
  readonly mH: number;
  readonly IHxx: number;
  readonly IHzz: number;
  readonly IHxz: number;
  /** Front wheel: radius [m], mass [kg], across and spin moment of inertia [kg·m²]. */
  readonly rF: number;
  readonly mF: number;
  readonly IFxx: number;
  readonly IFyy: number;
}

/** Rows of a 2×2 matrix; first lean φ to the right, then steer δ to the right. */
export type Matrix2 = readonly [readonly [number, number], readonly [number, number]];

/** M·q″ + v·C1·q′ + (g·K0 + v²·K2)·q = 0. */
export interface WhippleMatrices {
  /** M, mass matrix [kg·m²]. */
  readonly M: Matrix2;
  /** C1, damping-like matrix per speed [kg·m]. */
  readonly C1: Matrix2;
  /** K0, stiffness per gravity [kg·m]. */
  readonly K0: Matrix2;
  /** K2, stiffness per speed squared [kg]. */
  readonly K2: Matrix2;
  /** g [m/s²]. */
  readonly g: number;
}

/** The sums that the matrices are made of, for showing the working; names as in the publication. */
export interface WhippleSums {
  readonly mT: number;
  readonly xT: number;
  readonly zT: number;
  readonly ITxx: number;
  readonly ITxz: number;
  readonly ITzz: number;
  readonly xA: number;
  readonly zA: number;
  readonly IAxx: number;
  readonly IAxz: number;
  readonly IAzz: number;
  readonly uA: number;
  readonly IAll: number;
  readonly IAlx: number;
  readonly IAlz: number;
  readonly mu: number;
  readonly SR: number;
  readonly SF: number;
  readonly ST: number;
  readonly SA: number;
}

/** What the model leaves out; shown with every result of it. */
export const WHIPPLE_LIMITS: readonly string[] = [
  'no tire slip or relaxation, so wobble, which small machines with stiff tires do have, cannot appear',
  'knife-edge wheels: a real crown of 40 to 70 mm is not small against a wheel of 200 mm',
  'no suspension travel, no flex of frame or fork',
  'a rigid rider with no hands on the bars',
  'constant speed, level ground, no air drag, small angles',
  'a self-stable range compares designs; it does not tell whether a machine may be ridden',
];

/**
 * The sums over the rigid bodies: all of them (T), the front ones (A), gyroscopic coefficients (S) and μ = c·cos λ/w.
 * @param gearedSpin Σ J·κ of rotors on the rear body that turn κ times the road speed, with the wheels positive [kg·m]
 * @source whipple-2007, appendix A (from memory, confirmed by every published digit)
 */
export function whippleSums(p: WhippleParameters, gearedSpin = 0): WhippleSums {
  const mT = p.mR + p.mB + p.mH + p.mF;
  const xT = (p.xB * p.mB + p.xH * p.mH + p.w * p.mF) / mT;
  const zT = (-p.rR * p.mR + p.zB * p.mB + p.zH * p.mH - p.rF * p.mF) / mT;
  const ITxx =
    p.IRxx +
    p.IBxx +
    p.IHxx +
    p.IFxx +
    p.mR * p.rR ** 2 +
    p.mB * p.zB ** 2 +
    p.mH * p.zH ** 2 +
    p.mF * p.rF ** 2;
  const ITxz = p.IBxz + p.IHxz - p.mB * p.xB * p.zB - p.mH * p.xH * p.zH + p.mF * p.w * p.rF;
  const ITzz = p.IRxx + p.IBzz + p.IHzz + p.IFxx + p.mB * p.xB ** 2 + p.mH * p.xH ** 2 + p.mF * p.w ** 2;
  const mA = p.mH + p.mF;
  const xA = (p.xH * p.mH + p.w * p.mF) / mA;
  const zA = (p.zH * p.mH - p.rF * p.mF) / mA;
  const IAxx = p.IHxx + p.IFxx + p.mH * (p.zH - zA) ** 2 + p.mF * (p.rF + zA) ** 2;
  const IAxz = p.IHxz - p.mH * (p.xH - xA) * (p.zH - zA) + p.mF * (p.w - xA) * (p.rF + zA);
  const IAzz = p.IHzz + p.IFxx + p.mH * (p.xH - xA) ** 2 + p.mF * (p.w - xA) ** 2;
  const [sin, cos] = [Math.sin(p.lam), Math.cos(p.lam)];
  const uA = (xA - p.w - p.c) * cos - zA * sin;
  const IAll = mA * uA ** 2 + IAxx * sin ** 2 + 2 * IAxz * sin * cos + IAzz * cos ** 2;
  const IAlx = -mA * uA * zA + IAxx * sin + IAxz * cos;
  const IAlz = mA * uA * xA + IAxz * sin + IAzz * cos;
  const mu = (p.c / p.w) * cos;
  const SR = p.IRyy / p.rR;
  const SF = p.IFyy / p.rF;
  const ST = SR + SF + gearedSpin;
  const SA = mA * uA + mu * mT * xT;
  return { mT, xT, zT, ITxx, ITxz, ITzz, xA, zA, IAxx, IAxz, IAzz, uA, IAll, IAlx, IAlz, mu, SR, SF, ST, SA };
}

/**
 * The matrices of the linearized equations of a bicycle that rolls without slip on knife-edge wheels.
 * @param gearedSpin see {@link whippleSums}
 * @source whipple-2007, appendix A (from memory, confirmed by every published digit)
 */
export function whippleMatrices(p: WhippleParameters, gearedSpin = 0): WhippleMatrices {
  const s = whippleSums(p, gearedSpin);
  const [sin, cos] = [Math.sin(p.lam), Math.cos(p.lam)];
  const perBase = cos / p.w;
  const coupling = s.IAlx + s.mu * s.ITxz;
  const gyro = s.mu * s.ST + s.SF * cos;
  return {
    M: [
      [s.ITxx, coupling],
      [coupling, s.IAll + 2 * s.mu * s.IAlz + s.mu ** 2 * s.ITzz],
    ],
    C1: [
      [0, gyro + s.ITxz * perBase - s.mu * s.mT * s.zT],
      [-gyro, s.IAlz * perBase + s.mu * (s.SA + s.ITzz * perBase)],
    ],
    K0: [
      [s.mT * s.zT, -s.SA],
      [-s.SA, -s.SA * sin],
    ],
    K2: [
      [0, (s.ST - s.mT * s.zT) * perBase],
      [0, (s.SA + s.SF * sin) * perBase],
    ],
    g: p.g,
  };
}
