import type { SourceRef } from '../../../../quantity/index.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type BearingStrength, CASE } from './driveTypes.ts';

const SLOPE_SOURCE: SourceRef = { key: 'shigley-9', where: 'table 7-2, deep groove and self-aligning ball' };

export function bearingRows(
  settings: LoadSettings,
  shaft: string,
  bearing: BearingStrength,
): UtilizationRow[] {
  const base = { part: shaft, case: CASE, where: `bearing ${bearing.item}` };
  const rows: UtilizationRow[] = [
    {
      ...base,
      quantity: 'tilt of the shaft in the bearing',
      value: bearing.slope,
      limit: bearing.slopeLimit,
      kind: 'angle',
      utilization: bearing.slope / bearing.slopeLimit,
      source: SLOPE_SOURCE,
    },
  ];
  if (bearing.hours && Number.isFinite(bearing.hours.low))
    rows.push({
      ...base,
      quantity: `life of ${bearing.designation}, hours of the stated duty`,
      value: bearing.hours.low,
      limit: settings.bearingLife,
      kind: 'ratio',
      utilization: settings.bearingLife / bearing.hours.low,
      source: { key: 'iso-281', where: 'basic rating life, lowest printed rating' },
    });
  if (bearing.staticFactor !== undefined && Number.isFinite(bearing.staticFactor))
    rows.push({
      ...base,
      quantity: 'static factor C0/P0',
      value: bearing.staticFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / bearing.staticFactor,
      source: { key: 'iso-76', where: 'static safety factor of ball bearings, smooth running' },
    });
  if (bearing.speedShare !== undefined)
    rows.push({
      ...base,
      quantity: 'speed over the limit of a sealed bearing',
      value: bearing.speedShare,
      limit: 1,
      kind: 'ratio',
      utilization: bearing.speedShare,
      source: { key: 'memory', where: 'n·dm of sealed deep groove bearings' },
    });
  return rows;
}
