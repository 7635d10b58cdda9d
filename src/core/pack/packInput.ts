import type { Bike, MassSummary } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Change, Reading } from '../fit/index.ts';
import type { FlatPattern } from '../plates/index.ts';
import type { Figure, UnitSystem } from '../quantity/index.ts';
import type { Riding } from '../ride/index.ts';
import type { ShopWork } from '../shop/index.ts';
import type { SlowStrength, Strength } from '../strength/index.ts';

/** What a pack is drawn from: a solved bike and the work that follows from it. */
export interface PackInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
  /** Whether it holds, where that was worked out. */
  readonly strength?: Strength;
  /** What shakes the frame and would buckle it, where its strength was worked out. */
  readonly shaking?: SlowStrength;
  /** How it rides, where that was worked out. */
  readonly riding?: Riding;
  /** Readings of real parts, and what they moved. */
  readonly readings?: readonly Reading[];
  readonly moved?: readonly Change[];
  readonly work: ShopWork;
  readonly units: UnitSystem;
  /** As printed, ISO 8601; the core has no clock. */
  readonly date: string;
}
