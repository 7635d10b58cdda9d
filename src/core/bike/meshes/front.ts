import type { Build } from '../../build/index.ts';
import {
  add3,
  along3,
  boxMesh,
  buildCenterline,
  cylinderMesh,
  type Frame3,
  joinMeshes,
  type Mesh,
  type Point3,
  scale3,
  sweptTubeMesh,
} from '../../geometry/index.ts';
import type { Bike, BodyMesh } from '../bike.ts';
import { mirrored } from '../placePoint.ts';
import { axisForward } from '../stance.ts';
import { bothSides } from './solids.ts';

/** Sizes for the picture alone; nothing is made from them [m]. */
const CLAMP = { thickness: 20e-3, edge: 8e-3 };
const BAR = {
  radius: 11e-3,
  grip: 16e-3,
  gripLength: 120e-3,
  bend: 45e-3,
  rise: 30e-3,
  clampHalf: 65e-3,
  riserHalf: 26e-3,
};

/** Fork legs, clamps, stem and bars, straight ahead. */
export function frontMeshes(build: Build, bike: Bike): BodyMesh[] {
  const fork = (name: string, mesh: Mesh): BodyMesh => ({ name, part: 'steering.fork', look: 'fork', mesh });
  const bars = (name: string, look: BodyMesh['look'], mesh: Mesh): BodyMesh => ({
    name,
    part: 'steering.bars',
    look,
    mesh,
  });
  const { grip } = bike.layout.places;
  const [left, right] = bothSides(grip);
  return [
    fork('fork legs', legsMesh(build, bike)),
    fork('fork clamps', clampsMesh(build, bike)),
    bars('bars', 'fork', barMesh(build, bike)),
    bars('left grip', 'tire', gripMesh(left)),
    bars('right grip', 'tire', gripMesh(right)),
  ];
}

/** Legs along the steering axis through the axle; a telescopic leg has a thicker lower half. */
function legsMesh(build: Build, bike: Bike): Mesh {
  const { fork, forkLength, neck } = build.steering;
  const { points, steeringAxis } = bike.layout;
  const radius = fork.legDiameter / 2;
  const lower = fork.kind === 'telescopic' ? radius * 1.3 : radius;
  const top = forkLength + neck.length + stackHalf(build) + CLAMP.thickness + 5e-3;
  const foot = { ...points.frontAxle!, y: fork.legSpacing / 2 };
  return joinMeshes(
    bothSides(foot).flatMap((at) => [
      cylinderMesh(
        along3(at, steeringAxis, -1.6 * radius),
        along3(at, steeringAxis, forkLength * 0.55),
        lower,
      ),
      cylinderMesh(along3(at, steeringAxis, forkLength * 0.5), along3(at, steeringAxis, top), radius),
    ]),
  );
}

/** Two clamps from leg to leg that reach back to the steering axis, and the stem between them. */
function clampsMesh(build: Build, bike: Bike): Mesh {
  const { fork, forkOffset, headAngle, neck } = build.steering;
  const { points, steeringAxis } = bike.layout;
  const forward = axisForward(headAngle);
  const axes = (origin: Point3): Frame3 => ({ origin, x: forward, y: { x: 0, y: 1, z: 0 }, z: steeringAxis });
  const size: Point3 = {
    x: Math.abs(forkOffset) + fork.legDiameter + 2 * CLAMP.edge,
    y: fork.legSpacing + fork.legDiameter + 2 * CLAMP.edge,
    z: CLAMP.thickness,
  };
  const half = stackHalf(build) + CLAMP.thickness / 2;
  const clampAt = (from: Point3, along: number): Mesh =>
    boxMesh(axes(add3(along3(from, steeringAxis, along), scale3(forward, forkOffset / 2))), size);
  const [low, high] = [points.neckBottom!, points.neckTop!];
  const stem = cylinderMesh(
    along3(low, steeringAxis, -half),
    along3(high, steeringAxis, half),
    neck.outside / 2 - neck.wall,
  );
  return joinMeshes([clampAt(low, -half), clampAt(high, half), stem]);
}

/** Half of the bearing stack shows at each end of the neck. */
const stackHalf = (build: Build): number => (build.steering.neck.bearingStack ?? 0) / 2;

/** A bent tube from grip to grip on two risers of the upper clamp; as straight lengths where its bends have no room. */
function barMesh(build: Build, bike: Bike): Mesh {
  const { headAngle, forkOffset } = build.steering;
  const { points, steeringAxis, places } = bike.layout;
  const clampTop = add3(
    along3(points.neckTop!, steeringAxis, stackHalf(build) + CLAMP.thickness),
    scale3(axisForward(headAngle), forkOffset / 2),
  );
  const { grip } = places;
  const end = { ...grip, y: grip.y + BAR.gripLength / 2 };
  const inner = {
    ...grip,
    y: Math.max(grip.y - BAR.gripLength / 2 - BAR.bend, BAR.clampHalf * 1.2),
  };
  const low = { ...along3(clampTop, steeringAxis, BAR.rise), y: BAR.clampHalf };
  const path = [end, inner, low, mirrored(low), mirrored(inner), mirrored(end)];
  const foot = { ...clampTop, y: BAR.riserHalf };
  const risers = bothSides(foot).map((at) =>
    cylinderMesh(at, along3(at, steeringAxis, BAR.rise + BAR.radius), BAR.radius * 1.3),
  );
  const line = buildCenterline({ points: path, bendRadius: BAR.bend });
  const bar = line.ok
    ? [sweptTubeMesh(line.value, BAR.radius)]
    : path.slice(1).map((to, k) => cylinderMesh(path[k]!, to, BAR.radius));
  return joinMeshes([...bar, ...risers]);
}

const gripMesh = (grip: Point3): Mesh => {
  const half = { x: 0, y: BAR.gripLength / 2, z: 0 };
  return cylinderMesh(add3(grip, half), add3(grip, scale3(half, -1)), BAR.grip);
};
