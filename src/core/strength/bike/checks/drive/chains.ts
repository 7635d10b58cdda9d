import type { Build } from '../../../../build/index.ts';
import type { AngularSpeed, Force, Power } from '../../../../quantity/index.ts';
import { serviceFactors, tensionShares } from '../../../../standards/index.ts';
import { chainRating, chainSpeed, jointPressure } from '../../../chain/chainRating.ts';
import type { DrivePull } from '../../loads/drivePull.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { CASE, type ChainStrength, type DriveInput } from './driveTypes.ts';
import { shaftSpeed } from './shaftSpeed.ts';

/** Tension, joint pressure and rated power of a chain at full torque. */
export function chainOf(input: DriveInput, pull: DrivePull): ChainStrength[] {
  const { build, driveline } = input;
  const solved = driveline.chains[pull.drive];
  if (!solved) return [];
  const { chain, stage } = solved;
  const share = tensionShares.find(({ name }) => name === 'slip-fit')?.share ?? 9;
  const small = Math.min(stage.driverTeeth, stage.drivenTeeth);
  const fast = shaftSpeed(input, stage.driverTeeth <= stage.drivenTeeth ? stage.from : stage.to);
  const rating = chainRating(chain, small, fast as AngularSpeed);
  const service = serviceFactors.find(({ load }) => load === 'some-impact')?.engine ?? 1;
  const power = enginePower(build);
  return [
    {
      drive: pull.drive,
      tension: pull.tight,
      limit: chain.minimumTensileStrength / share,
      factorOfBreaking: chain.minimumTensileStrength / pull.tight,
      speed: chainSpeed(chain.pitch, small, fast as AngularSpeed),
      pressure: jointPressure(chain, pull.tight as Force),
      ...(rating && power > 0 ? { powerFactor: (rating.rating as Power) / (power * service) } : {}),
    },
  ];
}

const enginePower = (build: Build): number =>
  Math.max(0, ...(build.engine.torque ?? []).map(({ at, torque }) => at * torque));

export function chainRows(chain: ChainStrength): UtilizationRow[] {
  const base = { part: chain.drive, case: CASE, where: 'tight strand' };
  const rows: UtilizationRow[] = [
    {
      ...base,
      check: 'chainTension',
      quantity: 'working tension against 1/9 of the minimum strength',
      value: chain.tension,
      limit: chain.limit,
      kind: 'force',
      utilization: chain.tension / chain.limit,
      source: { key: 'roller-chain-sheet', where: 'working tension, joining link with slip fit' },
    },
  ];
  if (chain.powerFactor !== undefined)
    rows.push({
      ...base,
      where: 'small sprocket at full speed',
      check: 'chainPower',
      quantity: 'rated over design power',
      value: chain.powerFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / chain.powerFactor,
      source: {
        key: 'roller-chain-sheet',
        where: 'power formula for 15 000 h, service factor of some impact',
      },
    });
  return rows;
}
