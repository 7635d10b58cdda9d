import type { Build } from '../../build/index.ts';
import {
  add3,
  along3,
  boxMesh,
  cylinderMesh,
  directionToWorld,
  type Frame3,
  joinMeshes,
  type Mesh,
  type Point3,
  rotateFrameAbout,
  toLocal,
  toWorld,
} from '../../geometry/index.ts';
import type { Bike, BodyMesh } from '../bike.ts';
import { roundedBoxMesh } from './solids.ts';

const ACROSS: Point3 = { x: 0, y: 1, z: 0 };
const FINS = 5;
/** The cylinder of a small engine leans forward [rad]. */
const CYLINDER_LEAN = (25 * Math.PI) / 180;

/**
 * A small single-cylinder engine inside its envelope: base flange, crankcase, finned cylinder, flywheel cover on the
 * side away from the shaft, tank on top, and the shaft where it is. Only base, shaft and envelope are of the build.
 */
export function engineMeshes(build: Build, bike: Bike): BodyMesh[] {
  const { engine } = bike;
  const { frame, half } = engine.box;
  const shaft = toLocal(frame, engine.shaft);
  const body = (name: string, look: BodyMesh['look'], mesh: Mesh): BodyMesh => ({
    name,
    part: 'engine',
    look,
    mesh,
  });
  return [
    body('engine base and crankcase', 'engine', crankcase(frame, half, shaft)),
    body('engine cylinder', 'engine', cylinder(frame, half)),
    body('flywheel cover', 'engine', flywheelCover(frame, half, shaft, engine.side)),
    body('engine tank and filter', 'body', topParts(frame, half)),
    body('engine shaft', 'shaft', shaftMesh(build, bike)),
  ];
}

function crankcase(frame: Frame3, half: Point3, shaft: Point3): Mesh {
  const flange = { x: 1.5 * half.x, y: 1.3 * half.y, z: 0.06 * half.z };
  const [low, high] = [-half.z + flange.z, Math.min(shaft.z + 0.35 * half.z, 0.25 * half.z)];
  const size = { x: 1.15 * half.x, y: 1.1 * half.y, z: Math.max(high - low, 0.4 * half.z) };
  return joinMeshes([
    boxMesh(at(frame, { x: 0, y: 0, z: -half.z + flange.z / 2 }), flange),
    roundedBoxMesh(
      at(frame, { x: 0, y: 0, z: low + size.z / 2 }),
      { x: size.x / 2, y: size.y / 2, z: size.z / 2 },
      0.25,
    ),
  ]);
}

/** Block and fins, leaning forward, over the front half of the envelope. */
function cylinder(frame: Frame3, half: Point3): Mesh {
  const center = { x: 0.5 * half.x, y: 0, z: 0.22 * half.z };
  const leaning = rotateFrameAbout(
    at(frame, center),
    toWorld(frame, center),
    directionToWorld(frame, ACROSS),
    CYLINDER_LEAN,
  );
  const size = { x: 0.58 * half.x, y: 0.7 * half.y, z: 0.8 * half.z };
  const fins = Array.from({ length: FINS }, (_, k) => {
    const z = size.z * (k / (FINS - 1) - 0.5) * 0.8;
    return boxMesh(at(leaning, { x: 0, y: 0, z }), { x: size.x * 1.18, y: size.y * 1.18, z: size.z * 0.06 });
  });
  return joinMeshes([boxMesh(leaning, size), ...fins]);
}

function flywheelCover(frame: Frame3, half: Point3, shaft: Point3, side: 1 | -1): Mesh {
  const radius = Math.min(0.72 * half.z, 0.72 * half.x, half.z + shaft.z);
  const to = { x: shaft.x, y: -side * half.y, z: shaft.z };
  const from = { ...to, y: -side * 0.5 * half.y };
  const rim = { ...to, y: -side * 0.86 * half.y };
  return joinMeshes([
    cylinderMesh(toWorld(frame, from), toWorld(frame, rim), radius, 36),
    cylinderMesh(toWorld(frame, rim), toWorld(frame, to), radius * 0.78, 36),
  ]);
}

/** Fuel tank over the rear half, air filter beside the cylinder. */
function topParts(frame: Frame3, half: Point3): Mesh {
  return joinMeshes([
    roundedBoxMesh(at(frame, { x: -0.38 * half.x, y: 0, z: 0.66 * half.z }), {
      x: 0.6 * half.x,
      y: 0.8 * half.y,
      z: 0.33 * half.z,
    }),
    roundedBoxMesh(at(frame, { x: 0.62 * half.x, y: 0, z: 0.74 * half.z }), {
      x: 0.34 * half.x,
      y: 0.5 * half.y,
      z: 0.22 * half.z,
    }),
  ]);
}

function shaftMesh(build: Build, bike: Bike): Mesh {
  const { shaft, side, faceY, shaftEndY, box } = bike.engine;
  const radius = build.engine.shaft.diameter / 2;
  const inside = { ...shaft, y: box.frame.origin.y };
  const boss = along3({ ...shaft, y: faceY }, ACROSS, -side * 2e-3);
  return joinMeshes([
    cylinderMesh(inside, { ...shaft, y: shaftEndY }, radius),
    cylinderMesh(inside, boss, radius * 2.2),
  ]);
}

const at = (frame: Frame3, local: Point3): Frame3 => ({
  ...frame,
  origin: add3(frame.origin, directionToWorld(frame, local)),
});
