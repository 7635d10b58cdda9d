import type { UtilizationRow } from '../utilizationRow.ts';
import { bearingRows } from './bearingRows.ts';
import { CASE, type DriveInput, type DriveShaftStrength } from './driveTypes.ts';
import { keyRows } from './keys.ts';

/** Share of the critical speed that a shaft should stay below. @source shigley-9, section 7-6 */
const CRITICAL_SHARE = 0.5;

export function shaftRows({ settings }: DriveInput, shaft: DriveShaftStrength): UtilizationRow[] {
  const { id, solution, model } = shaft;
  const allowed = settings.shaftYield / settings.yieldFactor;
  const base = { part: id, case: CASE };
  const mm = (y: number): string =>
    `${Math.abs(Math.round(y * 1000))} mm ${y < 0 ? 'right' : 'left'} of the middle`;
  return [
    {
      ...base,
      where: mm(solution.maxStress.at),
      quantity: 'equivalent stress',
      value: solution.maxStress.value,
      limit: allowed,
      kind: 'pressure',
      utilization: solution.maxStress.value / allowed,
      source: { key: 'shigley-9', where: 'section 7-4' },
    },
    ...shaft.keyseats.map(
      (seat): UtilizationRow => ({
        ...base,
        where: `keyseat of ${seat.item}`,
        quantity: 'fatigue factor, Goodman',
        value: seat.factor,
        limit: settings.fatigueFactor,
        kind: 'ratio',
        utilization: settings.fatigueFactor / seat.factor,
        source: { key: 'shigley-9', where: 'equations 7-7 and 7-8, end-mill keyseat' },
      }),
    ),
    ...keyRows(settings, model),
    ...shaft.bearings.flatMap((bearing) => bearingRows(settings, id, bearing)),
    ...(shaft.critical === undefined
      ? []
      : [
          {
            ...base,
            where: 'whole shaft',
            quantity: 'speed against half the critical speed',
            value: shaft.speed,
            limit: CRITICAL_SHARE * shaft.critical,
            kind: 'angularSpeed',
            utilization: shaft.speed / (CRITICAL_SHARE * shaft.critical),
            source: { key: 'shigley-9', where: 'section 7-6' },
          } satisfies UtilizationRow,
        ]),
  ];
}
