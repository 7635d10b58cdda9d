import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The app. The command line has its own build in scripts/build.mjs. */
export default defineConfig({
  root: at('src/app'),
  // Relative, so that the folder works wherever it is served from.
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  server: { host: '127.0.0.1', fs: { allow: [at('.')] } },
  build: { outDir: at('dist/app'), emptyOutDir: true, target: 'es2022' },
});
