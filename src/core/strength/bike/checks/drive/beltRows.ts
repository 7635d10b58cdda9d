import { practice } from '../../../../quantity/index.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type BeltStrength, CASE } from './driveTypes.ts';

/** Least wrap on the smaller sheave before a V-belt slips easily [rad]. */
const LEAST_WRAP = (120 * Math.PI) / 180;

/** Wrap of every belt; slip and tension where the file tells what holds them. */
export function beltRows(belt: BeltStrength): UtilizationRow[] {
  const base = { part: belt.drive, case: CASE, where: 'at launch, driver smallest' };
  const wrap: UtilizationRow = {
    ...base,
    check: 'beltWrap',
    quantity: 'wrap of the smaller sheave',
    value: belt.wrap,
    limit: LEAST_WRAP,
    kind: 'angle',
    utilization: LEAST_WRAP / belt.wrap,
    source: practice('V-belts want 120° or more on the smaller sheave'),
  };
  return [wrap, ...slipRows(base, belt), ...tensionRows(base, belt)];
}

type Base = Pick<UtilizationRow, 'part' | 'case' | 'where'>;

function slipRows(base: Base, { clamp, clampNeeded }: BeltStrength): UtilizationRow[] {
  if (clamp === undefined) return [];
  return [
    {
      ...base,
      check: 'beltSlip',
      quantity: 'force that presses the sheaves together',
      value: clamp,
      limit: clampNeeded,
      kind: 'force',
      utilization: clampNeeded / clamp,
      source: {
        key: 'derived',
        where: 'belt in its groove at the point of slipping; friction 0.3 by practice',
      },
    },
  ];
}

function tensionRows(base: Base, { tight, workingTension }: BeltStrength): UtilizationRow[] {
  if (workingTension === undefined) return [];
  return [
    {
      ...base,
      check: 'beltTension',
      quantity: 'tension of the tight side',
      value: tight,
      limit: workingTension,
      kind: 'force',
      utilization: tight / workingTension,
      source: practice("the belt maker's figure, from the build file"),
    },
  ];
}
