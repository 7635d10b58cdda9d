import { accelerationWorksheet } from './acceleration.ts';
import { bearingLifeWorksheet } from './bearingLife.ts';
import { beltDriveWorksheet } from './beltDrive.ts';
import { beltStrengthWorksheet } from './beltStrength.ts';
import { bendWorksheet } from './bend.ts';
import { boltJointWorksheet } from './boltJoint.ts';
import { brakingWorksheet } from './braking.ts';
import { chainDriveWorksheet } from './chainDrive.ts';
import { chainStrengthWorksheet } from './chainStrength.ts';
import { clutchWorksheet } from './clutch.ts';
import { copeWorksheet } from './cope.ts';
import { fatigueWorksheet } from './fatigue.ts';
import { fitLimitsWorksheet } from './fitLimits.ts';
import { frameWorksheet } from './frame.ts';
import { gearingWorksheet } from './gearing.ts';
import { handlingWorksheet } from './handling.ts';
import { keyWorksheet } from './key.ts';
import { pressFitWorksheet } from './pressFit.ts';
import { quantityWorksheet } from './quantity.ts';
import { riderFitWorksheet } from './riderFit.ts';
import { shaftWorksheet } from './shaft.ts';
import { shaftFatigueWorksheet } from './shaftFatigue.ts';
import { sprocketWorksheet } from './sprocket.ts';
import { stackWorksheet } from './stack.ts';
import { steeringWorksheet } from './steering.ts';
import { suspensionWorksheet } from './suspension.ts';
import { tubeJointWorksheet } from './tubeJoint.ts';
import { variableBeltWorksheet } from './variableBelt.ts';
import { weldGroupWorksheet } from './weldGroup.ts';
import type { Worksheet } from './worksheet.ts';

export { type FieldForms, type FieldRow, fieldForms } from './fieldRows.ts';
export {
  describeWorksheet,
  runWorksheet,
  type WorksheetAnswer,
  type WorksheetDescription,
} from './run.ts';
export type { Worksheet, WorksheetRun } from './worksheet.ts';

/** Every worksheet, in alphabetical order of its id; a new one gets one line here. */
export const worksheets: readonly Worksheet[] = [
  accelerationWorksheet,
  bearingLifeWorksheet,
  beltDriveWorksheet,
  beltStrengthWorksheet,
  bendWorksheet,
  boltJointWorksheet,
  brakingWorksheet,
  chainDriveWorksheet,
  chainStrengthWorksheet,
  clutchWorksheet,
  copeWorksheet,
  fatigueWorksheet,
  fitLimitsWorksheet,
  frameWorksheet,
  gearingWorksheet,
  handlingWorksheet,
  keyWorksheet,
  pressFitWorksheet,
  quantityWorksheet,
  riderFitWorksheet,
  shaftWorksheet,
  shaftFatigueWorksheet,
  sprocketWorksheet,
  stackWorksheet,
  steeringWorksheet,
  suspensionWorksheet,
  tubeJointWorksheet,
  variableBeltWorksheet,
  weldGroupWorksheet,
];

export function worksheetNamed(id: string): Worksheet | undefined {
  return worksheets.find((worksheet) => worksheet.id === id);
}
