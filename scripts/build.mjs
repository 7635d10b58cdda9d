/** Builds `dist/cli` (one bundle, late parts split off) and `dist/app`: `node scripts/build.mjs [cli] [app]`. */
import { cpSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { fingerprint, ROOT, writeStamp } from './fresh.mjs';
import { TARGETS } from './targets.mjs';

const FONTS = ['DejaVuSansCondensed.ttf', 'DejaVuSansCondensed-Bold.ttf'];

const BUILDERS = {
  async cli(outDir) {
    await build({
      configFile: false,
      root: ROOT,
      logLevel: 'warn',
      build: {
        ssr: true,
        outDir,
        target: 'node20',
        emptyOutDir: true,
        // Half the bytes to read at every start; names are kept for stack traces.
        minify: 'oxc',
        rolldownOptions: {
          input: ['src/cli/main.ts', 'src/cli/shopWorker.ts'],
          output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
        },
      },
      // Libraries go into the bundle: one file loads faster than a hundred.
      ssr: { noExternal: true, target: 'node' },
    });
    const fonts = join(outDir, 'fonts');
    mkdirSync(fonts, { recursive: true });
    for (const font of FONTS)
      cpSync(join(ROOT, 'node_modules/dejavu-fonts-ttf/ttf', font), join(fonts, font));
  },
  async app(outDir) {
    await build({
      configFile: join(ROOT, 'vite.config.ts'),
      logLevel: 'warn',
      build: { outDir, emptyOutDir: true },
    });
  },
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in BUILDERS));
if (unknown.length > 0)
  throw new Error(`no such target: ${unknown.join(', ')}; there are ${Object.keys(BUILDERS).join(', ')}`);
for (const name of asked.length > 0 ? asked : Object.keys(BUILDERS)) await buildTarget(name);

/** Builds beside and moves in: a process that runs the old build or a build that fails leaves it whole. */
async function buildTarget(name) {
  const { folder, stamp, inputs } = TARGETS[name];
  const print = fingerprint(inputs);
  const fresh = join(ROOT, `${folder}.${process.pid}.new`);
  try {
    await BUILDERS[name](fresh);
    rmSync(join(ROOT, folder), { recursive: true, force: true });
    renameSync(fresh, join(ROOT, folder));
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
  writeStamp(join(ROOT, stamp), inputs, print);
}
