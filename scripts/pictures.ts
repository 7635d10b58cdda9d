/**
 * Draws the pictures of the README, docs/img: the lateral ladder of a demo build, and the app as it is built.
 * Wants poppler and Chromium, as `npm test` installs them. Run: npx tsx scripts/pictures.ts
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pdfOfSheets } from '../src/core/drawings/index.ts';
import { bookSheets, packOf, prove, readBuild, solve } from '../src/core/index.ts';
import { visit } from '../tests/support/appPage.ts';
import { openApp } from '../tests/support/browser.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const FOLDER = join(ROOT, 'docs/img');
/** The same on every day, so that a picture changes only with what it shows. */
const DATE = '2026-01-01';
const DOTS_PER_INCH = 110;

mkdirSync(FOLDER, { recursive: true });
await ladderPicture();
await appPicture();

async function ladderPicture(): Promise<void> {
  const build = readBuild(readFileSync(join(ROOT, 'demo/heavy.build.json'), 'utf8'));
  if (!build.ok) throw new Error('the demo does not read');
  const sheet = bookSheets(packOf(prove(solve(build.value)), { date: DATE })).find(({ id }) =>
    id.includes('lateral-ladder'),
  );
  if (!sheet) throw new Error('the book has no ladder');
  const font = (name: string) => readFileSync(join(ROOT, `node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`));
  const fonts = { regular: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') };
  const pdf = await pdfOfSheets([sheet], { title: sheet.title, date: DATE }, fonts);
  const room = mkdtempSync(join(tmpdir(), 'jigwright-pictures-'));
  try {
    const page = join(room, 'page.pdf');
    writeFileSync(page, pdf);
    const args = ['-png', '-singlefile', '-r', String(DOTS_PER_INCH), page, join(FOLDER, 'ladder')];
    const { status, stderr } = spawnSync('pdftoppm', args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`pdftoppm: ${stderr}`);
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

async function appPicture(): Promise<void> {
  const app = await openApp();
  try {
    const { page, close } = await visit(app, 'side', { width: 1280, height: 800 });
    await page.locator('svg').first().waitFor();
    await page.screenshot({ path: join(FOLDER, 'app.png') });
    await close();
  } finally {
    await app.close();
  }
}
