import type { Build } from '../build/index.ts';
import {
  add3,
  bikeFrame,
  type CenterlinePiece,
  centerlineAt,
  type Point3,
  scale3,
} from '../geometry/index.ts';
import { materialNamed, tubeSection } from '../standards/index.ts';
import type { Bike, MassPart, PlacedBrake, PlacedTube } from './bike.ts';
import { axialInertia, boxInertia, discInertia, NO_INERTIA, rodLump, sumLumps } from './inertia.ts';
import { enginePoint, mirrored } from './placePoint.ts';
import { shaftwork } from './shaftwork.ts';

/**
 * Radius of gyration of a small wheel about its axle as a share of its radius. A wheel of 5.0 kg and 0.20 m radius
 * (tire 2.2 kg, rim 1.6 kg, hub 1.2 kg) has 0.0713 kg·m², so 0.597. @source derived, worked wheel
 */
export const WHEEL_GYRATION = 0.6;
/** Sheet steel of a drum or band brake, for its mass [m]. @source practice */
const DRUM_WALL = 4e-3;
/** Inside of a disc's track over its outside, where it is not given. @source practice */
const DISC_INSIDE = 0.6;
/** Seat pad and pan, where they have no mass of their own [kg/m²]. @source practice */
const SEAT_SURFACE_MASS = 15;

const STEEL = materialNamed('mild-steel').density;
const ACROSS: Point3 = { x: 0, y: 1, z: 0 };

/** All parts that the bike room weighs, without rider, plates and chains. */
export function bikeParts(build: Build, bike: Bike): MassPart[] {
  return [
    ...wheelParts(build, bike),
    ...frontParts(build, bike),
    enginePart(build, bike),
    ...bike.tubes.map(tubePart),
    neckPart(build, bike),
    ...seatingParts(build, bike),
    ...bodyParts(build, bike),
    ...bike.brakes.flatMap((brake) => brakeParts(build, brake)),
    ...shaftwork(build, bike),
  ];
}

/** Spin m·k², k a fixed share of the radius; across, half of that, as for a thin wheel. */
function wheelParts(build: Build, bike: Bike): MassPart[] {
  return (['rear', 'front'] as const).map((end): MassPart => {
    const { mass } = build.wheels[end];
    const spin = mass * (WHEEL_GYRATION * bike.layout.fitted[end].radius) ** 2;
    return {
      id: `wheels.${end}`,
      label: `${end} wheel with tire and hub`,
      mass,
      center: bike.shafts[end === 'rear' ? 'rearAxle' : 'frontAxle']!,
      inertia: axialInertia(spin, spin / 2, ACROSS),
      body: end === 'rear' ? 'rearWheel' : 'frontWheel',
    };
  });
}

/** The fork as two thin rods along the axis from the axle to the top of the neck; the bars as a rod between the grips. */
function frontParts(build: Build, bike: Bike): MassPart[] {
  const { fork, forkLength, neck, bars } = build.steering;
  const { points, steeringAxis, places } = bike.layout;
  const foot = { ...points.frontAxle!, y: fork.legSpacing / 2 };
  const head = add3(foot, scale3(steeringAxis, forkLength + neck.length));
  const legs = [rodLump(fork.mass / 2, foot, head), rodLump(fork.mass / 2, mirrored(foot), mirrored(head))];
  return [
    { id: 'steering.fork', label: 'fork with clamps and stem', ...sumLumps(legs), body: 'front' },
    {
      id: 'steering.bars',
      label: 'bars',
      ...rodLump(bars.mass, places.grip, mirrored(places.grip)),
      body: 'front',
    },
  ];
}

function enginePart(build: Build, bike: Bike): MassPart {
  const { mass, massCenter } = build.engine;
  const { base, tilt, box } = bike.engine;
  const size = scale3(box.half, 2);
  const center = massCenter
    ? enginePoint(base, tilt, { forward: massCenter.forward, left: massCenter.left ?? 0, up: massCenter.up })
    : box.frame.origin;
  return {
    id: 'engine',
    label: 'engine',
    mass,
    center,
    inertia: boxInertia(mass, size, box.frame),
    body: 'frame',
  };
}

function tubePart(tube: PlacedTube): MassPart {
  const { length, pieces } = tube.centerline;
  const perLength = length > 0 ? tube.mass / length : 0;
  const rods = pieces
    .flatMap((piece) => chords(tube, piece))
    .map(({ share, from, to }) => rodLump(perLength * share, from, to, tube.outside / 2));
  return { id: `tubes.${tube.id}`, label: `tube ${tube.id}`, ...sumLumps(rods), body: 'frame' };
}

