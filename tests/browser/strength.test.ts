import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { drawnShare, PHONE, visit, WIDE } from '../support/appPage.ts';
import { openApp, type ServedApp } from '../support/browser.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** Smallest target for a gloved finger in both directions [px]. @source WCAG 2.2, 2.5.5 target size, enhanced */
const TARGET = 44;

let app: ServedApp;
beforeAll(async () => {
  app = await openApp();
});
afterAll(() => app.close());

async function showStrength(page: Page): Promise<void> {
  await page.locator('canvas[data-ready]').waitFor();
  await page.getByText('Strength', { exact: true }).click();
  await page.locator('.worst-item').first().waitFor();
  await page.locator('.use-table tbody tr').first().waitFor();
  await page.locator('canvas[data-ready]').waitFor();
}

const canvasOf = (page: Page) => page.locator('canvas[data-ready]');
const tableOf = (page: Page) => page.locator('.use-table').textContent();
const caseSelect = (page: Page) => page.getByLabel('Load case');

test('strength draws the frame beside a labeled scale, and tells the same in words', async () => {
  const { page, errors, close } = await visit(app, 'solid');
  await showStrength(page);
  await expect.poll(() => drawnShare(page, canvasOf(page)), { timeout: 20_000 }).toBeGreaterThan(0.02);
  const steps = await page.locator('.use-legend li').allInnerTexts();
  expect(steps.map((text) => text.trim())).toEqual([
    '0–20 %',
    '20–40 %',
    '40–60 %',
    '60–80 %',
    '80–100 %',
    'over 100 %',
  ]);
  expect(await page.locator('.worst-item').count()).toBe(10);
  const percents = (await page.locator('.worst-item .percent').allInnerTexts()).map(Number.parseFloat);
  expect(percents).toEqual(percents.toSorted((a, b) => b - a));
  expect(await tableOf(page)).toContain('lowerRail');
  expect(errors).toEqual([]);
  await close();
});

test('what shakes the frame is worked out beside the answer, and said in words', async () => {
  const { page, errors, close } = await visit(app, 'solid');
  await showStrength(page);
  const rows = page.locator('.shaking-table tbody tr');
  await rows.first().waitFor();
  expect(await rows.count()).toBe(10);
  const hertz = (await page.locator('.shaking-table tbody th').allInnerTexts()).map(Number.parseFloat);
  expect(hertz).toEqual(hertz.toSorted((a, b) => a - b));
  expect(await page.locator('.shaking').textContent()).toMatch(/fires once in two turns.+ Hz to .+ Hz/);
  expect(await page.locator('.shaking').getAttribute('aria-busy')).toBe('false');
  expect(errors).toEqual([]);
  await close();
});

test('a load case changes picture and table; its movement is drawn with its factor', async () => {
  const { page, errors, close } = await visit(app, 'solid');
  await showStrength(page);
  const moves = page.getByLabel('Deformed shape');
  expect(await moves.isDisabled()).toBe(true);
  const [table, picture] = [await tableOf(page), await canvasOf(page).screenshot()];
  await caseSelect(page).selectOption({ label: 'Rider seated' });
  await expect.poll(() => tableOf(page)).not.toBe(table);
  await expect.poll(async () => picture.equals(await canvasOf(page).screenshot())).toBe(false);
  expect(await page.locator('.use-basis').textContent()).toMatch(/^Weight of \d+ N/);
  const legend = page.locator('.use-movement');
  await expect.poll(() => legend.textContent()).toMatch(/^Largest movement [\d.]+ mm/);
  expect(await legend.textContent()).not.toContain('times');
  const still = await canvasOf(page).screenshot();
  await page.getByText('Deformed shape').click();
  await expect.poll(() => legend.textContent()).toMatch(/drawn \d+ times as large/);
  await expect.poll(async () => still.equals(await canvasOf(page).screenshot())).toBe(false);
  expect(errors).toEqual([]);
  await close();
});

test('the choice and the load case are reached by keys', async () => {
  const { page, close } = await visit(app, 'solid');
  await page.locator('canvas[data-ready]').waitFor();
  await page.getByRole('radio', { name: 'Parts' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.locator('.worst-item').first().waitFor();
  await caseSelect(page).focus();
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => caseSelect(page).inputValue()).toBe('seated');
  await close();
});

test.each([
  ['wide', WIDE],
  ['phone', PHONE],
] as const)('one of the worst places leads to its field (%s)', async (_, viewport) => {
  const { page, close } = await visit(app, 'solid', viewport);
  await showStrength(page);
  const go = page
    .locator('.worst-item')
    .getByRole('button', { name: /^Go to frame\.tubes\./ })
    .first();
  const path = ((await go.textContent()) ?? '').replace('Go to ', '');
  await go.click();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id ?? '')).toBe(`field:${path}`);
  await close();
});

test.each([
  ['wide', WIDE],
  ['phone', PHONE],
] as const)(
  'strength has no accessibility violation, fits and is large enough for a glove (%s)',
  async (_, viewport) => {
    const { page, close } = await visit(app, 'solid', viewport);
    await showStrength(page);
    await caseSelect(page).selectOption({ label: 'Landing on both wheels' });
    await page.getByText('Deformed shape').click();
    await page.getByText(/drawn \d+ times/).waitFor();
    await page.evaluate(axe);
    const violations = await page.evaluate(async () => {
      const { axe: checker } = window as unknown as {
        readonly axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
      };
      const { violations: found } = await checker.run();
      return found.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} at ${target}`));
    });
    expect(violations).toEqual([]);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(viewport.width);
    const sideways = await page
      .locator('.view, .strength-lists')
      .evaluateAll((items) => items.filter((item) => item.scrollWidth > item.clientWidth).length);
    expect(sideways).toBe(0);
    const small = await page.locator('button, select, .choice > *, .switch').evaluateAll(
      (items, least) =>
        items
          .map((item) => ({ text: item.textContent, box: item.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < least - 0.5 || box.height < least - 0.5))
          .map(({ text, box }) => `${text} ${box.width} x ${box.height}`),
      TARGET,
    );
    expect(small).toEqual([]);
    await close();
  },
  120_000,
);
