import type { Build } from '../../../../build/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import type { Force, Length, Torque } from '../../../../quantity/index.ts';
import { groupForces, type InPlane, tippingForces } from '../../../bolts/boltGroup.ts';
import type { PointLoad } from '../../../plates/index.ts';

type BearingPlate = Extract<
  Build['plates'][string],
  { readonly recipe: 'countershaft-plate' | 'outboard-support' }
>;

/** Bolts of a foot in the plate's axes: along it, and off its middle plane where the foot is bent. */
export interface FootBolts {
  readonly along: readonly number[];
  /** From the middle of the plate to the bolts, and from the bolts to the foot's free edge [m]; absent without a bent foot. */
  readonly bent?: { readonly off: number; readonly toe: number };
  readonly middle: number;
  readonly half: number;
}

/** What the foot's most loaded bolt feels [N]. */
export interface FootForces {
  /** Across the bolt. */
  readonly shear: number;
  /** Along it, by lift and by tipping, the lever of the bent foot counted in. */
  readonly pull: number;
  /** What lifts the plate there, before that lever [N]. */
  readonly lift: number;
  /** Moment about the bend of a bent foot, for each bolt [N·m]. */
  readonly tilt: number;
}

/** Bolts of a plate's foot; none where it is welded. */
export function footBolts(pattern: FlatPattern, { foot }: BearingPlate): FootBolts | undefined {
  const holes = pattern.openings.filter(({ id }) => id.startsWith('foot-'));
  if (holes.length === 0) return undefined;
  const size = holes[0]!.diameter;
  const edge = foot.edge ?? 2 * size;
  return {
    along: holes.map(({ center }) => center.x),
    ...(foot.flange ? { bent: { off: foot.flange.length - edge - pattern.thickness / 2, toe: edge } } : {}),
    middle: foot.forward ?? 0,
    half: foot.width / 2,
  };
}

/**
 * Forces on the bolts of a foot: in its face by the bolt group, along the bolts by lift F/n, by tipping about its end
 * M·l/Σl², and by tilting about its heel or toe; a bent foot pries by its bolts' lever, 1 + off/toe.
 * @param load all that acts on the plate, about the middle of its foot
 * @source shigley-9, section 8-12; bhandari, section 7.9; derived, lever of the bent foot
 */
export function footForces(bolts: FootBolts, load: PointLoad): FootForces {
  const { along, bent, middle } = bolts;
  const n = along.length;
  const { force, moment = { x: 0, y: 0, z: 0 } } = load;
  if (!bent) {
    // Bolts across the plate, in one row: all that acts in its plane goes across them.
    const points = along.map((x): InPlane<Length> => [x as Length, 0 as Length]);
    const each = groupForces(
      points,
      [force.x as Force, force.y as Force],
      [middle as Length, 0 as Length],
      moment.z as Torque,
    );
    return {
      shear: Math.max(...each.map(([x, y]) => Math.hypot(x, y))),
      pull: Math.abs(force.z) / n,
      lift: 0,
      tilt: 0,
    };
  }
  const points = along.map((x): InPlane<Length> => [x as Length, bent.off as Length]);
  const each = groupForces(
    points,
    [force.x as Force, force.z as Force],
    [middle as Length, 0 as Length],
    -moment.y as Torque,
  );
  const lift = Math.max(liftAbout(bolts, force.y, moment.z, 1), liftAbout(bolts, force.y, moment.z, -1));
  const tilt = Math.abs(moment.x) / n;
  return {
    shear: Math.max(...each.map(([x, z]) => Math.hypot(x, z))),
    pull: lift * (1 + bent.off / bent.toe) + tilt / Math.min(bent.off, bent.toe),
    lift,
    tilt,
  };
}

/** Lift on the bolt farthest from an end of the foot; what presses the foot down holds against tipping. */
function liftAbout({ along, middle, half }: FootBolts, up: number, turn: number, end: 1 | -1): number {
  const distances = along.map((x) => (half + end * (x - middle)) as Length);
  const tipping = turn * end;
  const moment = up >= 0 ? tipping : tipping + up * half;
  const most = moment > 0 ? Math.max(...tippingForces(distances, moment as Torque)) : 0;
  return most + Math.max(0, up) / along.length;
}
