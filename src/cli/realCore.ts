import { buildJsonSchema, type Proof, packFiles, packOf, prove, readBuild, solve } from '../core/index.ts';
import type { Core } from './core.ts';

type Build = Parameters<typeof solve>[0];

/** The core as the verbs see it. */
export const realCore: Core<Build, Proof> = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve: (build) => prove(solve(build)),
  packFiles: (solution, { date, units, ...options }) => packFiles(packOf(solution, { date, units }), options),
};
