import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { FlatPattern } from '../plates/index.ts';
import { type BendSchedule, bendSchedules } from './bendSchedule.ts';
import { type CutList, cutList } from './cutList.ts';
import { type DrillRow, drillSchedule } from './drillSchedule.ts';
import { type FitUpSheet, fitUpSheet } from './fitUp.ts';
import { type InspectionRow, inspectionList } from './inspection.ts';
import { type PartRow, partsList } from './partsList.ts';
import { type WorkStep, workOrder } from './workOrder.ts';

/** Everything the bench needs besides the drawings. */
export interface ShopWork {
  readonly cuts: CutList;
  readonly bends: readonly BendSchedule[];
  readonly drilling: readonly DrillRow[];
  readonly parts: readonly PartRow[];
  readonly fitUp: FitUpSheet;
  readonly order: readonly WorkStep[];
  readonly inspection: readonly InspectionRow[];
}

export interface ShopInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
}

export function shopWork(input: ShopInput): ShopWork {
  const { build, bike, driveline, patterns } = input;
  const cuts = cutList(build, bike);
  const fitUp = fitUpSheet(build, bike);
  return {
    cuts,
    fitUp,
    bends: bendSchedules(build, bike),
    drilling: drillSchedule(patterns),
    parts: partsList({ ...input, cuts }),
    order: workOrder({ ...input, cuts, fitUp }),
    inspection: inspectionList(build, { bike, driveline, fitUp }),
  };
}
