import { type ClutchModel, slipSpeed } from './clutch.ts';
import { type RoadLoad, roadForces } from './roadLoad.ts';

/** Road speeds that decide whether a clutch lives [m/s]. */
export interface ClutchSpeeds {
  /** Driven side at the speed of first bite. */
  readonly bite: number;
  /** Driven side at lock-up. */
  readonly lockUp: number;
  /** Driven side at the governed speed. */
  readonly governed: number;
}

export interface ClutchDrive {
  /** Engine turns per wheel turn. */
  readonly ratio: number;
  readonly efficiency: number;
  /** Measured rollout / 2π [m]. */
  readonly wheelRadius: number;
}

/** A steady ride at one speed on one grade. */
export interface ClutchDuty {
  readonly slipping: boolean;
  /** Torque that the ride asks of the clutch [N·m]. */
  readonly torque: number;
  /** Of the engine, and of the driven side [rad/s]. */
  readonly engineSpeed: number;
  readonly drivenSpeed: number;
  /** [W] */
  readonly heat: number;
}

/** Mild steel [J/(kg·K)]. @source practice, handbook value for carbon steel */
export const STEEL_HEAT_CAPACITY = 460;
/** Share of a centrifugal clutch's mass that is drum. @source practice */
export const DRUM_SHARE = 0.4;
/** Shoes and drum turn blue above 600 °F [°C]. @source practice */
export const BLUE_TEMPERATURE = 316;
/** Of the shop air before a ride [°C]. */
export const AMBIENT = 20;
/** Share of engine speed by which a clutch has to slip to be called slipping: less is creep within the data. */
const CREEP = 0.005;

/**
 * Road speeds at first bite, lock-up and governed speed: v = ω·R/G.
 * @source derived, R from the measured rollout
 */
export function clutchSpeeds(
  speeds: { readonly engages: number; readonly locks: number; readonly governed: number },
  { ratio, wheelRadius }: ClutchDrive,
): ClutchSpeeds {
  const road = (speed: number): number => (speed * wheelRadius) / ratio;
  return { bite: road(speeds.engages), lockUp: road(speeds.locks), governed: road(speeds.governed) };
}

/**
 * What a steady ride does to the clutch: it asks T = F·R/(G·η); the clutch carries that only above ω = √(ω0² + T/K), so
 * below the road speed of that it slips for as long as the ride lasts, with T·(ω − G·v/R) as heat.
 * @param speed road speed [m/s]
 * @source derived, torque balance
 */
export function clutchDuty(
  clutch: ClutchModel,
  drive: ClutchDrive,
  road: RoadLoad,
  speed: number,
): ClutchDuty {
  const forces = roadForces(road);
  const resistance = forces.rolling + forces.climb + forces.air * speed * speed;
  const torque = Math.max(0, (resistance * drive.wheelRadius) / (drive.ratio * drive.efficiency));
  const drivenSpeed = (speed * drive.ratio) / drive.wheelRadius;
  const needed = slipSpeed(clutch, torque);
  const slipping = needed - drivenSpeed > CREEP * needed;
  const engineSpeed = Math.max(needed, drivenSpeed);
  return { slipping, torque, engineSpeed, drivenSpeed, heat: torque * (engineSpeed - drivenSpeed) };
}

/**
 * Rise of the drum's temperature when all heat stays in it: ΔT = Q/(m·c). True for one launch; over minutes it cools.
 * @param heat Q [J] @param mass m of the drum [kg]
 * @returns [K]
 * @source derived, heat balance
 */
export const drumRise = (heat: number, mass: number, heatCapacity: number = STEEL_HEAT_CAPACITY): number =>
  heat / (mass * heatCapacity);

/**
 * Launches one after the other, without cooling, until the drum is blue.
 * @param rise of one launch [K]
 * @source practice, blue shoes mean over 600 °F
 */
export const launchesToBlue = (rise: number): number => (BLUE_TEMPERATURE - AMBIENT) / rise;
