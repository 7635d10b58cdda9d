import type { Length } from '../quantity/index.ts';
import type { SlackSetting } from './slack.ts';

/** A point of the side view [m]: x forward, z up. */
export interface SidePoint {
  readonly x: number;
  readonly z: number;
}

/** A shaft of the drive train, seen from the side. */
export interface DriveShaft {
  readonly id: string;
  /** Where the layout wants it, slide at 0 [m]. */
  readonly position: SidePoint;
  /** Absent for a bolted shaft. */
  readonly slide?: ShaftSlide;
  /** Shafts that ride along when this one slides (a countershaft on the engine plate). */
  readonly carries?: readonly string[];
}

export interface ShaftSlide {
  /** Direction of positive travel in the side view; any length above zero, it is made a unit vector. */
  readonly direction: SidePoint;
  /** Travel from the layout position to one end of the slot [m], usually ≤ 0; absent: made as far as needed. */
  readonly travelMin?: Length;
  /** Travel from the layout position to the other end [m], ≥ `travelMin`; absent: made as far as needed. */
  readonly travelMax?: Length;
  /** Thread pitch of the pusher screw along the slide [m], > 0. */
  readonly pusherPitch?: Length;
}

interface DriveBase {
  readonly id: string;
  /** Driving shaft. */
  readonly from: string;
  /** Driven shaft. */
  readonly to: string;
  /** Shaft that has to slide for this drive; the solver picks one when absent. */
  readonly adjust?: string;
  /** How much closer the shafts must come to put chain or belt on [m], ≥ 0. */
  readonly fitting?: Length;
}

export interface ChainRun extends DriveBase {
  readonly kind: 'chain';
  /** p [m]. */
  readonly pitch: Length;
  /** N1, teeth on `from`. */
  readonly fromTeeth: number;
  /** N2, teeth on `to`. */
  readonly toTeeth: number;
  /** Chosen length; without it the solver chooses. */
  readonly links?: number;
  /** Take odd counts too, closed with an offset link. */
  readonly offsetLinks?: boolean;
  /** Wear limit as a fraction, 0 to 0.1; the trade's rule when absent. */
  readonly wearLimit?: number;
  /** Steep run, heavy starts or reversing: half the usual play. */
  readonly steep?: boolean;
}

export interface BeltRun extends DriveBase {
  readonly kind: 'belt';
  /** d1, pitch diameter on `from` [m]. */
  readonly fromDiameter: Length;
  /** d2, pitch diameter on `to` [m]. */
  readonly toDiameter: Length;
  /** Pitch length of the belt [m]. */
  readonly length: Length;
  /** Lengthening in service to allow for, as a fraction, 0 to 0.1. */
  readonly stretch?: number;
}

export type DriveRun = ChainRun | BeltRun;

/** Which shaft is slid to tension which drive. */
export interface Adjustment {
  readonly drive: string;
  readonly slides: string;
}

export interface TensionInput {
  readonly shafts: readonly DriveShaft[];
  readonly drives: readonly DriveRun[];
  /** In order of adjustment; derived when absent. */
  readonly order?: readonly Adjustment[];
}

/** One step of the adjustment order, as ids for the text that is made at the edge. */
export interface AdjustmentStep extends Adjustment {
  /** Shafts that ride along with the one that slides. */
  readonly carried: readonly string[];
  /** Shaft at the other end, which must be tight while this one slides. */
  readonly against: string;
  /** Drives set before that this move does not touch. */
  readonly undisturbed: readonly string[];
  /** Drives whose center distance this move changes: to be set after it, now and at every later take-up. */
  readonly resetAfter: readonly string[];
}

/** Slide positions of one shaft from its layout position [m]. */
export interface SlideStates {
  /** Chain or belt is put on. */
  readonly fitting: Length;
  /** New and taut. */
  readonly fresh: Length;
  /** At the wear limit, every drive before it worn as well. */
  readonly worn: Length;
}

