import { derived } from '../../../quantity/index.ts';
import type { CasesInput, Draft, DriveLimits } from './caseTypes.ts';
import { drivePulls } from './drivePull.ts';
import { pullLoads } from './pullLoads.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, onWheel } from './tireLoads.ts';
import type { Whole } from './wholeBike.ts';

/** What ends the push, in a sentence. */
const GOVERNS: Readonly<Record<DriveLimits['governedBy'], string>> = {
  engine: 'the engine',
  clutch: 'the clutch',
  grip: 'grip',
  'front wheel lifts': 'the lift of the front wheel',
};

/** Full torque as the tires pass it on, and with the wheel held. */
export function driveCases(input: CasesInput, whole: Whole, holds: Holds, limits: DriveLimits): Draft[] {
  if (!(limits.engineForce > 0)) return [];
  const make = (id: 'driving' | 'chain-pull', name: string, torque: number, basis: string): Draft => ({
    id,
    name,
    basis,
    source: derived('T·ratio/r, no losses; ISO 8855 statics'),
    ...drivenBy(input, whole, torque),
    hold: holds.seated,
  });
  const share = limits.driveForce / limits.engineForce;
  const endsEarlier = limits.governedBy !== limits.limitedBy;
  const full = `${limits.torque.toFixed(1)} N·m at the engine, lowest gear`;
  return [
    make(
      'driving',
      'driving at the limit',
      limits.torque * share,
      `${newtons(limits.driveForce)} at the rear wheel, limited by ${GOVERNS[limits.governedBy]}${endsEarlier ? `; ${full} would give ${newtons(limits.engineForce)}` : `: ${full}`}.`,
    ),
    make(
      'chain-pull',
      'largest chain pull',
      limits.torque,
      `${full}, the wheel held by an obstacle: ${newtons(limits.engineForce)} at the rear wheel${endsEarlier ? `, though on the level ${GOVERNS[limits.governedBy]} ends it at ${newtons(limits.driveForce)}` : ''}.`,
    ),
  ];
}

/** Wheel loads and strands when the engine gives this torque. */
function drivenBy(input: CasesInput, whole: Whole, torque: number): Pick<Draft, 'applied' | 'pulls'> {
  const { build, bike, driveline } = input;
  const pulls = drivePulls(build, bike, driveline, torque);
  const push = (pulls.at(-1)?.torqueOut ?? 0) / bike.layout.fitted.rear.radius;
  const { weight, wheelbase: p, ahead: b, height: h } = whole;
  // A front wheel that lifts carries nothing; what turns the bike up then is balanced by its inertia.
  const frontLoad = Math.max(0, (weight * b - h * push) / p);
  return {
    applied: [
      onWheel('front', whole.contact.front, { z: frontLoad }),
      onWheel('rear', whole.contact.rear, { x: push, z: weight - frontLoad }),
      ...pullLoads(input, pulls),
    ],
    pulls,
  };
}
