import type { SourceRef } from '../../../../quantity/index.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type BearingStrength, CASE } from './driveTypes.ts';

const SLOPE_SOURCE: SourceRef = { key: 'shigley-9', where: 'table 7-2, deep groove and self-aligning ball' };

/** Tilt of every bearing; life, static load and speed where the table has it. */
export function bearingRows(
  settings: LoadSettings,
  shaft: string,
  bearing: BearingStrength,
): UtilizationRow[] {
  const base = { part: shaft, case: CASE, place: bearing.item, where: `bearing ${bearing.item}` };
  const tilt: UtilizationRow = {
    ...base,
    check: 'bearingTilt',
    quantity: 'tilt of the shaft in the bearing',
    value: bearing.slope,
    limit: bearing.slopeLimit,
    kind: 'angle',
    utilization: bearing.slope / bearing.slopeLimit,
    source: SLOPE_SOURCE,
  };
  return [
    tilt,
    ...lifeRows(settings, base, bearing),
    ...staticRows(base, bearing),
    ...speedRows(base, bearing),
  ];
}

type Base = Pick<UtilizationRow, 'part' | 'case' | 'place' | 'where'>;

function lifeRows(
  settings: LoadSettings,
  base: Base,
  { hours, designation }: BearingStrength,
): UtilizationRow[] {
  if (!hours || !Number.isFinite(hours.low)) return [];
  return [
    {
      ...base,
      check: 'bearingLife',
      quantity: `life of ${designation}, hours of the stated duty`,
      value: hours.low,
      limit: settings.bearingLife,
      kind: 'ratio',
      utilization: settings.bearingLife / hours.low,
      source: { key: 'iso-281', where: 'basic rating life, lowest printed rating' },
    },
  ];
}

function staticRows(base: Base, { staticFactor }: BearingStrength): UtilizationRow[] {
  if (staticFactor === undefined || !Number.isFinite(staticFactor)) return [];
  return [
    {
      ...base,
      check: 'bearingStatic',
      quantity: 'static factor C0/P0',
      value: staticFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / staticFactor,
      source: { key: 'iso-76', where: 'static safety factor of ball bearings, smooth running' },
    },
  ];
}

function speedRows(base: Base, { speedShare }: BearingStrength): UtilizationRow[] {
  if (speedShare === undefined) return [];
  return [
    {
      ...base,
      check: 'bearingSpeed',
      quantity: 'speed over the limit of a sealed bearing',
      value: speedShare,
      limit: 1,
      kind: 'ratio',
      utilization: speedShare,
      source: { key: 'memory', where: 'n·dm of sealed deep groove bearings' },
    },
  ];
}
