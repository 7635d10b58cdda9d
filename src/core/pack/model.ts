import { type BodyMesh, bikeMeshes } from '../bike/index.ts';
import { glbOfMeshes, type SurfaceRole } from '../drawings/index.ts';
import { drivePaths } from '../driveline/index.ts';
import type { PackInput } from './packInput.ts';

type ModelInput = Pick<PackInput, 'build' | 'bike' | 'driveline' | 'patterns'>;

const SURFACE: Readonly<Record<BodyMesh['look'], SurfaceRole>> = {
  frame: 'frame',
  wheel: 'rim',
  tire: 'tire',
  engine: 'engine',
  chain: 'drive',
  plate: 'plate',
  seat: 'seat',
  fork: 'fork',
  rider: 'rider',
  body: 'frame',
  shaft: 'shaft',
  disc: 'brake',
};

/** Every solid of the bike with the surface it is made of. */
export function modelParts(input: ModelInput) {
  const { build, bike, driveline, patterns } = input;
  return bikeMeshes(build, bike, drivePaths(driveline, bike), patterns).map(({ name, part, look, mesh }) => ({
    name,
    part,
    mesh,
    color: SURFACE[look],
  }));
}

export const modelGlb = (input: ModelInput): Promise<Uint8Array> =>
  glbOfMeshes(modelParts(input), input.build.about.name);
