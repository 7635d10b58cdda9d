import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { serveFolder } from '../../scripts/serve.mjs';

let room: string;
let served: Awaited<ReturnType<typeof serveFolder>>;
beforeEach(async () => {
  room = mkdtempSync(join(tmpdir(), 'jigwright-serve-'));
  mkdirSync(join(room, 'app', 'sub'), { recursive: true });
  writeFileSync(join(room, 'app', 'index.html'), '<p>here</p>');
  writeFileSync(join(room, 'app', '.stamp.json'), '{}');
  writeFileSync(join(room, 'secret.txt'), 'secret');
  served = await serveFolder(join(room, 'app'), 0);
});
afterEach(async () => {
  await served.close();
  rmSync(room, { recursive: true, force: true });
});

/** The path as written: fetch would tidy away the dots. */
function status(path: string, method = 'GET'): Promise<number> {
  const { hostname, port } = new URL(served.address);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, path, method }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    sent.on('error', reject).end();
  });
}

test('serves the page on the loopback address, allowed to load only from there', async () => {
  expect(new URL(served.address).hostname).toBe('127.0.0.1');
  const answer = await fetch(served.address);
  expect(await answer.text()).toBe('<p>here</p>');
  expect(answer.headers.get('content-type')).toContain('text/html');
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
});

test.each([
  ['/../secret.txt'],
  ['/%2e%2e/secret.txt'],
  ['/..%2fsecret.txt'],
  ['/sub/../../secret.txt'],
  ['/sub'],
  ['/none'],
  ['/.stamp.json'],
  ['/%00'],
  ['/%E0%A4%A'],
])('nothing outside the folder, and no hidden file: %s', async (path) => {
  expect(await status(path)).toBe(404);
});

test('only reading is possible', async () => {
  expect(await status('/', 'POST')).toBe(405);
  expect(await status('/', 'HEAD')).toBe(200);
});

test('a port that is taken gives the next one', async () => {
  const port = Number(new URL(served.address).port);
  const second = await serveFolder(join(room, 'app'), port);
  expect(Number(new URL(second.address).port)).toBeGreaterThan(port);
  await second.close();
});
