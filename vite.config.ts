import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** What the page may load, wherever it is served from: itself and nothing of another machine. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  // The widget library sets styles of its own.
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Only in the built page: the development server needs scripts in the page. */
const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

/** The app. The command line has its own build in scripts/build.mjs. */
export default defineConfig({
  root: at('src/app'),
  // Relative, so that the folder works wherever it is served from.
  base: './',
  plugins: [react(), contentPolicy],
  worker: { format: 'es' },
  server: { host: '127.0.0.1', fs: { allow: [at('.')] } },
  build: { outDir: at('dist/app'), emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
});
