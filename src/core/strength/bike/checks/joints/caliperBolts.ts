import type { Build } from '../../../../build/index.ts';
import type { Force, Length } from '../../../../quantity/index.ts';
import { boltClass, materialStrength } from '../../../../standards/index.ts';
import { groupForces } from '../../../bolts/boltGroup.ts';
import { plateBearing } from '../../../bolts/boltJoint.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';
import { type PadDrag, padDrag } from './padDrag.ts';

/** Caliper bolts take the brake's torque by shear, as if the faces did not hold. */
export function caliperBolts(input: JointInput): UtilizationRow[] {
  return (['front', 'rear'] as const).flatMap((wheel): UtilizationRow[] => {
    const found = padDrag(input, wheel);
    if (!found) return [];
    const load = { one: found.one, most: largestBoltForce(found), bolt: found.brake.caliper.bolt };
    const thread = threadRows(input, wheel, load);
    return thread.length === 0 ? [] : [...thread, ...holeRows(input, wheel, load)];
  });
}

/** The drag at the pads, off the middle of the two bolts [N]. */
function largestBoltForce({ brake: { caliper }, reach, drag }: PadDrag): number {
  const half = caliper.mountSpacing / 2;
  const forces = groupForces(
    [
      [half as Length, caliper.lugRadius as Length],
      [-half as Length, caliper.lugRadius as Length],
    ],
    [drag as Force, 0 as Force],
    [0 as Length, reach as Length],
  );
  return Math.max(...forces.map((force) => Math.hypot(...force)));
}

interface BoltLoad {
  readonly one: LoadCase;
  readonly most: number;
  readonly bolt: Length;
}

function threadRows(
  { settings }: JointInput,
  wheel: string,
  { one, most, bolt }: BoltLoad,
): UtilizationRow[] {
  const area = (Math.PI / 4) * (0.85 * bolt) ** 2;
  const grade = boltClass('8.8', bolt);
  if (!grade.ok) return [];
  const shear = (0.577 * grade.value.yield) / settings.yieldFactor;
  return [
    {
      part: `brakes.${wheel}`,
      case: one.id,
      where: 'caliper bolts',
      check: 'threadShear',
      quantity: 'shear at the thread, class 8.8',
      value: most / area,
      limit: shear,
      kind: 'pressure',
      utilization: most / area / shear,
      source: { key: 'shigley-9', where: 'section 8-12, eccentric shear' },
    },
  ];
}

/** Pressure of a bolt on the hole of the bracket that holds the caliper. */
function holeRows(input: JointInput, wheel: string, { one, most, bolt }: BoltLoad): UtilizationRow[] {
  const { build, patterns, settings } = input;
  const bracket = patterns.find(
    ({ id }) => build.plates[id]?.recipe === 'caliper-bracket' && bracketOf(build, id) === wheel,
  );
  if (!bracket) return [];
  const stress = plateBearing({
    load: most as Force,
    diameter: bolt,
    hole: bolt,
    thickness: bracket.thickness as Length,
    edge: (bolt * 1.5) as Length,
  });
  const plain = materialStrength(bracket.material).yield / settings.yieldFactor;
  return [
    {
      part: bracket.id,
      case: one.id,
      where: 'at a caliper bolt',
      check: 'holeBearing',
      quantity: 'pressure on the hole',
      value: stress.bearing,
      limit: plain,
      kind: 'pressure',
      utilization: stress.bearing / plain,
      source: { key: 'shigley-9', where: 'section 8-12, bearing' },
    },
  ];
}

function bracketOf(build: Build, id: string): string | undefined {
  const entry = build.plates[id];
  return entry?.recipe === 'caliper-bracket' ? entry.brake : undefined;
}
