import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { entryOf, PHONE, refused, visit, WIDE } from '../support/appPage.ts';
import { openApp, type ServedApp } from '../support/browser.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const VIEWS = ['numbers', 'side', 'solid', 'ladder', 'sheets', 'figures', 'findings', 'changes'];
/** Smallest target for a gloved finger in both directions [px]. @source WCAG 2.2, 2.5.5 target size, enhanced */
const TARGET = 44;

let app: ServedApp;
beforeAll(async () => {
  app = await openApp();
});
afterAll(() => app.close());

async function show(page: Page, view: string): Promise<void> {
  await page.evaluate((name) => {
    window.location.hash = `/${name}`;
  }, view);
  await page.locator('.tab-panel').waitFor();
  if (view === 'solid') await page.locator('canvas[data-ready]').waitFor();
  if (view === 'sheets') await page.locator('.drawing.is-paper svg').waitFor();
}

async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      readonly axe: {
        run(): Promise<{
          violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[];
        }>;
      };
    };
    const { violations: found } = await checker.run();
    return found.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id} at ${node.target}: ${node.failureSummary}`),
    );
  });
}

test.each([
  ['wide', WIDE],
  ['phone', PHONE],
] as const)(
  'no view has an accessibility violation (%s)',
  async (_, viewport) => {
    const { page, close } = await visit(app, 'side', viewport);
    for (const view of viewport === PHONE ? VIEWS : VIEWS.slice(1)) {
      await show(page, view);
      expect(await violations(page), view).toEqual([]);
    }
    await close();
  },
  300_000,
);

test('axe sees a violation where there is one', async () => {
  const { page, close } = await visit(app);
  await page.evaluate(() => document.body.append(document.createElement('button')));
  expect((await violations(page)).join()).toContain('button-name');
  await close();
});

test('a field in error has no violation either', async () => {
  const { page, close } = await visit(app, 'numbers', PHONE);
  await entryOf(page, 'steering.wheelbase').fill('x');
  await refused(page);
  expect(await violations(page)).toEqual([]);
  await close();
});

test('on a phone nothing is wider than the screen and every control is large enough for a glove', async () => {
  const { page, close } = await visit(app, 'side', PHONE);
  for (const view of VIEWS) {
    await show(page, view);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width, view).toBeLessThanOrEqual(PHONE.width);
    const scrollers = await page
      .locator('.scrolls, .fields')
      .evaluateAll((items) => items.filter((item) => item.scrollWidth > item.clientWidth).length);
    expect(scrollers, `${view}: sideways scrolling`).toBe(0);
    const small = await page.locator('button, select, summary, [role=tab], .choice > *').evaluateAll(
      (items, least) =>
        items
          .map((item) => ({ text: item.textContent, box: item.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < least - 0.5 || box.height < least - 0.5))
          .map(({ text, box }) => `${text} ${box.width} x ${box.height}`),
      TARGET,
    );
    expect(small, view).toEqual([]);
  }
  await close();
});

test('the drawing is enlarged, moved and shown whole by keys', async () => {
  const { page, close } = await visit(app);
  const svg = page.locator('.drawing svg');
  await svg.waitFor();
  const box = () => svg.getAttribute('viewBox');
  const whole = await box();
  await page.locator('.drawing').focus();
  await page.keyboard.press('+');
  const enlarged = await box();
  expect(Number(enlarged?.split(' ')[2])).toBeLessThan(Number(whole?.split(' ')[2]));
  await page.keyboard.press('ArrowRight');
  expect(Number((await box())?.split(' ')[0])).toBeGreaterThan(Number(enlarged?.split(' ')[0]));
  await page.keyboard.press('0');
  expect(await box()).toBe(whole);
  await close();
});

test('tabs go by arrow keys, and the address follows', async () => {
  const { page, close } = await visit(app);
  await page.getByRole('tab', { name: 'Side view' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => page.evaluate(() => window.location.hash)).toBe('#/solid');
  await page.goBack();
  await expect.poll(() => page.getByRole('tab', { selected: true }).textContent()).toBe('Side view');
  await close();
});

test('the page runs no code that is made from text', async () => {
  const { page, close } = await visit(app);
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toContain("script-src 'self';");
  const outcome = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const script = document.createElement('script');
        script.textContent = 'window.ranInline = true';
        document.body.append(script);
        setTimeout(() => resolve('ranInline' in window), 100);
      }),
  );
  expect(outcome).toBe(false);
  await close();
});

test('what was not checked stands under every view', async () => {
  const { page, close } = await visit(app, 'side', PHONE);
  for (const view of VIEWS) {
    await show(page, view);
    expect(await page.locator('.caution').textContent(), view).toMatch(/Not checked:.*strength/);
  }
  const text = await page.locator('body').textContent();
  expect(text).not.toMatch(/\bsafe\b/i);
  await close();
});
