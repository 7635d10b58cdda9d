import type { Bike } from '../bike/index.ts';
import type { Build, PlateEntry } from '../build/index.ts';
import type { Frame3, Loop, Point } from '../geometry/index.ts';
import type { SourceRef } from '../quantity/index.ts';
import type { BendLine, CheckLength, FlatPattern, PlateFlaw } from './pattern.ts';
import type { SlotNeed } from './slotNeed.ts';

/** An opening as the recipe wants it, before it is known how it is made. */
export interface OpeningPlan {
  readonly id: string;
  readonly kind: 'hole' | 'bore' | 'slot';
  readonly center: Point;
  /** Finished diameter or slot width [m]; of a tapped hole, its tap drill. */
  readonly diameter: number;
  readonly travel?: number;
  readonly direction?: number;
  readonly for: string;
  readonly carries: 'bolt' | 'bearing' | 'nothing';
  readonly slides?: string;
  readonly fit?: string;
  readonly thread?: string;
  /** Which drills it is made with. */
  readonly system: 'metric' | 'inch';
  /** Bores only. */
  readonly finish?: 'bored' | 'by-hand';
}

/** What a recipe draws: the flat shape and its place, before shop, mass and checks. */
export interface PlateShape {
  readonly title: string;
  readonly outline: Loop;
  readonly openings: readonly OpeningPlan[];
  readonly windows?: readonly Loop[];
  readonly punches?: FlatPattern['punches'];
  readonly bends?: readonly BendLine[];
  readonly checks?: readonly CheckLength[];
  readonly up?: FlatPattern['up'];
  /** Place of the left or only copy; its z = 0 face lies at the origin and the plate reaches to z = thickness. */
  readonly frame?: Frame3;
  readonly notes?: readonly string[];
  readonly sources?: readonly SourceRef[];
  /** What the recipe itself found. */
  readonly flaws?: readonly PlateFlaw[];
}

/** What a recipe may look at. */
export interface PlateContext {
  readonly id: string;
  readonly build: Build;
  readonly bike: Bike;
  readonly needs: readonly SlotNeed[];
}

/** Steel unless the file says otherwise. */
export const materialOf = (entry: PlateEntry): FlatPattern['material'] => entry.material ?? 'mild-steel';
