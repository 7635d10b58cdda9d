import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { serveFolder } from '../../scripts/serve.mjs';

/** Debian's Chromium; a test tool's own download is not reachable everywhere. */
const CHROMIUM = '/usr/bin/chromium';
const FLAGS = [
  '--no-sandbox', // Test machines run as root, where Chromium's sandbox refuses to start.
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--enable-unsafe-swiftshader', // WebGL without a graphics card.
];

export interface ServedApp {
  readonly browser: Browser;
  /** Address of the built app, ends in `/`. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Serves `dist/app` as `npm start` does and opens a browser beside it. A check that cannot run fails. */
export async function openApp(): Promise<ServedApp> {
  if (!existsSync(CHROMIUM)) throw new Error('no Chromium: apt-get install -y chromium');
  const folder = fileURLToPath(new URL('../../dist/app', import.meta.url));
  if (!existsSync(folder)) throw new Error('the app is not built: npm run setup');
  const served = await serveFolder(folder, 0);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  return {
    browser,
    address: served.address,
    close: async () => {
      await browser.close();
      await served.close();
    },
  };
}
