import { beltDriveWorksheet } from './beltDrive.ts';
import { bendWorksheet } from './bend.ts';
import { chainDriveWorksheet } from './chainDrive.ts';
import { copeWorksheet } from './cope.ts';
import { fitWorksheet } from './fit.ts';
import { frameWorksheet } from './frame.ts';
import { handlingWorksheet } from './handling.ts';
import { keyWorksheet } from './key.ts';
import { quantityWorksheet } from './quantity.ts';
import { sprocketWorksheet } from './sprocket.ts';
import { stackWorksheet } from './stack.ts';
import { steeringWorksheet } from './steering.ts';
import type { Worksheet } from './worksheet.ts';

export {
  describeWorksheet,
  runWorksheet,
  type WorksheetAnswer,
  type WorksheetDescription,
} from './run.ts';
export type { Worksheet, WorksheetRun } from './worksheet.ts';

/** Every worksheet, in alphabetical order of its id; a new one gets one line here. */
export const worksheets: readonly Worksheet[] = [
  beltDriveWorksheet,
  bendWorksheet,
  chainDriveWorksheet,
  copeWorksheet,
  fitWorksheet,
  frameWorksheet,
  keyWorksheet,
  handlingWorksheet,
  quantityWorksheet,
  sprocketWorksheet,
  stackWorksheet,
  steeringWorksheet,
];

export function worksheetNamed(id: string): Worksheet | undefined {
  return worksheets.find((worksheet) => worksheet.id === id);
}
