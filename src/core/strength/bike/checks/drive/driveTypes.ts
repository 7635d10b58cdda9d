import type { Bike } from '../../../../bike/index.ts';
import type { Build } from '../../../../build/index.ts';
import type { DrivelineSolution } from '../../../../driveline/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import type { Interference } from '../../../../standards/index.ts';
import type { PressFit } from '../../../fits/pressFit.ts';
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
  /** Bearings pressed into plates. */
  readonly seats: readonly SeatFit[];
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
  readonly patterns: readonly FlatPattern[];
  /** A bearing more, to try what it brings: its shaft, and its place along the bike's y [m]. */
  readonly added?: { readonly shaft: string; readonly at: number };
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
  /** What one bearing out of line does; only on three bearings or more. */
  readonly misalignment?: Misalignment;
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
  /** Where it sits or was tried, along the bike's y [m]. */
  readonly at: number;
  readonly with: ShaftSide;
  readonly without: ShaftSide;
}

/** The shaft without load, one bearing set off the line of the others; the worst bearing to set off. */
export interface Misalignment {
  /** [m] */
  readonly offset: number;
  /** Bearing set off, and the one that it loads most. */
  readonly item: string;
  readonly loaded: string;
  /** Largest reaction that it adds [N], and largest stress [Pa]. */
  readonly reaction: number;
  readonly stress: number;
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
  /** Kind of load of the service factors, and the factor. */
  readonly service: { readonly load: string; readonly factor: number };
  /** Tension times the service factor and the pull of its own speed [N], and half of its minimum strength. */
  readonly peak: number;
  readonly peakLimit: number;
  /** Mean over the duty by sliding [Pa], and what the table allows at the mean speed; none beyond the table. */
  readonly meanPressure: number;
  readonly allowedPressure?: number;
  readonly isSmallerPitch?: boolean;
  /** Speed of the small sprocket, and where its joints gall [rad/s]. */
  readonly smallSpeed: number;
  readonly galling: number;
}

export interface BeltStrength {
  readonly drive: string;
  /** F1 and F2, the pull of its own speed in both [N]. */
  readonly tight: number;
  readonly slack: number;
  /** (F1 + F2)/2: at rest a belt between fixed sheaves would be set to it; here the sheaves press it in [N]. */
  readonly mean: number;
  /** On the smaller sheave [rad], and (F1 − Fc)/(F2 − Fc) at the point of slipping. */
  readonly wrap: number;
  readonly ratio: number;
  /** Pull of its own speed, in both strands, where its mass is told [N]. */
  readonly centrifugal: number;
  /** That must press the sheaves together so that it does not slip [N], and what the file says is there. */
  readonly clampNeeded: number;
  readonly clamp?: number;
  /** Both strands together on their shafts, without the pull of their own speed [N]. */
  readonly shaftLoad: number;
  /** What its maker allows on the tight side [N]. */
  readonly workingTension?: number;
}

/** A bearing pressed into a plate: limits of size, then Lamé's rings at the middle and the tight end. */
export interface SeatFit {
  readonly plate: string;
  readonly designation: string;
  /** `N7`, or how the bore is opened by hand. */
  readonly fit: string;
  readonly isByHand: boolean;
  /** Negative is loose [m]. */
  readonly interference: Interference;
  /** At the tightest; absent where even that is loose. */
  readonly tightest?: PressFit;
  /** What the tightest and the middle interference take of the bearing's clearance [m]. */
  readonly clearanceLoss: { readonly most: number; readonly middle: number };
  /** Clearance before fitting by its group [m]; absent where the table lacks the bore. */
  readonly clearance?: { readonly group: string; readonly least: number; readonly most: number };
  /** Yield of the plate [Pa]. */
  readonly yield: number;
}

export const CASE = 'chain-pull';
