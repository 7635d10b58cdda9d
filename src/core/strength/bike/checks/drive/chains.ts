import type { Build, ChainStage } from '../../../../build/index.ts';
import type { AngularSpeed, Force } from '../../../../quantity/index.ts';
import { jointPressureLimit, onceShare, serviceFactors, tensionShares } from '../../../../standards/index.ts';
import {
  type ChainRating,
  centrifugalTension,
  chainRating,
  chainSpeed,
  gallingSpeed,
  jointPressure,
} from '../../../chain/chainRating.ts';
import type { DrivePull } from '../../loads/drivePull.ts';
import type { ChainStrength, DriveInput } from './driveTypes.ts';
import { shaftSpeed } from './shaftSpeed.ts';

/** Tension, shock, joint pressure, speed and rated power of a chain at full torque. */
export function chainOf(input: DriveInput, pull: DrivePull, notChecked: string[]): ChainStrength[] {
  const { build, driveline } = input;
  const solved = driveline.chains[pull.drive];
  if (!solved) return [];
  const { chain, stage } = solved;
  const { share } = tensionShares.find(({ name }) => name === 'slip-fit')!;
  const small = Math.min(stage.driverTeeth, stage.drivenTeeth);
  const fast = shaftSpeed(
    input,
    stage.driverTeeth <= stage.drivenTeeth ? stage.from : stage.to,
  ) as AngularSpeed;
  const tension = pull.tight as Force;
  const service = serviceOf(build, stage);
  const speed = chainSpeed(chain.pitch, small, fast);
  const centrifugal = centrifugalTension(chain.lineMass as Parameters<typeof centrifugalTension>[0], speed);
  const pressure = jointPressure(chain, tension);
  const mean = meanOfDuty(input);
  const allowed = jointPressureLimit(chain.pitch, (fast * mean.speed) as AngularSpeed, small);
  if (!allowed)
    notChecked.push(`chain ${pull.drive}: pressure in its joints, which no table has at its speed or pitch`);
  const powerFactor = ratedOverDesign(chainRating(chain, small, fast), enginePower(build) * service.factor);
  if (typeof powerFactor === 'string') notChecked.push(`chain ${pull.drive}: its power, ${powerFactor}`);
  return [
    {
      drive: pull.drive,
      tension: pull.tight,
      limit: chain.minimumTensileStrength / share,
      factorOfBreaking: chain.minimumTensileStrength / pull.tight,
      speed,
      pressure,
      service,
      peak: tension * service.factor + centrifugal,
      peakLimit: onceShare.share * chain.minimumTensileStrength,
      meanPressure: pressure * mean.torque,
      ...(allowed ? { allowedPressure: allowed.pressure } : {}),
      ...(allowed?.table === 'smaller-pitch' ? { isSmallerPitch: true } : {}),
      smallSpeed: fast,
      galling: gallingSpeed(chain.pitch, small, tension),
      ...(typeof powerFactor === 'number' ? { powerFactor } : {}),
    },
  ];
}

/** What a chain is rated for over what it is to pass, or why that is not known. */
function ratedOverDesign(rating: ChainRating | undefined, design: number): number | string {
  if (!rating) return 'for which its size has no rating';
  return design > 0 ? rating.rating / design : 'since the file tells no torque over speed';
}

/**
 * Kind of load by what drives: a motor runs smoothly, an engine of one cylinder on a clutch with some impact, a chain
 * that the file calls a shock drive with much. @source chain-guide, service factors; practice for the choice
 */
function serviceOf(build: Build, stage: ChainStage): ChainStrength['service'] {
  const load = stage.steep ? 'high-impact' : build.engine.motor ? 'smooth' : 'some-impact';
  const row = serviceFactors.find((one) => one.load === load)!;
  return { load, factor: build.engine.motor ? row.electric : row.engine };
}

/** Wear goes by pressure times sliding: mean torque weighted by speed, and mean speed, as shares. @source derived, wear by pressure and path */
function meanOfDuty({ settings: { duty } }: DriveInput): { readonly torque: number; readonly speed: number } {
  const sum = (of: (part: (typeof duty)[number]) => number): number =>
    duty.reduce((all, part) => all + of(part), 0);
  const [time, path] = [sum((one) => one.time), sum((one) => one.time * one.speed)];
  return {
    torque: path > 0 ? sum((one) => one.time * one.speed * one.torque) / path : 0,
    speed: time > 0 ? path / time : 0,
  };
}

const enginePower = (build: Build): number =>
  Math.max(0, ...(build.engine.torque ?? []).map(({ at, torque }) => at * torque));
