import type { LoadSettings } from '../../loads/assumptions.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { SeatFit } from './driveTypes.ts';

/** Plate round a bearing, and the clearance that the fit leaves in it. */
export const seatRows = (settings: LoadSettings, seat: SeatFit): UtilizationRow[] => [
  ...stressRows(settings, seat),
  ...clearanceRows(seat),
];

const baseOf = ({ plate, designation, fit }: SeatFit) => ({
  part: plate,
  case: 'fit-up',
  where: `seat of ${designation}, ${fit}`,
});

function stressRows({ yieldFactor }: LoadSettings, seat: SeatFit): UtilizationRow[] {
  if (!seat.tightest) return [];
  const allowed = seat.yield / yieldFactor;
  return [
    {
      ...baseOf(seat),
      check: 'seatStress',
      quantity: 'equivalent stress round the tightest bearing seat',
      value: seat.tightest.hubEquivalent,
      limit: allowed,
      kind: 'pressure',
      utilization: seat.tightest.hubEquivalent / allowed,
      source: { key: 'shigley-9', where: 'section 3-16, press and shrink fits' },
    },
  ];
}

/** In the middle of all tolerances: the ends of both ranges hardly meet. */
function clearanceRows(seat: SeatFit): UtilizationRow[] {
  const { clearance, clearanceLoss } = seat;
  if (!clearance) return [];
  const middle = (clearance.least + clearance.most) / 2;
  return [
    {
      ...baseOf(seat),
      check: 'seatClearance',
      quantity: `clearance of the bearing, group ${clearance.group}, that its fit takes`,
      value: clearanceLoss.middle,
      limit: middle,
      kind: 'length',
      utilization: clearanceLoss.middle / middle,
      source: { key: 'memory', where: 'ISO 5753-1, middle of the clearance; raceway at (4·D + d)/5' },
    },
  ];
}
