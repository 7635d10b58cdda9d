import { deflateSync } from 'node:zlib';
import {
  type AsBuilt,
  type Build,
  bookFiles,
  buildJsonSchema,
  packOf,
  readBuild,
  solveAsBuilt,
} from '../core/index.ts';
import type { Core } from './core.ts';
import { startShopThread } from './shopThread.ts';

/** The core as the verbs see it. */
export const realCore: Core<Build, AsBuilt> = {
  readBuild: (text, options) => readBuild(text, options),
  buildJsonSchema,
  solve: solveAsBuilt,
  bookFiles: (solution, { date, units, ...options }) =>
    bookFiles(packOf(solution, { date, units }), { ...options, deflate: deflateSync }),
  startShopFiles: startShopThread,
};
