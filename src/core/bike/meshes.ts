import type { Build } from '../build/index.ts';
import {
  circleLoop,
  cylinderMesh,
  extrudedMesh,
  type Frame3,
  type Loop,
  type Point,
  slotLoop,
  sweptTubeMesh,
} from '../geometry/index.ts';
import type { Bike, BodyMesh } from './bike.ts';
import { type ChainPath, driveMeshes } from './meshes/drive.ts';
import { engineMeshes } from './meshes/engine.ts';
import { frontMeshes } from './meshes/front.ts';
import { riderMeshes } from './meshes/rider.ts';
import { fittingMeshes } from './meshes/seating.ts';
import { wheelMeshes } from './meshes/wheels.ts';

/** What of a flat pattern makes its solid; see `FlatPattern`. */
export interface PlateShape {
  readonly id: string;
  readonly thickness: number;
  readonly outline: Loop;
  readonly windows: readonly Loop[];
  readonly openings: readonly {
    readonly center: Point;
    readonly diameter: number;
    readonly travel?: number;
    readonly direction?: number;
  }[];
  readonly placed: readonly { readonly hand: 'left' | 'right' | 'center'; readonly frame: Frame3 }[];
}

/** Chord of arcs on plates [m]. */
const TOLERANCE = 0.2e-3;

/**
 * Solids of the whole bike at its design stance, for the 3D view and the glTF file. Frame, shafts, stacks, plates and
 * drives have the sizes of the build; engine, bars and rider are shaped for the eye within their own sizes.
 * @source derived, coordinates of the placed bike
 */
export const bikeMeshes = (
  build: Build,
  bike: Bike,
  drives: readonly ChainPath[],
  plates: readonly PlateShape[],
): BodyMesh[] => [
  ...frameMeshes(build, bike),
  ...wheelMeshes(build, bike),
  ...frontMeshes(build, bike),
  ...engineMeshes(build, bike),
  ...driveMeshes(build, bike, drives),
  ...plates.flatMap(plateMeshes),
  ...fittingMeshes(build, bike),
  ...riderMeshes(build, bike),
];

function frameMeshes(build: Build, bike: Bike): BodyMesh[] {
  const { neckBottom, neckTop } = bike.layout.points;
  const neck = cylinderMesh(neckBottom!, neckTop!, build.steering.neck.outside / 2, 32);
  return [
    { name: 'neck', part: 'steering.neck', look: 'frame', mesh: neck },
    ...bike.tubes.map(
      (tube): BodyMesh => ({
        name: tube.id,
        part: `frame.tubes.${tube.entry}`,
        look: 'frame',
        mesh: sweptTubeMesh(tube.centerline, tube.outside / 2),
      }),
    ),
  ];
}

/** A plate fills its pattern's frame from z = 0 to its thickness. */
function plateMeshes(plate: PlateShape): BodyMesh[] {
  return plate.placed.map(
    ({ hand, frame }): BodyMesh => ({
      name: hand === 'center' ? plate.id : `${plate.id} ${hand}`,
      part: `plates.${plate.id}`,
      look: 'plate',
      mesh: extrudedMesh({
        frame,
        outline: plate.outline,
        holes: [...plate.windows, ...plate.openings.map(openingLoop)],
        from: 0,
        to: plate.thickness,
        chordTolerance: TOLERANCE,
      }),
    }),
  );
}

function openingLoop({ center, diameter, travel = 0, direction = 0 }: PlateShape['openings'][number]): Loop {
  if (!(travel > 0)) return circleLoop(center, diameter / 2);
  const [x, y] = [(Math.cos(direction) * travel) / 2, (Math.sin(direction) * travel) / 2];
  return slotLoop({ x: center.x - x, y: center.y - y }, { x: center.x + x, y: center.y + y }, diameter);
}
