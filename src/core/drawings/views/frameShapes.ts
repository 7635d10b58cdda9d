import type { PlacedTube } from '../../bike/index.ts';
import { dot3, type Point3, toWorld } from '../../geometry/index.ts';
import { type FlatPattern, openingLoop } from '../../plates/index.ts';
import { band, convexHull, pierced, projected, tubePath } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';

/** A plate turned further than this from facing the eye is drawn as the edge it is. */
const FACING = 0.35;

const TUBE = { pen: 'outline', fill: 'paper' } as const;

/** Tubes and neck of the frame. */
export function frameLayers(p: Projector, { bike, build }: SceneInput): readonly Layer[] {
  const { neckBottom, neckTop } = bike.layout.points as { neckBottom: Point3; neckTop: Point3 };
  const neck = band(p, [neckBottom, neckTop], build.steering.neck.outside / 2, TUBE);
  return [
    { near: p.near(neckBottom) + 1e-3, items: named('steering.neck', neck) },
    ...bike.tubes.map((tube) => tubeLayer(p, tube)),
  ];
}

function tubeLayer(p: Projector, tube: PlacedTube): Layer {
  const path = tubePath(tube.centerline);
  const near = path.reduce((sum, q) => sum + p.near(q), 0) / path.length;
  return {
    near,
    items: named(`frame.tubes.${tube.entry}`, band(p, path, tube.outside / 2, TUBE)),
  };
}

/** Plates in their places, with holes where they face the eye. */
export const plateLayers = (p: Projector, { patterns }: SceneInput): readonly Layer[] =>
  patterns.flatMap((pattern) =>
    pattern.placed.map(({ frame }): Layer => {
      const facing = Math.abs(dot3(frame.z, p.toEye));
      const middle = toWorld(frame, { ...pattern.centroid, z: pattern.thickness / 2 });
      const items = facing > FACING ? facePlate(p, pattern, frame) : edgePlate(p, pattern, frame);
      return { near: p.near(middle), items: named(`plates.${pattern.id}`, items) };
    }),
  );

type Frame = FlatPattern['placed'][number]['frame'];

function facePlate(p: Projector, pattern: FlatPattern, frame: Frame) {
  const z = dot3(frame.z, p.toEye) > 0 ? pattern.thickness : 0;
  const holes = [...pattern.windows, ...pattern.openings.map((one) => openingLoop(one))].map((loop) =>
    projected(p, frame, loop, z),
  );
  return pierced(p, projected(p, frame, pattern.outline, z), holes, {
    edge: 'thin',
    holes: 'thin',
    fill: 'medium',
  });
}

function edgePlate(p: Projector, pattern: FlatPattern, frame: Frame) {
  const corners = [0, pattern.thickness].flatMap((z) => projected(p, frame, pattern.outline, z));
  return pierced(p, convexHull(corners), [], { edge: 'thin', holes: 'thin', fill: 'medium' });
}
