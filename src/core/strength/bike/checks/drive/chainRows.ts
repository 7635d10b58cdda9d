import { onceShare } from '../../../../standards/index.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { CASE, type ChainStrength } from './driveTypes.ts';

/** Every comparison of one chain. */
export const chainRows = (chain: ChainStrength): UtilizationRow[] => [
  tensionRow(chain),
  shockRow(chain),
  ...pressureRows(chain),
  ...powerRows(chain),
  speedRow(chain),
];

const baseOf = ({ drive }: ChainStrength) => ({ part: drive, case: CASE, where: 'tight strand' });

const tensionRow = (chain: ChainStrength): UtilizationRow => ({
  ...baseOf(chain),
  check: 'chainTension',
  quantity: 'working tension against 1/9 of the minimum strength',
  value: chain.tension,
  limit: chain.limit,
  kind: 'force',
  utilization: chain.tension / chain.limit,
  source: { key: 'roller-chain-sheet', where: 'working tension, joining link with slip fit' },
});

const shockRow = (chain: ChainStrength): UtilizationRow => ({
  ...baseOf(chain),
  check: 'chainShock',
  where: `tight strand, ${chain.service.factor} times its tension`,
  quantity: 'pull with the shock of the drive, against half of the minimum strength',
  value: chain.peak,
  limit: chain.peakLimit,
  kind: 'force',
  utilization: chain.peak / chain.peakLimit,
  source: onceShare.source,
});

function pressureRows(chain: ChainStrength): UtilizationRow[] {
  const { meanPressure, allowedPressure } = chain;
  if (allowedPressure === undefined) return [];
  return [
    {
      ...baseOf(chain),
      where: 'pins in their bushings, mean of the duty',
      check: 'chainPressure',
      quantity: 'pressure in the joints',
      value: meanPressure,
      limit: allowedPressure,
      kind: 'pressure',
      utilization: meanPressure / allowedPressure,
      source: {
        key: 'memory',
        where: `allowable pressure in chain joints of design handbooks, some thousand hours${chain.isSmallerPitch ? '; taken of the smallest pitch listed' : ''}`,
      },
    },
  ];
}

function powerRows(chain: ChainStrength): UtilizationRow[] {
  if (chain.powerFactor === undefined) return [];
  return [
    {
      ...baseOf(chain),
      where: 'small sprocket at full speed',
      check: 'chainPower',
      quantity: 'rated over design power',
      value: chain.powerFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / chain.powerFactor,
      source: {
        key: 'roller-chain-sheet',
        where: `power formula for 15 000 h, service factor of ${chain.service.load.replace('-', ' ')}`,
      },
    },
  ];
}

const speedRow = (chain: ChainStrength): UtilizationRow => ({
  ...baseOf(chain),
  where: 'small sprocket at full speed',
  check: 'chainSpeed',
  quantity: 'speed against that of galling joints',
  value: chain.smallSpeed,
  limit: chain.galling,
  kind: 'angularSpeed',
  utilization: chain.smallSpeed / chain.galling,
  source: { key: 'memory', where: 'Shigley equation 17-40, galling of pin and bushing with oil' },
});
