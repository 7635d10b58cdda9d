import type { Build } from '../../build/index.ts';
import {
  distance3,
  frameFromZ,
  joinMeshes,
  type Mesh,
  type Point3,
  subtract3,
} from '../../geometry/index.ts';
import { bodyLinks } from '../../standards/index.ts';
import type { Bike, BodyMesh } from '../bike.ts';
import { mirrored } from '../placePoint.ts';
import { beyond, capsuleMesh, roundedBoxMesh } from './solids.ts';

/** Limb radii as shares of stature, thick end and thin end; for the picture alone. */
const THICK = {
  thigh: [0.048, 0.034],
  shank: [0.034, 0.024],
  foot: [0.024, 0.02],
  upperArm: [0.03, 0.024],
  forearm: [0.025, 0.018],
  hand: [0.025, 0.022],
  neck: [0.032, 0.03],
} as const;

/** The rider as rounded limbs on the links of the figure. */
export function riderMeshes(build: Build, bike: Bike): BodyMesh[] {
  const links = bodyLinks(build.rider);
  const { rider } = bike;
  const limb = (kind: keyof typeof THICK, from: Point3, to: Point3): Mesh =>
    capsuleMesh(from, to, THICK[kind][0] * links.stature, THICK[kind][1] * links.stature);
  const half = (side: (p: Point3) => Point3): Mesh =>
    joinMeshes([
      limb('thigh', side(rider.hip), side(rider.knee)),
      limb('shank', side(rider.knee), side(rider.ankle)),
      limb('foot', side(rider.ankle), side(rider.toe)),
      limb('upperArm', side(rider.shoulder), side(rider.elbow)),
      limb('forearm', side(rider.elbow), side(rider.grip)),
      limb('hand', side(rider.grip), side(beyond(rider.elbow, rider.grip, 0.02))),
    ]);
  const [hips, shoulders] = [
    { ...rider.hip, y: rider.head.y },
    { ...rider.shoulder, y: rider.head.y },
  ];
  const trunkHalf = {
    x: links.trunkDepth / 2,
    y: links.trunkWidth / 2,
    z: distance3(hips, shoulders) / 2 + links.trunkDepth * 0.35,
  };
  const middle = { x: (hips.x + shoulders.x) / 2, y: hips.y, z: (hips.z + shoulders.z) / 2 };
  const trunk = roundedBoxMesh(
    frameFromZ(middle, subtract3(shoulders, hips), { x: 1, y: 0, z: 0 }),
    trunkHalf,
    0.55,
  );
  const body = (name: string, mesh: Mesh): BodyMesh => ({ name, part: 'rider', look: 'rider', mesh });
  return [
    body('rider, trunk', trunk),
    body(
      'rider, head',
      joinMeshes([
        capsuleMesh(rider.head, rider.head, rider.headRadius, rider.headRadius),
        limb('neck', shoulders, rider.head),
      ]),
    ),
    body(
      'rider, left limbs',
      half((p) => p),
    ),
    body('rider, right limbs', half(mirrored)),
  ];
}
