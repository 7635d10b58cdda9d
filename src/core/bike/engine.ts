import type { Build } from '../build/index.ts';
import { add3, type Point3, subtract3 } from '../geometry/index.ts';
import type { Layout, PlacedEngine } from './bike.ts';
import { enginePoint } from './placePoint.ts';

/**
 * The engine as it sits: its base moved by what the driveline moved its shaft, turned by its tilt.
 * @param shaft center of the engine shaft after the slide [m]
 * @source derived, coordinates along the tilted base
 */
export function placeEngine(build: Build, layout: Layout, shaft: Point3): PlacedEngine {
  const { engine } = build;
  const tilt = engine.tilt ?? 0;
  const base = add3(layout.points.engineBase!, subtract3(shaft, layout.shafts.engine!));
  const at = (forward: number, left: number, up = 0): Point3 =>
    enginePoint(base, tilt, { forward, left, up });
  const { length, width, height, forward = 0, left = 0 } = engine.envelope;
  const side = engine.shaft.side === 'left' ? 1 : -1;
  const faceY = base.y + side * engine.shaft.face;
  const [x, y] = [engine.mount.alongBike / 2, engine.mount.acrossBike / 2];
  return {
    base,
    tilt,
    shaft,
    side,
    faceY,
    shaftEndY: faceY + side * engine.shaft.length,
    box: {
      frame: {
        origin: at(forward, left, height / 2),
        x: { x: Math.cos(tilt), y: 0, z: Math.sin(tilt) },
        y: { x: 0, y: 1, z: 0 },
        z: { x: -Math.sin(tilt), y: 0, z: Math.cos(tilt) },
      },
      half: { x: length / 2, y: width / 2, z: height / 2 },
    },
    holes: [at(x, y), at(x, -y), at(-x, y), at(-x, -y)],
  };
}
