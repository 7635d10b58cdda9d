import { buildJsonSchema, packFiles, packOf, readBuild, type Solution, solve } from '../core/index.ts';
import type { Core } from './core.ts';

type Build = Parameters<typeof solve>[0];

/** The core as the verbs see it. */
export const realCore: Core<Build, Solution> = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve,
  packFiles: (solution, { date, units, ...options }) => packFiles(packOf(solution, { date, units }), options),
};
