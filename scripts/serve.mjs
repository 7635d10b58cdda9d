import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.pdf': 'application/pdf',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.glb': 'model/gltf-binary',
};

/** The page may load only from here: no builder's file leaves the machine, whatever a library would like. */
const POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' blob: data:",
  "font-src 'self' data:",
  "connect-src 'self' blob: data:",
  "worker-src 'self' blob:",
  "frame-src 'self' blob:",
  "object-src 'self' blob:",
].join('; ');

/**
 * Serves the files of `folder` on the loopback address alone. Takes `port`, or the next free one after it
 * (0: any). Resolves to the address and a function that ends it.
 */
export async function serveFolder(folder, port = 4173) {
  const server = createServer((request, response) => answer(folder, request, response));
  const taken = await listen(server, port);
  return {
    address: `http://127.0.0.1:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function listen(server, first) {
  const MOST_TRIES = 50;
  for (let port = first; ; port++) {
    try {
      return await new Promise((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, '127.0.0.1', () => {
          server.off('error', reject);
          resolve(server.address().port);
        });
      });
    } catch (error) {
      if (error.code !== 'EADDRINUSE' || port >= first + MOST_TRIES) throw error;
    }
  }
}

function answer(folder, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const file = fileOf(folder, request.url ?? '/');
  const stat = file && statSync(file, { throwIfNoEntry: false });
  if (!stat?.isFile()) return refuse(response, 404);
  response.writeHead(200, {
    'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
    'Content-Length': stat.size,
    'Content-Security-Policy': POLICY,
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

function fileOf(folder, url) {
  try {
    const path = decodeURIComponent(new URL(url, 'http://local').pathname);
    const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    return file.startsWith(folder + sep) && !path.includes('\0') && !file.includes(`${sep}.`)
      ? file
      : undefined;
  } catch {
    return undefined; // A path that is no path.
  }
}

function refuse(response, status) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(status === 404 ? 'not found\n' : 'only GET and HEAD\n');
}
