import type { LoadSettings } from '../../loads/assumptions.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { bearingRows } from './bearingRows.ts';
import { CASE, type DriveInput, type DriveShaftStrength } from './driveTypes.ts';
import { keyRows } from './keys.ts';

/** Share of the critical speed that a shaft should stay below. @source shigley-9, section 7-6 */
const CRITICAL_SHARE = 0.5;

/** Every comparison of one shaft. */
export function shaftRows({ settings }: DriveInput, shaft: DriveShaftStrength): UtilizationRow[] {
  return [
    stressRow(settings, shaft),
    ...shaft.keyseats.map((seat) => keyseatRow(settings, shaft.id, seat)),
    ...keyRows(settings, shaft.model),
    ...shaft.bearings.flatMap((bearing) => bearingRows(settings, shaft.id, bearing)),
    ...criticalRows(shaft),
  ];
}

function stressRow(settings: LoadSettings, { id, solution }: DriveShaftStrength): UtilizationRow {
  const allowed = settings.shaftYield / settings.yieldFactor;
  const { at, value } = solution.maxStress;
  return {
    part: id,
    case: CASE,
    where: `${Math.abs(Math.round(at * 1000))} mm ${at < 0 ? 'right' : 'left'} of the middle`,
    check: 'shaftStress',
    quantity: 'equivalent stress',
    value,
    limit: allowed,
    kind: 'pressure',
    utilization: value / allowed,
    source: { key: 'shigley-9', where: 'section 7-4' },
  };
}

const keyseatRow = (
  settings: LoadSettings,
  shaft: string,
  seat: DriveShaftStrength['keyseats'][number],
): UtilizationRow => ({
  part: shaft,
  case: CASE,
  where: `keyseat of ${seat.item}`,
  check: 'keyseatFatigue',
  place: seat.item,
  quantity: 'fatigue factor, Goodman',
  value: seat.factor,
  limit: settings.fatigueFactor,
  kind: 'ratio',
  utilization: settings.fatigueFactor / seat.factor,
  source: { key: 'shigley-9', where: 'equations 7-7 and 7-8, end-mill keyseat' },
});

function criticalRows({ id, speed, critical }: DriveShaftStrength): UtilizationRow[] {
  if (critical === undefined) return [];
  const limit = CRITICAL_SHARE * critical;
  return [
    {
      part: id,
      case: CASE,
      where: 'whole shaft',
      check: 'criticalSpeed',
      quantity: 'speed against half the critical speed',
      value: speed,
      limit,
      kind: 'angularSpeed',
      utilization: speed / limit,
      source: { key: 'shigley-9', where: 'section 7-6' },
    },
  ];
}
