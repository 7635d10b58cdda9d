import type { Drive, DrivePath, DrivePhase } from './drivePath.ts';
import type { EngineCurve } from './engine.ts';
import type { AccelerationLimit, RideStance, RoadForces, RoadLoad } from './roadLoad.ts';
import type { TopSpeed } from './topSpeed.ts';

export interface LaunchInput {
  readonly road: RoadLoad;
  readonly drive: Drive;
  readonly engine: EngineCurve;
  /** I, all that turns with the wheels, as seen at the driven wheel [kg·m²]. */
  readonly rotatingInertia: number;
  /** Left out: neither wheel lift nor grip is looked at. */
  readonly stance?: RideStance;
  /** Speeds to time [m/s]. */
  readonly speeds?: readonly number[];
  /** Speed at the start [m/s]; left out: standstill. */
  readonly startSpeed?: number;
  /** Local error of the steps, as a share; left out: 1e-10. */
  readonly tolerance?: number;
}

export interface LaunchMark {
  /** [m/s] */
  readonly speed: number;
  /** [s] */
  readonly time: number;
  /** [m] */
  readonly distance: number;
}

/** A point of the run, for pictures. */
export interface LaunchPoint extends LaunchMark {
  /** [m/s²] */
  readonly acceleration: number;
  /** At full throttle [rad/s]. */
  readonly engineSpeed: number;
}

/** A switch during the run: what begins there. */
export interface LaunchSwitch extends LaunchMark {
  readonly phase: DrivePhase;
  /** `full` throttle, or the limit that the throttle is closed to. */
  readonly throttle: 'full' | AccelerationLimit['by'];
}

/** Where the engine's work went [J]. */
export interface LaunchEnergy {
  readonly engineWork: number;
  /** Bike, rider and wheels; and the engine's own inertia. */
  readonly kinetic: number;
  readonly engineKinetic: number;
  readonly clutchHeat: number;
  readonly driveLoss: number;
  readonly air: number;
  readonly rolling: number;
  readonly climb: number;
  /** Engine work less all the others: error of the integration. */
  readonly residual: number;
}

export interface Launch {
  readonly path: DrivePath;
  readonly forces: RoadForces;
  readonly limits: readonly AccelerationLimit[];
  readonly top: TopSpeed;
  /** Speeds asked for that it reaches, in the order asked. */
  readonly times: readonly LaunchMark[];
  /** Speeds asked for that it does not reach, or not within 100 000 s [m/s]. */
  readonly unreached: readonly number[];
  /** Where the run was ended: the governor, or so near a top speed that is only approached. */
  readonly end: LaunchMark;
  /** When the clutch or belt locks up for good; absent when it never slips or never locks. */
  readonly lockUp?: LaunchMark;
  readonly switches: readonly LaunchSwitch[];
  readonly trace: readonly LaunchPoint[];
  /** From start to end. */
  readonly energy: LaunchEnergy;
}
