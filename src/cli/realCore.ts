import {
  type AsBuilt,
  type Build,
  buildJsonSchema,
  packFiles,
  packOf,
  readBuild,
  solveAsBuilt,
} from '../core/index.ts';
import type { Core } from './core.ts';

/** The core as the verbs see it. */
export const realCore: Core<Build, AsBuilt> = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve: solveAsBuilt,
  packFiles: (solution, { date, units, ...options }) => packFiles(packOf(solution, { date, units }), options),
};
