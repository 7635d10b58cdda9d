import type { Bike } from '../../../../bike/index.ts';
import type { Build } from '../../../../build/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';
import type { FrameResults } from '../frameStrength.ts';

export interface JointInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
  readonly cases: readonly LoadCase[];
  readonly results: FrameResults;
}
