export { type BarPlan, type CutPiece, type CuttingPlan, planCuts, type StockBar } from './barCutting.ts';
export type { BendRow, BendSchedule } from './bendSchedule.ts';
export {
  type CutEnd,
  type CutList,
  type CutRow,
  cutList,
  finishedLength,
  type TubingPlan,
} from './cutList.ts';
export type { DrillRow } from './drillSchedule.ts';
export {
  type BlockStack,
  blockHeight,
  type FitUpSheet,
  type JigStation,
  type Prop,
  stackBlocks,
  type TramLength,
} from './fitUp.ts';
export type { InspectionRow } from './inspection.ts';
export { type PartRow, type PartState, partsList } from './partsList.ts';
export { type ShopInput, type ShopWork, shopWork } from './shopWork.ts';
export type { WorkStep } from './workOrder.ts';
