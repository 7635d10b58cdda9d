import type { Bike, MassPart, MassSummary } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { Point3 } from '../../../geometry/index.ts';
import type { FlatPattern } from '../../../plates/index.ts';
import type { FrameModel } from '../../frame/index.ts';
import type { FrameDraft } from './draft.ts';
import type { AxleNodes } from './frontModel.ts';

/** What carries the mass or the load of a part. */
export type Carrier =
  | { readonly by: 'node'; readonly node: string }
  | { readonly by: 'wheel'; readonly wheel: 'front' | 'rear' }
  | { readonly by: 'spread'; readonly nodes: readonly string[] }
  | { readonly by: 'rider' };

/** A rigid part of the bike as the loads see it. */
export interface CarriedBody {
  readonly id: string;
  readonly mass: number;
  readonly center: Point3;
  readonly inertia: MassPart['inertia'];
  readonly carrier: Carrier;
}

/** Why a node is a weld, and of what kind. */
export interface WeldSpot {
  readonly node: string;
  /** The tube whose stress counts there. */
  readonly line: string;
  readonly kind: 'cope' | 'trunk' | 'landing' | 'plate';
  /** What is welded to it. */
  readonly with: string;
}

/** Something of the bike that the model could not take as drawn. */
export interface ModelFlaw {
  readonly rule: 'gap' | 'nothing-near' | 'mechanism' | 'refused';
  readonly part: string;
  /** [m] */
  readonly gap?: number;
  readonly reason: string;
}

export interface PlacedBearing {
  /** Item of the stack. */
  readonly item: string;
  readonly y: number;
  readonly node: string;
  /** Plate that holds it, where one is near. */
  readonly plate?: string;
}

/** The placed bike as a frame of beams with all that hangs on it. */
export interface BikeFrame {
  readonly model: FrameModel;
  readonly draft: FrameDraft;
  readonly bodies: readonly CarriedBody[];
  readonly welds: readonly WeldSpot[];
  readonly flaws: readonly ModelFlaw[];
  readonly wheels: { readonly front: AxleNodes; readonly rear: AxleNodes };
  readonly brakeNodes: { readonly front: string; readonly rear: string };
  readonly seats: readonly { readonly node: string; readonly weight: number }[];
  readonly pegs: readonly [string, string];
  readonly grips: readonly [string, string];
  readonly stand?: string;
  readonly engine: string;
  readonly bearings: readonly PlacedBearing[];
}

export interface FrameInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
}
