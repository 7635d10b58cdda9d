import { buildJsonSchema, readBuild, solve } from '../core/index.ts';
import type { Core } from './core.ts';

type Build = Parameters<typeof solve>[0];

/** The core as the verbs see it. */
export const realCore: Core<Build> = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve,
  packFiles: () => {
    throw new Error('drawing a pack is not part of this state of the program yet');
  },
};
