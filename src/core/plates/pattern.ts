import type { MaterialName, OperationName } from '../build/index.ts';
import type { Frame3, Loop, Point } from '../geometry/index.ts';
import type { QuantityKind, SourceRef } from '../quantity/index.ts';

/** How an opening is made, in the order of the work. */
export type HoleStep =
  | { readonly do: 'punch' }
  | { readonly do: 'pilot'; readonly diameter: number }
  | { readonly do: 'drill'; readonly diameter: number }
  /** Cut to the finished size in one go, with the outline. */
  | { readonly do: 'cut'; readonly diameter: number }
  | { readonly do: 'cut-undersize'; readonly diameter: number }
  | { readonly do: 'bore'; readonly diameter: number }
  | { readonly do: 'open-by-hand'; readonly diameter: number }
  /** Metal between the two drilled ends of a slot, taken out with saw and file. */
  | { readonly do: 'saw-and-file' }
  | { readonly do: 'tap'; readonly thread: string };

/** A round hole, a bore with a fit, or a slot, in the plate's own plane [m]. */
export interface Opening {
  readonly id: string;
  readonly kind: 'hole' | 'bore' | 'slot';
  /** Center; for a slot, the middle. */
  readonly center: Point;
  /** Finished diameter, or slot width [m]. */
  readonly diameter: number;
  /** Slot only: center to center of its end arcs [m] and direction [rad]. */
  readonly travel?: number;
  readonly direction?: number;
  /** What goes through: `M8 bolt`, `bearing 6204, N7`. */
  readonly for: string;
  /** A bolt or axle pulls at its edge, a bearing presses in it, or something passes through freely. */
  readonly carries: 'bolt' | 'bearing' | 'nothing';
  /** Slot only: shaft whose slide it serves, so that its travel can be checked. */
  readonly slides?: string;
  /** Fit or thread, where it has one. */
  readonly fit?: string;
  readonly thread?: string;
  /** What the cut line on the template and in the cut file is: full size, under size, or a punch mark only. */
  readonly cutAs:
    | { readonly as: 'full' }
    | { readonly as: 'undersize'; readonly diameter: number }
    | { readonly as: 'punch' };
  readonly steps: readonly HoleStep[];
}

export interface BendLine {
  readonly from: Point;
  readonly to: Point;
  /** Bend angle [rad], inside radius [m]. */
  readonly angle: number;
  readonly insideRadius: number;
  /** Toward +z of the pattern or away from it; on the mirrored copy of a pair the other way. */
  readonly direction: 'up' | 'down';
  /** BA, flat length that goes into the bend [m]; the line from..to is its middle. */
  readonly allowance: number;
  /** How it is bent, for the order of work. */
  readonly note: string;
}

/** A distance the maker checks on the finished plate [m]. */
export interface CheckLength {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
}

/** A plate in the flat: what is cut, drilled, marked and bent. */
export interface FlatPattern {
  /** Name in the build file. */
  readonly id: string;
  readonly title: string;
  readonly recipe: string;
  readonly thickness: number;
  readonly material: MaterialName;
  readonly make: OperationName;
  /** How many in all, left and right together. */
  readonly count: number;
  readonly pair: boolean;
  readonly outline: Loop;
  readonly openings: readonly Opening[];
  /** Windows and lightening cut-outs. */
  readonly windows: readonly Loop[];
  readonly punches: readonly { readonly at: Point; readonly for: string }[];
  readonly bends: readonly BendLine[];
  readonly checks: readonly CheckLength[];
  /** Edge names for the template arrows: which way is up or forward in the plate's plane. */
  readonly up?: { readonly direction: Point; readonly says: 'UP' | 'FORWARD' };
  /** Exact, finished holes, one plate. Area [m²], centroid [m], second moments about the centroid [m⁴]: Ixx, Iyy, Ixy. */
  readonly area: number;
  readonly centroid: Point;
  readonly secondMoments: readonly [number, number, number];
  /** One plate [kg]. */
  readonly mass: number;
  /** Where its plane sits in the bike: origin and axes of the pattern's x, y and thickness; one per copy that has a place. */
  readonly placed: readonly { readonly hand: 'left' | 'right' | 'center'; readonly frame: Frame3 }[];
  /** Holes of an earlier pattern that are in the plate already; drawn, not made. */
  readonly oldHoles: readonly { readonly center: Point; readonly diameter: number }[];
  /** What the maker must know beyond lines and steps. */
  readonly notes: readonly string[];
  readonly sources: readonly SourceRef[];
}

/** A rule that a plate breaks or is near; turned into a finding by the findings room. */
export interface PlateFlaw {
  readonly plate: string;
  readonly rule:
    | 'edge-distance'
    | 'ligament'
    | 'breaks-into-old-hole'
    | 'hole-too-small'
    | 'hole-too-large'
    | 'slot-end'
    | 'slot-too-short'
    | 'slot-unknown'
    | 'bend-radius'
    | 'bend-near-hole'
    | 'outline-crosses-itself'
    | 'hole-outside'
    | 'does-not-fit-stock'
    | 'no-sheet'
    | 'bore-loose'
    | 'bore-tight'
    | 'bore-thin-plate'
    | 'slot-direction'
    | 'pad-overlap'
    | 'cannot-be-drawn';
  readonly features: readonly string[];
  /** Value and limit in SI of `kind`. */
  readonly value: number;
  readonly limit: number;
  readonly kind: QuantityKind;
  readonly severity: 'stop' | 'caution' | 'note';
  readonly remedy: string;
  readonly source: SourceRef;
}
