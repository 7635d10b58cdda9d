import { axisForward, mirrored } from '../../bike/index.ts';
import {
  add3,
  along3,
  buildCenterline,
  type Point,
  type Point3,
  scale3,
  toWorld,
} from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { viewPolygon } from '../view.ts';
import { band, circlePoints, convexHull, tubePath } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';

/** Sizes that the build does not give, for the picture alone [m]. */
const CLAMP = { thickness: 20e-3, edge: 8e-3 };
const BAR = { radius: 11e-3, bend: 45e-3, rise: 30e-3, clampHalf: 65e-3, grip: 16e-3, gripLength: 120e-3 };
/** Lower half of a telescopic leg over its upper half. */
const SLIDER = 1.3;

const METAL = { pen: 'thin', fill: 'light' } as const;

/** Fork legs, clamps and bearing cups. */
export function forkLayers(p: Projector, { build, bike }: SceneInput): readonly Layer[] {
  const { fork, forkLength, neck } = build.steering;
  const { points, steeringAxis } = bike.layout;
  const stack = (neck.bearingStack ?? 0) / 2;
  const radius = fork.legDiameter / 2;
  const top = forkLength + neck.length + stack + CLAMP.thickness + 5e-3;
  const foot: Point3 = { ...points.frontAxle!, y: fork.legSpacing / 2 };
  const legs = [foot, mirrored(foot)].map((at): Layer => {
    const bar = (from: number, to: number, r: number): readonly SheetItem[] =>
      band(p, [along3(at, steeringAxis, from), along3(at, steeringAxis, to)], r, METAL);
    const lower = fork.kind === 'telescopic' ? radius * SLIDER : radius;
    const items = [
      ...bar(forkLength * 0.5, top, radius),
      ...bar(-1.6 * radius, forkLength * (fork.kind === 'telescopic' ? 0.56 : 0.5), lower),
    ];
    return { near: p.near(at), items: named('steering.fork', items) };
  });
  const cups = [
    [points.neckBottom!, -stack],
    [points.neckTop!, stack],
  ] as const;
  const cupItems = cups.flatMap(([end, reach]) =>
    band(p, [end, along3(end, steeringAxis, reach)], neck.outside / 2 + 2e-3, METAL),
  );
  return [
    ...legs,
    { near: p.near(points.neckBottom!), items: named('steering.fork', cupItems) },
    ...clampLayers(p, { build, bike }, stack),
  ];
}

/** Two clamps from leg to leg that reach back to the steering axis. */
function clampLayers(
  p: Projector,
  { build, bike }: Pick<SceneInput, 'build' | 'bike'>,
  stack: number,
): readonly Layer[] {
  const { fork, forkOffset, headAngle, neck } = build.steering;
  const { points, steeringAxis } = bike.layout;
  const forward = axisForward(headAngle);
  const eye = fork.legDiameter / 2 + CLAMP.edge;
  const bosses = [
    { x: forkOffset, y: fork.legSpacing / 2, radius: eye },
    { x: forkOffset, y: -fork.legSpacing / 2, radius: eye },
    { x: 0, y: 0, radius: neck.outside / 2 },
  ];
  const reach = stack + CLAMP.thickness / 2;
  return (
    [
      [points.neckBottom!, -reach],
      [points.neckTop!, reach],
    ] as const
  ).map(([end, along]): Layer => {
    const origin = along3(end, steeringAxis, along);
    const frame = { origin, x: forward, y: { x: 0, y: 1, z: 0 }, z: steeringAxis };
    const corners = bosses.flatMap((boss) =>
      circlePoints(boss, boss.radius, 32).flatMap((q) =>
        [-1, 1].map((z): Point => p.flat(toWorld(frame, { ...q, z: (z * CLAMP.thickness) / 2 }))),
      ),
    );
    return {
      near: p.near(add3(origin, scale3(p.toEye, p.sight === 'top' ? 0 : fork.legSpacing / 2 + eye))),
      items: named('steering.fork', [viewPolygon(p.view, convexHull(corners), 'thin', 'medium')]),
    };
  });
}

/** A bent tube from grip to grip over the upper clamp, and the two grips. */
export function barLayers(p: Projector, { build, bike }: SceneInput): readonly Layer[] {
  const { headAngle, forkOffset, neck } = build.steering;
  const { points, steeringAxis, places } = bike.layout;
  const clampTop = add3(
    along3(points.neckTop!, steeringAxis, (neck.bearingStack ?? 0) / 2 + CLAMP.thickness),
    scale3(axisForward(headAngle), forkOffset / 2),
  );
  const { grip } = places;
  const end = { ...grip, y: grip.y + BAR.gripLength / 2 };
  const inner = { ...grip, y: Math.max(grip.y - BAR.gripLength / 2 - BAR.bend, BAR.clampHalf * 1.2) };
  const low = { ...along3(clampTop, steeringAxis, BAR.rise), y: BAR.clampHalf };
  const path = [end, inner, low, mirrored(low), mirrored(inner), mirrored(end)];
  const line = buildCenterline({ points: path, bendRadius: BAR.bend });
  const riser = band(p, [clampTop, along3(clampTop, steeringAxis, BAR.rise)], BAR.radius * 1.4, METAL);
  const bar = band(p, line.ok ? tubePath(line.value) : path, BAR.radius, METAL);
  const grips = [grip, mirrored(grip)].map((at): Layer => {
    const across = { x: 0, y: BAR.gripLength / 2, z: 0 };
    const items = band(p, [add3(at, across), add3(at, scale3(across, -1))], BAR.grip, {
      pen: 'thin',
      fill: 'dark',
    });
    return { near: p.near(at) + BAR.grip, items: named('steering.bars', items) };
  });
  return [{ near: p.near(clampTop), items: named('steering.bars', [...riser, ...bar]) }, ...grips];
}
