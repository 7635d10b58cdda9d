import type { Bike, MassSummary } from '../../../bike/index.ts';
import type { Build, LoadCaseName } from '../../../build/index.ts';
import type { DrivelineSolution } from '../../../driveline/index.ts';
import type { Point3 } from '../../../geometry/index.ts';
import type { SourceRef } from '../../../quantity/index.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import type { LoadSettings } from './assumptions.ts';
import type { AppliedLoad, BalancedCase, RiderHold } from './balance.ts';
import type { DrivePull } from './drivePull.ts';

/** A load case by name, with what it is made of. */
export interface LoadCase {
  readonly id: LoadCaseName;
  readonly name: string;
  /** In one sentence, with the numbers used. */
  readonly basis: string;
  readonly source: SourceRef;
  readonly applied: readonly AppliedLoad[];
  readonly balanced: BalancedCase;
  readonly pulls: readonly DrivePull[];
}

/** The limits of starting and stopping that the cases are made of. */
export interface DriveLimits {
  readonly torque: number;
  readonly limitedBy: 'engine' | 'clutch';
  /** Force at the rear contact from that torque, in the lowest gear [N]. */
  readonly engineForce: number;
  /** Where the rear tire lets go, and where the front wheel lifts [N]. */
  readonly gripForce: number;
  readonly liftForce: number;
  /** The least of the three [N], and which it is. */
  readonly driveForce: number;
  readonly governedBy: 'engine' | 'clutch' | 'grip' | 'front wheel lifts';
}

export interface CasesInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly masses: MassSummary;
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
}

export interface Draft {
  readonly id: LoadCaseName;
  readonly name: string;
  readonly basis: string;
  readonly source: SourceRef;
  readonly applied: readonly AppliedLoad[];
  readonly hold: RiderHold;
  readonly withRider?: boolean;
  readonly gravity?: Point3;
  readonly pulls?: readonly DrivePull[];
}
