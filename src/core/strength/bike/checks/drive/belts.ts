import type { Angle, Force } from '../../../../quantity/index.ts';
import { clampForce } from '../../../chain/beltTension.ts';
import type { DrivePull } from '../../loads/drivePull.ts';
import type { BeltStrength, DriveInput } from './driveTypes.ts';

/** Both sides of every belt at launch, what must press its sheaves together, and what its shafts feel. */
export function beltsOf(
  { driveline }: DriveInput,
  pulls: readonly DrivePull[],
  notChecked: string[],
): readonly BeltStrength[] {
  return pulls.flatMap(({ drive, kind, tight, slack, strands, belt }): BeltStrength[] => {
    const stage = driveline.belts[drive]?.stage;
    if (kind !== 'variable-belt' || !belt || !stage) return [];
    if (stage.driven.clamp === undefined)
      notChecked.push(`belt ${drive}: slip, since what presses its sheaves together is not told`);
    if (stage.workingTension === undefined)
      notChecked.push(`belt ${drive}: its strength, since its maker's working tension is not told`);
    const [x, z] = [
      strands.reduce((sum, { force }) => sum + force.x, 0),
      strands.reduce((sum, { force }) => sum + force.z, 0),
    ];
    return [
      {
        drive,
        tight: tight + belt.centrifugal,
        slack: slack + belt.centrifugal,
        mean: (tight + slack) / 2 + belt.centrifugal,
        wrap: belt.wrap,
        ratio: belt.ratio,
        centrifugal: belt.centrifugal,
        clampNeeded: clampForce((tight - slack) as Force, belt.friction, belt.grooveAngle as Angle),
        ...(stage.driven.clamp === undefined ? {} : { clamp: stage.driven.clamp }),
        shaftLoad: Math.hypot(x, z),
        ...(stage.workingTension === undefined ? {} : { workingTension: stage.workingTension }),
      },
    ];
  });
}