/** A length that could be used and what it asks of the slide. */
export interface LengthChoice {
  /** Whole links; absent for a belt. */
  readonly links?: number;
  readonly offsetLink: boolean;
  /** C it wants when new [m]. */
  readonly center: Length;
  /** Slide positions [m]; absent when no slide position gives that center. */
  readonly slide?: SlideStates;
  /** The shafts come close enough to put it on; else `slide.fitting` is the closest they come. */
  readonly slackens: boolean;
  /** The new position lies in the slot. */
  readonly withinTravel: boolean;
  /** Fitting, new and worn positions all lie in the slot. */
  readonly coversLife: boolean;
}

/** What the slot must cover along the slide, piece by piece; bolt or axle diameter comes on top. */
export interface SlotNeed {
  /** Between the two chain lengths on either side of the layout position [m]. */
  readonly linkRounding: Length;
  /** New to worn, the longer of the two [m]. */
  readonly wear: Length;
  /** Put on to taut [m]. */
  readonly fitting: Length;
  /** Movement to follow drives that are set before this one as they wear [m]. */
  readonly following: Length;
  /** Sum [m]. */
  readonly total: Length;
}

export type TensionProblem =
  | { readonly code: 'nothing-slides'; readonly drive: string }
  | { readonly code: 'no-order'; readonly drives: readonly string[] }
  | {
      readonly code: 'order-disturbs';
      readonly drive: string;
      readonly slides: string;
      readonly disturbs: readonly string[];
    }
  | { readonly code: 'order-moves-both-or-none'; readonly drive: string; readonly slides: string }
  | { readonly code: 'shaft-slides-twice'; readonly drive: string; readonly slides: string }
  | { readonly code: 'bolted-shaft'; readonly drive: string; readonly slides: string }
  | { readonly code: 'drive-not-ordered'; readonly drive: string }
  /** No slide position gives the center distance it wants, or chain or belt is too short for the pair. */
  | { readonly code: 'no-length'; readonly drive: string }
  /** The slide runs so far across the line of centers that the shafts never come close enough to put it on. */
  | { readonly code: 'never-slack'; readonly drive: string; readonly slides: string }
  /** `short`: how far past the slot's end the position lies [m]. */
  | {
      readonly code: 'outside-travel';
      readonly drive: string;
      readonly slides: string;
      readonly at: keyof SlideStates;
      readonly short: Length;
    };

/** One drive, set. */
export interface DriveTension {
  readonly id: string;
  readonly kind: 'chain' | 'belt';
  /** The shaft that is slid for it; absent when none can be. */
  readonly slides?: string;
  /** Center distance as laid out, after the drives before it are set [m]. */
  readonly layoutCenter: Length;
  /** Links at the layout center, not rounded; chains only. */
  readonly exactLinks?: number;
  /** Every length that was looked at, in rising order; one entry when the length is given. */
  readonly alternatives: readonly LengthChoice[];
  /** The length taken; absent when none can be met. */
  readonly chosen?: LengthChoice;
  readonly slotNeeded?: SlotNeed;
  /** Slot that there is, end to end less bolt or axle [m]; absent when an end is open. */
  readonly slotGiven?: Length;
  /** Slide travel left from new to the slot's end on the side that tightens [m]; < 0 past it, absent when open. */
  readonly takeUpLeft?: Length;
  /** Elongation at which the slot's end is reached, as a fraction of the length. */
  readonly elongationAtEnd?: number;
  /** Play to set, and what it is in center distance; chains only. */
  readonly slack?: SlackSetting;
  /** Slide movement from taut back to that play [m]; chains only. */
  readonly slackSlide?: Length;
  /** The same in turns of the pusher screw, when its thread is given. */
  readonly slackTurns?: number;
}

export interface ShaftTension {
  readonly id: string;
  /** Own slide positions [m]; all zero for a bolted or carried shaft. */
  readonly slide: SlideStates;
  /** Where the shaft is with every drive new and taut, and with every drive worn [m]. */
  readonly fresh: SidePoint;
  readonly worn: SidePoint;
}

export interface TensionSolution {
  /** Every drive is met, with fitting, new and worn positions inside its slot. */
  readonly fits: boolean;
  readonly problems: readonly TensionProblem[];
  readonly steps: readonly AdjustmentStep[];
  /** In order of adjustment; drives that can't be set come last. */
  readonly drives: readonly DriveTension[];
  readonly shafts: readonly ShaftTension[];
}
