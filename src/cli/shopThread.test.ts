import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { filesFrom } from './shopThread.ts';

/** A thread that runs a few lines, with `send` for what it sends. */
const threadOf = (lines: string): Worker =>
  new Worker(
    `const send = (message) => require('node:worker_threads').parentPort.postMessage(message);
     const file = (path) => ({ path, bytes: new Uint8Array([1, 2]) });
     ${lines}`,
    { eval: true },
  );

async function pathsFrom(thread: Worker): Promise<string[]> {
  const files = filesFrom(thread);
  // Asked for only after the thread is gone, as by a program that was busy meanwhile.
  await new Promise((resolve) => thread.once('exit', resolve));
  const paths: string[] = [];
  for await (const { path, bytes } of files) {
    expect(bytes).toEqual(new Uint8Array([1, 2]));
    paths.push(path);
  }
  return paths;
}

test('files come in the order in which they were sent', async () => {
  const thread = threadOf(`send(file('a')); send(file('b')); send('end');`);
  expect(await pathsFrom(thread)).toEqual(['a', 'b']);
});

test.each([
  ['that stops without a word', `send(file('a')); process.exit(0);`, 'ended before its last file'],
  ['that fails', `send(file('a')); throw new RangeError('no circle');`, 'no circle'],
])('a thread %s is a fault, however many files it sent', async (_what, lines, says) => {
  await expect(pathsFrom(threadOf(lines))).rejects.toThrow(says);
});
