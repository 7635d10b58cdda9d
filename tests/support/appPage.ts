import type { Locator, Page } from 'playwright-core';
import type { ServedApp } from './browser.ts';

export const WIDE = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** Longest wait for one thing [ms]: a machine that does other work as well may take many seconds to draw in 3D. */
const PATIENCE = 60_000;

export interface AppPage {
  readonly page: Page;
  /** Errors of scripts and of the content policy so far. */
  readonly errors: readonly string[];
  readonly close: () => Promise<void>;
}

/** A visit by someone who was never here, to one view, with the bike solved. */
export async function visit(app: ServedApp, view = 'side', viewport = WIDE): Promise<AppPage> {
  const context = await app.browser.newContext({ viewport, acceptDownloads: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(`${app.address}#/${view}`);
  await solved(page);
  return { page, errors, close: () => context.close() };
}

/** Waits until the bike is solved and nothing is under way. */
export async function solved(page: Page): Promise<void> {
  await page.locator('.verdict[aria-busy="false"] .verdict-counts').waitFor();
}

/** Waits until the file is read and found wrong. */
export async function refused(page: Page): Promise<void> {
  await page.locator('.verdict[aria-busy="false"] .verdict-errors').waitFor();
}

/** Goes to a view by its tab. */
export async function showView(page: Page, tab: string): Promise<void> {
  await page.getByRole('tab', { name: tab, exact: true }).click();
}

/** The entry of a field by its path in the build file; its sections must be open. */
export const entryOf = (page: Page, path: string): Locator => page.locator(`[id="field:${path}"]`);

/** Share of pixels that differ from the corner's color by more than `by` in any channel, 0 to 1. */
export async function drawnShare(page: Page, picture: Locator, by = 40): Promise<number> {
  const shot = (await picture.screenshot()).toString('base64');
  return page.evaluate(
    async ([data, least]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width, image.height];
      const context = canvas.getContext('2d') as CanvasRenderingContext2D;
      context.drawImage(image, 0, 0);
      const { data: pixels } = context.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let k = 0; k < pixels.length; k += 4)
        if ([0, 1, 2].some((d) => Math.abs((pixels[k + d] ?? 0) - (pixels[d] ?? 0)) > least)) count += 1;
      return count / (pixels.length / 4);
    },
    [shot, by] as const,
  );
}
