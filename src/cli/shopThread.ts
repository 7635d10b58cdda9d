import { on } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { ShopFiles, ShopRequest } from './core.ts';
import type { PackFile } from './writePack.ts';

/** What the thread sends: each file as it is drawn, and a word after the last. */
export type ShopMessage = PackFile | 'end';

/**
 * Draws the files of the shop on a thread of its own, beside what this one does meanwhile. The thread starts from the
 * text of the build and places the bike again: that costs half a second of a processor that had nothing to do, and
 * only text and bytes pass between the two.
 */
export function startShopThread(request: ShopRequest): ShopFiles {
  // The build puts the thread beside the program.
  const thread = new Worker(new URL('./shopWorker.mjs', import.meta.url), { workerData: request });
  return { files: filesFrom(thread), stop: async () => void (await thread.terminate()) };
}

/** Files as a thread sends them; kept from now on, whenever they are asked for. A fault of the thread is thrown here. */
export function filesFrom(thread: Worker): AsyncIterable<PackFile> {
  return untilEnd(on(thread, 'message', { close: ['exit'] }));
}

async function* untilEnd(messages: AsyncIterable<unknown[]>): AsyncGenerator<PackFile> {
  for await (const [message] of messages as AsyncIterable<[ShopMessage]>) {
    if (message === 'end') return;
    yield message;
  }
  throw new Error('the thread that draws the files of the shop ended before its last file');
}
