import { bikeMeshes } from '../../core/bike/index.ts';
import { drivePaths } from '../../core/driveline/index.ts';
import type { Solution } from '../../core/index.ts';
import { shade } from '../three/shade.ts';
import type { SolidPart } from './messages.ts';

/** Everything of a solution as lit triangles. */
export const screenSolids = ({ build, bike, driveline, patterns }: Solution): readonly SolidPart[] =>
  bikeMeshes(build, bike, drivePaths(driveline, bike), patterns).map(({ name, part, look, mesh }) => ({
    name,
    part,
    look,
    ...shade(mesh),
  }));

/** Memory that can be handed over instead of copied. */
export const buffersOf = (parts: readonly SolidPart[]): ArrayBufferLike[] =>
  parts.flatMap(({ positions, normals, edges }) => [positions.buffer, normals.buffer, edges.buffer]);
