import type { Build } from '../../../../build/index.ts';
import type { Force, Length } from '../../../../quantity/index.ts';
import { boltClass, materialStrength } from '../../../../standards/index.ts';
import { groupForces } from '../../../bolts/boltGroup.ts';
import { plateBearing } from '../../../bolts/boltJoint.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';

/** Caliper bolts take the brake's torque by shear, as if the faces did not hold. */
export function caliperBolts(input: JointInput): UtilizationRow[] {
  const { build, cases, bike, settings, patterns } = input;
  return (['front', 'rear'] as const).flatMap((wheel): UtilizationRow[] => {
    const brake = build.brakes[wheel];
    const one = cases.find(({ id }) => id === `braking-${wheel}`);
    if (brake?.kind !== 'disc' || !one) return [];
    const push = one.applied.find(({ what }) => what === `${wheel} wheel on the ground`);
    const torque = Math.abs(push?.force.x ?? 0) * bike.layout.fitted[wheel].radius;
    const { caliper, disc } = brake;
    const pad = disc.diameter / 2 - (caliper.padHeight ?? 0.2 * disc.diameter) / 2;
    const drag = torque / pad;
    const half = caliper.mountSpacing / 2;
    const forces = groupForces(
      [
        [half as Length, caliper.lugRadius as Length],
        [-half as Length, caliper.lugRadius as Length],
      ],
      [drag as Force, 0 as Force],
      [0 as Length, pad as Length],
    );
    const most = Math.max(...forces.map((force) => Math.hypot(...force)));
    const area = (Math.PI / 4) * (0.85 * caliper.bolt) ** 2;
    const grade = boltClass('8.8', caliper.bolt);
    if (!grade.ok) return [];
    const shear = (0.577 * grade.value.yield) / settings.yieldFactor;
    const rows: UtilizationRow[] = [
      {
        part: `brakes.${wheel}`,
        case: one.id,
        where: 'caliper bolts',
        quantity: 'shear at the thread, class 8.8',
        value: most / area,
        limit: shear,
        kind: 'pressure',
        utilization: most / area / shear,
        source: { key: 'shigley-9', where: 'section 8-12, eccentric shear' },
      },
    ];
    const bracket = patterns.find(
      ({ id }) => build.plates[id]?.recipe === 'caliper-bracket' && bracketOf(build, id) === wheel,
    );
    if (!bracket) return rows;
    const edge = caliper.bolt * 1.5;
    const stress = plateBearing({
      load: most as Force,
      diameter: caliper.bolt,
      hole: caliper.bolt,
      thickness: bracket.thickness as Length,
      edge: edge as Length,
    });
    const plain = materialStrength(bracket.material).yield / settings.yieldFactor;
    return [
      ...rows,
      {
        part: bracket.id,
        case: one.id,
        where: 'at a caliper bolt',
        quantity: 'pressure on the hole',
        value: stress.bearing,
        limit: plain,
        kind: 'pressure',
        utilization: stress.bearing / plain,
        source: { key: 'shigley-9', where: 'section 8-12, bearing' },
      },
    ];
  });
}

function bracketOf(build: Build, id: string): string | undefined {
  const entry = build.plates[id];
  return entry?.recipe === 'caliper-bracket' ? entry.brake : undefined;
}
