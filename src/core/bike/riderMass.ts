import type { Build } from '../build/index.ts';
import {
  add3,
  between3,
  distance3,
  type Frame3,
  frameFromZ,
  type Point3,
  scale3,
  subtract3,
} from '../geometry/index.ts';
import { type BodySegment, bodyLinks, segmentMasses } from '../standards/index.ts';
import type { MassPart, RiderFigure } from './bike.ts';
import { axialInertia, boxInertia, type Inertia, rodInertia } from './inertia.ts';
import { mirrored } from './placePoint.ts';

const LABELS: Readonly<Record<BodySegment, string>> = {
  head: 'head and neck',
  trunk: 'trunk',
  upperArm: 'upper arm',
  forearm: 'forearm and hand',
  thigh: 'thigh',
  shank: 'shank',
  foot: 'foot',
};

/**
 * The rider as segments of the figure: limbs as thin rods along their links, the trunk as a box, the head as a ball.
 * @source biomechanics-motor-control, table of anthropometric data; derived, homogeneous bodies
 */
export function riderParts(build: Build, rider: RiderFigure): MassPart[] {
  return segmentMasses.flatMap(({ segment, massFraction, count, centerFraction }) => {
    const mass = build.rider.mass * massFraction;
    const sides = count === 2 ? (['left', 'right'] as const) : (['center'] as const);
    return sides.map((side): MassPart => {
      const [from, to] = linkOf(rider, segment, side === 'right');
      return {
        id: side === 'center' ? `rider.${segment}` : `rider.${segment}.${side}`,
        label: `rider, ${side === 'center' ? '' : `${side} `}${LABELS[segment]}`,
        mass,
        center: between3(from, to, centerFraction),
        inertia: segmentInertia(build, rider, segment, { mass, from, to }),
        body: 'rider',
      };
    });
  });
}

function linkOf(rider: RiderFigure, segment: BodySegment, right: boolean): readonly [Point3, Point3] {
  const middle = (p: Point3): Point3 => ({ ...p, y: rider.head.y });
  const links: Readonly<Record<BodySegment, readonly [Point3, Point3]>> = {
    head: [rider.head, rider.head],
    trunk: [middle(rider.hip), middle(rider.shoulder)],
    upperArm: [rider.shoulder, rider.elbow],
    forearm: [rider.elbow, rider.grip],
    thigh: [rider.hip, rider.knee],
    shank: [rider.knee, rider.ankle],
    foot: [rider.ankle, rider.toe],
  };
  const [from, to] = links[segment];
  return right ? [mirrored(from), mirrored(to)] : [from, to];
}

interface Link {
  readonly mass: number;
  readonly from: Point3;
  readonly to: Point3;
}

function segmentInertia(
  build: Build,
  rider: RiderFigure,
  segment: BodySegment,
  { mass, from, to }: Link,
): Inertia {
  if (segment === 'head') {
    const ball = 0.4 * mass * rider.headRadius ** 2;
    return axialInertia(ball, ball, { x: 0, y: 0, z: 1 });
  }
  if (segment !== 'trunk') return rodInertia(mass, from, to);
  const { trunkDepth, trunkWidth } = bodyLinks(build.rider);
  const axes: Frame3 = frameFromZ(scale3(add3(from, to), 0.5), subtract3(to, from), { x: 1, y: 0, z: 0 });
  return boxInertia(mass, { x: trunkDepth, y: trunkWidth, z: distance3(from, to) }, axes);
}
