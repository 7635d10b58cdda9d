import type { Bike } from '../../../../bike/index.ts';
import type { Build } from '../../../../build/index.ts';
import type { DrivelineSolution } from '../../../../driveline/index.ts';
import type { ShaftSolution } from '../../../shaft/solveShaft.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { DriveLimits } from '../../loads/caseTypes.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';
import type { UtilizationRow } from '../utilizationRow.ts';

export interface DriveStrength {
  readonly shafts: readonly DriveShaftStrength[];
  readonly chains: readonly ChainStrength[];
  readonly belts: readonly BeltStrength[];
  readonly rows: readonly UtilizationRow[];
  readonly notChecked: readonly string[];
}

export interface DriveInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
  readonly limits: DriveLimits;
}

/** A shaft with its diagrams and what its bearings carry. */
export interface DriveShaftStrength {
  readonly id: string;
  readonly model: DriveShaftModel;
  readonly solution: ShaftSolution;
  readonly diagrams: ShaftDiagrams;
  readonly bearings: readonly BearingStrength[];
  /** Fastest it turns [rad/s]. */
  readonly speed: number;
  readonly critical?: number;
  /** Fatigue factor at each keyed plane. */
  readonly keyseats: readonly { readonly at: number; readonly item: string; readonly factor: number }[];
  /** With and without an outboard bearing, where it has one or a drive hangs out. */
  readonly outboard?: OutboardComparison;
}

/** Along the shaft, from its right end to its left [m, N·m, m]: resultants for the drawing, and both planes. */
export interface ShaftDiagrams {
  readonly at: readonly number[];
  readonly shear: readonly (readonly [number, number])[];
  readonly moment: readonly (readonly [number, number])[];
  readonly torque: readonly number[];
  readonly deflection: readonly (readonly [number, number])[];
}

export interface BearingStrength {
  readonly item: string;
  readonly at: number;
  readonly designation?: string;
  /** Reaction under the largest pull, resultant [N]. */
  readonly radial: number;
  readonly slope: number;
  readonly slopeLimit: number;
  /** L10h under the duty, with the low and the high rating that makers print [h]. */
  readonly hours?: { readonly low: number; readonly high: number };
  /** C0/P0. */
  readonly staticFactor?: number;
  readonly speedShare?: number;
}

export interface ShaftSide {
  readonly maxMoment: number;
  readonly maxStress: number;
  readonly maxDeflection: number;
  readonly maxSlope: number;
  readonly maxReaction: number;
}

/** One shaft with and without a bearing beyond its outermost drive. */
export interface OutboardComparison {
  /** True where the bike has it; else it was tried at the end of the shaft. */
  readonly isThere: boolean;
  readonly with: ShaftSide;
  readonly without: ShaftSide;
}

export interface ChainStrength {
  readonly drive: string;
  readonly tension: number;
  readonly limit: number;
  readonly factorOfBreaking: number;
  readonly speed: number;
  readonly pressure: number;
  /** Rated over design power, where the rating formula is for this chain. */
  readonly powerFactor?: number;
}

export interface BeltStrength {
  readonly drive: string;
  readonly tight: number;
  readonly slack: number;
  readonly initial: number;
}

export const CASE = 'chain-pull';
