import { buildJsonSchema, readBuild } from '../core/build/index.ts';
import type { Core } from './core.ts';

const missing = (what: string) => (): never => {
  throw new Error(`${what} is not part of this state of the program yet`);
};

export const realCore: Core = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve: missing('solving a build'),
  packFiles: missing('drawing a pack'),
};
