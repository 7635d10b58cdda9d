import { parentPort, workerData } from 'node:worker_threads';
import { deflateSync } from 'node:zlib';
import { packOf, readBuild, shopFiles, solveMeasured } from '../core/index.ts';
import type { ShopRequest } from './core.ts';
import type { ShopMessage } from './shopThread.ts';

/** Runs on the thread that `shopThread.ts` starts. */
const { text, variant, date, units, fonts } = workerData as ShopRequest;
const send = (message: ShopMessage): void => parentPort?.postMessage(message);

const build = readBuild(text, variant === undefined ? {} : { variant });
// What is wrong with the text is told by the thread that asked.
if (build.ok) {
  const input = packOf(solveMeasured(build.value), { date, units });
  for await (const file of shopFiles(input, { fonts, deflate: deflateSync })) send(file);
}
send('end');