/** A bend as short chords, each with the length of its arc. */
function chords(tube: PlacedTube, piece: CenterlinePiece): { share: number; from: Point3; to: Point3 }[] {
  if (piece.kind === 'straight') return [{ share: piece.length, from: piece.from, to: piece.to }];
  const count = Math.max(1, Math.ceil(piece.angle / (Math.PI / 18)));
  const at = (k: number): Point3 =>
    centerlineAt(tube.centerline, piece.start + (piece.length * k) / count).point;
  return Array.from({ length: count }, (_, k) => ({
    share: piece.length / count,
    from: at(k),
    to: at(k + 1),
  }));
}

function neckPart(build: Build, bike: Bike): MassPart {
  const { length, outside, wall } = build.steering.neck;
  const { neckBottom, neckTop } = bike.layout.points;
  const mass = tubeSection(outside, wall).area * length * STEEL;
  return {
    id: 'steering.neck',
    label: 'neck tube',
    ...rodLump(mass, neckBottom!, neckTop!, outside / 2),
    body: 'frame',
  };
}

function seatingParts(build: Build, bike: Bike): MassPart[] {
  const { seat, pegs } = build.seating;
  const { places } = bike.layout;
  const size = { x: seat.length, y: seat.width, z: seat.thickness ?? 0 };
  const seatMass = seat.mass ?? seat.length * seat.width * SEAT_SURFACE_MASS;
  const half = { x: 0, y: pegs.length / 2, z: 0 };
  const pegMass = (Math.PI / 4) * pegs.diameter ** 2 * pegs.length * STEEL;
  const left = rodLump(pegMass, add3(places.peg, half), add3(places.peg, scale3(half, -1)));
  return [
    {
      id: 'seating.seat',
      label: 'seat',
      mass: seatMass,
      center: { ...places.seat, z: places.seat.z - size.z / 2 },
      inertia: boxInertia(seatMass, size, bikeFrame),
      body: 'frame',
    },
    {
      id: 'seating.pegs',
      label: 'pegs',
      ...sumLumps([left, { ...left, center: mirrored(left.center) }]),
      body: 'frame',
    },
  ];
}

function bodyParts(build: Build, bike: Bike): MassPart[] {
  return Object.entries(build.bodies ?? {}).map(
    ([name, body]): MassPart => ({
      id: `bodies.${name}`,
      label: body.name,
      mass: body.mass,
      center: bike.layout.places.bodies[name]!,
      inertia: boxInertia(body.mass, { x: body.length, y: body.width, z: body.height }, bikeFrame),
      body: body.turns ? 'front' : 'frame',
    }),
  );
}

/** Disc or drum turn with the wheel; a caliper sits on the fork or the frame at its mounting radius. */
function brakeParts(build: Build, placed: PlacedBrake): MassPart[] {
  const brake = build.brakes[placed.wheel]!;
  const wheel = placed.wheel === 'front' ? ('frontWheel' as const) : ('rearWheel' as const);
  const id = `brakes.${placed.wheel}`;
  const { radius, thickness, center } = placed;
  if (brake.kind !== 'disc') {
    const mass = 2 * Math.PI * radius * DRUM_WALL * thickness * STEEL;
    const inertia = axialInertia(mass * radius ** 2, (mass * radius ** 2) / 2, ACROSS);
    return [{ id, label: `${placed.wheel} brake drum`, mass, center, inertia, body: wheel }];
  }
  const inside = (brake.disc.inside ?? DISC_INSIDE * brake.disc.diameter) / 2;
  const mass = brake.disc.mass ?? Math.PI * (radius ** 2 - inside ** 2) * thickness * STEEL;
  const disc: MassPart = {
    id,
    label: `${placed.wheel} brake disc`,
    mass,
    center,
    inertia: discInertia(mass, radius, thickness, ACROSS),
    body: wheel,
  };
  const { caliper } = brake;
  if (caliper.mass === undefined) return [disc];
  const at = { x: Math.cos(caliper.clock), y: 0, z: Math.sin(caliper.clock) };
  return [
    disc,
    {
      id: `${id}.caliper`,
      label: `${placed.wheel} caliper`,
      mass: caliper.mass,
      center: add3(center, scale3(at, caliper.lugRadius)),
      inertia: NO_INERTIA,
      body: placed.wheel === 'front' ? 'front' : 'frame',
    },
  ];
}
