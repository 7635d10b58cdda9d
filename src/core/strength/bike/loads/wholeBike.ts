import type { Point3 } from '../../../geometry/index.ts';
import type { FrameMasses } from './balance.ts';
import type { CasesInput } from './caseTypes.ts';

export const GRAVITY = 9.80665;

/** Numbers of the whole bike that the cases share. */
export interface Whole {
  readonly weight: number;
  readonly front: number;
  readonly rear: number;
  /** Wheel loads without rider [N]. */
  readonly bareFront: number;
  readonly bareRear: number;
  readonly wheelbase: number;
  readonly ahead: number;
  readonly height: number;
  /** A pothole's edge pushes through the axle, since the wheel turns freely. */
  readonly frontAxleHeight: number;
  readonly contact: { readonly front: Point3; readonly rear: Point3 };
}

/** Weight, center and wheel loads of the bike at rest. @source derived, moments about the rear contact */
export function wholeBike({ bike }: CasesInput, { total, center }: FrameMasses, bare: FrameMasses): Whole {
  const rearAxle = bike.shafts.rearAxle!;
  const frontAxle = bike.shafts.frontAxle!;
  const { front, rear } = bike.layout.fitted;
  const wheelbase = frontAxle.x - rearAxle.x;
  const weight = total * GRAVITY;
  const ahead = center.x - rearAxle.x;
  const bareAhead = (bare.center.x - rearAxle.x) / wheelbase;
  const ground = Math.min(rearAxle.z - rear.radius, frontAxle.z - front.radius);
  return {
    weight,
    front: (weight * ahead) / wheelbase,
    rear: weight * (1 - ahead / wheelbase),
    bareFront: bare.total * GRAVITY * bareAhead,
    bareRear: bare.total * GRAVITY * (1 - bareAhead),
    wheelbase,
    ahead,
    height: center.z - ground,
    frontAxleHeight: frontAxle.z,
    contact: {
      front: { x: frontAxle.x, y: 0, z: frontAxle.z - front.radius },
      rear: { x: rearAxle.x, y: 0, z: rearAxle.z - rear.radius },
    },
  };
}
