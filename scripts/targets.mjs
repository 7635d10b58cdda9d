const SHARED = [
  'package.json',
  'package-lock.json',
  'scripts/build.mjs',
  'scripts/targets.mjs',
  'src/core',
  'data',
];

/** What is built, from what, and the file that says of which state it was built. */
export const TARGETS = {
  cli: {
    folder: 'dist/cli',
    stamp: 'dist/cli/.stamp.json',
    inputs: [...SHARED, 'src/cli', 'demo/light.build.json'],
  },
  app: {
    folder: 'dist/app',
    stamp: 'dist/app/.stamp.json',
    inputs: [...SHARED, 'src/app', 'demo', 'vite.config.ts'],
  },
};
