import type { Build } from '../../build/index.ts';
import {
  add3,
  bikeFrame,
  boxMesh,
  cylinderMesh,
  type Frame3,
  type Point3,
  scale3,
} from '../../geometry/index.ts';
import type { Bike, BodyMesh } from '../bike.ts';
import { bothSides, ringMesh, roundedBoxMesh } from './solids.ts';

/** Seat thickness, stand leg and caliper where the file gives no size, for the picture alone [m]. */
const SEAT_THICKNESS = 60e-3;
const STAND_RADIUS = 9e-3;
const CALIPER = { width: 50e-3, height: 45e-3 };
const BODY_ROUNDNESS = 0.4;

/** Seat, pegs, stand, bodies and brakes. */
export const fittingMeshes = (build: Build, bike: Bike): BodyMesh[] => [
  ...seatMeshes(build, bike),
  ...bodyMeshes(build, bike),
  ...brakeMeshes(build, bike),
];

function seatMeshes(build: Build, bike: Bike): BodyMesh[] {
  const { seat, pegs } = build.seating;
  const { places } = bike.layout;
  const thickness = seat.thickness ?? SEAT_THICKNESS;
  const half = { x: seat.length / 2, y: seat.width / 2, z: thickness / 2 };
  const pegHalf = { x: 0, y: pegs.length / 2, z: 0 };
  const [left, right] = bothSides(places.peg);
  const peg = (name: string, at: Point3): BodyMesh => ({
    name,
    part: 'seating.pegs',
    look: 'shaft',
    mesh: cylinderMesh(add3(at, pegHalf), add3(at, scale3(pegHalf, -1)), pegs.diameter / 2),
  });
  const stand: BodyMesh[] = places.stand
    ? [
        {
          name: 'side stand',
          part: 'seating.stand',
          look: 'shaft',
          mesh: cylinderMesh(places.stand, folded(places.stand), STAND_RADIUS),
        },
      ]
    : [];
  return [
    {
      name: 'seat',
      part: 'seating.seat',
      look: 'seat',
      mesh: roundedBoxMesh(frameAt({ ...places.seat, z: places.seat.z - thickness / 2 }), half, 0.3),
    },
    peg('left peg', left),
    peg('right peg', right),
    ...stand,
  ];
}

/** The foot of the stand swung up to the rear; the leg reaches the ground when it is down. */
const folded = (pivot: Point3): Point3 => ({ x: pivot.x - 1.15 * pivot.z, y: pivot.y, z: pivot.z });

function bodyMeshes(build: Build, bike: Bike): BodyMesh[] {
  return Object.entries(build.bodies ?? {}).map(([name, body]): BodyMesh => {
    const half = { x: body.length / 2, y: body.width / 2, z: body.height / 2 };
    const mesh = roundedBoxMesh(frameAt(bike.layout.places.bodies[name]!), half, BODY_ROUNDNESS);
    return { name: body.name, part: `bodies.${name}`, look: 'body', mesh };
  });
}

function brakeMeshes(build: Build, bike: Bike): BodyMesh[] {
  return bike.brakes.flatMap((placed): BodyMesh[] => {
    const brake = build.brakes[placed.wheel]!;
    const part = `brakes.${placed.wheel}`;
    const inside =
      brake.kind === 'disc' ? (brake.disc.inside ?? 0.6 * brake.disc.diameter) / 2 : placed.radius * 0.3;
    const disc: BodyMesh = {
      name: `${placed.wheel} brake ${brake.kind === 'disc' ? 'disc' : 'drum'}`,
      part,
      look: 'disc',
      mesh: ringMesh(placed.center, inside, placed.radius, placed.thickness, 64),
    };
    if (brake.kind !== 'disc') return [disc];
    const { clock, lugRadius, width, mountSpacing } = brake.caliper;
    const out = { x: Math.cos(clock), y: 0, z: Math.sin(clock) };
    const frame: Frame3 = {
      origin: add3(placed.center, scale3(out, lugRadius - CALIPER.height / 2)),
      x: { x: -out.z, y: 0, z: out.x },
      y: { x: 0, y: -1, z: 0 },
      z: out,
    };
    const size = { x: mountSpacing + 15e-3, y: width ?? CALIPER.width, z: CALIPER.height };
    return [disc, { name: `${placed.wheel} caliper`, part, look: 'disc', mesh: boxMesh(frame, size) }];
  });
}

const frameAt = (origin: Point3): Frame3 => ({ ...bikeFrame, origin });
